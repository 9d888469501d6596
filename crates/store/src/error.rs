//! What can go wrong with a shop. Every message is one sentence: what is wrong, where, and what to do.

use std::path::PathBuf;

use shop::fault::{Fault, Severity};

use crate::address::Address;

/// The outcome of a call on the store.
pub type Result<T> = std::result::Result<T, Error>;

/// Why the store could not do what was asked.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum Error {
    /// There is no such file, or no shop in the database.
    #[error("{}", missing(.0))]
    Missing(Address),
    /// The path is a directory.
    #[error("{} is a folder, not a shop's data file; name the file inside it", .0.display())]
    Directory(PathBuf),
    /// There is something already where a shop or a file was to be made.
    #[error("{}", exists(.0))]
    Exists(Address),
    /// The file is empty.
    #[error("{} is empty, so it holds no shop; if nothing else needs it, remove it and create the shop anew", .0.display())]
    Empty(PathBuf),
    /// The file is no database.
    #[error("{0} is no shop's data file; choose the file that was made when the shop was created")]
    NotDatabase(Address),
    /// The file or the database belongs to another program.
    #[error("{0} belongs to another program and is left as it is; choose the shop's own")]
    OtherProgram(Address),
    /// The shop was written by a newer version of this program.
    #[error(
        "{at} was written by a newer version of this program (form {version}, this one knows up to {newest}); open it with that version"
    )]
    Newer {
        /// The shop.
        at: Address,
        /// Its form.
        version: u32,
        /// The newest form that this program knows.
        newest: u32,
    },
    /// The shop must not be written.
    #[error("{0} is marked read-only, and the logbook has to be written; allow writing, or work on a copy")]
    ReadOnly(Address),
    /// Another program holds the shop.
    #[error("{0} is in use by another program that does not let go; close that program and try again")]
    Locked(Address),
    /// The server does not answer.
    #[error(
        "{at} could not be reached ({what}); look whether the server runs, and at its name and that of the database"
    )]
    Unreachable {
        /// The shop.
        at: Address,
        /// What the system or the server said.
        what: String,
    },
    /// The server does not let this user in, or do this.
    #[error("{at} does not allow this ({what}); look at the user's name and password, or ask who runs the server")]
    Refused {
        /// The shop.
        at: Address,
        /// What the server said.
        what: String,
    },
    /// The database keeps texts in another way than this program writes them.
    #[error("{at} keeps texts as {encoding}, which cannot hold every letter; make a database with ENCODING 'UTF8'")]
    Encoding {
        /// Where the shop was to be made.
        at: Address,
        /// How the database keeps texts.
        encoding: String,
    },
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
    /// What stands in the shop makes no sense.
    #[error("{at} is damaged ({what}); keep a copy as it is and go back to the last backup")]
    Corrupt {
        /// The shop, or the file or folder that it was to be made from.
        at: Address,
        /// What was found.
        what: String,
    },
    /// The disk, the system or the server would not do it.
    #[error("{at} could not be read or written ({what}); look at the disk and try again")]
    Io {
        /// The shop, or the file or folder.
        at: Address,
        /// What was said.
        what: String,
    },
}

impl Error {
    pub(crate) fn io(at: impl Into<Address>, what: impl Into<String>) -> Self {
        Self::Io { at: at.into(), what: what.into() }
    }

    pub(crate) fn corrupt(at: impl Into<Address>, what: impl Into<String>) -> Self {
        Self::Corrupt { at: at.into(), what: what.into() }
    }

    pub(crate) fn unreachable(at: &Address, what: impl Into<String>) -> Self {
        Self::Unreachable { at: at.clone(), what: what.into() }
    }

    pub(crate) fn refused(at: &Address, what: impl Into<String>) -> Self {
        Self::Refused { at: at.clone(), what: what.into() }
    }
}

fn missing(at: &Address) -> String {
    match at.file() {
        Some(_) => format!("there is no file {at}; look at the spelling, or create the shop first"),
        None => format!("there is no shop in {at}; make one with: oilwright shop new \"{at}\""),
    }
}

fn exists(at: &Address) -> String {
    match at.file() {
        Some(_) => format!("{at} is there already and is not overwritten; open it, or choose another name"),
        None => format!("there is a shop in {at} already and it is not overwritten; open it, or name another database"),
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
