//! `POST /log/withdrawals`: entries were a mistake and count no more. They stay in the log, superseded.

use axum::extract::{Form, State};
use axum::response::Redirect;
use serde::Deserialize;
use shop::logbook::{BatchKey, Entry, EntryId, Kind};
use shop::snapshot::Moment;

use super::back::Back;
use super::pen::{self, Pen};
use super::{Chosen, address_of};
use crate::hand::Hand;
use crate::shop_state::Shop;
use crate::{Error, FormKey};

/// The form: a whole act by its batch, or one entry by its number.
#[derive(Deserialize)]
pub(crate) struct Sent {
    key: FormKey,
    #[serde(default)]
    batch: String,
    #[serde(default)]
    entry: String,
    /// Where it was pressed.
    #[serde(default)]
    from: From,
    /// The kind that the log was showing.
    #[serde(default)]
    kind: String,
    #[serde(flatten)]
    back: Back,
}

/// Where it was pressed.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "lowercase")]
enum From {
    #[default]
    Round,
    Log,
}

/// `POST /log/withdrawals`
pub(crate) async fn write(State(shop): State<Shop>, hand: Hand, Form(sent): Form<Sent>) -> Result<Redirect, Error> {
    if shop.store.batch(&pen::batch(&sent.key)).await?.is_empty() {
        let moment = Moment { instant: shop.clock.now(), zone: shop.store.settings().await?.zone };
        let pen = Pen::new(&sent.key, &hand, &moment);
        let entries = named(&shop, &sent).await?;
        let living = entries
            .iter()
            .enumerate()
            .filter(|(_, entry)| entry.superseded_by.is_none() && entry.said.body.kind() != Kind::Withdrawn);
        let withdrawals: Vec<_> =
            living.map(|(number, entry)| pen.withdrawal(number, entry.said.subject.clone(), entry.id)).collect();
        shop.store.record(&withdrawals).await?;
    }
    Ok(match sent.from {
        From::Round => sent.back.redirect(),
        From::Log => Redirect::to(&address_of(&Chosen::new(&sent.back.asked.machine, &sent.kind))),
    })
}

/// The entries that are to be taken back.
async fn named(shop: &Shop, sent: &Sent) -> Result<Vec<Entry>, Error> {
    if let Some(batch) = BatchKey::new(&sent.batch) {
        let entries = shop.store.batch(&batch).await?;
        return if entries.is_empty() { Err(unknown(&sent.batch)) } else { Ok(entries) };
    }
    let id: i64 = sent.entry.parse().map_err(|_| Error::WrongForm)?;
    match shop.store.entry(EntryId(id)).await {
        Ok(entry) => Ok(vec![entry]),
        Err(store::Error::NotFound(_)) => Err(unknown(&sent.entry)),
        Err(other) => Err(other.into()),
    }
}

fn unknown(asked: &str) -> Error {
    Error::Unknown { what: "entry", asked: asked.to_owned(), near: None }
}
