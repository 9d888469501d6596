//! `logbook`: reading what was written down, newest first.

use std::process::ExitCode;

use clap::Args;
use serde::Serialize;
use shop::choice::Choice as _;
use shop::id::Id;
use shop::logbook::{Entry, Kind};
use store::{About, Superseded, Wanted};

use crate::failure::Failure;
use crate::{say, shop_file};

use super::Shared;

#[derive(Debug, Args)]
pub(crate) struct Logbook {
    /// A machine by its id or name; the whole shop when left out.
    machine: Option<String>,
    /// A point of that machine.
    point: Option<String>,
    /// One kind of entry: dosed, "sign seen", ran and so on.
    #[arg(long)]
    kind: Option<String>,
    /// At most so many.
    #[arg(long, default_value_t = 30)]
    most: usize,
    /// Show what was withdrawn or corrected too.
    #[arg(long)]
    withdrawn: bool,
}

#[derive(Serialize)]
struct Row {
    entry: i64,
    happened: String,
    recorded: String,
    by: String,
    kind: &'static str,
    subject: String,
    says: String,
    superseded_by: Option<i64>,
}

impl Logbook {
    pub(crate) async fn run(self, shared: &Shared) -> Result<ExitCode, Failure> {
        let open = shop_file::open(shared.shop.as_deref(), shared.at.as_deref()).await?;
        let about = match (&self.machine, &self.point) {
            (Some(machine), Some(point)) => {
                let point = Id::new(point).map_err(|fault| Failure::Use(fault.to_string()))?;
                About::Point(open.machine(machine).await?.id, point)
            }
            (Some(machine), None) => About::Machine(open.machine(machine).await?.id),
            (None, _) => About::Shop,
        };
        let kind = match &self.kind {
            None => None,
            Some(word) => Some(Kind::from_word(&word.replace('-', " ")).ok_or_else(|| {
                Failure::Use(format!(
                    "\"{word}\" is no kind of entry; write one of {}",
                    shop::fault::either(Kind::words())
                ))
            })?),
        };
        let superseded = if self.withdrawn { Superseded::Shown } else { Superseded::LeftOut };
        let wanted = Wanted { about, kind, most: self.most, superseded, ..Wanted::default() };
        let entries = open.store.entries(&wanted).await?;
        let rows: Vec<Row> = entries.iter().map(|entry| row(entry, &open.settings.zone)).collect();
        if shared.json {
            say::json(&serde_json::json!({ "entries": rows }))?;
        } else if rows.is_empty() {
            say::line("Nothing is logged there yet.")?;
        } else {
            let table: Vec<[String; 5]> = rows
                .into_iter()
                .map(|row| {
                    let gone = if row.superseded_by.is_some() { " (withdrawn)" } else { "" };
                    [row.entry.to_string(), row.happened, row.by, row.subject, format!("{}{gone}", row.says)]
                })
                .collect();
            say::table(&table)?;
        }
        Ok(ExitCode::SUCCESS)
    }
}

fn row(entry: &Entry, zone: &jiff::tz::TimeZone) -> Row {
    let clock =
        |instant: jiff::Timestamp| instant.to_zoned_datetime(zone.clone()).strftime("%Y-%m-%d %H:%M").to_string();
    Row {
        entry: entry.id.0,
        happened: clock(entry.said.happened),
        recorded: clock(entry.said.recorded),
        by: entry.said.by.clone(),
        kind: entry.said.body.kind().word(),
        subject: entry.said.subject.to_string(),
        says: advice::words::entry(&entry.said.body),
        superseded_by: entry.superseded_by.map(|id| id.0),
    }
}
