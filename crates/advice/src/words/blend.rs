//! What speaks against mixing two oils, in words.

use crate::blend::Against;
use crate::label::Property;

/// `one is circulating oil, the other gear oil`.
#[must_use]
pub fn against(against: Against) -> String {
    match against {
        Against::Sorts(one, other) => format!("one is of the sort \"{one}\", the other of the sort \"{other}\""),
        Against::Unlike(of) => format!("one has {} in it and the other has not", property(of)),
        Against::Unsaid(of) => format!("one has {} in it, and of the other nobody says", property(of)),
    }
}

/// What may be in an oil, in the middle of a sentence.
#[must_use]
pub fn property(property: Property) -> &'static str {
    match property {
        Property::EpSulphur => "active sulphur (extreme pressure)",
        Property::Detergent => "detergent",
        Property::Tackifier => "tackifier",
        Property::FrictionModifier => "friction modifier",
        Property::Fatty => "fatty oil",
        Property::Solids => "graphite or other powder",
    }
}
