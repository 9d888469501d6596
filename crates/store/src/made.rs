//! A file or folder that appears under its name only when it is whole: it is made in a hidden folder beside, synced, and then renamed. A crash
//! leaves at most that folder, never half a file; a name that is taken is never overwritten.

use std::fs;
use std::path::{Path, PathBuf};

use tempfile::{Builder, TempDir, TempPath};

use crate::error::{Error, Result};
use crate::store::companions;

/// A file in the making. Dropped, it leaves nothing behind.
pub(crate) struct Made {
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
        let folder = Builder::new().prefix(".making-").tempdir_in(beside(to));
        let folder = folder.map_err(|error| Error::io(to, error.to_string()))?;
        Ok(Self { folder, to: to.to_owned() })
    }

    /// Where it is made.
    pub(crate) fn path(&self) -> PathBuf {
        self.folder.path().join("made")
    }

    /// Gives the whole file its name.
    pub(crate) fn finish(self) -> Result<()> {
        let Self { folder, to } = self;
        let failed = |error: &std::io::Error| match error.kind() {
            std::io::ErrorKind::AlreadyExists => Error::Exists(to.clone().into()),
            _ => Error::io(&to, error.to_string()),
        };
        let made = folder.path().join("made");
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

fn beside(path: &Path) -> &Path {
    path.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."))
}
