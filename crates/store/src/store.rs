//! Creating, opening and closing a shop's file or database.

use std::fs;
use std::path::{Path, PathBuf};

use jiff::Timestamp;

use crate::address::{Address, Place};
use crate::db::Db;
use crate::error::{Error, Result};
use crate::settings::{self, Settings};
use crate::{chart, header, migration};

/// An open shop. Clones share it.
#[derive(Clone, Debug)]
pub struct Store {
    pub(crate) db: Db,
    pub(crate) charts: chart::Memory,
}

impl Store {
    /// Makes a file, or tables in a database, for a new shop and opens it.
    ///
    /// # Errors
    /// [`Error::Exists`] when there is something at `at`, or a companion of a file that once was; it is left as it is;
    /// [`Error::NamelessZone`]; [`Error::Io`] when the place cannot be written; of a server also [`Error::Unreachable`],
    /// [`Error::Refused`] and [`Error::Encoding`]. After an error nothing new is left behind.
    pub async fn create(at: impl Into<Address>, settings: &Settings, from: Timestamp) -> Result<Self> {
        let at = at.into();
        settings.zone_name()?;
        match at.place() {
            Place::File(path) => Self::create_file(path, &at, settings, from).await,
            Place::Database(_) => {
                let db = Db::connect(&at).await?;
                // Once this is done it is there, and nothing is left that could fail.
                match fill(&db, settings, from).await {
                    Ok(()) => Ok(Self { db, charts: chart::Memory::default() }),
                    Err(error) => {
                        let _ = db.close().await;
                        Err(error)
                    }
                }
            }
        }
    }

    /// Opens a shop, and brings one of an older form up to date.
    ///
    /// # Errors
    /// [`Error::Missing`], [`Error::Directory`], [`Error::Empty`], [`Error::NotDatabase`], [`Error::OtherProgram`],
    /// [`Error::Newer`], [`Error::ReadOnly`], [`Error::Locked`], [`Error::Corrupt`] or [`Error::Io`], and of a server also
    /// [`Error::Unreachable`] and [`Error::Refused`]; the shop is then left as it was.
    pub async fn open(at: impl Into<Address>) -> Result<Self> {
        let at = at.into();
        if let Place::File(path) = at.place() {
            header::check(path)?;
        }
        let db = Db::connect(&at).await?;
        let store = Self { db, charts: chart::Memory::default() };
        match store.ready().await {
            Ok(()) => Ok(store),
            Err(error) => {
                let _ = store.close().await;
                Err(error)
            }
        }
    }

    /// Closes the shop; a file then stands alone on the disk. Clones of the store can do nothing more.
    ///
    /// # Errors
    /// [`Error::Io`] when the system would not.
    pub async fn close(self) -> Result<()> {
        self.db.close().await
    }

    /// Where it is kept.
    #[must_use]
    pub fn address(&self) -> &Address {
        self.db.address()
    }

    async fn create_file(path: &Path, at: &Address, settings: &Settings, from: Timestamp) -> Result<Self> {
        // A companion without its file may hold the last of somebody's commits, and the database would take it for the new file's.
        if let Some(there) = companions(path).find(|companion| companion.exists()) {
            return Err(Error::Exists(there.into()));
        }
        // Taking the name first, and only if it is free, keeps two creators from sharing one file.
        match fs::OpenOptions::new().write(true).create_new(true).open(path) {
            Ok(_) => {}
            Err(error) if error.kind() == std::io::ErrorKind::AlreadyExists => return Err(Error::Exists(at.clone())),
            Err(error) => return Err(Error::io(at, error.to_string())),
        }
        let filled = async {
            let db = Db::connect(at).await?;
            let filled = fill(&db, settings, from).await;
            let closed = db.close().await;
            filled.and(closed)
        };
        let made = match filled.await {
            Ok(()) => Self::open(at).await,
            Err(error) => Err(error),
        };
        if made.is_err() {
            for left in companions(path).chain([path.to_owned()]) {
                let _ = fs::remove_file(left);
            }
        }
        made
    }

    async fn ready(&self) -> Result<()> {
        migration::ours(&self.db).await?;
        self.db.write_ahead().await?;
        migration::bring_up(&self.db).await?;
        self.settings().await?;
        self.db.wait_longer().await
    }
}

/// Fills an empty file, or a database without a shop, in one transaction, so that a crash leaves it empty or whole.
async fn fill(db: &Db, settings: &Settings, from: Timestamp) -> Result<()> {
    let tx = db.first_write().await?;
    migration::set_up(&tx).await?;
    settings::write(&tx, settings, from, "").await?;
    tx.commit().await
}

/// The names of the files that the database keeps beside a file.
pub(crate) fn companions(path: &Path) -> impl Iterator<Item = PathBuf> + use<> {
    let path = path.as_os_str().to_owned();
    ["-journal", "-wal", "-shm"].into_iter().map(move |end| {
        let mut name = path.clone();
        name.push(end);
        PathBuf::from(name)
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::db::values;

    #[tokio::test]
    async fn commits_reach_the_disk_as_promised() {
        let folder = tempfile::TempDir::new().expect("the tests may write to a temporary folder");
        let path = folder.path().join("s");
        let store = Store::create(&path, &Settings::any(), Timestamp::UNIX_EPOCH).await.expect("a free name");
        let tx = store.db.read().await.expect("an open file");
        let sql = "SELECT j.journal_mode, s.synchronous, f.foreign_keys FROM pragma_journal_mode j, pragma_synchronous s, \
                   pragma_foreign_keys f";
        let row = tx.one(sql, values![]).await.expect("an open file").expect("one row");
        assert_eq!(row.get::<String>("journal_mode").as_deref(), Ok("wal"));
        // Two is FULL, by SQLite's documentation of the pragma.
        assert_eq!(row.get::<i64>("synchronous"), Ok(2));
        assert_eq!(row.get::<i64>("foreign_keys"), Ok(1));
    }
}
