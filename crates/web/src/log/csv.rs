//! `GET /log/csv`: the entries that the log shows, all of them, as a table for a spreadsheet: RFC 4180 in UTF-8, the newest first, times
//! by the shop's clock as RFC 3339 writes them.

use axum::extract::{Query, State};
use axum::http::header::{CONTENT_DISPOSITION, CONTENT_TYPE};
use axum::response::{IntoResponse, Response};
use shop::choice::Choice as _;
use shop::logbook::Subject;
use store::guarded;

use super::{Chosen, Names};
use crate::Error;
use crate::shop_state::{Shop, on_clock};

/// How many entries are fetched at once.
const STEP: usize = 1000;

const NAMES: [&str; 10] =
    ["number", "happened", "recorded", "machine", "place", "kind", "what", "by", "supersedes", "superseded_by"];

/// `GET /log/csv`
pub(crate) async fn show(State(shop): State<Shop>, Query(chosen): Query<Chosen>) -> Result<Response, Error> {
    let snapshot = shop.store.snapshot(shop.clock.now()).await?;
    let moment = snapshot.moment.clone();
    let names = Names::of(snapshot);
    let mut wanted = chosen.wanted(&names, &moment)?;
    wanted.most = STEP;
    let mut table = csv::WriterBuilder::new().terminator(csv::Terminator::CRLF).from_writer(Vec::new());
    let failed = |error: csv::Error| Error::broken(format!("the table could not be written: {error}"));
    table.write_record(NAMES).map_err(failed)?;
    loop {
        let entries = shop.store.entries(&wanted).await?;
        for entry in &entries {
            let at = |instant| on_clock(&moment, instant).strftime("%Y-%m-%dT%H:%M:%S%:z").to_string();
            let place = place(&entry.said.subject);
            let number = |id: Option<shop::logbook::EntryId>| id.map(|id| id.to_string()).unwrap_or_default();
            let cells = [
                entry.id.to_string(),
                at(entry.said.happened),
                at(entry.said.recorded),
                entry.said.subject.machine().map(|machine| names.machine_name(machine)).unwrap_or_default(),
                place,
                entry.said.body.kind().word().to_owned(),
                names.what(entry),
                entry.said.by.clone(),
                number(entry.said.supersedes),
                number(entry.superseded_by),
            ];
            table.write_record(cells.map(said)).map_err(failed)?;
        }
        let Some(last) = entries.last().filter(|_| entries.len() == STEP) else { break };
        wanted.before = Some(last.id);
    }
    let bytes = table.into_inner().map_err(Error::broken)?;
    let headers =
        [(CONTENT_TYPE, "text/csv; charset=utf-8"), (CONTENT_DISPOSITION, "attachment; filename=\"log.csv\"")];
    Ok((headers, bytes).into_response())
}

/// A cell that no spreadsheet takes for a formula; one that says nothing stays empty.
fn said(text: String) -> String {
    if text.is_empty() { text } else { guarded(text) }
}

/// Which point, reservoir, oil or can of the chart or the shelf, by its id.
fn place(subject: &Subject) -> String {
    match subject {
        Subject::Machine(_) => String::new(),
        Subject::Point(_, id) | Subject::Reservoir(_, id) | Subject::Oil(id) | Subject::Can(id) => id.to_string(),
    }
}
