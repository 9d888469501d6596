//! The shelf in the file: each oil and each can by revisions, the newest recorded by an instant in force then. What is in stock is
//! counted by the logbook, from an opening entry on.

mod can;
mod oil;

pub(crate) use can::read as read_can;
pub(crate) use oil::read as read_oil;

use std::collections::HashMap;

use jiff::Timestamp;
use shop::id::Id;
use shop::logbook::{Body, NewEntry, Subject};
use shop::shelf::{Oil, Shelf};
use tribology::quantity::{Quantity, Typed, typed};

use crate::db::{Row, Tx, micros, values};
use crate::error::Result;
use crate::store::Store;
use crate::{logbook, settings};

impl Store {
    /// Takes in a shelf: each oil and can that is new or differs becomes a revision, the others stay as they are, and nothing is
    /// removed. The stock of an oil becomes its opening entry in the logbook, once and for all.
    ///
    /// # Errors
    /// [`Error::Corrupt`](crate::Error::Corrupt) or [`Error::Io`](crate::Error::Io); nothing is written then.
    pub async fn add_shelf(&self, shelf: &Shelf, at: Timestamp, by: &str) -> Result<()> {
        let tx = self.db.write().await?;
        let kept = in_force(&tx, Timestamp::MAX).await?;
        let written = Written { at: micros(at), by };
        let mut numbers = numbers(&tx, "oil_revision").await?;
        for (place, oil) in shelf.oils.iter().enumerate().filter(|(_, oil)| kept.oil(&oil.id) != Some(*oil)) {
            oil::write(&tx, oil, next(&mut numbers, &oil.id), place, &written).await?;
        }
        let mut numbers = self::numbers(&tx, "can_revision").await?;
        for (place, can) in shelf.cans.iter().enumerate().filter(|(_, can)| !kept.cans.contains(can)) {
            can::write(&tx, can, next(&mut numbers, &can.id), place, &written).await?;
        }
        let zone = settings::in_force(&tx, Timestamp::MAX).await?.zone_name()?.to_owned();
        let openings = shelf.oils.iter().filter_map(|oil| opening(oil, &zone, at, by)).collect::<Vec<_>>();
        logbook::record(&tx, &openings).await?;
        tx.commit().await
    }

    /// The shelf in force at an instant.
    ///
    /// # Errors
    /// [`Error::Corrupt`](crate::Error::Corrupt) when something on it cannot be read.
    pub async fn shelf_at(&self, at: Timestamp) -> Result<Shelf> {
        let tx = self.db.read().await?;
        let shelf = in_force(&tx, at).await?;
        tx.commit().await?;
        Ok(shelf)
    }
}

/// When and by whom a revision is written.
struct Written<'a> {
    at: i64,
    by: &'a str,
}

/// The shelf in force at an instant.
pub(crate) async fn in_force(tx: &Tx, at: Timestamp) -> Result<Shelf> {
    let newest = |table: &str| {
        format!(
            "SELECT r.* FROM {table} r WHERE r.number = \
             (SELECT max(x.number) FROM {table} x WHERE x.id = r.id AND x.recorded <= $1) ORDER BY r.place, r.id"
        )
    };
    let oils = tx.all(&newest("oil_revision"), values![micros(at)]).await?;
    let cans = tx.all(&newest("can_revision"), values![micros(at)]).await?;
    Ok(Shelf {
        oils: oils.iter().map(oil::read).collect::<Result<_>>()?,
        cans: cans.iter().map(can::read).collect::<Result<_>>()?,
    })
}

/// The newest number of each id in a table of revisions.
async fn numbers(tx: &Tx, table: &str) -> Result<HashMap<Id, i64>> {
    let rows = tx.all(&format!("SELECT id, max(number) AS number FROM {table} GROUP BY id"), values![]).await?;
    rows.iter().map(|row| Ok((row.id("id")?, row.get("number")?))).collect()
}

fn next(numbers: &mut HashMap<Id, i64>, id: &Id) -> i64 {
    let number = numbers.entry(id.clone()).or_insert(0);
    *number += 1;
    *number
}

fn opening(oil: &Oil, zone: &str, at: Timestamp, by: &str) -> Option<NewEntry> {
    let amount = oil.stock.as_ref().map(|stock| stock.text.clone()).or_else(|| oil.stock_mass.clone())?;
    Some(NewEntry {
        happened: at,
        recorded: at,
        zone: zone.to_owned(),
        by: by.to_owned(),
        subject: Subject::Oil(oil.id.clone()),
        body: Body::Opening { amount },
        supersedes: None,
        idempotency_key: format!("opening-stock/{}", oil.id),
    })
}

/// A quantity as the file keeps it: the text that was typed.
fn text<Q>(quantity: &Option<Typed<Q>>) -> Option<String> {
    quantity.as_ref().map(|typed| typed.text.clone())
}

/// A quantity as the file kept it.
fn quantity<Q: Quantity>(row: &Row, column: &str) -> Result<Option<Typed<Q>>> {
    let text: Option<String> = row.get(column)?;
    let read = |text: String| {
        typed(&text).map_err(|_| row.corrupt(format!("column {column} holds \"{text}\", which is no such quantity")))
    };
    text.map(read).transpose()
}
