//! An entry as a row of the file.

use shop::logbook::{Entry, EntryId, NewEntry, Subject};

use super::body;
use crate::db::Row;
use crate::error::Result;

/// The beginning of every query for entries, which are `e` in it.
pub(super) const SELECT: &str = "SELECT e.id, e.happened, e.recorded, e.zone, e.said_by, e.kind, e.subject, e.body, \
     e.body_version, e.supersedes, e.idempotency_key, \
     (SELECT s.id FROM entry s WHERE s.supersedes = e.id) AS superseded_by FROM entry e";

/// The entry in a row of such a query.
pub(crate) fn entry(row: &Row) -> Result<Entry> {
    let id = row.get("id")?;
    let wrong = |what: String| row.corrupt(format!("entry {id}: {what}"));
    let subject: String = row.get("subject")?;
    let json: String = row.get("body")?;
    let body = body::read(row.choice("kind")?, row.get("body_version")?, &json).map_err(wrong)?;
    let said = NewEntry {
        happened: row.instant("happened")?,
        recorded: row.instant("recorded")?,
        zone: row.get("zone")?,
        by: row.get("said_by")?,
        subject: subject.parse::<Subject>().map_err(|_| wrong(format!("\"{subject}\" is no subject")))?,
        body,
        supersedes: row.get::<Option<i64>>("supersedes")?.map(EntryId),
        idempotency_key: row.get("idempotency_key")?,
    };
    Ok(Entry { id: EntryId(id), said, superseded_by: row.get::<Option<i64>>("superseded_by")?.map(EntryId) })
}
