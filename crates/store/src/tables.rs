//! Everything in a shop as CSV files in a folder, one a table with pictures beside, and a new shop from such a folder. The files are
//! as RFC 4180 describes them, in UTF-8 with a line of names; they hold every revision and every entry, superseded or not.
//!
//! # How a cell is written
//!
//! - Nothing is an empty cell.
//! - A text that is empty, or begins with one of `= + - @ '`, a tab or a carriage return, has a `'` put before it, so that a
//!   spreadsheet takes it for a text and not for a formula. Reading takes the `'` away again. Other texts are as they are.
//! - An instant is as RFC 3339 writes it, in UTC with microseconds.
//! - The bytes of a picture are a file in the folder `pictures`, whose name stands in the cell.

use std::fs;
use std::path::{Path, PathBuf};

use jiff::Timestamp;

use crate::address::{Address, Place};
use crate::db::{Db, Row, Tx, Value, micros, places, values};
use crate::error::{Error, Result};
use crate::layout::{Column, Holds, SAID, columns};
use crate::logbook::fingerprint;
use crate::made::Made;
use crate::picture::{self, PictureKind, Prepared};
use crate::store::Store;
use crate::{chart, due, migration, seal, verify};

/// The folder of the pictures.
const PICTURES: &str = "pictures";
/// What a text may not begin with unguarded.
const GUARDED: [char; 7] = ['=', '+', '-', '@', GUARD, '\t', '\r'];
const GUARD: char = '\'';

impl Store {
    /// Writes everything as CSV files into a new folder. The same shop gives the same bytes.
    ///
    /// # Errors
    /// [`Error::Exists`] when the folder is there; [`Error::Io`], [`Error::Corrupt`]. There is no folder then.
    pub async fn export_csv(&self, folder: &Path) -> Result<()> {
        let made = Made::begin(folder)?;
        let at = made.path();
        let failed = |error: std::io::Error| Error::io(folder, error.to_string());
        fs::create_dir_all(at.join(PICTURES)).map_err(failed)?;
        let tx = self.db.read().await?;
        for (table, order) in SAID {
            write(&tx, table, order, &at).await?;
        }
        tx.commit().await?;
        made.finish()
    }

    /// Makes a shop in a new file, or in a database without one, from a folder that [`Store::export_csv`] wrote. It is looked through
    /// for damage before it is there.
    ///
    /// # Errors
    /// [`Error::NotImported`] with the file and line that cannot be read; [`Error::Exists`] when there is something already;
    /// [`Error::Conflict`] or [`Error::Corrupt`] when the rows do not go together. There is no shop then.
    pub async fn import_csv(folder: &Path, into: impl Into<Address>) -> Result<()> {
        let into = into.into();
        match into.place() {
            Place::File(path) => {
                let made = Made::begin(path)?;
                fs::File::create_new(made.path()).map_err(|error| Error::io(path, error.to_string()))?;
                fill(&made.path().into(), folder).await?;
                made.finish()
            }
            Place::Database(_) => fill(&into, folder).await,
        }
    }
}

async fn write(tx: &Tx, table: &str, order: &str, folder: &Path) -> Result<()> {
    let path = folder.join(format!("{table}.csv"));
    let failed = |error: csv::Error| Error::io(&path, error.to_string());
    let columns = columns(tx, table).await?;
    let mut writer = csv::WriterBuilder::new().terminator(csv::Terminator::CRLF).from_path(&path).map_err(failed)?;
    writer.write_record(columns.iter().map(|column| &column.name)).map_err(failed)?;
    // Bytes are fetched one by one: pictures may be larger than the memory.
    let light: Vec<&str> =
        columns.iter().filter(|column| column.holds != Holds::Bytes).map(|column| column.name.as_str()).collect();
    for row in tx.all(&format!("SELECT {} FROM {table} ORDER BY {order}", light.join(", ")), values![]).await? {
        let mut cells = Vec::with_capacity(columns.len());
        for column in &columns {
            cells.push(match column.holds {
                Holds::Bytes => write_picture(tx, row.get("id")?, folder).await?,
                _ => cell(&row, column)?,
            });
        }
        writer.write_record(&cells).map_err(failed)?;
    }
    let file = writer.into_inner().map_err(|error| Error::io(&path, error.to_string()))?;
    file.sync_all().map_err(|error| Error::io(&path, error.to_string()))
}

/// A value as a cell.
fn cell(row: &Row, column: &Column) -> Result<String> {
    let name = &column.name;
    Ok(match column.holds {
        Holds::Text => row.get::<Option<String>>(name)?.map(guarded),
        Holds::Real => row.get::<Option<f64>>(name)?.map(|number| number.to_string()),
        Holds::Instant if row.get::<Option<i64>>(name)?.is_some() => Some(format!("{:.6}", row.instant(name)?)),
        Holds::Whole | Holds::Instant | Holds::Bytes => row.get::<Option<i64>>(name)?.map(|number| number.to_string()),
    }
    .unwrap_or_default())
}

/// Writes the bytes of a picture; the name of the file.
async fn write_picture(tx: &Tx, id: i64, folder: &Path) -> Result<String> {
    let row = tx.one("SELECT bytes FROM picture WHERE id = $1", values![id]).await?;
    let bytes: Vec<u8> =
        row.ok_or_else(|| tx.corrupt(format!("picture {id} is listed and not there")))?.get("bytes")?;
    let end = PictureKind::of(&bytes).map_or("bin", PictureKind::ending);
    let name = format!("{id}.{end}");
    let path = folder.join(PICTURES).join(&name);
    fs::write(&path, bytes).map_err(|error| Error::io(&path, error.to_string()))?;
    Ok(name)
}

/// A cell of a table that no spreadsheet takes for a formula: a text that is empty, or begins with one of `= + - @ '`, a tab or a
/// carriage return, has a `'` put before it.
#[must_use]
pub fn guarded(text: String) -> String {
    if text.is_empty() || text.starts_with(GUARDED) { format!("{GUARD}{text}") } else { text }
}

fn unguarded(cell: &str) -> &str {
    cell.strip_prefix(GUARD).unwrap_or(cell)
}

/// Fills an empty file, or a database without a shop, from a folder in one transaction.
async fn fill(into: &Address, folder: &Path) -> Result<()> {
    let db = Db::connect(into).await?;
    let filled = async {
        let tx = db.first_write().await?;
        migration::set_up(&tx).await?;
        for (table, _) in SAID {
            read(&tx, table, folder).await?;
        }
        fingerprint::take(&tx, 0).await?;
        due::project(&tx).await?;
        look_into_pictures(&tx, folder).await?;
        seal::take(&tx).await?;
        verify::none(&verify::damage_in(&tx).await?, folder)?;
        tx.commit().await
    }
    .await;
    let closed = db.close().await;
    filled.and(closed)
}

async fn read(tx: &Tx, table: &str, folder: &Path) -> Result<()> {
    let path = folder.join(format!("{table}.csv"));
    let failed = |error: csv::Error| {
        let line = error.position().map_or(1, csv::Position::line);
        refused(&path, line, error.to_string())
    };
    let columns = columns(tx, table).await?;
    let names: Vec<&str> = columns.iter().map(|column| column.name.as_str()).collect();
    let mut reader = csv::Reader::from_path(&path).map_err(failed)?;
    if reader.headers().map_err(failed)?.iter().ne(names.iter().copied()) {
        return Err(refused(&path, 1, format!("the columns must be {}", names.join(", "))));
    }
    let sql = format!("INSERT INTO {table} ({}) VALUES ({})", names.join(", "), places(1, names.len()));
    for record in reader.records() {
        let record = record.map_err(failed)?;
        let line = record.position().map_or(1, csv::Position::line);
        let mut row = Vec::with_capacity(columns.len());
        for (column, cell) in columns.iter().zip(&record) {
            let value = value(column.holds, cell, folder);
            row.push(value.map_err(|what| refused(&path, line, format!("{} {what}", column.name)))?);
        }
        tx.run(&sql, row).await?;
    }
    Ok(())
}

/// Looks into every picture as [`Store::add_picture`] does, so that none comes in by this door that would not by the other, and makes
/// the small ones. What that store kept stays as it is; what an older program kept unlooked at is made clean.
async fn look_into_pictures(tx: &Tx, folder: &Path) -> Result<()> {
    for (number, row) in tx.all("SELECT id FROM picture ORDER BY id", values![]).await?.iter().enumerate() {
        let id: i64 = row.get("id")?;
        let kept = tx.one("SELECT name, sha256, bytes FROM picture WHERE id = $1", values![id]).await?;
        let kept = kept.ok_or_else(|| tx.corrupt(format!("picture {id} is listed and not there")))?;
        let (name, sha256, bytes): (String, String, Vec<u8>) =
            (kept.get("name")?, kept.get("sha256")?, kept.get("bytes")?);
        let wrong = |what: String| {
            refused(&folder.join("picture.csv"), number as u64 + 2, format!("the picture \"{name}\" {what}"))
        };
        if chart::sha256(&bytes) != sha256 {
            return Err(wrong("is not the one that went out: its fingerprint is another".to_owned()));
        }
        let Prepared { bytes, small, .. } = picture::prepared(bytes).map_err(|why| wrong(why.to_string()))?;
        let clean = chart::sha256(&bytes);
        if clean != sha256 {
            let sql = "UPDATE picture SET sha256 = $2, bytes = $3 WHERE id = $1";
            tx.run(sql, values![id, clean, bytes]).await?;
        }
        picture::keep_small(tx, id, small).await?;
    }
    Ok(())
}

/// The value that a cell spells; else what is wrong with it.
fn value(holds: Holds, cell: &str, folder: &Path) -> std::result::Result<Value, String> {
    let there = Some(cell).filter(|cell| !cell.is_empty());
    let number = |_| format!("holds \"{cell}\", which is no number, such as 12");
    Ok(match holds {
        Holds::Text => Value::from(there.map(|cell| unguarded(cell).to_owned())),
        Holds::Whole => Value::from(there.map(str::parse::<i64>).transpose().map_err(|_| number(()))?),
        Holds::Real => Value::from(there.map(str::parse::<f64>).transpose().map_err(|_| number(()))?),
        Holds::Instant => {
            let instant = there.map(str::parse::<Timestamp>).transpose();
            let wrong = |_| format!("holds \"{cell}\", which is no instant, such as 2026-03-02T08:00:00.000000Z");
            Value::from(instant.map_err(wrong)?.map(micros))
        }
        Holds::Bytes => {
            // Only a plain name: a folder from a stranger must not reach for other files.
            let plain = Path::new(cell).file_name().is_some_and(|name| name == cell);
            let bytes = Some(folder.join(PICTURES).join(cell)).filter(|_| plain).and_then(|path| fs::read(path).ok());
            Value::from(bytes.ok_or_else(|| format!("names \"{cell}\", which is no file in the folder {PICTURES}"))?)
        }
    })
}

fn refused(path: &Path, line: u64, what: String) -> Error {
    Error::NotImported { path: PathBuf::from(path), line, what }
}
