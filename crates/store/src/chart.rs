//! Machines and the revisions of their charts. A revision is the text of the chart file; the newest recorded by an instant is in
//! force then.

mod memory;

pub(crate) use memory::Memory;

use jiff::Timestamp;
use sha2::{Digest as _, Sha256};
use shop::chart::Chart;
use shop::id::Id;

use crate::db::{Tx, Value, micros, values};
use crate::error::{Error, Result};
use crate::picture::{self, NewPicture};
use crate::seal;
use crate::store::Store;

/// A machine in a list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct MachineRow {
    /// Its id in the shop.
    pub id: Id,
    /// What its keepers call it.
    pub name: String,
    /// Its kind in one word.
    pub kind: Option<String>,
    /// How many oiling points this example has.
    pub points: usize,
    /// The number of the newest revision of its chart.
    pub revision: i64,
}

impl Store {
    /// Keeps a chart as the newest revision of a machine, which is added if need be, whatever the revision before says, and returns the
    /// revision's number. A text that is already the newest makes no new revision.
    ///
    /// # Errors
    /// [`Error::Faulty`] with everything that was noted when the chart has faults; nothing is written then.
    pub async fn add_chart(&self, machine: &Id, text: &str, at: Timestamp, by: &str) -> Result<i64> {
        self.add_chart_with(machine, text, Vec::new(), at, by).await
    }

    /// Keeps a chart that was made from a revision of this machine's as the next one, and returns its number. A text that is already
    /// the newest makes no new revision.
    ///
    /// # Errors
    /// [`Error::Conflict`] when the newest revision is another one by now, be it by another program; [`Error::NotFound`] when there is
    /// no such machine; those of [`Store::add_chart`]. Nothing is written then.
    pub async fn change_chart(&self, machine: &Id, text: &str, made_from: i64, at: Timestamp, by: &str) -> Result<i64> {
        self.change_chart_with(machine, (text, made_from), Vec::new(), at, by).await
    }

    /// Keeps a chart as [`Store::change_chart`] does, given with the revision that it was made from, together with the pictures beside
    /// it: all of it, or nothing.
    ///
    /// # Errors
    /// Those of [`Store::change_chart`] and of [`Store::add_picture`].
    pub async fn change_chart_with(
        &self,
        machine: &Id,
        (text, made_from): (&str, i64),
        pictures: Vec<NewPicture>,
        at: Timestamp,
        by: &str,
    ) -> Result<i64> {
        self.write_chart(machine, (text, Some(made_from)), pictures, at, by).await
    }

    /// Keeps a chart as [`Store::add_chart`] does, together with the pictures beside it: all of it, or nothing.
    ///
    /// # Errors
    /// Those of [`Store::add_chart`] and of [`Store::add_picture`].
    pub async fn add_chart_with(
        &self,
        machine: &Id,
        text: &str,
        pictures: Vec<NewPicture>,
        at: Timestamp,
        by: &str,
    ) -> Result<i64> {
        self.write_chart(machine, (text, None), pictures, at, by).await
    }

    /// Keeps a chart with the pictures beside it; where it was made from a revision, only while that is the newest.
    async fn write_chart(
        &self,
        machine: &Id,
        (text, made_from): (&str, Option<i64>),
        pictures: Vec<NewPicture>,
        at: Timestamp,
        by: &str,
    ) -> Result<i64> {
        let read = Chart::read(text);
        let Some(chart) = read.value else { return Err(Error::Faulty(read.faults)) };
        let pictures = picture::prepare(pictures).await?;
        let tx = self.db.write().await?;
        if let Some(made_from) = made_from {
            let newest = newest(&tx, machine).await?.ok_or_else(|| unknown(machine))?;
            if newest.number != made_from && !newest.is(text) {
                return Err(Error::Conflict(format!(
                    "the chart of \"{machine}\" was changed meanwhile: this was made from revision {made_from}, and the newest \
                     is {}; look at that one and make the change again, nothing was written",
                    newest.number
                )));
            }
        }
        let number = keep(&tx, machine, (text, chart), at, by).await?;
        for one in pictures {
            picture::keep(&tx, one, at).await?;
        }
        tx.commit().await?;
        Ok(number)
    }

    /// The revision of a machine's chart in force at an instant: its number and its text.
    ///
    /// # Errors
    /// [`Error::NotFound`] when there was no chart of this machine then.
    pub async fn chart(&self, machine: &Id, at: Timestamp) -> Result<(i64, String)> {
        let tx = self.db.read().await?;
        let sql = "SELECT number, text FROM chart_revision WHERE machine = $1 AND recorded <= $2 \
                   ORDER BY number DESC LIMIT 1";
        let row = tx.one(sql, values![machine.as_str(), micros(at)]).await?;
        tx.commit().await?;
        let row = row.ok_or_else(|| unknown(machine))?;
        Ok((row.get("number")?, row.get("text")?))
    }

    /// All machines by id, each as its newest chart describes it.
    ///
    /// # Errors
    /// [`Error::Corrupt`] or [`Error::Io`].
    pub async fn machines(&self) -> Result<Vec<MachineRow>> {
        let tx = self.db.read().await?;
        let sql = "SELECT r.machine, r.name, r.kind, r.points, r.number FROM machine m \
                   JOIN chart_revision r ON r.machine = m.id \
                   AND r.number = (SELECT max(x.number) FROM chart_revision x WHERE x.machine = m.id) ORDER BY m.id";
        let rows = tx.all(sql, values![]).await?;
        tx.commit().await?;
        let row = |row: &crate::db::Row| {
            Ok(MachineRow {
                id: row.id("machine")?,
                name: row.get("name")?,
                kind: row.get("kind")?,
                points: usize::try_from(row.get::<i64>("points")?).map_err(|_| row.corrupt("a negative count"))?,
                revision: row.get("number")?,
            })
        };
        rows.iter().map(row).collect()
    }
}

/// Writes a chart as the newest revision, unless it is that already, and gives the revision's number.
async fn keep(tx: &Tx, machine: &Id, (text, chart): (&str, Chart), at: Timestamp, by: &str) -> Result<i64> {
    let number = match newest(tx, machine).await? {
        Some(newest) if newest.is(text) => return Ok(newest.number),
        Some(newest) => newest.number + 1,
        None => {
            tx.run("INSERT INTO machine (id) VALUES ($1)", values![machine.as_str()]).await?;
            1
        }
    };
    let (points, sha256) = (chart.points_here().count() as i64, sha256(text.as_bytes()));
    let Chart { machine: described, .. } = chart;
    let row = vec![
        ("machine", Value::from(machine.as_str())),
        ("number", number.into()),
        ("name", described.name.into()),
        ("kind", described.kind.into()),
        ("points", points.into()),
        ("sha256", sha256.into()),
        ("recorded", micros(at).into()),
        ("said_by", by.into()),
        ("text", text.into()),
    ];
    seal::insert(tx, "chart_revision", row).await?;
    Ok(number)
}

/// The newest revision of a machine's chart.
struct Newest {
    number: i64,
    sha256: String,
}

impl Newest {
    /// Whether it is this text.
    fn is(&self, text: &str) -> bool {
        self.sha256 == sha256(text.as_bytes())
    }
}

async fn newest(tx: &Tx, machine: &Id) -> Result<Option<Newest>> {
    let sql = "SELECT number, sha256 FROM chart_revision WHERE machine = $1 ORDER BY number DESC LIMIT 1";
    let row = tx.one(sql, values![machine.as_str()]).await?;
    row.map(|row| Ok(Newest { number: row.get("number")?, sha256: row.get("sha256")? })).transpose()
}

/// Refuses a machine of which no chart was ever kept.
pub(crate) async fn must_exist(tx: &Tx, machine: &Id) -> Result<()> {
    let row = tx.one("SELECT id FROM machine WHERE id = $1", values![machine.as_str()]).await?;
    row.map(drop).ok_or_else(|| unknown(machine))
}

/// There is no such machine.
pub(crate) fn unknown(machine: &Id) -> Error {
    Error::NotFound(format!(
        "there is no machine \"{machine}\" in this shop; look at the spelling, or add its chart first"
    ))
}

/// The fingerprint of some bytes, in hexadecimal digits.
pub(crate) fn sha256(bytes: &[u8]) -> String {
    Sha256::digest(bytes).iter().map(|byte| format!("{byte:02x}")).collect()
}
