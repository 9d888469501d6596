//! Looks through the whole data file for damage: the database's own checks, then every row read and held against its fingerprint,
//! then what follows from the rows worked out anew.

use std::fmt;

use shop::chart::Chart;

use crate::address::Address;
use crate::db::{Db, Engine, Row, SCHEMA, Tx, values};
use crate::error::{Error, Result};
use crate::logbook::fingerprint;
use crate::store::Store;
use crate::{chart, due, logbook, seal, settings, shelf};

/// Something in the data file that is not as it was written, in one sentence.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Damage {
    says: String,
}

impl fmt::Display for Damage {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.says.fmt(f)
    }
}

impl Store {
    /// Everything in the file that is not as it was written; nothing when all is well. It reads every byte, so it takes its time.
    ///
    /// # Errors
    /// [`Error::Io`] or [`Error::Locked`] when the file could not be read to its end; damage is no error here.
    pub async fn verify(&self) -> Result<Vec<Damage>> {
        damage(&self.db).await
    }
}

/// What is damaged in a shop.
pub(crate) async fn damage(db: &Db) -> Result<Vec<Damage>> {
    let tx = db.read().await?;
    let damage = damage_in(&tx).await?;
    // Nothing was written, so there is nothing that committing could make so: a server refuses it after it has found damage.
    drop(tx);
    Ok(damage)
}

/// What is damaged in a shop as a transaction sees it.
pub(crate) async fn damage_in(tx: &Tx) -> Result<Vec<Damage>> {
    let mut found = Found::default();
    if tx.engine() == Engine::Sqlite {
        found.take(file(tx).await)?;
    }
    found.take(references(tx).await)?;
    found.take(settings_read(tx).await)?;
    found.take(charts(tx).await)?;
    found.take(shelf_read(tx).await)?;
    found.take(entries(tx).await)?;
    found.take(pictures(tx).await)?;
    found.take(seal::differences(tx).await)?;
    found.take(due::differences(tx).await)?;
    Ok(found.damage)
}

/// Fails with the first of some damage, told of a file or a database.
pub(crate) fn none(damage: &[Damage], at: impl Into<Address>) -> Result<()> {
    match damage {
        [] => Ok(()),
        [only] => Err(Error::corrupt(at, only.to_string())),
        [first, others @ ..] => Err(Error::corrupt(at, format!("{first}; and {} more", others.len()))),
    }
}

#[derive(Default)]
struct Found {
    damage: Vec<Damage>,
}

impl Found {
    /// Takes what a check found. One that fails because the file is damaged has found that.
    fn take(&mut self, found: Result<Vec<String>>) -> Result<()> {
        let says = match found {
            Err(Error::Corrupt { what, .. }) => vec![what],
            other => other?,
        };
        for says in says {
            let damage = Damage { says: says.replace('\n', " ") };
            // Once a server lets nothing more be read, every check says so.
            if self.damage.last() != Some(&damage) {
                self.damage.push(damage);
            }
        }
        Ok(())
    }
}

/// What the reading of something found wrong in it; other errors are errors.
fn wrong<T>(read: Result<T>, whose: &str, says: &mut Vec<String>) -> Result<Option<T>> {
    match read {
        Ok(value) => Ok(Some(value)),
        Err(Error::Corrupt { what, .. }) => {
            says.push(if what.starts_with(whose) { what } else { format!("{whose}: {what}") });
            Ok(None)
        }
        Err(other) => Err(other),
    }
}

async fn file(tx: &Tx) -> Result<Vec<String>> {
    let rows = tx.all("PRAGMA integrity_check", values![]).await?;
    let says: Vec<String> = rows.iter().map(|row| row.get("integrity_check")).collect::<Result<_>>()?;
    Ok(says
        .into_iter()
        .filter(|says| says != "ok")
        .map(|says| format!("the database says of itself: {says}"))
        .collect())
}

async fn references(tx: &Tx) -> Result<Vec<String>> {
    match tx.engine() {
        Engine::Sqlite => references_in_file(tx).await,
        Engine::Postgres => references_in_database(tx).await,
    }
}

async fn references_in_file(tx: &Tx) -> Result<Vec<String>> {
    let says = |row: &Row| {
        let (table, parent): (String, String) = (row.get("table")?, row.get("parent")?);
        let number = row.get::<Option<i64>>("rowid")?.map_or(String::new(), |number| format!(" {number}"));
        Ok(format!("row{number} of the table {table} speaks of a row of the table {parent} that is not there"))
    };
    tx.all("PRAGMA foreign_key_check", values![]).await?.iter().map(says).collect()
}

/// The server holds rows to their references when they are written, and never looks again.
async fn references_in_database(tx: &Tx) -> Result<Vec<String>> {
    let sql = "SELECT CAST(c.conrelid::regclass AS TEXT) AS child, CAST(a.attname AS TEXT) AS speaks, \
               CAST(c.confrelid::regclass AS TEXT) AS parent, CAST(p.attname AS TEXT) AS spoken_of FROM pg_constraint c \
               JOIN pg_attribute a ON a.attrelid = c.conrelid AND a.attnum = c.conkey[1] \
               JOIN pg_attribute p ON p.attrelid = c.confrelid AND p.attnum = c.confkey[1] \
               WHERE c.contype = 'f' AND c.connamespace = to_regnamespace($1) ORDER BY 1, 2";
    let mut says = Vec::new();
    for reference in tx.all(sql, values![SCHEMA]).await? {
        let name = |column| reference.get::<String>(column);
        let (child, speaks, parent, spoken_of) = (name("child")?, name("speaks")?, name("parent")?, name("spoken_of")?);
        let sql = format!(
            "SELECT CAST(c.{speaks} AS TEXT) AS of FROM {child} c WHERE c.{speaks} IS NOT NULL \
             AND NOT EXISTS (SELECT 1 FROM {parent} p WHERE p.{spoken_of} = c.{speaks})"
        );
        for row in tx.all(&sql, values![]).await? {
            let of: String = row.get("of")?;
            says.push(format!("row of the table {child} speaks of \"{of}\" of the table {parent} that is not there"));
        }
    }
    Ok(says)
}

async fn settings_read(tx: &Tx) -> Result<Vec<String>> {
    let mut says = Vec::new();
    for row in tx.all("SELECT * FROM setting", values![]).await? {
        wrong(settings::read(&row), "settings", &mut says)?;
    }
    Ok(says)
}

async fn shelf_read(tx: &Tx) -> Result<Vec<String>> {
    let mut says = Vec::new();
    for row in tx.all("SELECT * FROM oil_revision", values![]).await? {
        wrong(shelf::read_oil(&row), "oil on the shelf", &mut says)?;
    }
    for row in tx.all("SELECT * FROM can_revision", values![]).await? {
        wrong(shelf::read_can(&row), "can on the shelf", &mut says)?;
    }
    Ok(says)
}

async fn charts(tx: &Tx) -> Result<Vec<String>> {
    let mut says = Vec::new();
    for key in tx.all("SELECT machine, number FROM chart_revision ORDER BY machine, number", values![]).await? {
        let (machine, number): (String, i64) = (key.get("machine")?, key.get("number")?);
        let sql = "SELECT name, kind, points, sha256, text FROM chart_revision WHERE machine = $1 AND number = $2";
        let Some(row) = tx.one(sql, values![machine.as_str(), number]).await? else { continue };
        let whose = format!("revision {number} of the chart of \"{machine}\"");
        if let Some(what) = wrong(of_chart(&row), &whose, &mut says)?.flatten() {
            says.push(format!("{whose} {what}"));
        }
    }
    Ok(says)
}

/// What is wrong with the revision of a chart.
fn of_chart(row: &Row) -> Result<Option<&'static str>> {
    let (text, sha256): (String, String) = (row.get("text")?, row.get("sha256")?);
    if chart::sha256(text.as_bytes()) != sha256 {
        return Ok(Some("is not the text that was written: its fingerprint is another"));
    }
    let Some(chart) = Chart::read(&text).value else { return Ok(Some("cannot be read")) };
    let listed = (row.get("name")?, row.get("kind")?, row.get("points")?);
    let reads: (String, Option<String>, i64) =
        (chart.machine.name.clone(), chart.machine.kind.clone(), chart.points_here().count() as i64);
    Ok((listed != reads).then_some("is listed with another name, kind or number of points than it has"))
}

async fn entries(tx: &Tx) -> Result<Vec<String>> {
    let (mut says, mut after) = (Vec::new(), 0);
    loop {
        let rows = fingerprint::page(tx, after).await?;
        let Some(last) = rows.last() else { return Ok(says) };
        after = last.get("id")?;
        for row in &rows {
            let whose = format!("entry {}", row.get::<i64>("id")?);
            wrong(logbook::read_entry(row), &whose, &mut says)?;
            match wrong(row.get::<Option<String>>("sha256"), &whose, &mut says)?.flatten() {
                None => says.push(format!("{whose} has no fingerprint")),
                Some(kept) => {
                    if wrong(fingerprint::of(row), &whose, &mut says)?.is_some_and(|is| is != kept) {
                        says.push(format!("{whose} is not what was written: its fingerprint is another"));
                    }
                }
            }
        }
    }
}

async fn pictures(tx: &Tx) -> Result<Vec<String>> {
    let mut says = Vec::new();
    for key in tx.all("SELECT picture FROM thumbnail ORDER BY picture", values![]).await? {
        let id: i64 = key.get("picture")?;
        let Some(row) = tx.one("SELECT sha256, bytes FROM thumbnail WHERE picture = $1", values![id]).await? else {
            continue;
        };
        let whose = format!("the small picture of picture {id}");
        if wrong(print(&row), &whose, &mut says)?.is_some_and(|(kept, is)| kept != is) {
            says.push(format!("{whose} is not what was kept: its fingerprint is another"));
        }
    }
    for key in tx.all("SELECT id, machine, name FROM picture ORDER BY id", values![]).await? {
        let (id, machine, name): (i64, String, String) = (key.get("id")?, key.get("machine")?, key.get("name")?);
        let sql = "SELECT sha256, bytes FROM picture WHERE id = $1";
        let Some(row) = tx.one(sql, values![id]).await? else { continue };
        let whose = format!("picture {id}, \"{name}\" of \"{machine}\",");
        if wrong(print(&row), &whose, &mut says)?.is_some_and(|(kept, is)| kept != is) {
            says.push(format!("{whose} is not what was kept: its fingerprint is another"));
        }
    }
    Ok(says)
}

/// The fingerprint that was kept of some bytes, and theirs.
fn print(row: &Row) -> Result<(String, String)> {
    Ok((row.get("sha256")?, chart::sha256(&row.get::<Vec<u8>>("bytes")?)))
}
