//! The pictures of a machine as a list, without their bytes.

use jiff::Timestamp;
use shop::id::Id;

use super::{PictureId, PictureKind};
use crate::db::{Row, instant, values};
use crate::error::Result;
use crate::store::Store;

/// A picture in a list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PictureRow {
    /// Its number.
    pub id: PictureId,
    /// Its name, by which the chart speaks of it.
    pub name: String,
    /// What kind it is; nothing for bytes that an older program kept and that are no picture.
    pub kind: Option<PictureKind>,
    /// The fingerprint of its bytes, in hexadecimal digits.
    pub sha256: String,
    /// When it was taken, if that is known.
    pub taken: Option<Timestamp>,
    /// When it was recorded.
    pub recorded: Timestamp,
}

impl Store {
    /// The pictures of a machine by name, of each name the newest.
    ///
    /// # Errors
    /// [`crate::Error::Corrupt`] or [`crate::Error::Io`].
    pub async fn pictures(&self, machine: &Id) -> Result<Vec<PictureRow>> {
        let tx = self.db.read().await?;
        let sql = "SELECT id, name, sha256, taken, recorded, substr(bytes, 1, $2) AS head FROM picture p WHERE machine = $1 \
                   AND id = (SELECT max(x.id) FROM picture x WHERE x.machine = p.machine AND x.name = p.name) ORDER BY name";
        let rows = tx.all(sql, values![machine.as_str(), PictureKind::HEAD as i64]).await?;
        tx.commit().await?;
        rows.iter().map(row).collect()
    }
}

fn row(row: &Row) -> Result<PictureRow> {
    Ok(PictureRow {
        id: PictureId(row.get("id")?),
        name: row.get("name")?,
        kind: PictureKind::of(&row.get::<Vec<u8>>("head")?),
        sha256: row.get("sha256")?,
        taken: row.get::<Option<i64>>("taken")?.and_then(instant),
        recorded: row.instant("recorded")?,
    })
}
