//! A can or gun as a row of the file.

use shop::id::Id;
use shop::shelf::Can;

use super::{Written, quantity, text};
use crate::db::{Row, Tx, Value};
use crate::error::Result;
use crate::seal;

pub(super) async fn write(tx: &Tx, can: &Can, number: i64, place: usize, written: &Written<'_>) -> Result<()> {
    let row = vec![
        ("id", Value::from(can.id.as_str())),
        ("number", number.into()),
        ("recorded", written.at.into()),
        ("said_by", written.by.into()),
        ("place", (place as i64).into()),
        ("name", can.name.clone().into()),
        ("oil", can.oil.as_ref().map(Id::to_string).into()),
        ("stroke", text(&can.stroke).into()),
        ("note", can.note.clone().into()),
    ];
    seal::insert(tx, "can_revision", row).await
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
