//! What came and went of an oil on the shelf, written into the log.

use std::process::ExitCode;

use clap::Args;
use shop::fault::nearest;
use shop::logbook::{Body, NewEntry, Subject};
use shop::shelf::{Amount, Price};

use crate::failure::Failure;
use crate::{say, shop_file};

use super::super::Shared;
use super::super::key::key;

/// What happened to the oil.
#[derive(Clone, Copy, Debug)]
pub(super) enum What {
    Counted,
    Used,
    ThrownAway,
}

#[derive(Debug, Args)]
pub(crate) struct Moved {
    /// The oil, by its id on the shelf.
    oil: String,
    /// How much, such as "3.2 L" or 400g.
    amount: String,
    /// For what, or why.
    #[arg(long)]
    note: Option<String>,
    #[command(flatten)]
    entry: Entry,
}

#[derive(Debug, Args)]
pub(crate) struct Bought {
    /// The oil, by its id on the shelf.
    oil: String,
    /// How much, such as "20 L".
    amount: String,
    /// What it cost, such as "85 EUR".
    #[arg(long)]
    price: Option<String>,
    #[command(flatten)]
    entry: Entry,
}

#[derive(Debug, Args)]
struct Entry {
    /// Who says so.
    #[arg(long, default_value = "keeper")]
    by: String,
    /// A key of your own: the same key sent twice is kept once.
    #[arg(long)]
    key: Option<String>,
}

impl Moved {
    pub(super) async fn run(self, shared: &Shared, what: What) -> Result<ExitCode, Failure> {
        let (amount, note) = (self.amount, self.note);
        let body = match what {
            What::Counted => Body::Counted { amount },
            What::Used => Body::Used { amount, note },
            What::ThrownAway => Body::ThrownAway { amount, note },
        };
        self.entry.keep(shared, &self.oil, body).await
    }
}

impl Bought {
    pub(super) async fn run(self, shared: &Shared) -> Result<ExitCode, Failure> {
        if let Some(price) = &self.price {
            Price::read(price).map_err(Failure::Use)?;
        }
        let body = Body::Bought { amount: self.amount, price: self.price };
        self.entry.keep(shared, &self.oil, body).await
    }
}

impl Entry {
    async fn keep(self, shared: &Shared, oil: &str, body: Body) -> Result<ExitCode, Failure> {
        if let Body::Counted { amount }
        | Body::Bought { amount, .. }
        | Body::Used { amount, .. }
        | Body::ThrownAway { amount, .. } = &body
        {
            Amount::read(amount).map_err(Failure::Use)?;
        }
        let open = shop_file::open(shared.shop.as_deref(), shared.at.as_deref()).await?;
        let shelf = open.store.shelf_at(open.at).await?;
        let found = shelf.oils.iter().find(|known| known.id.as_str() == oil).ok_or_else(|| {
            let near = nearest(oil, shelf.oils.iter().map(|known| known.id.as_str()));
            let near = near.map(|near| format!("; did you mean \"{near}\"?")).unwrap_or_default();
            Failure::Use(format!("there is no oil \"{oil}\" on the shelf{near}"))
        })?;
        let key = key(self.key.as_deref())?;
        let entry = NewEntry {
            happened: open.at,
            recorded: open.at,
            zone: open.settings.zone.iana_name().unwrap_or("UTC").to_owned(),
            by: self.by,
            subject: Subject::Oil(found.id.clone()),
            body,
            supersedes: None,
            idempotency_key: key.entry(0),
        };
        let ids = open.store.record(&[entry]).await?;
        open.store.close().await?;
        if shared.json {
            say::json(&serde_json::json!({ "entries": ids.iter().map(|id| id.0).collect::<Vec<_>>() }))?;
        } else {
            say::line(&format!("Kept: entry {}", ids[0]))?;
        }
        Ok(ExitCode::SUCCESS)
    }
}
