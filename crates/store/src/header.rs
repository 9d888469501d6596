//! The first hundred bytes of a data file, read without the database library, so that a file of somebody else is refused before
//! anything could touch it. The places are those of "Database File Format" in SQLite's documentation, section 1.3.

use std::fs;
use std::io::Read as _;
use std::path::Path;

use crate::error::{Error, Result};
use crate::migration;

/// What marks a file as ours: the letters "Oilw".
pub(crate) const APPLICATION: u32 = 0x4F69_6C77;

const MAGIC: &[u8; 16] = b"SQLite format 3\0";
const VERSION_AT: usize = 60;
const APPLICATION_AT: usize = 68;

/// Refuses everything that is not a writable data file of ours in a form that this program knows.
pub(crate) fn check(path: &Path) -> Result<()> {
    check_readable(path)?;
    let writable = fs::metadata(path).is_ok_and(|metadata| !metadata.permissions().readonly())
        && fs::OpenOptions::new().write(true).open(path).is_ok();
    if writable { Ok(()) } else { Err(Error::ReadOnly(path.into())) }
}

/// Refuses everything that is not a data file of ours in a form that this program knows.
pub(crate) fn check_readable(path: &Path) -> Result<()> {
    let metadata = match fs::metadata(path) {
        Ok(metadata) => metadata,
        Err(error) if error.kind() == std::io::ErrorKind::NotFound => return Err(Error::Missing(path.into())),
        Err(error) => return Err(Error::io(path, error.to_string())),
    };
    if metadata.is_dir() {
        return Err(Error::Directory(path.to_owned()));
    }
    let mut header = Vec::new();
    let file = fs::File::open(path).map_err(|error| Error::io(path, error.to_string()))?;
    file.take(100).read_to_end(&mut header).map_err(|error| Error::io(path, error.to_string()))?;
    if header.is_empty() {
        return Err(Error::Empty(path.to_owned()));
    }
    if header.len() < 100 || !header.starts_with(MAGIC) {
        return Err(Error::NotDatabase(path.into()));
    }
    if number(&header, APPLICATION_AT) != APPLICATION {
        return Err(Error::OtherProgram(path.into()));
    }
    migration::known(&path.into(), number(&header, VERSION_AT))
}

fn number(header: &[u8], at: usize) -> u32 {
    header[at..at + 4].iter().fold(0, |number, byte| number << 8 | u32::from(*byte))
}
