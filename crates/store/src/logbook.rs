//! The logbook in the file. Start at [`Store::record`]; reading is by [`Wanted`], by number, or by batch.

mod body;
pub(crate) mod fingerprint;
mod movements;
mod record;
mod row;
mod wanted;

pub use wanted::{About, Superseded, Wanted};

pub(crate) use body::read as read_body;
pub(crate) use record::record;
pub(crate) use row::entry as read_entry;

use shop::logbook::{BatchKey, Entry, EntryId, NewEntry};

use crate::db::values;
use crate::error::{Error, Result};
use crate::store::Store;

impl Store {
    /// Keeps entries, all or none, and returns their numbers in the order given. An entry whose key is already kept is not
    /// written again: the number of the one that is there is returned.
    ///
    /// # Errors
    /// [`Error::Conflict`] when one supersedes an entry that does not exist or is already superseded; [`Error::NotFound`] when
    /// one speaks of a machine that the shop does not have.
    pub async fn record(&self, entries: &[NewEntry]) -> Result<Vec<EntryId>> {
        let tx = self.db.write().await?;
        let ids = record(&tx, entries).await?;
        tx.commit().await?;
        Ok(ids)
    }

    /// The entry of this number, superseded or not.
    ///
    /// # Errors
    /// [`Error::NotFound`] when there is none.
    pub async fn entry(&self, id: EntryId) -> Result<Entry> {
        let tx = self.db.read().await?;
        let sql = format!("{} WHERE e.id = $1", row::SELECT);
        let row = tx.one(&sql, values![id.0]).await?;
        tx.commit().await?;
        let none = || Error::NotFound(format!("there is no entry number {id} in the log; look at the list of entries"));
        row::entry(&row.ok_or_else(none)?)
    }

    /// Entries, newest first by when they happened.
    ///
    /// # Errors
    /// [`Error::NotFound`] when the page begins before an entry that does not exist.
    pub async fn entries(&self, wanted: &Wanted) -> Result<Vec<Entry>> {
        let tx = self.db.read().await?;
        let (sql, values) = wanted.query(&tx).await?;
        let rows = tx.all(&sql, values).await?;
        tx.commit().await?;
        rows.iter().map(row::entry).collect()
    }

    /// The entries of one act, in the order in which they were recorded, superseded or not.
    ///
    /// # Errors
    /// [`Error::Corrupt`] or [`Error::Io`].
    pub async fn batch(&self, key: &BatchKey) -> Result<Vec<Entry>> {
        let tx = self.db.read().await?;
        // '0' is the character after '/', so this is every key that begins with the batch and a slash.
        let sql = format!("{} WHERE e.idempotency_key >= $1 AND e.idempotency_key < $2 ORDER BY e.id", row::SELECT);
        let rows = tx.all(&sql, values![format!("{}/", key.as_str()), format!("{}0", key.as_str())]).await?;
        tx.commit().await?;
        rows.iter().map(row::entry).collect()
    }
}
