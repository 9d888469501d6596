//! The shelf: the oils and greases of the shop, and its calibrated cans and guns. Start at [`Shelf::read`]. What is in stock is
//! counted by the logbook; the file's `stock` is only the opening figure.

mod asked;
mod can;
mod draft;
mod oil;
mod pack;

pub use asked::Asked;
pub use can::{Can, stroke_of};
pub use draft::{Wrong, oil_from};
pub use oil::{Family, Grease, Oil, Stated};
pub use pack::{Amount, Pack, Price};

use crate::id::Id;
use crate::reading::{Element, Key, Log, Need, Read, Table, Takes, read_file};

/// What the shop has to oil with.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Shelf {
    /// Oils and greases.
    pub oils: Vec<Oil>,
    /// Cans and guns.
    pub cans: Vec<Can>,
}

/// The root table of a shelf file.
pub static ROOT: Element = Element {
    name: "shelf",
    says: "The oils, greases and cans of a shop",
    keys: &[
        Key { name: "shelf", takes: Takes::Format, need: Need::Must, says: "the number of the file's format" },
        Key::may("oil", Takes::Tables(&oil::KEYS), "oils and greases"),
        Key::may("can", Takes::Tables(&can::KEYS), "cans and guns"),
    ],
};

impl Shelf {
    /// Reads a shelf file: every fault of meaning at once, or the first fault of syntax.
    #[must_use]
    pub fn read(text: &str) -> Read<Self> {
        read_file(text, &ROOT, "shelf", |table: &Table<'_>, _: &Log| {
            Some(Self { oils: table.children("oil", oil::read), cans: table.children("can", can::read) })
        })
    }

    /// The oil of this id.
    #[must_use]
    pub fn oil(&self, id: &Id) -> Option<&Oil> {
        self.oils.iter().find(|oil| oil.id == *id)
    }

    /// The cans that hold this oil.
    pub fn cans_with<'s>(&'s self, oil: &'s Id) -> impl Iterator<Item = &'s Can> {
        self.cans.iter().filter(move |can| can.oil.as_ref() == Some(oil))
    }

    /// The oil on the shelf that is nearest to what a chart asks for: of the same family, and of it the nearest in body.
    #[must_use]
    pub fn nearest(&self, asked: &Asked) -> Option<&Oil> {
        let family = self.oils.iter().filter(|oil| oil.family == asked.family);
        family.min_by(|a, b| asked.steps_from(a).total_cmp(&asked.steps_from(b)))
    }
}
