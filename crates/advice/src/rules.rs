//! The rules that cap how far an oil does, one record each, one file for each kind of harm. Start at [`RULES`]. Where rules meet, the
//! stricter wins.

mod additive;
mod grease;
mod name;
mod seen;
mod sort;

pub use seen::{Look, Seen, Value};

use shop::shelf::{Family, Oil, Stated};
use tribology::Standing;

use crate::label::{Property, classes, stated};
use crate::need::Place;
use crate::verdict::Verdict;

/// A rule.
#[derive(Debug)]
pub struct Rule {
    /// Its number in the trade's list, such as `R1`.
    pub id: &'static str,
    /// What it looks at.
    pub looks: &'static [Look],
    /// What it forbids or warns of, a sentence without its full stop.
    pub says: &'static str,
    /// How far it lets an oil do where it holds.
    pub cap: Verdict,
    /// How far, where nobody states what it asks for; nothing where silence does not matter.
    pub not_stated: Option<Verdict>,
    /// What kind of statement it is.
    pub standing: Standing,
    /// Where it is from.
    pub source: &'static str,
    /// Whether it holds for an oil at a place.
    pub holds: fn(&Case<'_, '_>) -> Holds,
}

/// An oil held against a place.
#[derive(Clone, Copy, Debug)]
pub struct Case<'o, 'c> {
    /// The oil.
    pub oil: &'o Oil,
    /// The place.
    pub place: &'o Place<'c>,
    /// How many ISO grades its body lies outside what is wanted, above nothing when it is too thick; nothing where that is not known.
    pub steps: Option<f64>,
}

/// Whether a rule holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Holds {
    /// It does not.
    No,
    /// It does, with its own cap.
    Yes,
    /// It does, with another cap, and why.
    Capped(Verdict, &'static str),
    /// It would if something were so of which nobody says.
    Unsaid,
}

/// All of them, in the order of the trade's list.
pub const RULES: [&Rule; 21] = [
    &additive::R1,
    &additive::R2,
    &additive::R4,
    &sort::R6,
    &additive::R7,
    &sort::R8,
    &additive::R9,
    &additive::R10,
    &grease::R11,
    &grease::R12,
    &sort::R14,
    &name::R15,
    &additive::R16,
    &name::R18,
    &name::R20,
    &sort::R21,
    &name::R22,
    &sort::R23,
    &additive::W1,
    &grease::G1,
    &sort::S1,
];

impl Rule {
    /// What the rule saw.
    #[must_use]
    pub fn seen(&self, case: &Case<'_, '_>) -> Vec<Seen> {
        self.looks.iter().map(|look| case.seen(*look)).collect()
    }
}

impl Case<'_, '_> {
    /// What is known of a property of the oil.
    fn stated(&self, property: Property) -> Stated {
        stated(self.oil, property).stated
    }

    fn is_grease(&self) -> bool {
        self.oil.family == Family::Grease
    }

    /// Whether the copper strip came out clean, 1a or 1b; nothing where nobody says.
    fn copper_passes(&self) -> Option<bool> {
        let strip = self.oil.copper_strip.as_deref()?.trim().to_lowercase();
        Some(strip.starts_with("1a") || strip.starts_with("1b"))
    }

    /// Whether the label names one of these classes.
    fn is_of_class(&self, wanted: &[&str]) -> bool {
        let named = self.oil.symbol.as_deref().map(classes).unwrap_or_default();
        named.iter().any(|class| wanted.contains(&class.words[0]))
    }
}
