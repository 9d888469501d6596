//! A finding: a defect or an open question, kept until it is settled. A hole of unknown purpose is one.

use crate::amount::Interval;
use crate::choice;
use crate::choice::Choice as _;
use crate::id::Id;
use crate::reading::{Element, Key, Sort, Table, Takes};

choice! {
    /// What kind of finding it is.
    FindingKind {
        /// A hole of which nobody knows what it feeds.
        Hole = "hole",
        /// Something that should be there and is not.
        Missing = "missing",
        /// A passage that takes no oil.
        Blocked = "blocked",
        /// Something worn or broken.
        Damage = "damage",
        /// Oil where it should not be.
        Leak = "leak",
        /// A question that somebody must answer.
        Question = "question",
    }
}

/// A defect or an open question.
#[derive(Clone, Debug, PartialEq)]
pub struct Finding {
    /// Its id.
    pub id: Id,
    /// What kind it is.
    pub kind: FindingKind,
    /// The element that it is about.
    pub of: Vec<Id>,
    /// What was found.
    pub note: Option<String>,
    /// The thread of a hole or a missing part.
    pub thread: Option<String>,
    /// The size of a hole or a missing part: bore, depth, across flats.
    pub size: Option<String>,
    /// What fits in its place, by dimension.
    pub equivalent: Option<String>,
    /// What covers it meanwhile.
    pub meanwhile: Option<String>,
    /// The interval that holds meanwhile for the points it is about.
    pub interval: Vec<Interval>,
    /// How it was settled; nothing while it is open.
    pub settled: Option<String>,
}

pub(super) static KEYS: Element = Element {
    name: "finding",
    says: "A defect or an open question",
    keys: &[
        super::ID,
        Key::must("kind", Takes::Choice(FindingKind::words), "what kind it is"),
        Key::may("of", Takes::Mentions(Sort::ON_A_CHART), "the element that it is about"),
        Key::may("note", Takes::Text, "what was found"),
        Key::may("thread", Takes::Text, "the thread of a hole or a missing part"),
        Key::may("size", Takes::Text, "the size of a hole or a missing part: bore, depth, across flats"),
        Key::may("equivalent", Takes::Text, "what fits in its place, by dimension"),
        Key::may("meanwhile", Takes::Text, "what covers it meanwhile"),
        Key::may("interval", Takes::Intervals, "the interval that holds meanwhile"),
        Key::may("settled", Takes::Text, "how it was settled"),
    ],
};

pub(super) fn read(table: &Table<'_>) -> Option<Finding> {
    let id = table.id(Sort::Finding);
    let kind = table.choice("kind");
    let finding = Finding {
        of: table.links("of"),
        note: table.text("note"),
        thread: table.text("thread"),
        size: table.text("size"),
        equivalent: table.text("equivalent"),
        meanwhile: table.text("meanwhile"),
        interval: table.intervals("interval"),
        settled: table.text("settled"),
        id: id?,
        kind: kind?,
    };
    Some(finding)
}
