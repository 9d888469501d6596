//! A can or gun as a row of the file.

use shop::id::Id;
use shop::shelf::Can;

use super::{Written, quantity, text};
use crate::db::{Row, Tx, values};
use crate::error::Result;

pub(super) async fn write(tx: &Tx, can: &Can, number: i64, place: usize, written: &Written<'_>) -> Result<()> {
    let sql = "INSERT INTO can_revision (id, number, recorded, said_by, place, name, oil, stroke, note) \
               VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9)";
    let values = values![
        can.id.as_str(),
        number,
        written.at,
        written.by,
        place as i64,
        can.name.clone(),
        can.oil.as_ref().map(Id::to_string),
        text(&can.stroke),
        can.note.clone(),
    ];
    tx.run(sql, values).await
}

pub(crate) fn read(row: &Row) -> Result<Can> {
    Ok(Can {
        id: row.id("id")?,
        name: row.get("name")?,
        oil: row.maybe_id("oil")?,
        stroke: quantity(row, "stroke")?,
        note: row.get("note")?,
    })
}
