//! The logbook: what was done, seen and run, never changed, only superseded. Start at [`Entry`].

mod body;
mod entry;
mod movement;
mod subject;

pub use body::{Body, Kind};
pub use entry::{BatchKey, Entry, EntryId, NewEntry};
pub use movement::{Movement, Way};
pub use subject::Subject;
