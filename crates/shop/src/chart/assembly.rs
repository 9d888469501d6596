//! An assembly: a part of the machine that a person would name.

use crate::id::Id;
use crate::reading::{Element, Key, Sort, Table, Takes};

/// A part of the machine that a person would name: column, feed gearbox, apron, ram.
#[derive(Clone, Debug, PartialEq)]
pub struct Assembly {
    /// Its id.
    pub id: Id,
    /// What it is called.
    pub name: String,
    /// Anything worth saying.
    pub note: Option<String>,
}

pub(super) static KEYS: Element = Element {
    name: "assembly",
    says: "A part of the machine that a person would name",
    keys: &[super::ID, Key::must("name", Takes::Text, "what it is called"), super::NOTE],
};

pub(super) fn read(table: &Table<'_>) -> Option<Assembly> {
    let id = table.id(Sort::Assembly);
    let name = table.text("name");
    let note = table.text("note");
    Some(Assembly { id: id?, name: name?, note })
}
