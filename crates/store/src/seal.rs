//! The fingerprints of the rows that have none of their own: settings, shelf, and by whom and when charts and pictures were kept.
//! `verify` holds every row against its own, and finds rows that came or went behind our back. The text of a chart and the bytes of a
//! picture are left out: a fingerprint of each stands in the row already.

use std::collections::BTreeMap;

use serde_json::Value as Json;

use crate::chart::sha256;
use crate::db::{Tx, Value, places, rows_of_places, values};
use crate::error::{Error, Result};
use crate::layout::{Column, Holds, Table, columns};

/// The tables whose rows have fingerprints here.
const SEALED: [Table; 5] = [
    ("setting", "number"),
    ("chart_revision", "machine, number"),
    ("oil_revision", "id, number"),
    ("can_revision", "id, number"),
    ("picture", "id"),
];
/// What has a fingerprint in a column beside it.
const PRINTED: (&str, &str) = ("chart_revision", "text");
/// How many fingerprints are written by one statement.
const ROWS: usize = 100;

/// Writes a row and its fingerprint.
pub(crate) async fn insert(tx: &Tx, table: &str, row: Vec<(&str, Value)>) -> Result<()> {
    let kept: BTreeMap<&str, &Value> =
        row.iter().filter(|(name, _)| seals(table, name)).map(|(n, v)| (*n, v)).collect();
    let seal = values![table, key(table, &kept), print(&kept)];
    let (names, values): (Vec<&str>, Vec<Value>) = row.into_iter().unzip();
    let sql = format!("INSERT INTO {table} ({}) VALUES ({})", names.join(", "), places(1, names.len()));
    tx.run(&sql, values).await?;
    tx.run("INSERT INTO seal (of_table, of_row, sha256) VALUES ($1, $2, $3)", seal).await
}

/// Takes the fingerprints of all rows, none of which has one.
pub(crate) async fn take(tx: &Tx) -> Result<()> {
    for table in SEALED {
        let prints: Vec<(String, String)> = prints(tx, table).await?.into_iter().collect();
        for chunk in prints.chunks(ROWS) {
            let sql = format!("INSERT INTO seal (of_table, of_row, sha256) VALUES {}", rows_of_places(chunk.len(), 3));
            let all = chunk.iter().flat_map(|(of, print)| values![table.0, of.as_str(), print.as_str()]);
            tx.run(&sql, all.collect()).await?;
        }
    }
    Ok(())
}

/// Every row that is not as it was written, is gone, or was never written by us.
pub(crate) async fn differences(tx: &Tx) -> Result<Vec<String>> {
    let mut says = Vec::new();
    for table in SEALED {
        let are = match prints(tx, table).await {
            Err(Error::Corrupt { what, .. }) => {
                says.push(what);
                continue;
            }
            prints => prints?,
        };
        let sql = "SELECT of_row, sha256 FROM seal WHERE of_table = $1";
        let mut kept = BTreeMap::new();
        for row in tx.all(sql, values![table.0]).await? {
            kept.insert(row.get::<String>("of_row")?, row.get::<String>("sha256")?);
        }
        for (of, is) in &are {
            match kept.get(of) {
                None => says.push(format!("{} has no fingerprint", named(table.0, of))),
                Some(kept) if kept != is => {
                    says.push(format!("{} is not what was written: its fingerprint is another", named(table.0, of)));
                }
                Some(_) => {}
            }
        }
        let gone = kept.keys().filter(|of| !are.contains_key(*of));
        says.extend(gone.map(|of| format!("{} is gone: only its fingerprint is there", named(table.0, of))));
    }
    Ok(says)
}

/// The fingerprint of each row of a table.
async fn prints(tx: &Tx, (table, order): Table) -> Result<BTreeMap<String, String>> {
    let columns: Vec<Column> = columns(tx, table).await?;
    let columns: Vec<&Column> =
        columns.iter().filter(|column| column.holds != Holds::Bytes && seals(table, &column.name)).collect();
    let names: Vec<&str> = columns.iter().map(|column| column.name.as_str()).collect();
    let mut prints = BTreeMap::new();
    for row in tx.all(&format!("SELECT {} FROM {table} ORDER BY {order}", names.join(", ")), values![]).await? {
        let values = columns.iter().map(|column| column.value(&row)).collect::<Result<Vec<Value>>>()?;
        let kept = names.iter().copied().zip(&values).collect();
        prints.insert(key(table, &kept), print(&kept));
    }
    Ok(prints)
}

fn seals(table: &str, column: &str) -> bool {
    (table, column) != PRINTED
}

/// What says which row it is: a list of the values of its key, in JSON.
fn key(table: &str, row: &BTreeMap<&str, &Value>) -> String {
    let order = SEALED.iter().find(|(sealed, _)| *sealed == table).map_or("", |(_, order)| order);
    let parts = order.split(", ").filter_map(|column| json(row.get(column)?));
    Json::Array(parts.collect()).to_string()
}

/// SHA-256 of the row in JSON, with names in order of the alphabet and nothing for what is not there: a column that a later form adds
/// leaves the fingerprints of old rows as they are.
fn print(row: &BTreeMap<&str, &Value>) -> String {
    let said = row.iter().filter_map(|(name, value)| Some(((*name).to_owned(), json(value)?)));
    sha256(Json::Object(said.collect()).to_string().as_bytes())
}

fn json(value: &Value) -> Option<Json> {
    match value {
        Value::String(text) => text.as_deref().map(Json::from),
        Value::BigInt(number) => number.map(Json::from),
        // What is no number is kept as nothing, and a file forgets the sign of nought.
        Value::Double(number) => number.and_then(|number| serde_json::Number::from_f64(number + 0.0)).map(Json::Number),
        _ => None,
    }
}

/// A row as people would name it.
fn named(table: &str, of: &str) -> String {
    let parts: Vec<Json> = serde_json::from_str(of).unwrap_or_default();
    match (table, parts.as_slice()) {
        ("setting", [number]) => format!("setting {number}"),
        ("chart_revision", [machine, number]) => format!("revision {number} of the chart of {machine}"),
        ("oil_revision", [id, number]) => format!("revision {number} of the oil {id} on the shelf"),
        ("can_revision", [id, number]) => format!("revision {number} of the can {id} on the shelf"),
        ("picture", [id]) => format!("picture {id}"),
        _ => format!("row {of} of the table {table}"),
    }
}
