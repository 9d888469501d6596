//! Pictures of machines, as bytes. Nothing looks inside them here.

use jiff::Timestamp;
use shop::id::Id;

use crate::chart;
use crate::db::{instant, micros, values};
use crate::error::{Error, Result};
use crate::store::Store;

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
    /// When it was taken, if that is known.
    pub taken: Option<Timestamp>,
    /// Its bytes.
    pub bytes: Vec<u8>,
}

/// A picture that is kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Picture {
    /// What was given.
    pub given: NewPicture,
    /// The fingerprint of its bytes, in hexadecimal digits.
    pub sha256: String,
    /// When it was recorded.
    pub recorded: Timestamp,
}

impl Store {
    /// Keeps a picture. The same bytes under the same name are kept once; other bytes under that name are kept beside them.
    ///
    /// # Errors
    /// [`Error::TooLarge`] above [`LARGEST_PICTURE`]; [`Error::NotFound`] when there is no such machine.
    pub async fn add_picture(&self, picture: NewPicture, at: Timestamp) -> Result<PictureId> {
        let NewPicture { machine, name, taken, bytes } = picture;
        if bytes.len() > LARGEST_PICTURE {
            return Err(Error::TooLarge { name, bytes: bytes.len() });
        }
        let sha256 = chart::sha256(&bytes);
        let tx = self.db.write().await?;
        chart::must_exist(&tx, &machine).await?;
        let sql = "SELECT id FROM picture WHERE machine = $1 AND name = $2 AND sha256 = $3";
        if let Some(row) = tx.one(sql, values![machine.as_str(), name.as_str(), sha256.as_str()]).await? {
            return Ok(PictureId(row.get("id")?));
        }
        let last = tx.one("SELECT coalesce(max(id), 0) AS last FROM picture", values![]).await?;
        let id = last.map_or(Ok(0), |row| row.get::<i64>("last"))? + 1;
        let sql = "INSERT INTO picture (id, machine, name, sha256, taken, recorded, bytes) \
                   VALUES ($1, $2, $3, $4, $5, $6, $7)";
        tx.run(sql, values![id, machine.as_str(), name, sha256, taken.map(micros), micros(at), bytes]).await?;
        tx.commit().await?;
        Ok(PictureId(id))
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
