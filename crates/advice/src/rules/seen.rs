//! What a rule looks at in an oil and at a place, with what it saw there: the values that go into a verdict.

use shop::shelf::Stated;
use tribology::quantity::Quantity as _;

use super::Case;
use crate::label::{Property, stated};
use crate::need::{Known, Way};

/// Something that a rule looks at.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Look {
    /// What the label or its class says of a property.
    Property(Property),
    /// The copper strip.
    CopperStrip,
    /// The class on the label.
    Class,
    /// What stands on the can.
    Name,
    /// The sort of oil.
    Family,
    /// The soap of a grease.
    Soap,
    /// How stiff a grease is.
    Stiffness,
    /// Of what the pair is made.
    Surfaces,
    /// How warm it runs, or whether it is a loaded worm.
    Warmth,
    /// Whether it can be bought again.
    Irreplaceable,
    /// How fast its surfaces rub.
    Speed,
    /// How close it is made.
    Clearance,
    /// How oil gets there.
    Way,
    /// Whether anything strains the oil.
    Strainer,
    /// Whether a friction clutch stands in the oil.
    Clutch,
    /// What kind of pair it is.
    Kind,
    /// How many grades its body lies outside what is wanted.
    Steps,
}

/// What was seen.
#[derive(Clone, Debug, PartialEq)]
pub struct Seen {
    /// At what.
    pub look: Look,
    /// What there was.
    pub value: Value,
}

/// What a look found.
#[derive(Clone, Debug, PartialEq)]
pub enum Value {
    /// In words.
    Words(String),
    /// A quantity in its base SI unit.
    Quantity(f64, &'static str),
    /// Stated or not, and the class that implies it.
    Stated(Stated, Option<&'static str>),
    /// Known or not.
    Known(Known),
}

impl Case<'_, '_> {
    /// What there is to see.
    pub(crate) fn seen(&self, look: Look) -> Seen {
        let (oil, place) = (self.oil, self.place);
        let words = |text: Option<String>| Value::Words(text.unwrap_or_else(|| "nobody says".to_owned()));
        let yes = |is: bool| Value::Known(if is { Known::Yes } else { Known::No });
        let value = match look {
            Look::Property(property) => {
                let known = stated(oil, property);
                Value::Stated(known.stated, known.by.map(|class| class.words[0]))
            }
            Look::CopperStrip => words(oil.copper_strip.clone()),
            Look::Class => words(oil.symbol.clone()),
            Look::Name => words(Some(oil.name.clone())),
            Look::Family => words(Some(oil.family.to_string())),
            Look::Soap => words(oil.grease.thickener.clone()),
            Look::Stiffness => words(oil.grease.nlgi.as_ref().map(|nlgi| format!("NLGI {nlgi}"))),
            Look::Surfaces => {
                words(place.pair.filter(|pair| !pair.surfaces.is_empty()).map(|pair| pair.surfaces.join(" on ")))
            }
            Look::Warmth => match place.pair.and_then(|pair| pair.temperature.as_ref()) {
                Some(at) => Value::Quantity(at.value.si(), "K"),
                None if place.hot == Known::Yes => words(Some("a loaded worm, which heats itself".to_owned())),
                None => words(None),
            },
            Look::Irreplaceable => yes(place.is_irreplaceable),
            Look::Speed => place.fastest.map_or_else(|| words(None), |speed| Value::Quantity(speed.si(), "m/s")),
            Look::Clearance => match place.pair.and_then(|pair| pair.clearance.as_ref()) {
                Some(clearance) => Value::Quantity(clearance.value.si(), "m"),
                None => words(None),
            },
            Look::Way => words(Some(place.point.method.to_string())),
            Look::Strainer => yes(!(place.is_unfiltered && place.way == Way::Bath)),
            Look::Clutch => yes(place.clutch || place.is_dry_clutch),
            Look::Kind => words(place.pair.map(|pair| pair.kind.to_string())),
            Look::Steps => self.steps.map_or_else(|| words(None), |steps| Value::Quantity(steps, "")),
        };
        Seen { look, value }
    }
}
