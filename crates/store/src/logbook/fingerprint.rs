//! The fingerprint of an entry: SHA-256 over all that its row says, so that `verify` finds any byte of it that changed since. It
//! guards against a failing disk, not against a person who can reckon a fingerprint too.

use std::collections::BTreeMap;

use serde_json::json;

use crate::chart::sha256;
use crate::db::{Row, Tx, Value, rows_of_places, values};
use crate::error::Result;

/// How many entries are looked at at once.
const PAGE: i64 = 1000;
/// How many fingerprints are written by one statement.
const ROWS: usize = 100;

/// All that an entry's row says, by which it is known again.
pub(crate) fn of(row: &Row) -> Result<String> {
    let whole = |column| row.get::<Option<i64>>(column);
    let text = |column| row.get::<Option<String>>(column);
    let said = json!([
        whole("id")?,
        whole("happened")?,
        whole("recorded")?,
        text("zone")?,
        text("said_by")?,
        text("kind")?,
        text("subject")?,
        text("machine")?,
        text("point")?,
        text("body")?,
        whole("body_version")?,
        whole("supersedes")?,
        text("idempotency_key")?,
    ]);
    Ok(sha256(said.to_string().as_bytes()))
}

/// The entries behind this number, a page of them, by number.
pub(crate) async fn page(tx: &Tx, after: i64) -> Result<Vec<Row>> {
    let sql = "SELECT e.*, f.sha256, CAST(NULL AS BIGINT) AS superseded_by FROM entry e LEFT JOIN fingerprint f ON f.entry = e.id \
               WHERE e.id > $1 ORDER BY e.id LIMIT $2";
    tx.all(sql, values![after, PAGE]).await
}

/// Takes the fingerprints of the entries behind this number.
pub(crate) async fn take(tx: &Tx, mut after: i64) -> Result<()> {
    loop {
        let rows = page(tx, after).await?;
        let mut taken = BTreeMap::new();
        for row in &rows {
            taken.insert(row.get::<i64>("id")?, of(row)?);
        }
        let Some((last, _)) = taken.last_key_value() else { return Ok(()) };
        after = *last;
        let taken: Vec<(i64, String)> = taken.into_iter().collect();
        for chunk in taken.chunks(ROWS) {
            let sql = format!("INSERT INTO fingerprint (entry, sha256) VALUES {}", rows_of_places(chunk.len(), 2));
            let all: Vec<Value> = chunk.iter().flat_map(|(id, print)| values![*id, print.as_str()]).collect();
            tx.run(&sql, all).await?;
        }
    }
}
