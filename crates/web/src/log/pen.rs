//! Makes the entries of one act: who, when, in which zone, under which key.

use jiff::Timestamp;
use shop::logbook::{BatchKey, Body, EntryId, NewEntry, Subject};
use shop::snapshot::Moment;

use crate::FormKey;
use crate::hand::Hand;

/// What all entries of one act share.
pub(super) struct Pen {
    now: Timestamp,
    zone: String,
    by: String,
    batch: BatchKey,
}

impl Pen {
    pub(super) fn new(key: &FormKey, hand: &Hand, moment: &Moment) -> Self {
        Self {
            now: moment.instant,
            zone: moment.zone.iana_name().expect("the store keeps zones that have a name").to_owned(),
            by: hand.name().to_owned(),
            batch: batch(key),
        }
    }

    /// The entry of this number in the act.
    pub(super) fn entry(&self, number: usize, subject: Subject, body: Body) -> NewEntry {
        NewEntry {
            happened: self.now,
            recorded: self.now,
            zone: self.zone.clone(),
            by: self.by.clone(),
            subject,
            body,
            supersedes: None,
            idempotency_key: self.batch.entry(number),
        }
    }

    /// The entry that takes another back.
    pub(super) fn withdrawal(&self, number: usize, subject: Subject, of: EntryId) -> NewEntry {
        NewEntry { supersedes: Some(of), ..self.entry(number, subject, Body::Withdrawn) }
    }
}

/// The key that the entries of a form share.
pub(super) fn batch(key: &FormKey) -> BatchKey {
    BatchKey::new(key.as_str()).expect("a form's key is 32 hex figures")
}
