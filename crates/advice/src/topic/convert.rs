//! Old units of viscosity turned into one another, at the temperature of the reading.

use shop::reading::says_number;
use tribology::oil::Scale;
use tribology::quantity::{Temperature, number_and_unit};

use super::given::{Given, Refused};
use super::{Calculated, Item, Topic, Value};

pub(super) const TOPIC: Topic = Topic {
    name: "convert",
    title: "Old units of viscosity",
    about: "A reading in mm²/s, Saybolt, Redwood or Engler turned into another of them, at the same temperature. It does not go \
            from one temperature to another: `viscosity` does that.",
    words: Some(Topic::once("reading", "the reading with its unit", "300 SUS")),
    options: &[
        Topic::once("at", "temperature of the reading", "100F"),
        Topic::once("to", "unit wanted: mm2/s, cSt, SUS, SFS, R1, R2 or degE", "mm2/s"),
    ],
    examples: &["convert 300 SUS --at 100F --to mm2/s", "convert 68 cSt --to R1", "convert 4 degE --to mm2/s"],
    answer,
};

fn answer(given: &Given<'_>) -> Result<Calculated, Refused> {
    let mut found = Calculated::default();
    let (from, reading) = reading("the reading", &given.words()?)?;
    let to = scale("--to", given.text("to").ok_or_else(|| given.missing("to"))?)?;
    let at = match given.quantity::<Temperature>("at", None)? {
        Some(at) => at,
        None if [from, to].into_iter().any(needs_temperature) => {
            return Err(Refused::new(format!(
                "a reading in {} means nothing without its temperature; add it, such as --at 100F",
                if needs_temperature(from) { from.sign() } else { to.sign() }
            )));
        }
        // The other formulas do not ask for it.
        None => Temperature::from_celsius(40.0),
    };
    let kinematic = found.take(from.viscosity(reading, at)?);
    let value = found.take(to.reading(kinematic, at)?);
    let spread = from.spread() + to.spread();
    if spread > 0.01 {
        found.assume(format!("books differ by about {:.0} % in what such a reading is", 100.0 * spread));
    }
    found.push(Item::new("value", to.sign(), Value::Number(value)));
    Ok(found)
}

/// A reading as it was typed: its scale and its number.
pub(crate) fn reading(what: &str, text: &str) -> Result<(Scale, f64), Refused> {
    let (number, unit) = number_and_unit(text).map_err(|fault| Refused::new(says_number(what, &fault)))?;
    if unit.is_empty() {
        return Err(Refused::new(format!("{what} is \"{text}\" without a unit; write it like 300 SUS or 68 mm2/s")));
    }
    Ok((scale(what, unit)?, number))
}

fn needs_temperature(scale: Scale) -> bool {
    matches!(scale, Scale::SayboltUniversal | Scale::SayboltFurol)
}

fn scale(what: &str, unit: &str) -> Result<Scale, Refused> {
    let key: String = unit.chars().filter(|sign| sign.is_alphanumeric() || *sign == '/').collect();
    match key.to_lowercase().as_str() {
        "mm2/s" | "cst" | "centistokes" => Ok(Scale::Kinematic),
        "sus" | "ssu" | "suv" => Ok(Scale::SayboltUniversal),
        "sfs" | "ssf" => Ok(Scale::SayboltFurol),
        "r1" => Ok(Scale::Redwood1),
        "r2" => Ok(Scale::Redwood2),
        "dege" | "e" | "°e" => Ok(Scale::Engler),
        _ => Err(Refused::new(format!(
            "{what} has the unit \"{unit}\", which is none of mm2/s, cSt, SUS, SFS, R1, R2 and degE; choose one of these"
        ))),
    }
}
