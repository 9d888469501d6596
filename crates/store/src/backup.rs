//! Backups: a whole copy in one file, taken while others write; a shop from a backup; a folder of backups that does not grow for
//! ever. No clock is read here.

use std::fs;
use std::path::{Path, PathBuf};

use jiff::civil::Date;
use jiff::{Timestamp, ToSpan as _};

use crate::address::{Address, Place};
use crate::db::{Db, Engine};
use crate::error::{Error, Result};
use crate::made::Made;
use crate::store::{Store, companions};
use crate::{copied, header, migration, verify};

/// What became of a folder of backups.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Kept {
    /// The backup of the day, made now or earlier on that day.
    pub today: PathBuf,
    /// The old ones that were removed.
    pub removed: Vec<PathBuf>,
}

impl Store {
    /// Writes a backup: all that was kept when it began, as one file that needs no companion, also of a database. Others may write
    /// meanwhile. It is looked through for damage before it gets its name.
    ///
    /// # Errors
    /// [`Error::Exists`] when the name is taken; [`Error::Corrupt`] when this shop is damaged; [`Error::Io`] when the place
    /// cannot be written. After an error there is nothing under that name.
    pub async fn backup(&self, to: &Path) -> Result<()> {
        let made = Made::begin(to)?;
        match self.db.engine() {
            Engine::Sqlite => self.copy_file(&made.path()).await?,
            Engine::Postgres => {
                fs::File::create_new(made.path()).map_err(|error| Error::io(to, error.to_string()))?;
                self.copy_rows(&made.path().into()).await?;
            }
        }
        made.finish()
    }

    /// Makes a shop in a new file, or in a database without one, from a backup, which is looked through for damage first and stays as
    /// it is.
    ///
    /// # Errors
    /// What [`Store::open`] says of a file that is none; [`Error::Conflict`] when the backup is a file in use;
    /// [`Error::Corrupt`] when it is damaged; [`Error::Exists`] when there is something already; [`Error::Io`]; of a server what
    /// [`Store::create`] says.
    pub async fn restore(from: &Path, to: impl Into<Address>) -> Result<()> {
        let to = to.into();
        header::check_readable(from)?;
        if let Some(companion) = companions(from).find(|companion| companion.exists()) {
            return Err(Error::Conflict(format!(
                "{} is in use or was not closed, for {} lies beside it; take a backup of it and restore that",
                from.display(),
                companion.display()
            )));
        }
        match to.place() {
            Place::File(path) => {
                let made = Made::begin(path)?;
                whole_copy(from, &made.path()).await?.close().await?;
                made.finish()
            }
            Place::Database(_) => {
                let failed = |error: std::io::Error| Error::io(from, error.to_string());
                let folder = tempfile::TempDir::new().map_err(failed)?;
                let copy = whole_copy(from, &folder.path().join("copy")).await?;
                let filled = copy.copy_rows(&to).await;
                copy.close().await?;
                filled
            }
        }
    }

    /// Writes the whole file into a new one, all as it is at one moment, and looks through that.
    async fn copy_file(&self, to: &Path) -> Result<()> {
        // A connection of its own, so that calls on this store need not wait for the copy.
        let source = Db::connect(self.address()).await?;
        let copied = source.copy_into(to).await;
        source.close().await?;
        copied?;
        let copy = Db::connect(&to.into()).await?;
        let damage = verify::damage(&copy).await;
        copy.close().await?;
        verify::none(&damage?, self.address())
    }

    /// Writes every row, all as it is at one moment, into an empty file or a database without a shop, and looks through it before it
    /// is there.
    async fn copy_rows(&self, to: &Address) -> Result<()> {
        let db = Db::connect(to).await?;
        let copied = async {
            let tx = db.first_write().await?;
            migration::set_up(&tx).await?;
            let from = self.db.read().await?;
            copied::all(&from, &tx).await?;
            from.commit().await?;
            verify::none(&verify::damage_in(&tx).await?, self.address())?;
            tx.commit().await
        }
        .await;
        let closed = db.close().await;
        copied.and(closed)
    }

    /// Keeps a folder of backups: writes `backup-2026-11-25.shop` for the shop's day at this instant, unless that day has one, and
    /// then removes those that are beyond the newest `count` and also more than `days` days old. Only files with such names are
    /// looked at, and the newest is never removed. The folder must be there: one that is missing may be a stick that is not in.
    ///
    /// # Errors
    /// As [`Store::backup`]; nothing is removed then.
    pub async fn keep_backups(&self, folder: &Path, at: Timestamp, count: usize, days: u32) -> Result<Kept> {
        let day = self.settings().await?.zone.to_datetime(at).date();
        let today = folder.join(format!("backup-{day}.shop"));
        if !today.exists() {
            self.backup(&today).await?;
        }
        let mut there = dated(folder)?;
        there.sort_unstable_by(|a, b| b.cmp(a));
        let oldest = day.checked_sub(i64::from(days).days()).unwrap_or(Date::MIN);
        let old = there.into_iter().skip(count.max(1)).filter(|(date, _)| *date < oldest);
        let removed: Vec<PathBuf> = old.map(|(_, path)| path).collect();
        for path in &removed {
            fs::remove_file(path).map_err(|error| Error::io(path, error.to_string()))?;
        }
        Ok(Kept { today, removed })
    }
}

/// A copy of a backup, opened and without damage.
async fn whole_copy(from: &Path, to: &Path) -> Result<Store> {
    crate::fuse::step(&to.into())?;
    // The bytes only: a backup that is marked read-only does not make a shop that cannot be written.
    let copied = fs::File::create(to).and_then(|mut new| std::io::copy(&mut fs::File::open(from)?, &mut new));
    copied.map_err(|error| Error::io(to, error.to_string()))?;
    let told = |error| match error {
        Error::Corrupt { what, .. } => Error::corrupt(from, what),
        other => other,
    };
    let copy = Store::open(to).await.map_err(told)?;
    let damage = copy.verify().await.and_then(|damage| verify::none(&damage, from));
    match damage {
        Ok(()) => Ok(copy),
        Err(error) => {
            copy.close().await?;
            Err(error)
        }
    }
}

/// The backups of a folder with the days in their names.
fn dated(folder: &Path) -> Result<Vec<(Date, PathBuf)>> {
    let failed = |error: std::io::Error| Error::io(folder, error.to_string());
    let mut found = Vec::new();
    for entry in fs::read_dir(folder).map_err(failed)? {
        let entry = entry.map_err(failed)?;
        let name = entry.file_name();
        let day = name.to_str().and_then(|name| name.strip_prefix("backup-")?.strip_suffix(".shop"));
        let day = day.filter(|day| day.len() == 10).and_then(|day| day.parse::<Date>().ok());
        if let Some(day) = day.filter(|_| entry.file_type().is_ok_and(|kind| kind.is_file())) {
            found.push((day, entry.path()));
        }
    }
    Ok(found)
}
