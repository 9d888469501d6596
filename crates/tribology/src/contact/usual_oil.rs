//! What a row of a table of common practice holds: grades, families, what the oil must be without, how much and how often.

use crate::Standing;
use crate::oil::IsoGrade;

/// A sort of lubricant, in the trade's words.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Family {
    /// Straight mineral oil without additives.
    Straight,
    /// Rust- and oxidation-inhibited circulating oil.
    Circulating,
    /// Anti-wear hydraulic oil.
    Hydraulic,
    /// Slideway oil.
    Way,
    /// Gear oil.
    Gear,
    /// Oil with fatty matter.
    Compounded,
    /// Grease.
    Grease,
}

/// Something in an oil that a pair does not bear.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Additive {
    /// Makes friction faces slip.
    FrictionModifier,
    /// Active sulphur for extreme pressure, which eats bronze where it is warm.
    SulphurEp,
}

/// How much at a time.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Amount {
    /// Drops at each place, from and to.
    Drops(u32, u32),
    /// A thin coat over the whole length.
    Coat,
    /// Along the whole length, plenty.
    Plenty,
    /// It lies in a bath that is kept at its mark.
    BathToMark,
    /// None on the faces; so many drops on the bushes beside them.
    BushesOnly(u32),
}

/// How often.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Often {
    /// Before each use.
    EachUse,
    /// On each day of use.
    Daily,
    /// Once a week.
    Weekly,
}

/// How much and how often.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Dose {
    /// How much at a time.
    pub amount: Amount,
    /// How often; nothing where no interval was found.
    pub often: Option<Often>,
}

/// The oil that a pair usually gets.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct UsualOil {
    /// The thinnest and the thickest grade; nothing where no oil belongs.
    pub grades: Option<(IsoGrade, IsoGrade)>,
    /// The families, most wanted first.
    pub families: &'static [Family],
    /// What must not be in it.
    pub without: &'static [Additive],
    /// How much and how often.
    pub dose: Dose,
    /// How firmly this stands.
    pub standing: Standing,
}

impl Family {
    /// The family in one word, as it is written on a shelf.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Family::Straight => "straight",
            Family::Circulating => "circulating",
            Family::Hydraulic => "hydraulic",
            Family::Way => "way",
            Family::Gear => "gear",
            Family::Compounded => "compounded",
            Family::Grease => "grease",
        }
    }
}

/// Grades by their numbers, thinnest and thickest.
pub(super) fn grades(thinnest: u32, thickest: u32) -> (IsoGrade, IsoGrade) {
    let grade = |number| IsoGrade::of(number).expect("the tables name grades that there are");
    (grade(thinnest), grade(thickest))
}
