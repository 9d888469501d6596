//! Backups: a whole copy in one file, taken while others write; a shop from a backup; a folder of backups that does not grow for
//! ever. No clock is read here.

use std::fs;
use std::path::{Path, PathBuf};

use jiff::civil::Date;
use jiff::{Timestamp, ToSpan as _};

use crate::db::Db;
use crate::error::{Error, Result};
use crate::header;
use crate::made::Made;
use crate::store::{Store, companions};
use crate::verify;

/// What became of a folder of backups.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Kept {
    /// The backup of the day, made now or earlier on that day.
    pub today: PathBuf,
    /// The old ones that were removed.
    pub removed: Vec<PathBuf>,
}

impl Store {
    /// Writes a backup: all that was kept when it began, as one file that needs no companion. Others may write meanwhile. It is
    /// looked through for damage before it gets its name.
    ///
    /// # Errors
    /// [`Error::Exists`] when the name is taken; [`Error::Corrupt`] when this file is damaged; [`Error::Io`] when the place
    /// cannot be written. After an error there is nothing under that name.
    pub async fn backup(&self, to: &Path) -> Result<()> {
        let made = Made::begin(to)?;
        // A connection of its own, so that calls on this store need not wait for the copy.
        let source = Db::connect(self.path()).await?;
        let copied = source.copy_into(&made.path()).await;
        source.close().await?;
        copied?;
        let copy = Db::connect(&made.path()).await?;
        let damage = verify::damage(&copy).await;
        copy.close().await?;
        verify::none(&damage?, self.path())?;
        made.finish()
    }

    /// Makes a shop's data file from a backup, which is looked through for damage first and stays as it is.
    ///
    /// # Errors
    /// What [`Store::open`] says of a file that is none; [`Error::Conflict`] when the backup is a file in use;
    /// [`Error::Corrupt`] when it is damaged; [`Error::Exists`] when the new name is taken; [`Error::Io`].
    pub async fn restore(from: &Path, to: &Path) -> Result<()> {
        header::check_readable(from)?;
        if let Some(companion) = companions(from).find(|companion| companion.exists()) {
            return Err(Error::Conflict(format!(
                "{} is in use or was not closed, for {} lies beside it; take a backup of it and restore that",
                from.display(),
                companion.display()
            )));
        }
        let made = Made::begin(to)?;
        crate::fuse::step(to)?;
        // The bytes only: a backup that is marked read-only does not make a shop that cannot be written.
        let copied =
            fs::File::create(made.path()).and_then(|mut new| std::io::copy(&mut fs::File::open(from)?, &mut new));
        copied.map_err(|error| Error::io(to, error.to_string()))?;
        let told = |error| match error {
            Error::Corrupt { what, .. } => Error::corrupt(from, what),
            other => other,
        };
        let copy = Self::open(&made.path()).await.map_err(told)?;
        let damage = copy.verify().await;
        copy.close().await?;
        verify::none(&damage?, from)?;
        made.finish()
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
