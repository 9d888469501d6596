//! The machine that a chart describes.

use crate::reading::{Element, Key, Table, Takes};

/// One machine tool.
#[derive(Clone, Debug, PartialEq)]
pub struct Machine {
    /// What its keepers call it.
    pub name: String,
    /// Its kind in one word: lathe, mill, shaper, planer, drill, grinder.
    pub kind: Option<String>,
    /// When it was built, as far as is known.
    pub built: Option<String>,
    /// Its size as the trade says it.
    pub size: Option<String>,
    /// Anything worth saying.
    pub note: Option<String>,
}

pub(super) static KEYS: Element = Element {
    name: "machine",
    says: "The machine itself",
    keys: &[
        Key::must("name", Takes::Text, "what its keepers call it"),
        Key::may("kind", Takes::Text, "its kind in one word: lathe, mill, shaper, planer, drill, grinder"),
        Key::may("built", Takes::Text, "when it was built, as far as is known"),
        Key::may("size", Takes::Text, "its size as the trade says it"),
        super::NOTE,
    ],
};

pub(super) fn read(table: &Table<'_>) -> Option<Machine> {
    let name = table.text("name");
    Some(Machine {
        kind: table.text("kind"),
        built: table.text("built"),
        size: table.text("size"),
        note: table.text("note"),
        name: name?,
    })
}
