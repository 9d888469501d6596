//! A line of working in words: the formula, what went in, what came out, and how firmly it stands.

use tribology::{Standing, Step, Symbol, Warning};

/// A step as a line: `Strokes of the can: volume / stroke; volume = 1.6e-6 m³, … = 2 (common practice)`.
#[must_use]
pub fn step(step: &Step) -> String {
    let inputs: Vec<String> = step.symbols.iter().map(symbol).collect();
    format!("{}: {}; {}; {} ({})", step.name, step.formula, inputs.join(", "), symbol(&step.result), source(step))
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
        Warning::BeyondSource { name, value, low, high } => {
            format!("{name} is {value:.4}, outside {low:.4} to {high:.4}, the range for which the source vouches")
        }
    }
}

/// `since = 3 h`: seconds and cubic metres are said in the units of the workshop.
fn symbol(symbol: &Symbol) -> String {
    let said = match symbol.unit {
        "s" if symbol.si >= 3600.0 => format!("{} h", tidy(symbol.si / 3600.0)),
        "s" => format!("{} s", tidy(symbol.si)),
        "m³" => format!("{} mL", tidy(symbol.si * 1e6)),
        "" => tidy(symbol.si),
        unit => format!("{} {unit}", tidy(symbol.si)),
    };
    format!("{} = {said}", symbol.symbol)
}

fn tidy(value: f64) -> String {
    let fixed = format!("{value:.3}");
    fixed.trim_end_matches('0').trim_end_matches('.').to_owned()
}
