//! What a bearing's film would be at its speeds, in words.

use shop::chart::Method;
use tribology::contact::Regime;
use tribology::quantity::{Kind, Quantity, Temperature, Units, digits_of, said_si, usual_unit};

use crate::need::{Assumed, ColdFeed, Regimes};

use super::cold::by_can;

/// `boundary at 12 rpm, mixed from 18 to 41 rpm, full film from 62 rpm`.
#[must_use]
pub fn regimes(found: &Regimes) -> String {
    let word = |regime: Regime| match regime {
        Regime::Boundary => "boundary",
        Regime::Mixed => "mixed",
        Regime::Full => "full film",
    };
    let mut spans: Vec<(Regime, f64, f64)> = Vec::new();
    for (speed, regime) in &found.at {
        match spans.last_mut() {
            Some((last, _, to)) if last == regime => *to = speed.rpm(),
            _ => spans.push((*regime, speed.rpm(), speed.rpm())),
        }
    }
    let rpm = |number: f64| digits_of(number, 3);
    let last = spans.len().saturating_sub(1);
    let said = spans.iter().enumerate().map(|(number, (regime, from, to))| match (number, from == to) {
        (_, true) => format!("{} at {} rpm", word(*regime), rpm(*from)),
        (0, false) => format!("{} up to {} rpm", word(*regime), rpm(*to)),
        (number, false) if number == last => format!("{} from {} rpm", word(*regime), rpm(*from)),
        (_, false) => format!("{} from {} to {} rpm", word(*regime), rpm(*from), rpm(*to)),
    });
    said.collect::<Vec<_>>().join(", ")
}

/// What was taken as usual: `clearance 0.05 mm`.
#[must_use]
pub fn assumed(assumed: Assumed, units: Units) -> String {
    let length =
        |length: tribology::quantity::Length| said_si(length.si(), usual_unit(Kind::Length, units, length.si()), 2);
    match assumed {
        Assumed::Clearance(clearance) => format!("clearance {}, a thousandth of the diameter", length(clearance)),
        Assumed::Load(pressure) => {
            format!(
                "load of {} on the projected bearing",
                said_si(pressure.si(), usual_unit(Kind::Pressure, units, pressure.si()), 2)
            )
        }
        Assumed::Length(of) => format!("length {}, as long as its diameter", length(of)),
        Assumed::Roughness([first, second]) => format!("roughness {} and {}", length(first), length(second)),
    }
}

/// Why the way of oiling does not move an oil at a temperature; nothing where it does.
#[must_use]
pub fn cold_feed(feed: ColdFeed, method: Method, units: Units) -> Option<String> {
    let degrees = |at: Temperature| said_si(at.si(), usual_unit(Kind::Temperature, units, at.si()), 2);
    let what = if by_can(method) { "can".to_owned() } else { method.to_string() };
    match feed {
        ColdFeed::Moves => None,
        ColdFeed::Slow => Some(format!("the {what} gives it slowly by then")),
        ColdFeed::Fails { above } => Some(match above {
            Some(above) => {
                let at = degrees(above);
                format!("the {what} does not give it below about {at}: warm it, or take one grade thinner for the cold")
            }
            None => format!("the {what} does not give it"),
        }),
    }
}
