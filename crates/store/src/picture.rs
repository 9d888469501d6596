//! Pictures of machines. What is kept is not what was given: it is decoded, turned upright and written anew, so that no place, name
//! or program of a stranger gets into the shop or goes on with an export. A small one is kept beside it. Line drawings are pictures
//! too, and as [`Drawing`] says.

mod drawing;
mod jpeg;
mod kind;
mod prepared;
mod row;

pub use drawing::{Drawing, Unplain};
pub use kind::PictureKind;
pub use prepared::Unfit;
pub use row::PictureRow;

pub(crate) use prepared::{Prepared, prepared};

use jiff::Timestamp;
use shop::id::Id;

use crate::db::{Tx, Value, instant, micros, values};
use crate::error::{Error, Result};
use crate::store::Store;
use crate::{chart, seal, settings};

/// The largest picture that is taken, in bytes.
pub const LARGEST_PICTURE: usize = 20_000_000;

/// The number of a picture.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct PictureId(pub i64);

/// A picture to be kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NewPicture {
    /// The machine that it shows.
    pub machine: Id,
    /// Its name, by which the chart speaks of it.
    pub name: String,
    /// When it was taken, if that is known; when left out, what the camera noted in it counts, by the clock of the shop.
    pub taken: Option<Timestamp>,
    /// Its bytes: JPEG, PNG, WebP, or an SVG drawing.
    pub bytes: Vec<u8>,
}

/// A picture that is kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Picture {
    /// What was given, with the bytes that are kept in place of those.
    pub given: NewPicture,
    /// The fingerprint of its bytes, in hexadecimal digits.
    pub sha256: String,
    /// When it was recorded.
    pub recorded: Timestamp,
}

impl Store {
    /// Keeps a picture, made upright and without anything that is no picture. The same one under the same name is kept once;
    /// another under that name is kept beside it.
    ///
    /// # Errors
    /// [`Error::TooLarge`] above [`LARGEST_PICTURE`]; [`Error::Picture`] when it cannot be read or is too large once unpacked;
    /// [`Error::NotFound`] when there is no such machine.
    pub async fn add_picture(&self, picture: NewPicture, at: Timestamp) -> Result<PictureId> {
        let mut ready = prepare(vec![picture]).await?;
        let ready = ready.pop().expect("one picture gives one that is ready");
        let tx = self.db.write().await?;
        let id = keep(&tx, ready, at).await?;
        tx.commit().await?;
        Ok(id)
    }

    /// The small picture of this number: the same with at most 480 pixels a side, as JPEG, or as PNG when it is clear in parts. A
    /// drawing is its own small picture.
    ///
    /// # Errors
    /// [`Error::NotFound`] when there is no such picture; [`Error::Picture`] when it was kept by an older program that did not look
    /// inside it, and cannot be read.
    pub async fn thumbnail(&self, id: PictureId) -> Result<Vec<u8>> {
        let tx = self.db.read().await?;
        let row = tx.one("SELECT bytes FROM thumbnail WHERE picture = $1", values![id.0]).await?;
        tx.commit().await?;
        if let Some(row) = row {
            return row.get("bytes");
        }
        let NewPicture { name, bytes, .. } = self.picture(id).await?.given;
        let small = tokio::task::spawn_blocking(move || prepared::small_of(&bytes)).await;
        small.unwrap_or(Err(Unfit::Broken)).map_err(|why| Error::Picture { name, why })
    }

    /// Width and height of the picture of this number, in a measure of its own.
    ///
    /// # Errors
    /// Those of [`Store::thumbnail`].
    pub async fn proportions(&self, id: PictureId) -> Result<[f64; 2]> {
        // The small one is of the same shape, and read much sooner.
        let small = self.thumbnail(id).await?;
        prepared::size(&small).map_err(|why| Error::Picture { name: format!("number {}", id.0), why })
    }

    /// The picture of this number.
    ///
    /// # Errors
    /// [`Error::NotFound`] when there is none.
    pub async fn picture(&self, id: PictureId) -> Result<Picture> {
        let tx = self.db.read().await?;
        let sql = "SELECT machine, name, sha256, taken, recorded, bytes FROM picture WHERE id = $1";
        let row = tx.one(sql, values![id.0]).await?;
        tx.commit().await?;
        let none = || Error::NotFound(format!("there is no picture number {}; look at the machine's list", id.0));
        let row = row.ok_or_else(none)?;
        let given = NewPicture {
            machine: row.id("machine")?,
            name: row.get("name")?,
            taken: row.get::<Option<i64>>("taken")?.and_then(instant),
            bytes: row.get("bytes")?,
        };
        Ok(Picture { given, sha256: row.get("sha256")?, recorded: row.instant("recorded")? })
    }

    /// The number of the newest picture of this name of a machine.
    ///
    /// # Errors
    /// [`Error::NotFound`] when there is none.
    pub async fn picture_named(&self, machine: &Id, name: &str) -> Result<PictureId> {
        let tx = self.db.read().await?;
        let sql = "SELECT max(id) AS id FROM picture WHERE machine = $1 AND name = $2";
        let row = tx.one(sql, values![machine.as_str(), name]).await?;
        tx.commit().await?;
        let id = row.map_or(Ok(None), |row| row.get::<Option<i64>>("id"))?;
        id.map(PictureId).ok_or_else(|| {
            Error::NotFound(format!("there is no picture \"{name}\" of the machine \"{machine}\"; add it first"))
        })
    }
}

/// A picture that was looked through and written anew, ready to be kept.
pub(crate) struct Ready {
    machine: Id,
    name: String,
    taken: Option<Timestamp>,
    prepared: Prepared,
}

/// Looks pictures through and writes them anew. Nothing is kept yet, so that a refusal leaves nothing behind.
pub(crate) async fn prepare(pictures: Vec<NewPicture>) -> Result<Vec<Ready>> {
    let mut ready = Vec::with_capacity(pictures.len());
    for NewPicture { machine, name, taken, bytes } in pictures {
        if bytes.len() > LARGEST_PICTURE {
            return Err(Error::TooLarge { name, bytes: bytes.len() });
        }
        // It takes a good part of a second, in which others must get their answers.
        let prepared = tokio::task::spawn_blocking(move || prepared(bytes)).await;
        let prepared = prepared.unwrap_or(Err(Unfit::Broken));
        let prepared = prepared.map_err(|why| Error::Picture { name: name.clone(), why })?;
        ready.push(Ready { machine, name, taken, prepared });
    }
    Ok(ready)
}

/// Writes a picture, unless the same bytes are kept under its name already, and gives its number.
pub(crate) async fn keep(tx: &Tx, ready: Ready, at: Timestamp) -> Result<PictureId> {
    let Ready { machine, name, taken, prepared: Prepared { bytes, small, taken: noted } } = ready;
    let sha256 = chart::sha256(&bytes);
    chart::must_exist(tx, &machine).await?;
    let sql = "SELECT id FROM picture WHERE machine = $1 AND name = $2 AND sha256 = $3";
    if let Some(row) = tx.one(sql, values![machine.as_str(), name.as_str(), sha256.as_str()]).await? {
        return Ok(PictureId(row.get("id")?));
    }
    let noted = match (taken, noted) {
        (None, Some(noted)) => noted.instant(&settings::in_force(tx, Timestamp::MAX).await?.zone),
        (given, _) => given,
    };
    let last = tx.one("SELECT coalesce(max(id), 0) AS last FROM picture", values![]).await?;
    let id = last.map_or(Ok(0), |row| row.get::<i64>("last"))? + 1;
    let row = vec![
        ("id", Value::from(id)),
        ("machine", machine.as_str().into()),
        ("name", name.into()),
        ("sha256", sha256.into()),
        ("taken", noted.map(micros).into()),
        ("recorded", micros(at).into()),
        ("bytes", bytes.into()),
    ];
    seal::insert(tx, "picture", row).await?;
    keep_small(tx, id, small).await?;
    Ok(PictureId(id))
}

/// Keeps the small picture of a picture.
pub(crate) async fn keep_small(tx: &Tx, picture: i64, small: Vec<u8>) -> Result<()> {
    let sql = "INSERT INTO thumbnail (picture, sha256, bytes) VALUES ($1, $2, $3)";
    tx.run(sql, values![picture, chart::sha256(&small), small]).await
}
