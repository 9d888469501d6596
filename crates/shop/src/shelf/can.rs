//! A can or gun with its calibrated stroke.

use tribology::quantity::{Kind, Typed, Volume};

use crate::id::Id;
use crate::reading::{Element, Key, Sort, Table, Takes};

/// A can or gun.
#[derive(Clone, Debug, PartialEq)]
pub struct Can {
    /// Its id.
    pub id: Id,
    /// What it is called, when the id does not say it.
    pub name: Option<String>,
    /// The oil that it holds.
    pub oil: Option<Id>,
    /// What one stroke gives, measured: count the strokes into 10 mL.
    pub stroke: Option<Typed<Volume>>,
    /// Anything worth saying.
    pub note: Option<String>,
}

pub(super) static KEYS: Element = Element {
    name: "can",
    says: "A can or gun",
    keys: &[
        Key::must("id", Takes::Id, "its own short name"),
        Key::may("name", Takes::Text, "what it is called, when the id does not say it"),
        Key::may("oil", Takes::Link(&[Sort::Oil]), "the oil that it holds"),
        Key::may("stroke", Takes::Quantity(Kind::Volume), "what one stroke gives, measured"),
        Key::may("note", Takes::Text, "anything worth saying"),
    ],
};

impl Can {
    /// What it is called.
    #[must_use]
    pub fn called(&self) -> String {
        self.name.clone().unwrap_or_else(|| self.id.as_str().replace('-', " "))
    }
}

pub(super) fn read(table: &Table<'_>) -> Option<Can> {
    let id = table.id(Sort::Can);
    let (name, oil, stroke, note) =
        (table.text("name"), table.link("oil"), table.positive("stroke"), table.text("note"));
    Some(Can { id: id?, name, oil, stroke, note })
}
