//! What will not deliver in a cold shop, in sentences, with what to do.

use shop::chart::Method;
use tribology::quantity::{Kind, Quantity as _, Temperature, Units, usual_unit};

use crate::round::{Cold, WhyCold};

/// Why oil will not come at a point: `14 Driving shaft: the wick gives up below 10 °C with Circulating 68`.
#[must_use]
pub fn cold(cold: &Cold, units: Units) -> String {
    let oil = cold.oil.as_ref().map_or_else(|| "an oil of grade 68".to_owned(), |oil| oil.name.clone());
    let (id, name, method) = (&cold.id, &cold.name, cold.method);
    match cold.why {
        WhyCold::TooThick { below } => {
            let when = below.map(|below| format!(" below about {}", degrees(below, units))).unwrap_or_default();
            if by_can(method) {
                format!("{id} {name}: {oil} hardly leaves the can{when}")
            } else {
                format!("{id} {name}: the {method} gives up{when} with {oil}")
            }
        }
        WhyCold::NotPouring { pours } => {
            format!("{id} {name}: {oil} does not pour below {}", degrees(pours, units))
        }
    }
}

/// Whether oil comes out of a can that somebody holds.
pub(super) fn by_can(method: Method) -> bool {
    matches!(method, Method::OilHole | Method::BallOiler | Method::Cup | Method::Nipple)
}

/// What to do about it, as a sentence (common practice).
#[must_use]
pub fn cold_remedy(cold: &Cold) -> &'static str {
    if matches!(cold.why, WhyCold::NotPouring { .. }) {
        return "Keep the can in the warm until the minute it is used, or take an oil that pours; do not start on this one.";
    }
    match cold.method {
        Method::Wick | Method::Felt => {
            "Give the bearing a few drops by hand before the start, and look at it again when it is warm; take a grade thinner for \
             the winter."
        }
        Method::Drip => {
            "Count the drops cold and open the needle until they come as they should; set it back when it is warm."
        }
        Method::Bottle => "Give the bearing a few drops by hand, and see that the level moves when it has run a while.",
        Method::Ring => "Oil the journal by hand, start slowly, and see that the ring turns before you load it.",
        Method::OneShot => {
            "Pull it and wait until the handle is back, then wipe a way and see that a fresh line of oil comes; oil by hand what \
             stays dry. Warm the tank, or take a grade thinner."
        }
        Method::TotalLossPump => {
            "Run it slowly and watch every outlet; oil by hand what stays dry, and take a grade thinner for the winter."
        }
        Method::CirculatingPump => {
            "Start slowly and unloaded, and stop if nothing shows in the window after a minute; warm the oil, or take a grade \
             thinner."
        }
        Method::OilHole | Method::BallOiler | Method::Cup | Method::Nipple => {
            "Keep the can in the warm until the minute it is used, and wait until the oil has sunk in."
        }
        Method::GreaseCup | Method::Splash | Method::Bath | Method::Tray | Method::Brush => {
            "Start slowly and unloaded until it throws, or warm the oil."
        }
    }
}

fn degrees(temperature: Temperature, units: Units) -> String {
    let unit = usual_unit(Kind::Temperature, units, temperature.si());
    format!("{:.0} {}", unit.from_si(temperature.si()), unit.symbol)
}
