//! Writing entries, and what follows from them, in one transaction.

use std::collections::{BTreeSet, HashMap, HashSet};

use shop::id::Id;
use shop::logbook::{EntryId, NewEntry};

use super::{body, fingerprint};
use crate::chart;
use crate::db::{Row, Tx, Value, micros, places, rows_of_places, values};
use crate::due::{self, Act};
use crate::error::{Error, Result};

/// How many values a list in a statement has at most. SQLite looks each `$n` up in a list of them all, so that long statements
/// cost the square of their length: 500 entries a statement took twice the time of 50.
const LIST: usize = 500;
/// How many entries are written by one statement.
const ROWS: usize = 50;
/// The columns of an entry.
const COLUMNS: usize = 13;

/// Keeps entries, all or none; nothing is written when this fails, provided that the transaction is dropped.
pub(crate) async fn record(tx: &Tx, entries: &[NewEntry]) -> Result<Vec<EntryId>> {
    let mut kept = kept(tx, entries).await?;
    let before = last(tx).await?;
    let mut next = before;
    let mut ids = Vec::with_capacity(entries.len());
    let mut fresh = Vec::new();
    for entry in entries {
        let id = *kept.entry(&entry.idempotency_key).or_insert_with(|| {
            next += 1;
            fresh.push((EntryId(next), entry));
            EntryId(next)
        });
        ids.push(id);
    }
    if fresh.is_empty() {
        return Ok(ids);
    }
    machines_must_exist(tx, &fresh).await?;
    let replaced = replaced(tx, &fresh).await?;
    for chunk in fresh.chunks(ROWS) {
        insert(tx, chunk).await?;
    }
    fingerprint::take(tx, before).await?;
    due::follow(tx, &fresh, replaced).await?;
    Ok(ids)
}

/// The entries whose keys are there already.
async fn kept<'e>(tx: &Tx, entries: &'e [NewEntry]) -> Result<HashMap<&'e String, EntryId>> {
    let keys: HashMap<&str, &String> =
        entries.iter().map(|entry| (entry.idempotency_key.as_str(), &entry.idempotency_key)).collect();
    let rows = listed(tx, "SELECT id, idempotency_key FROM entry WHERE idempotency_key IN", keys.keys().copied());
    let mut kept = HashMap::new();
    for row in rows.await? {
        let key: String = row.get("idempotency_key")?;
        if let Some(key) = keys.get(key.as_str()) {
            kept.insert(*key, EntryId(row.get("id")?));
        }
    }
    Ok(kept)
}

async fn last(tx: &Tx) -> Result<i64> {
    let row = tx.one("SELECT coalesce(max(id), 0) AS last FROM entry", values![]).await?;
    row.map_or(Ok(0), |row| row.get("last"))
}

async fn machines_must_exist(tx: &Tx, fresh: &[(EntryId, &NewEntry)]) -> Result<()> {
    let named: BTreeSet<&Id> = fresh.iter().filter_map(|(_, entry)| entry.subject.machine()).collect();
    let rows = listed(tx, "SELECT id FROM machine WHERE id IN", named.iter().map(|id| id.as_str())).await?;
    let there: HashSet<Id> = rows.iter().map(|row| row.id("id")).collect::<Result<_>>()?;
    match named.into_iter().find(|id| !there.contains(*id)) {
        Some(missing) => Err(chart::unknown(missing)),
        None => Ok(()),
    }
}

/// The acts whose entries are superseded by the fresh ones. Each must exist and be superseded by one only.
async fn replaced(tx: &Tx, fresh: &[(EntryId, &NewEntry)]) -> Result<BTreeSet<Act>> {
    let mut wanted = BTreeSet::new();
    for target in fresh.iter().filter_map(|(_, entry)| entry.supersedes) {
        if !wanted.insert(target) {
            return Err(Error::Conflict(format!(
                "entry {target} would be superseded twice at once; correct it once, nothing was written"
            )));
        }
    }
    let sql = "SELECT e.id, e.machine, e.point, e.kind, (SELECT s.id FROM entry s WHERE s.supersedes = e.id) AS by_entry \
               FROM entry e WHERE e.id IN";
    let mut acts = BTreeSet::new();
    let mut there = HashSet::new();
    for row in listed(tx, sql, wanted.iter().map(|id| id.0)).await? {
        let id: i64 = row.get("id")?;
        if let Some(by) = row.get::<Option<i64>>("by_entry")? {
            return Err(Error::Conflict(format!(
                "entry {id} is already superseded by entry {by}; correct that one instead, nothing was written"
            )));
        }
        there.insert(EntryId(id));
        acts.extend(Act::in_row(&row)?);
    }
    match wanted.iter().find(|target| !there.contains(*target)) {
        Some(missing) => Err(Error::Conflict(format!(
            "there is no entry {missing} that could be superseded; look at the log for its number, nothing was written"
        ))),
        None => Ok(acts),
    }
}

async fn insert(tx: &Tx, chunk: &[(EntryId, &NewEntry)]) -> Result<()> {
    let sql = format!(
        "INSERT INTO entry (id, happened, recorded, zone, said_by, kind, subject, machine, point, body, body_version, \
         supersedes, idempotency_key) VALUES {}",
        rows_of_places(chunk.len(), COLUMNS)
    );
    let mut values: Vec<Value> = Vec::with_capacity(chunk.len() * COLUMNS);
    for (id, entry) in chunk {
        values.extend(values![
            id.0,
            micros(entry.happened),
            micros(entry.recorded),
            entry.zone.as_str(),
            entry.by.as_str(),
            entry.body.kind().to_string(),
            entry.subject.to_string(),
            entry.subject.machine().map(Id::to_string),
            entry.subject.point().map(Id::to_string),
            body::write(&entry.body),
            body::VERSION,
            entry.supersedes.map(|id| id.0),
            entry.idempotency_key.as_str(),
        ]);
    }
    tx.run(&sql, values).await
}

/// The rows of a query that ends in a list, asked for in pieces that the database can take.
async fn listed<V: Into<Value>>(tx: &Tx, sql: &str, list: impl Iterator<Item = V>) -> Result<Vec<Row>> {
    let list: Vec<Value> = list.map(Into::into).collect();
    let mut rows = Vec::new();
    for chunk in list.chunks(LIST) {
        rows.extend(tx.all(&format!("{sql} ({})", places(1, chunk.len())), chunk.to_vec()).await?);
    }
    Ok(rows)
}
