//! What is left of an oil, in words.

use shop::shelf::Amount;
use tribology::quantity::{Kind, Units, said_si, usual_unit};

use crate::stock::{Stock, Sum};

/// How many digits of an amount are worth saying.
const DIGITS: usize = 3;

/// `12.3 L`.
#[must_use]
pub fn amount(amount: Amount, units: Units) -> String {
    let (kind, si) = match amount {
        Amount::Volume(volume) => (Kind::Volume, volume.m3()),
        Amount::Mass(mass) => (Kind::Mass, mass.kg()),
    };
    said_si(si, usual_unit(kind, units, si), DIGITS)
}

/// `about 12.3 L`, or why nothing can be said.
#[must_use]
pub fn stock_left(stock: &Stock, units: Units) -> String {
    match stock.left {
        Some(left) => format!("about {}", amount(left, units)),
        None if stock.sums.iter().any(|(sum, _)| *sum == Sum::There) => {
            "less than nothing by the log; count it once".to_owned()
        }
        None => "never counted".to_owned(),
    }
}

/// The sums behind it: `41 L were there, 3.2 L given, 20 L bought; 12 times nobody wrote how much`.
#[must_use]
pub fn stock_sums(stock: &Stock, units: Units) -> String {
    let word = |sum: Sum| match sum {
        Sum::There => "there",
        Sum::Bought => "bought",
        Sum::Given => "given",
        Sum::Used => "used for something else",
        Sum::ThrownAway => "thrown away",
    };
    let sums: Vec<String> =
        stock.sums.iter().map(|(sum, total)| format!("{} {}", amount(*total, units), word(*sum))).collect();
    let uncounted = match stock.uncounted {
        0 => None,
        1 => Some("once nobody wrote how much was given".to_owned()),
        times => Some(format!("{times} times nobody wrote how much was given")),
    };
    [(!sums.is_empty()).then(|| sums.join(", ")), uncounted].into_iter().flatten().collect::<Vec<_>>().join("; ")
}
