//! What a point wants, in sentences: what it must not have, what its plate asked for, what its way of oiling moves in the cold, and what to
//! take care of.

use shop::chart::{Method, PairKind};
use tribology::quantity::{Kind, Quantity as _, Temperature, Units, digits_of, said_si, usual_unit};

use crate::need::{Against, Band, Known, Movable, Need, Plate, Unwanted};
use crate::verdict::Verdict;

use super::cold::by_can;
use super::property;

/// What a point does not want: `active sulphur (extreme pressure): a stopgap at best, for …`.
#[must_use]
pub fn unwanted(unwanted: &Unwanted) -> String {
    let reason = &unwanted.reason;
    let cap =
        if reason.cap == Verdict::Never { "never".to_owned() } else { format!("{} at best", article(reason.cap)) };
    format!("{}: {cap}, for {} ({})", property(unwanted.property), reason.says, reason.rule)
}

fn article(verdict: Verdict) -> String {
    if verdict == Verdict::Stopgap { "a stopgap".to_owned() } else { verdict.to_string() }
}

/// What the plate asked for, and how that lies to what the pairs want.
#[must_use]
pub fn plate(plate: &Plate, band: Option<&Band>) -> String {
    let digits = |number: f64| digits_of(number, 2);
    let (low, high) = (plate.band.0.mm2_s(), plate.band.1.mm2_s());
    let said = if (low - high).abs() < 0.02 * high {
        format!("about {} mm²/s at 40 °C", digits(high))
    } else {
        format!("{} to {} mm²/s at 40 °C", digits(low), digits(high))
    };
    let against = match band.map(|band| plate.against(band)) {
        None => "",
        Some(Against::Agrees) => ", which agrees with it",
        Some(Against::Thicker) => ", thicker than that: look whether the plate is of this machine and this bearing",
        Some(Against::Thinner) => ", thinner than that: look whether the plate is of this machine and this bearing",
    };
    format!("The plate asks for {said} in today's terms{against}.")
}

/// What the way of oiling moves on a cold morning: `At 8 °C the wick gives oils up to about 46 mm²/s at 40 °C, and easily up to 28.`
#[must_use]
pub fn movable(movable: Movable, method: Method, at: Temperature, units: Units) -> String {
    let what = if by_can(method) { "can".to_owned() } else { method.to_string() };
    let digits = |number: f64| digits_of(number, 2);
    let at = said_si(at.si(), usual_unit(Kind::Temperature, units, at.si()), 2);
    format!(
        "On a cold morning of {at} the {what} gives oils of up to about {} mm²/s at 40 °C, easily up to {}.",
        digits(movable.most.mm2_s()),
        digits(movable.easy.mm2_s())
    )
}

/// The usual cautions where what is said of an oil could be taken as permission (common practice; the clutch and the load are safety).
#[must_use]
pub fn care(need: &Need<'_>) -> Vec<&'static str> {
    let any = |is: fn(&crate::need::Place<'_>) -> bool| need.pairs.iter().any(|(place, _)| is(place));
    let of = |kinds: &'static [PairKind]| {
        need.pairs.iter().any(|(place, _)| place.pair.is_some_and(|pair| kinds.contains(&pair.kind)))
    };
    let all = [
        (
            any(|place| place.clutch || place.is_dry_clutch),
            "A clutch or brake is here: after any change of oil try it unloaded, with everybody clear, before you trust it to hold.",
        ),
        (
            of(&[PairKind::Worm, PairKind::ScrewAndNut]),
            "A worm or screw that holds a load by its friction may let it run back under another oil: lower or block the load first.",
        ),
        (
            any(|place| place.close_and_fast > 0.0),
            "A close spindle seizes quickly: the maker's oil where it is known, slow speed first, and stop as soon as it is more than \
             hand-warm.",
        ),
        (
            any(|place| place.hot == Known::Yes),
            "This oil may be hot: let it cool below 50 °C before you drain it or open anything.",
        ),
    ];
    all.into_iter().filter(|(holds, _)| *holds).map(|(_, says)| says).collect()
}
