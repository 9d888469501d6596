//! A line of working in words: the formula, what went in, what came out, and how firmly it stands.

use tribology::quantity::{Kind, Units, digits_of, said_si, usual_unit};
use tribology::{Standing, Step, Symbol, Warning};

/// Significant digits of a number that no unit of the workshop makes handy.
const DIGITS: usize = 4;
/// Below this a number without a unit is said by its significant digits.
const SMALL: f64 = 0.01;

/// A step as a line: `Strokes of the can: volume / stroke; volume = 1.6 mL, stroke = 0.8 mL; count = 2 (common practice, no source)`.
#[must_use]
pub fn step(step: &Step, units: Units) -> String {
    let inputs: Vec<String> = step.symbols.iter().map(|one| symbol(one, units)).collect();
    let (name, formula, result) = (step.name, step.formula, symbol(&step.result, units));
    // A limit has nothing that goes in.
    let inputs = if inputs.is_empty() { String::new() } else { format!("{}; ", inputs.join(", ")) };
    format!("{name}: {formula}; {inputs}{result} ({})", source(step))
}

/// The source and standing of a step, once where they say the same.
#[must_use]
pub fn source(step: &Step) -> String {
    match step.standing {
        Standing::CommonPractice => "common practice, no source".to_owned(),
        Standing::OwnCalculation => "own calculation".to_owned(),
        Standing::FromMemory => "from memory, not looked up".to_owned(),
        Standing::Standard | Standing::Handbook => format!("{}, {}", step.standing.words(), step.source),
    }
}

/// A warning as a sentence without its full stop.
#[must_use]
pub fn warning(warning: &Warning) -> String {
    match warning {
        Warning::BeyondSource { name, value, low, high, unit } => {
            let [value, low, high] = [*value, *low, *high].map(|number| measured(number, unit, Units::Metric));
            format!("{name} is {value}, outside {low} to {high}, the range for which the source vouches")
        }
    }
}

/// A number in a base SI unit as people say it; a plain number when the unit is empty.
pub(super) fn measured(si: f64, unit: &str, units: Units) -> String {
    match Kind::ALL.iter().find(|kind| kind.si_symbol() == unit && !unit.is_empty()) {
        Some(kind) => said_si(si, usual_unit(*kind, units, si), 4),
        None => digits_of(si, 4),
    }
}

/// `since = 3 h`: base units are said in those of the workshop.
fn symbol(symbol: &Symbol, units: Units) -> String {
    let kind = Kind::ALL.iter().find(|kind| kind.si_symbol() == symbol.unit);
    let said = match kind {
        // Running hours stay hours however many they are: intervals are written so.
        Some(Kind::Time) if symbol.si >= 3600.0 => format!("{} h", tidy(symbol.si / 3600.0)),
        Some(kind) => {
            let unit = usual_unit(*kind, units, symbol.si);
            format!("{} {}", tidy(unit.from_si(symbol.si)), unit.symbol)
        }
        // Drops and strokes are counted by the minute; what turns has the unit `/s`.
        None if symbol.unit == "1/s" => format!("{} /min", digits_of(60.0 * symbol.si, DIGITS)),
        None if !symbol.unit.is_empty() => format!("{} {}", digits_of(symbol.si, DIGITS), symbol.unit),
        // Three decimals would make nothing of a small number.
        None if symbol.si.abs() < SMALL => digits_of(symbol.si, DIGITS),
        None => tidy(symbol.si),
    };
    format!("{} = {said}", symbol.symbol)
}

fn tidy(value: f64) -> String {
    // Three decimals would leave nothing of it.
    if value != 0.0 && value.abs() < 0.01 {
        return digits_of(value, 4);
    }
    let fixed = format!("{value:.3}");
    fixed.trim_end_matches('0').trim_end_matches('.').to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(symbols: Vec<Symbol>, result: Symbol, says: &str) {
        let (formula, source, standing) = ("y = x", "none", Standing::OwnCalculation);
        let line = Step { name: "Sum", formula, symbols, result, source, standing };
        assert_eq!(step(&line, Units::Metric), says);
    }

    #[test]
    fn small_numbers_and_odd_units_keep_what_they_say() {
        let of = |si, unit| Symbol { symbol: "x", si, unit };
        check(vec![of(1.733_33e-11, "")], of(6e-7, ""), "Sum: y = x; x = 1.733e-11; x = 6e-7 (own calculation)");
        check(vec![], of(2.5, "Pa·s/m"), "Sum: y = x; x = 2.5 Pa·s/m (own calculation)");
        check(
            vec![of(0.05, ""), of(0.0, "")],
            of(0.02, "m"),
            "Sum: y = x; x = 0.05, x = 0; x = 20 mm (own calculation)",
        );
    }
}
