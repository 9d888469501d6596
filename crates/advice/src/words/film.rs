//! What a bearing's film is over its speeds, in words and ranges and never as a bare thickness; what was taken for it, and what is worth
//! measuring.

use tribology::contact::Regime;
use tribology::quantity::{Quantity, Rotation, Temperature, Units, digits_of, said_si, usual_unit};

use crate::film::{Assumed, AtWork, By, InRoom, Kind, Reached, STOP_C, State, Swing, TooTight, WARMER_K, What};
use crate::need::Band;

/// `boundary at 12 rpm, mixed from about 18 rpm, full film from about 50 rpm`.
#[must_use]
pub fn regimes(found: &InRoom, kind: Kind) -> String {
    let said = spans(found, kind);
    match said.as_slice() {
        [] => "nothing can be said of its film".to_owned(),
        [(word, first, last)] if first == last => format!("{word} at {} rpm", rpm(*first)),
        [(word, first, last)] => format!("{word} at all its speeds, {} to {} rpm", rpm(*first), rpm(*last)),
        [(word, first, to), rest @ ..] => {
            let start = if first == to {
                format!("{word} at {} rpm", rpm(*first))
            } else {
                format!("{word} up to {} rpm", rpm(*to))
            };
            let rest = rest.iter().map(|(word, from, _)| format!("{word} from about {} rpm", digits_of(from.rpm(), 2)));
            std::iter::once(start).chain(rest).collect::<Vec<_>>().join(", ")
        }
    }
}

/// The film in a word or two, and the speed from which it is so, slowest first.
#[must_use]
pub fn film_spans(found: &InRoom, kind: Kind) -> Vec<(&'static str, Rotation)> {
    spans(found, kind).into_iter().map(|(word, from, _)| (word, from)).collect()
}

/// Words with the speed from which each holds and the fastest charted speed for which it does.
fn spans(found: &InRoom, kind: Kind) -> Vec<(&'static str, Rotation, Rotation)> {
    let mut spans: Vec<(&'static str, Rotation, Rotation)> = Vec::new();
    let mut changes = found.changes.iter().peekable();
    for (speed, state) in &found.at {
        while let Some(change) = changes.next_if(|change| change.from <= *speed) {
            spans.push((regime(change.to, kind), change.from, change.from));
        }
        let word = state.map_or(HOT, |state| regime(state.regime, kind));
        match spans.last_mut() {
            Some((last, _, to)) if *last == word => *to = *speed,
            _ => spans.push((word, *speed, *speed)),
        }
    }
    spans
}

const HOT: &str = "hotter and hotter";

/// The film in a word or two.
#[must_use]
pub fn regime(regime: Regime, kind: Kind) -> &'static str {
    match (kind, regime) {
        (Kind::Plain, Regime::Boundary) => "boundary",
        (Kind::Plain, Regime::Mixed) => "mixed",
        (Kind::Rolling, Regime::Boundary) => "thinner than wanted",
        (Kind::Rolling, Regime::Mixed) => "thick enough",
        (_, Regime::Full) => "full film",
    }
}

/// `18 to 27 °C`, from the slowest to the fastest speed.
#[must_use]
pub fn warmth(found: &InRoom, units: Units) -> String {
    let at = |state: &Option<State>| state.map(|state| state.temperature);
    let last = found.at.last().map(|(_, state)| at(state));
    match (found.at.iter().find_map(|(_, state)| at(state)), last) {
        (None, _) | (_, None) => "it gets hotter and hotter".to_owned(),
        (Some(first), Some(None)) => {
            format!("{} at its slowest, and hotter and hotter at its fastest", degrees(first, units))
        }
        (Some(first), Some(Some(last))) if whole(first, units) == whole(last, units) => {
            format!("about {}", degrees(first, units))
        }
        (Some(first), Some(Some(last))) => format!("about {} to {}", whole(first, units), degrees(last, units)),
    }
}

/// What was taken as usual, and in which range it lies: `clearance 0.05 mm on the diameter (0.038 to 0.075 mm)`.
#[must_use]
pub fn film_assumed(assumed: &Assumed, units: Units) -> String {
    let name = name(&assumed.what);
    let [low, usual, high] = figures(&assumed.what, units);
    let standing = assumed.standing.words();
    match assumed.what {
        What::Washed(_) => {
            "no heat taken along by the oil that the pump sends, though all of it may come as cool as the air"
                .to_owned()
        }
        _ => format!("{name} {usual}; {low} to {high} are met ({standing})"),
    }
}

/// What is worth finding out first: of the dimensions the one that moves the answer most, and the warmth itself where that hangs on how heat
/// gets away. Nothing where all dimensions are known and it stays cool.
#[must_use]
pub fn worth_measuring(swing: &[Swing], kind: Kind, units: Units) -> Option<String> {
    let moves = |swing: &&Swing| swing.much >= MATTERS;
    let dimension = swing.iter().filter(moves).find(|swing| swing.assumed.what.is_dimension());
    let dimension = dimension.map(|first| {
        format!("the {} first: it moves {}", name(&first.assumed.what), moved(first, kind, units).join(", and "))
    });
    let heat = swing.iter().filter(moves).find(|swing| !swing.assumed.what.is_dimension());
    let heat = heat.map(|first| {
        format!(
            "its warmth after an hour at top speed, by a thermometer on the bearing: how heat gets away moves {}",
            moved(first, kind, units).join(", and ")
        )
    });
    match (dimension, heat) {
        (Some(dimension), Some(heat)) => Some(format!("{dimension}; and {heat}")),
        (one, other) => one.or(other),
    }
}

/// Less than this is not worth a walk to the machine; see [`Swing::much`].
const MATTERS: f64 = 0.3;

/// How far something moves the answer: `clearance on the diameter: it moves full film from 30 rpm to 110 rpm`.
#[must_use]
pub fn film_swing(swing: &Swing, kind: Kind, units: Units) -> String {
    let (name, moves) = (name(&swing.assumed.what), moved(swing, kind, units));
    if moves.is_empty() {
        return format!("{name}: it moves next to nothing");
    }
    format!("{name}: it moves {}", moves.join(", and "))
}

/// What something moves, from where to where.
fn moved(swing: &Swing, kind: Kind, units: Units) -> Vec<String> {
    let goal = match kind {
        Kind::Plain => "full film",
        Kind::Rolling => "a film thick enough",
    };
    let [first, last] = swing.reached.map(|reached| match reached {
        Reached::Always => "all its speeds".to_owned(),
        Reached::From(speed) => format!("{} rpm", digits_of(speed.rpm(), 2)),
        Reached::Never => "none of its speeds".to_owned(),
    });
    let [cool, warm] = swing.top.map(|top| top.map(|top| degrees(top, units)));
    let mut moves = Vec::new();
    if first != last {
        moves.push(format!("{goal} from {first} to {last}"));
    }
    match (cool, warm) {
        (Some(cool), Some(warm)) if cool != warm => {
            moves.push(format!("the warmth at top speed from {cool} to {warm}"));
        }
        (Some(cool), None) => moves.push(format!("the warmth at top speed from {cool} to hotter and hotter")),
        _ => {}
    }
    moves
}

/// Why a bearing is too tight for its oil, a sentence without its full stop.
#[must_use]
pub fn too_tight(found: &TooTight, units: Units) -> String {
    let stop = degrees(Temperature::from_celsius(STOP_C), units);
    let hot = found.at_least.map_or_else(
        || "it gets hotter and hotter".to_owned(),
        |at_least| format!("it comes to about {} at the least", degrees(at_least, units)),
    );
    let measured = found.measured.as_ref().map(|measured| {
        format!("; measured while working were {measured}, and if that was at this speed, trust it more")
    });
    format!(
        "{} is too tight for {} at {} rpm: with {} of clearance, and {} in the shop, {hot}, where a plain spindle is stopped above {stop}{}",
        found.name,
        found.oil,
        rpm(found.speed),
        found.clearance,
        degrees(found.air, units),
        measured.unwrap_or_default(),
    )
}

/// What to do about it.
#[must_use]
pub fn too_tight_remedy() -> &'static str {
    "Take a thinner oil, check the clearance, or run it slower, and feel it often. A sum by usual values of heat; the limit is from memory, and the \
     maker's figures come first."
}

fn name(what: &What) -> &'static str {
    match what {
        What::Clearance(_) => "clearance on the diameter",
        What::Load(_) => "load on the projected bearing",
        What::Length(_) => "length",
        What::Roughness(_) => "roughness of the two faces",
        What::Outside(_) => "outside diameter",
        What::Width(_) => "width",
        What::Drag(_) => "drag in its oil, as a factor",
        What::Surface(_) => "surface that gives off its heat",
        What::Coefficient(_) => "heat given off by still air",
        What::Washed(_) => "heat taken along by the pump's oil",
        What::Index(_) => "viscosity index of the oil",
    }
}

/// The least, the usual and the most.
fn figures(what: &What, units: Units) -> [String; 3] {
    fn each<T: Copy>(span: &crate::film::Span<T>, said: impl Fn(T) -> String) -> [String; 3] {
        [span.low, span.usual, span.high].map(said)
    }
    fn plain<Q: Quantity>(units: Units) -> impl Fn(Q) -> String {
        move |value| said_si(value.si(), usual_unit(Q::KIND, units, value.si()), 2)
    }
    match what {
        What::Clearance(span) | What::Length(span) | What::Outside(span) | What::Width(span) => {
            each(span, plain(units))
        }
        What::Load(span) => each(span, plain(units)),
        What::Surface(span) => each(span, plain(units)),
        What::Coefficient(span) => each(span, plain(units)),
        What::Roughness(span) => each(span, |[first, second]| {
            let said = plain(units);
            format!("{} and {}", said(first), said(second))
        }),
        What::Drag(span) | What::Washed(span) | What::Index(span) => each(span, |number| digits_of(number, 2)),
    }
}

fn rpm(speed: Rotation) -> String {
    digits_of(speed.rpm(), 3)
}

/// A temperature in whole degrees.
#[must_use]
pub fn degrees(at: Temperature, units: Units) -> String {
    format!("{} {}", whole(at, units), usual_unit(Temperature::KIND, units, at.si()).symbol)
}

/// Whole degrees: the sum is no better.
fn whole(at: Temperature, units: Units) -> String {
    let number = format!("{:.0}", usual_unit(Temperature::KIND, units, at.si()).from_si(at.si()));
    if number == "-0" { "0".to_owned() } else { number }
}

/// What a band at 40 °C comes to where a pair works: `85 to 130 mm²/s at 33 °C, as warm as it works by the heat that it makes`. Nothing where the
/// usual viscosity index gives no line.
#[must_use]
pub fn at_work(work: &AtWork, band: &Band, units: Units) -> Option<String> {
    let (low, high) = work.band(band)?;
    let known = match work.by {
        By::Measured => "as was measured at work".to_owned(),
        By::Heat => "as warm as it gets by the heat that it makes at its top speed on a usual day".to_owned(),
        By::RuleOfThumb => {
            format!("taken as {} warmer than the shop on a usual day (common practice)", difference(WARMER_K, units))
        }
    };
    let digits = |number: f64| digits_of(number, 2);
    let at = degrees(work.temperature, units);
    Some(format!("{} to {} mm²/s at {at}, {known}", digits(low.mm2_s()), digits(high.mm2_s())))
}

/// A difference of temperature: `15 °C`.
fn difference(kelvin: f64, units: Units) -> String {
    match units {
        Units::Metric => format!("{kelvin:.0} °C"),
        Units::Us => format!("{:.0} °F", 1.8 * kelvin),
    }
}
