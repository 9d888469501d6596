//! A job: a kind of work done on the machine, which wakes certain points.

use crate::id::Id;
use crate::reading::{Element, Key, Sort, Table, Takes};

/// A kind of work: threading, back gear, long stroke.
#[derive(Clone, Debug, PartialEq)]
pub struct Job {
    /// Its id.
    pub id: Id,
    /// What it is called.
    pub name: String,
    /// Points and assemblies that want oil only when this work is done.
    pub wakes: Vec<Id>,
    /// Anything worth saying.
    pub note: Option<String>,
}

pub(super) static KEYS: Element = Element {
    name: "job",
    says: "A kind of work done on the machine, which wakes certain points",
    keys: &[
        super::ID,
        Key::must("name", Takes::Text, "what it is called"),
        Key::may(
            "wakes",
            Takes::Mentions(&[Sort::Point, Sort::Assembly]),
            "points and assemblies that only this work needs",
        ),
        super::NOTE,
    ],
};

pub(super) fn read(table: &Table<'_>) -> Option<Job> {
    let id = table.id(Sort::Job);
    let name = table.text("name");
    let wakes = table.links("wakes");
    let note = table.text("note");
    Some(Job { id: id?, name: name?, wakes, note })
}
