//! What can go wrong with the data file. Every message is one sentence: what is wrong, where, and what to do.

use std::path::{Path, PathBuf};

use shop::fault::{Fault, Severity};

/// The outcome of a call on the store.
pub type Result<T> = std::result::Result<T, Error>;

/// Why the store could not do what was asked.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum Error {
    /// There is no such file.
    #[error("there is no file {}; look at the spelling, or create the shop first", .0.display())]
    Missing(PathBuf),
    /// The path is a directory.
    #[error("{} is a folder, not a shop's data file; name the file inside it", .0.display())]
    Directory(PathBuf),
    /// There is a file already where one was to be created.
    #[error("{} is there already and is not overwritten; open it, or choose another name", .0.display())]
    Exists(PathBuf),
    /// The file is empty.
    #[error("{} is empty, so it holds no shop; if nothing else needs it, remove it and create the shop anew", .0.display())]
    Empty(PathBuf),
    /// The file is no database.
    #[error("{} is no shop's data file; choose the file that was made when the shop was created", .0.display())]
    NotDatabase(PathBuf),
    /// The file is the database of another program.
    #[error("{} belongs to another program and is left as it is; choose the shop's own data file", .0.display())]
    OtherProgram(PathBuf),
    /// The file was written by a newer version of this program.
    #[error(
        "{} was written by a newer version of this program (form {version}, this one knows up to {newest}); open it with that version",
        .path.display()
    )]
    Newer {
        /// The file.
        path: PathBuf,
        /// The form of the file.
        version: u32,
        /// The newest form that this program knows.
        newest: u32,
    },
    /// The file must not be written.
    #[error("{} is marked read-only, and the logbook has to be written; allow writing, or work on a copy", .0.display())]
    ReadOnly(PathBuf),
    /// Another program holds the file.
    #[error("{} is in use by another program that does not let go; close that program and try again", .0.display())]
    Locked(PathBuf),
    /// The time zone has no name that could be kept.
    #[error("the shop's time zone has no name; choose one by its name, such as \"UTC\"")]
    NamelessZone,
    /// What was asked for is not there.
    #[error("{0}")]
    NotFound(String),
    /// It goes against what is already kept; nothing was written.
    #[error("{0}")]
    Conflict(String),
    /// The chart has faults and was not taken.
    #[error("{}", faulty(.0))]
    Faulty(Vec<Fault>),
    /// A picture is larger than the store takes.
    #[error("the picture \"{name}\" has {bytes} bytes and at most {most} are taken; make it smaller first", most = crate::LARGEST_PICTURE)]
    TooLarge {
        /// The picture's name.
        name: String,
        /// How large it is.
        bytes: usize,
    },
    /// A picture cannot be kept.
    #[error("the picture \"{name}\" {why}")]
    Picture {
        /// The picture's name.
        name: String,
        /// What is wrong with it.
        why: crate::Unfit,
    },
    /// A file of an export could not be taken in.
    #[error("{}, line {line}, could not be taken in: {what}; nothing was made", .path.display())]
    NotImported {
        /// The file.
        path: PathBuf,
        /// The line in it, counted from one.
        line: u64,
        /// What is wrong there and what would be right.
        what: String,
    },
    /// What stands in the file makes no sense.
    #[error("the data file {} is damaged ({what}); keep a copy as it is and go back to the last backup", .path.display())]
    Corrupt {
        /// The file.
        path: PathBuf,
        /// What was found.
        what: String,
    },
    /// The disk or the system would not do it.
    #[error("the data file {} could not be read or written ({what}); look at the disk and try again", .path.display())]
    Io {
        /// The file.
        path: PathBuf,
        /// What the system said.
        what: String,
    },
}

impl Error {
    pub(crate) fn io(path: &Path, what: impl Into<String>) -> Self {
        Self::Io { path: path.to_owned(), what: what.into() }
    }

    pub(crate) fn corrupt(path: &Path, what: impl Into<String>) -> Self {
        Self::Corrupt { path: path.to_owned(), what: what.into() }
    }
}

fn faulty(faults: &[Fault]) -> String {
    let mut real = faults.iter().filter(|fault| fault.severity == Severity::Fault);
    match (real.next(), real.count()) {
        (Some(first), 0) => format!("the chart has a fault and was not taken: {}", first.says),
        (Some(first), more) => {
            format!("the chart has {} faults and was not taken; the first: {}", more + 1, first.says)
        }
        (None, _) => "the chart could not be read and was not taken".to_owned(),
    }
}
