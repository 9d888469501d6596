//! The logbook: what was done, seen and run, never changed, only superseded. Start at [`Entry`].

mod body;
mod entry;
mod subject;

pub use body::{Body, Kind};
pub use entry::{BatchKey, Entry, EntryId, NewEntry};
pub use subject::Subject;
