//! All rows of a shop from one place into another, page by page, so that a large shop needs little memory. Both are of the newest
//! form; what was derived is taken along and not worked out anew, so that damage in it is seen where it is looked for.

use crate::db::{Tx, Value, places, rows_of_places};
use crate::error::Result;
use crate::layout::{Column, DERIVED, Holds, SAID, Table, columns};

/// How many rows are read and written by one statement.
const ROWS: usize = 50;

/// Writes every row of one shop into the empty tables of another.
pub(crate) async fn all(from: &Tx, to: &Tx) -> Result<()> {
    for table in SAID.into_iter().chain(DERIVED) {
        copy(from, to, table).await?;
    }
    Ok(())
}

async fn copy(from: &Tx, to: &Tx, (table, order): Table) -> Result<()> {
    let columns = columns(from, table).await?;
    let names: Vec<&str> = columns.iter().map(|column| column.name.as_str()).collect();
    let names = names.join(", ");
    let keys: Vec<&str> = order.split(", ").collect();
    // A picture may have twenty million bytes.
    let rows = if columns.iter().any(|column| column.holds == Holds::Bytes) { 1 } else { ROWS };
    let mut after: Vec<Value> = Vec::new();
    loop {
        let behind = match after.len() {
            0 => String::new(),
            count => format!(" WHERE ({order}) > ({})", places(1, count)),
        };
        let sql = format!("SELECT {names} FROM {table}{behind} ORDER BY {order} LIMIT {rows}");
        let page = from.all(&sql, after).await?;
        let Some(last) = page.last() else { return Ok(()) };
        let key = |column: &&Column| keys.contains(&column.name.as_str());
        after = columns.iter().filter(key).map(|column| column.value(last)).collect::<Result<_>>()?;
        let mut values = Vec::with_capacity(page.len() * columns.len());
        for row in &page {
            for column in &columns {
                values.push(column.value(row)?);
            }
        }
        let sql = format!("INSERT INTO {table} ({names}) VALUES {}", rows_of_places(page.len(), columns.len()));
        to.run(&sql, values).await?;
    }
}
