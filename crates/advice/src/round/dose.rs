//! The dose as a person gives it: in the strokes of the can at hand, or in drops.

use shop::amount::{DROP, DoseAmount};
use shop::chart::Point;
use shop::shelf::Can;
use tribology::quantity::Quantity as _;
use tribology::{Standing, Step, Symbol};

use super::act::Act;

/// A dose with what it rests on.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct DoseSaid {
    /// How much, in words.
    pub said: Option<String>,
    /// The sum, when there was one.
    pub step: Option<Step>,
    /// Whether a volume was counted in drops of the usual size.
    pub counted_in_drops: bool,
}

/// From so many strokes on a volume is said in strokes; less is said in drops, for nobody gives a quarter stroke.
const FEWEST_STROKES: f64 = 0.75;

/// Beyond so many strokes people pour by the measure, so the volume is said too.
const MOST_STROKES: f64 = 5.0;

/// The dose of a point, by the can that holds its oil. Doses charted in strokes, drops or turns stay as they were written.
#[must_use]
pub fn dose_said(point: &Point, act: Act, can: Option<&Can>) -> DoseSaid {
    let said = |text: String| DoseSaid { said: Some(text), ..DoseSaid::default() };
    let Some(dose) = &point.dose else {
        return if act == Act::TopUp { said("top up to the mark".to_owned()) } else { DoseSaid::default() };
    };
    let DoseAmount::Volume(volume) = dose.amount else { return said(dose.typed.clone()) };
    if let Some(stroke) = can.and_then(|can| can.stroke.as_ref()) {
        let strokes = volume.si() / stroke.value.si();
        if strokes >= FEWEST_STROKES {
            let halves = (strokes * 2.0).round() / 2.0;
            let step =
                step("Strokes of the can", "volume / stroke", volume.si(), ("stroke", stroke.value.si()), strokes);
            let strokes = counted(halves, "stroke");
            let said = if halves > MOST_STROKES { format!("{}, about {strokes}", dose.typed) } else { strokes };
            return DoseSaid { said: Some(said), step: Some(step), counted_in_drops: false };
        }
    } else if volume.ml() > 2.0 {
        return said(dose.typed.clone());
    }
    let drops = volume.si() / DROP.si();
    let step = step("Drops from a spout", "volume / drop", volume.si(), ("drop", DROP.si()), drops);
    DoseSaid { said: Some(counted(drops.round().max(1.0), "drop")), step: Some(step), counted_in_drops: true }
}

fn step(name: &'static str, formula: &'static str, volume: f64, part: (&'static str, f64), count: f64) -> Step {
    Step {
        name,
        formula,
        symbols: vec![
            Symbol { symbol: "volume", si: volume, unit: "m³" },
            Symbol { symbol: part.0, si: part.1, unit: "m³" },
        ],
        result: Symbol { symbol: "count", si: count, unit: "" },
        source: "common-practice",
        standing: Standing::CommonPractice,
    }
}

fn counted(count: f64, what: &str) -> String {
    let whole = count.trunc();
    let number = match (whole, count.fract() == 0.0) {
        (_, true) => format!("{whole}"),
        (0.0, false) => "½".to_owned(),
        (_, false) => format!("{whole}½"),
    };
    let plural = if count > 1.0 { "s" } else { "" };
    format!("{number} {what}{plural}")
}
