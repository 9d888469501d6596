//! What a rule looks at and what it saw there, in words.

use tribology::quantity::Units;

use crate::need::Known;
use crate::rules::{Look, Seen, Value};

use super::property;
use super::step::measured;

/// What a rule looks at: `the copper strip`.
#[must_use]
pub fn look(look: Look) -> &'static str {
    match look {
        Look::Property(of) => property(of),
        Look::CopperStrip => "copper strip",
        Look::Class => "class on the label",
        Look::Name => "name on the can",
        Look::Family => "sort of oil",
        Look::Soap => "soap of the grease",
        Look::Stiffness => "stiffness of the grease",
        Look::Surfaces => "surfaces",
        Look::Warmth => "how warm it runs",
        Look::Irreplaceable => "cannot be bought again",
        Look::Speed => "speed of the surfaces",
        Look::Clearance => "clearance",
        Look::Way => "way of oiling",
        Look::Strainer => "something strains the oil",
        Look::Clutch => "a friction clutch is in it",
        Look::Kind => "moving pair",
        Look::Steps => "grades outside what is wanted",
    }
}

/// What was seen: `active sulphur: not stated`.
#[must_use]
pub fn seen(seen: &Seen, units: Units) -> String {
    let value = match &seen.value {
        Value::Words(words) => words.clone(),
        Value::Quantity(si, unit) => measured(*si, unit, units),
        Value::Stated(stated, None) => stated.to_string(),
        Value::Stated(stated, Some(class)) => format!("{stated}, for {class} implies it"),
        Value::Known(Known::Yes) => "yes".to_owned(),
        Value::Known(Known::No) => "no".to_owned(),
        Value::Known(Known::Unsaid) => "nobody says".to_owned(),
    };
    format!("{}: {value}", look(seen.look))
}
