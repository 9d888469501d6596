//! A can or gun with its calibrated stroke.

use tribology::quantity::{Kind, Typed, Volume, digits_of, typed};

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

/// What one stroke gives, from how many of them fill ten millilitres, as anybody can measure it.
///
/// # Errors
/// One sentence: what is wrong and what a right one looks like.
pub fn stroke_of(strokes_into_10_ml: &str) -> Result<Typed<Volume>, String> {
    let text = strokes_into_10_ml.trim();
    let strokes = text.parse::<f64>().ok().filter(|strokes| (0.5..=2000.0).contains(strokes));
    let strokes = strokes.ok_or_else(|| {
        format!(
            "\"{text}\" is no number of strokes that fill 10 mL. Write a bare number from 0.5 to 2000, like 17 or 12.5."
        )
    })?;
    let stroke = format!("{} mL", digits_of(10.0 / strokes, 3));
    Ok(typed(&stroke).expect("a number and millilitres are a volume"))
}

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
