//! A shop on the disk: settings, chart revisions, shelf, logbook and pictures, in one file or in a database of a PostgreSQL server.
//! Start at [`Store`]; [`Store::record`] writes, [`Store::snapshot`] fills what the reasoning borrows. No rule of the trade is
//! decided here, no clock is read, and no type of the database library leaves the crate.
//!
//! # What is promised
//!
//! - **Both are alike.** The same calls on a file and on a database give the same answers, the same tables as CSV and the same
//!   backup, and a shop moves from one to the other by [`Store::backup`] and [`Store::restore`].
//! - **All or nothing.** Every call that writes is one transaction. When it returns `Ok`, all of it is in the shop; when it
//!   returns an error, nothing of it is.
//! - **Nothing is lost by a correction.** Entries, chart revisions, the shelf and the settings are append-only, held to it by
//!   triggers that bind other programs too. A mistake is superseded, and each entry is superseded at most once.
//! - **Kept once.** An entry whose key is already there is not written again; its number is returned.
//! - **Answers can be had again.** A snapshot at T sees only what was recorded by T: entries, supersessions, charts, shelf and
//!   settings alike. Nothing is hidden by when it *happened*.
//! - **What is due** is kept in the same transaction as the entries it follows from; [`Store::verify`] works it out anew from
//!   the logbook and lists every difference.
//! - **Damage is found.** [`Store::verify`] reads everything and says in a sentence each what is not as it was written: every row that
//!   people's words are in is held against its fingerprint, and one that came or went behind our back is missed. [`Store::backup`] and [`Store::restore`] look before they give a name.
//! - **A backup is whole or not there.** It is taken while others write, and never overwrites. What a killed program left half made
//!   goes away with the next backup to the same folder.
//! - **A file that is not ours is left alone.** [`Store::open`] reads the first hundred bytes itself and hands only a shop's file
//!   of a known version to the database; [`Store::create`] never overwrites. In a database the tables lie in a schema of their own,
//!   and one of that name that is not ours is left alone too.
//! - **No password is shown**, in no error and no message.
//! - **Pictures are made clean.** What [`Store::add_picture`] keeps is decoded within bounds, upright, and written anew: no place, no
//!   name and no program of a stranger gets in or goes on with an export. Of the camera's notes only the date stays.
//! - **Drawings are lines.** Of an SVG drawing only shapes and words are kept, written anew; what could do more than draw is refused.
//! - **Everything can leave.** [`Store::export_csv`] writes all of it as tables that any spreadsheet opens, and
//!   [`Store::import_csv`] makes an equal shop of them.
//! - **A large shop is a few statements.** A snapshot is read in a fixed number of statements, however many machines there are, and
//!   none that a page asks about now walks through the whole logbook. Charts that were read before are remembered.
//! - Instants are kept to the microsecond; finer digits are dropped.
//!
//! # What is not promised
//!
//! - **Power loss, in a file.** The file runs in write-ahead mode with `synchronous=FULL`: SQLite then syncs the log to the disk at every
//!   commit, and says that such a commit survives a power loss. It also says that this holds only as far as the disk and the
//!   operating system tell the truth about a sync; some cheap drives and memory sticks do not, and no program can mend that. Keep
//!   backups elsewhere. The tests kill a writing program at any moment and lose nothing; the system lives on there, so that
//!   proves nothing about power.
//! - **Power loss, in a database.** Commits are made with `synchronous_commit=on`, whatever the server is used to; the server then
//!   says so only once its log is on the disk, unless it was set up with `fsync=off` or on a disk that does not tell the truth.
//! - **Damage under a database.** [`Store::verify`] reads every row and holds it against its fingerprint; the pages and indexes are the
//!   server's, which finds damage in them by checksums where it was set up with them (`initdb --data-checksums`).
//! - **TLS.** A server is spoken to without it; an address that asks for it is refused.
//! - **Texts with the character number nought**, which PostgreSQL cannot keep and a file can: they are refused there.
//! - **Network folders.** SQLite says that write-ahead mode does not work over a network file system. Keep the file on a disk of
//!   the machine that runs the program.
//! - **The file alone is not always the whole.** While it is open, and after a crash, newest commits stand in the companion
//!   whose name ends in `-wal`. Copy both or neither; after [`Store::close`] there is only the one file.
//! - **Taking back a correction.** Withdrawing an entry that superseded another does not bring the other back: both are then out.
//!   Record what is true anew.
//! - **A picture is not kept byte for byte.** A JPEG that holds notes, a PNG and a WebP are written anew, a JPEG with a little loss
//!   at quality ninety. Of one that moves, the first picture is kept; colour profiles are dropped.
//! - **A hand that means it.** Fingerprints guard against a failing disk and a careless statement, not against a person who changes a
//!   row and its fingerprint together.

mod address;
mod backup;
mod chart;
mod copied;
mod db;
mod due;
mod error;
mod fuse;
mod header;
mod layout;
mod logbook;
mod made;
mod migration;
mod picture;
#[cfg(test)]
mod plan;
mod seal;
#[cfg(test)]
#[path = "../tests/server.rs"]
mod server;
mod settings;
mod shelf;
mod snapshot;
mod store;
mod tables;
mod verify;

pub use address::{Address, AddressFault};
pub use backup::Kept;
pub use chart::MachineRow;
pub use error::{Error, Result};
pub use logbook::{About, Superseded, Wanted};
pub use picture::{Drawing, LARGEST_PICTURE, NewPicture, Picture, PictureId, PictureKind, PictureRow, Unfit, Unplain};
pub use settings::Settings;
pub use store::Store;
pub use tables::guarded;
pub use verify::Damage;
