//! What may be chosen: the shelf and, where it may be bought, a catalogue of oils as open standards name them. The catalogue names no product.

use std::sync::LazyLock;

use shop::shelf::{Amount, Family, Oil, Shelf};

use super::Asked;
use crate::stock::stock;

/// Whether oils may be bought that are not on the shelf.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Buying {
    /// Only what is on the shelf.
    ShelfOnly,
    /// What is on the shelf and what the standards name.
    Catalogue,
}

/// Where a candidate is from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Whence {
    /// It stands on the shelf.
    Shelf,
    /// The standards name it.
    Catalogue,
}

/// A lubricant that may be chosen.
#[derive(Clone, Debug, PartialEq)]
pub struct Candidate {
    /// The lubricant.
    pub oil: Oil,
    /// Where it is from.
    pub whence: Whence,
    /// How much of it is left, as far as that is known.
    pub left: Option<Amount>,
}

/// The catalogue, read as a shelf file is read.
pub(super) static CATALOGUE: LazyLock<Shelf> = LazyLock::new(|| {
    Shelf::read(include_str!("catalogue.toml")).value.expect("a test reads the catalogue without a fault")
});

impl Candidate {
    /// Whether it is a grease.
    #[must_use]
    pub fn is_grease(&self) -> bool {
        self.oil.family == Family::Grease
    }

    /// How unwelcome it is where another does as well: what is in stock comes first, then what stands on the shelf with a price, then
    /// without, then what is new to the shop.
    pub(super) fn reluctance(&self) -> u32 {
        match (self.whence, self.left) {
            (Whence::Shelf, Some(left)) if left.si() > 0.0 => 0,
            (Whence::Shelf, _) if self.oil.packs.iter().any(|pack| pack.price.is_some()) => 1,
            (Whence::Shelf, _) => 2,
            (Whence::Catalogue, _) => 3,
        }
    }
}

/// What may be chosen, in the order of ids, the shelf first.
pub(super) fn candidates(asked: &Asked<'_>) -> Vec<Candidate> {
    let mut found: Vec<Candidate> =
        asked.shelf.oils.iter().map(|oil| candidate(oil, Whence::Shelf, left(oil, asked))).collect();
    if asked.buying == Buying::Catalogue {
        let is_new = |oil: &&Oil| asked.shelf.oil(&oil.id).is_none();
        found.extend(CATALOGUE.oils.iter().filter(is_new).map(|oil| candidate(oil, Whence::Catalogue, None)));
    }
    found.sort_by(|a, b| (a.whence as u8).cmp(&(b.whence as u8)).then_with(|| a.oil.id.cmp(&b.oil.id)));
    found
}

fn candidate(oil: &Oil, whence: Whence, left: Option<Amount>) -> Candidate {
    Candidate { oil: oil.clone(), whence, left }
}

/// What is left by the logbook; where it never heard of the oil, what the shelf's file says.
fn left(oil: &Oil, asked: &Asked<'_>) -> Option<Amount> {
    if asked.movements.iter().any(|movement| movement.oil == oil.id) {
        return stock(oil, asked.shelf, asked.movements).left;
    }
    let weighed = oil.stock_mass.as_deref().and_then(|mass| Amount::read(mass).ok());
    oil.stock.as_ref().map(|stock| Amount::Volume(stock.value)).or(weighed)
}

#[cfg(test)]
mod tests {
    use shop::fault::Severity;

    use super::*;

    #[test]
    fn the_catalogue_is_a_shelf_without_faults() {
        let read = Shelf::read(include_str!("catalogue.toml"));
        assert!(read.faults.iter().all(|fault| fault.severity != Severity::Fault), "{:?}", read.faults);
        assert!(CATALOGUE.oils.iter().all(|oil| oil.id.as_str().starts_with("buy-")));
        assert!(CATALOGUE.cans.is_empty());
        // An oil without a line would be judged as one of unknown body.
        assert!(CATALOGUE.oils.iter().all(|oil| crate::oil_line::oil_line(oil).is_some()));
    }
}
