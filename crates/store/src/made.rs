//! A file or a folder that gets its name only when it is whole. It is made in a hidden folder beside that name, so that nobody ever
//! sees half a file; a name that is taken is never overwritten. What a program that was killed left half made goes away when the
//! next one is begun beside it.

use std::fs;
use std::path::{Path, PathBuf};
use std::time::Duration;

use tempfile::{Builder, TempDir, TempPath};

use crate::error::{Error, Result};
use crate::store::companions;

/// What the names of the hidden folders begin with.
const BEGINNING: &str = ".making-";
/// The file in a hidden folder that its maker holds as long as it lives.
const HELD: &str = "held";
/// The file or folder in it that is made.
const MADE: &str = "made";
/// How long a hidden folder is not asked who holds it.
const FRESH: Duration = Duration::from_secs(60);

/// A file in the making. Dropped, it leaves nothing behind.
pub(crate) struct Made {
    // Let go before the folder is removed, which some systems want.
    _held: fs::File,
    folder: TempDir,
    to: PathBuf,
}

impl Made {
    /// Begins a file that is to have this name.
    pub(crate) fn begin(to: &Path) -> Result<Self> {
        if let Some(there) =
            std::iter::once(to.to_owned()).chain(companions(to)).find(|path| path.symlink_metadata().is_ok())
        {
            return Err(Error::Exists(there.into()));
        }
        let failed = |error: std::io::Error| Error::io(to, error.to_string());
        let folder = Builder::new().prefix(BEGINNING).tempdir_in(beside(to)).map_err(failed)?;
        let held = fs::File::create_new(folder.path().join(HELD)).map_err(failed)?;
        // Where the system cannot hold a file for one program, nothing is swept either.
        let _ = held.try_lock();
        let _ = sweep(beside(to), &held);
        Ok(Self { _held: held, folder, to: to.to_owned() })
    }

    /// Where it is made.
    pub(crate) fn path(&self) -> PathBuf {
        self.folder.path().join(MADE)
    }

    /// Gives the whole file its name.
    pub(crate) fn finish(self) -> Result<()> {
        let Self { _held, folder, to } = self;
        let failed = |error: &std::io::Error| match error.kind() {
            std::io::ErrorKind::AlreadyExists => Error::Exists(to.clone().into()),
            _ => Error::io(&to, error.to_string()),
        };
        let made = folder.path().join(MADE);
        crate::fuse::step(&to.as_path().into())?;
        fs::File::open(&made).and_then(|file| file.sync_all()).map_err(|error| failed(&error))?;
        crate::fuse::step(&to.as_path().into())?;
        if made.is_dir() {
            // A folder takes the place of no file and of no folder with something in it.
            fs::rename(&made, &to).map_err(|error| failed(&error))?;
        } else {
            let made = TempPath::try_from_path(made).map_err(|error| failed(&error))?;
            made.persist_noclobber(&to).map_err(|refused| failed(&refused.error))?;
        }
        // The name is in place; without this sync a power loss could still take the name back, never spoil a file.
        #[cfg(unix)]
        fs::File::open(beside(&to)).and_then(|folder| folder.sync_all()).map_err(|error| failed(&error))?;
        Ok(())
    }
}

/// Removes hidden folders that nobody holds any more. One that was begun within the last minute may only not be held yet; how long
/// ago that was is told by the file system, from a file that was made just now.
fn sweep(folder: &Path, now: &fs::File) -> std::io::Result<()> {
    let now = now.metadata()?.modified()?;
    for entry in fs::read_dir(folder)? {
        let entry = entry?;
        let ours = entry.file_name().to_str().is_some_and(|name| name.starts_with(BEGINNING));
        if !ours || !entry.file_type()?.is_dir() {
            continue;
        }
        let path = entry.path();
        let Ok(held) = fs::File::open(path.join(HELD)) else { continue };
        let old = now.duration_since(held.metadata()?.modified()?).is_ok_and(|since| since > FRESH);
        if old && held.try_lock().is_ok() && only_ours(&path)? {
            drop(held);
            // What cannot be removed is in nobody's way; the next one tries again.
            let _ = fs::remove_dir_all(&path);
        }
    }
    Ok(())
}

/// Whether nothing is in a hidden folder but what is put there.
fn only_ours(folder: &Path) -> std::io::Result<bool> {
    let made = folder.join(MADE);
    let ours: Vec<PathBuf> = companions(&made).chain([made, folder.join(HELD)]).collect();
    for entry in fs::read_dir(folder)? {
        if !ours.contains(&entry?.path()) {
            return Ok(false);
        }
    }
    Ok(true)
}

fn beside(path: &Path) -> &Path {
    path.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Makes it look as if a hidden folder had been begun an hour ago.
    fn age(folder: &Path) {
        let held = fs::File::options().write(true).open(folder.join(HELD)).expect("a file of ours");
        let then = held.metadata().and_then(|held| held.modified()).expect("a time") - Duration::from_secs(3600);
        held.set_modified(then).expect("a file of ours");
    }

    #[test]
    fn what_a_killed_program_left_goes_away_and_nothing_else_does() {
        let folder = TempDir::new().expect("a temporary folder");
        let at = |name: &str| folder.path().join(name);
        let making = Made::begin(&at("living")).expect("a free name");
        age(making.folder.path());
        // A killed program holds nothing and removes nothing.
        let [fresh, old, mixed] = ["fresh", "old", "mixed"].map(|name| {
            let Made { _held, folder: left, .. } = Made::begin(&at(name)).expect("a free name");
            let left = left.keep();
            fs::write(left.join(MADE), b"half").expect("a folder of ours");
            fs::write(left.join("made-journal"), b"half").expect("a folder of ours");
            left
        });
        [&old, &mixed].into_iter().for_each(|folder| age(folder));
        fs::write(mixed.join("a letter"), b"precious").expect("a folder of ours");
        let strange = at(".making-bread");
        fs::create_dir(&strange).expect("a free name");
        fs::write(at(".making-notes"), b"precious").expect("a free name");
        drop(Made::begin(&at("next")).expect("a free name"));
        let there = [making.folder.path(), &fresh, &old, &mixed, &strange, &at(".making-notes")].map(Path::exists);
        assert_eq!(there, [true, true, false, true, true, true]);
        age(&fresh);
        drop(Made::begin(&at("next")).expect("a free name"));
        assert!(!fresh.exists());
    }
}
