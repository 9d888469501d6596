//! An entry in the logbook, before and after it is kept.

use std::fmt;

use jiff::Timestamp;

use super::body::Body;
use super::subject::Subject;

/// The number of an entry, in the order in which entries were recorded.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct EntryId(pub i64);

/// An entry that is kept.
#[derive(Clone, Debug, PartialEq)]
pub struct Entry {
    /// Its number.
    pub id: EntryId,
    /// What it says and of what.
    pub said: NewEntry,
    /// The entry that superseded it, when one did.
    pub superseded_by: Option<EntryId>,
}

/// An entry to be kept.
#[derive(Clone, Debug, PartialEq)]
pub struct NewEntry {
    /// When it happened.
    pub happened: Timestamp,
    /// When it was recorded; never before it happened by the recorder's clock, but often after.
    pub recorded: Timestamp,
    /// The zone of the shop when it was recorded, by its name.
    pub zone: String,
    /// Who says so.
    pub by: String,
    /// What it is about.
    pub subject: Subject,
    /// What it says.
    pub body: Body,
    /// The entry that it supersedes; each is superseded at most once.
    pub supersedes: Option<EntryId>,
    /// Its own key: the same key recorded twice is kept once.
    pub idempotency_key: String,
}

/// The key that the entries of one act share: one press of a button, one command. An entry's own key is the batch key with a
/// number behind it, so that a form sent twice is kept once and one undo takes back the whole act.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BatchKey(String);

/// What parts the batch key from the number behind it.
const PART: char = '/';

impl BatchKey {
    /// The batch key that this text spells: one to eighty letters, digits, hyphens, dots or underscores. Nothing for other texts.
    #[must_use]
    pub fn new(text: &str) -> Option<Self> {
        let fits = (1..=80).contains(&text.len())
            && text.chars().all(|c| c.is_ascii_alphanumeric() || matches!(c, '-' | '_' | '.'));
        fits.then(|| Self(text.to_owned()))
    }

    /// The key of the entry of this number in the batch.
    #[must_use]
    pub fn entry(&self, number: usize) -> String {
        format!("{}{PART}{number}", self.0)
    }

    /// The batch that an entry's key belongs to.
    #[must_use]
    pub fn of(idempotency_key: &str) -> Self {
        Self(idempotency_key.split(PART).next().unwrap_or(idempotency_key).to_owned())
    }

    /// The key as text.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl fmt::Display for EntryId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}
