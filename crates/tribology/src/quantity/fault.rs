//! What can be wrong with a typed quantity, as data.
//!
//! The sentences that a person reads are written elsewhere; this holds what they need to say.

use super::{Kind, Unit};

/// Why a text is not the quantity that was asked for.
#[derive(Clone, Debug, PartialEq)]
pub enum TypedFault {
    /// Nothing was typed.
    Empty,
    /// The text does not begin with a number, or holds more than one.
    NotANumber {
        /// The text as typed.
        text: String,
    },
    /// A comma that may part thousands or decimals, as in "1,000".
    UnclearComma {
        /// The text as typed.
        text: String,
    },
    /// A number without a unit where one is needed.
    NoUnit {
        /// The number as typed.
        number: String,
        /// What was asked for.
        kind: Kind,
    },
    /// No kind of quantity has a unit of this spelling.
    UnknownUnit {
        /// The unit as typed.
        unit: String,
        /// What was asked for.
        kind: Kind,
        /// The symbol of the unit of that kind with the nearest spelling, when one is near.
        nearest: Option<&'static str>,
    },
    /// A unit of another kind of quantity.
    WrongKind {
        /// The unit as typed.
        unit: String,
        /// What this unit measures.
        is: Kind,
        /// What was asked for.
        wanted: Kind,
    },
    /// A word that names more than one unit, as "pint" does.
    Unclear {
        /// The unit as typed.
        unit: String,
        /// The symbols of the units that it may mean.
        choices: Vec<&'static str>,
    },
    /// A pair such as "138 °C (170 °F)" whose halves differ by more than their typed digits allow.
    PairDisagrees {
        /// The first half as typed.
        first: String,
        /// The second half as typed, without its brackets.
        second: String,
        /// The second half, in the unit of the first.
        second_in_first_unit: f64,
        /// The unit of the first half.
        unit: &'static Unit,
    },
}
