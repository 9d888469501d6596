//! How a ring oiler should stand in its oil, by table. No usable formula for what a ring delivers was found, so that none is here.
//!
//! Start at [`RING_RULES`]; the thickest oil that still turns a ring is in `limit.rs`.

use crate::Standing;
use crate::quantity::Length;

/// What is measured of a ring oiler.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum RingMeasure {
    /// How deep the lowest point of the ring dips.
    Dips(Length),
    /// The part of the ring that lies in oil.
    InOil(f64),
    /// How full the well is.
    WellFull(f64),
    /// How far the oil stands below the edge of the vent.
    BelowVent(Length),
}

/// A rule for the level of a ring oiler.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RingRule {
    /// What should be found, machine stopped.
    pub measure: RingMeasure,
    /// Where it is said.
    pub source: &'static str,
    /// How firmly it stands.
    pub standing: Standing,
}

/// Rules in use, which differ: the mark on the machine goes before them all.
///
/// Source: `ring-notes`.
pub const RING_RULES: [RingRule; 4] = [
    rule(RingMeasure::Dips(Length::from_mm(6.0)), Standing::CommonPractice),
    rule(RingMeasure::InOil(1.0 / 3.0), Standing::Handbook),
    rule(RingMeasure::WellFull(0.5), Standing::CommonPractice),
    rule(RingMeasure::BelowVent(Length::from_mm(3.0)), Standing::CommonPractice),
];

const fn rule(measure: RingMeasure, standing: Standing) -> RingRule {
    RingRule { measure, source: "ring-notes", standing }
}
