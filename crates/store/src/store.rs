//! Creating, opening and closing a data file.

use std::fs;
use std::path::{Path, PathBuf};

use jiff::Timestamp;

use crate::db::Db;
use crate::error::{Error, Result};
use crate::settings::{self, Settings};
use crate::{chart, header, migration};

/// An open data file. Clones share it.
#[derive(Clone, Debug)]
pub struct Store {
    pub(crate) db: Db,
    pub(crate) charts: chart::Memory,
}

impl Store {
    /// Makes a data file for a new shop and opens it.
    ///
    /// # Errors
    /// [`Error::Exists`] when there is something at `path`, or a companion of a file that once was; it is left as it is; [`Error::NamelessZone`]; [`Error::Io`] when
    /// the place cannot be written. After an error nothing new is left behind.
    pub async fn create(path: &Path, settings: &Settings, at: Timestamp) -> Result<Self> {
        settings.zone_name()?;
        // A companion without its file may hold the last of somebody's commits, and the database would take it for the new file's.
        if let Some(there) = companions(path).find(|companion| companion.exists()) {
            return Err(Error::Exists(there));
        }
        // Taking the name first, and only if it is free, keeps two creators from sharing one file.
        match fs::OpenOptions::new().write(true).create_new(true).open(path) {
            Ok(_) => {}
            Err(error) if error.kind() == std::io::ErrorKind::AlreadyExists => {
                return Err(Error::Exists(path.to_owned()));
            }
            Err(error) => return Err(Error::io(path, error.to_string())),
        }
        let made = match fill(path, settings, at).await {
            Ok(()) => Self::open(path).await,
            Err(error) => Err(error),
        };
        if made.is_err() {
            for left in companions(path).chain([path.to_owned()]) {
                let _ = fs::remove_file(left);
            }
        }
        made
    }

    /// Opens a shop's data file, and brings one of an older form up to date.
    ///
    /// # Errors
    /// [`Error::Missing`], [`Error::Directory`], [`Error::Empty`], [`Error::NotDatabase`], [`Error::OtherProgram`],
    /// [`Error::Newer`], [`Error::ReadOnly`], [`Error::Locked`], [`Error::Corrupt`] or [`Error::Io`]; the file is then left as
    /// it was.
    pub async fn open(path: &Path) -> Result<Self> {
        header::check(path)?;
        let db = Db::connect(path).await?;
        let store = Self { db, charts: chart::Memory::default() };
        match store.ready().await {
            Ok(()) => Ok(store),
            Err(error) => {
                let _ = store.close().await;
                Err(error)
            }
        }
    }

    /// Closes the file, so that it stands alone on the disk. Clones of the store can do nothing more.
    ///
    /// # Errors
    /// [`Error::Io`] when the system would not.
    pub async fn close(self) -> Result<()> {
        self.db.close().await
    }

    /// The file.
    #[must_use]
    pub fn path(&self) -> &Path {
        self.db.path()
    }

    async fn ready(&self) -> Result<()> {
        self.db.write_ahead().await?;
        migration::bring_up(&self.db).await?;
        self.settings().await?;
        self.db.wait_longer().await
    }
}

/// Fills an empty file in one transaction, so that a crash leaves it empty or whole.
async fn fill(path: &Path, settings: &Settings, at: Timestamp) -> Result<()> {
    let db = Db::connect(path).await?;
    let filled = async {
        let tx = db.write().await?;
        tx.script(&format!("PRAGMA application_id = {}", header::APPLICATION)).await?;
        migration::set_up(&tx).await?;
        settings::write(&tx, settings, at, "").await?;
        tx.commit().await
    }
    .await;
    let closed = db.close().await;
    filled.and(closed)
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
