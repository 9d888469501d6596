//! Viscosity at temperatures, and the temperature for a viscosity, from two known viscosities or from one and an index.

use tribology::oil::{USUAL_INDEX, ViscosityLine};
use tribology::quantity::{KinematicViscosity, Temperature};

use super::given::{Given, Refused, read};
use super::{Calculated, Item, Topic, Value};

pub(super) const TOPIC: Topic = Topic {
    name: "viscosity",
    title: "Viscosity at a temperature",
    about: "How thick an oil is at a temperature, or at which temperature it reaches a viscosity: from two known viscosities, or \
            from one and its viscosity index.",
    words: None,
    options: &[
        Topic::often("known", "known viscosity, as temperature=viscosity", "40C=68"),
        Topic::once("index", "viscosity index", "95"),
        Topic::often("at", "temperature", "0C"),
        Topic::once("reach", "viscosity to be reached", "1000mm2/s"),
    ],
    examples: &[
        "viscosity --known 40C=68 --known 100C=8.53 --at 0C --at 20C",
        "viscosity --known 40C=68 --index 95 --at 0C",
        "viscosity --known 40C=68 --known 100C=8.53 --reach 1000mm2/s",
    ],
    answer,
};

fn answer(given: &Given<'_>) -> Result<Calculated, Refused> {
    let mut found = Calculated::default();
    let line = line(given, &mut found)?;
    found.oils.push(("this oil".to_owned(), line));
    let mut rows = Vec::new();
    for text in given.all("at") {
        let at: Temperature = read("--at", text, None)?;
        let viscosity = found.take(line.viscosity(at)?);
        rows.push(vec![Item::quantity("t_c", "at", at, "C"), Item::quantity("mm2_s", "viscosity", viscosity, "mm2/s")]);
    }
    if let Some(reach) = given.quantity::<KinematicViscosity>("reach", Some("mm2/s"))? {
        let temperature = found.take(line.temperature(reach)?);
        found.push(Item::quantity("temperature_c", "Temperature", temperature, "C"));
    } else if rows.is_empty() {
        return Err(Refused::new(
            "nothing is asked; add a temperature such as --at 20C, or a viscosity such as --reach 1000mm2/s",
        ));
    }
    if !rows.is_empty() {
        found.items.insert(0, Item::new("viscosity", "Viscosity", Value::Rows(rows)));
    }
    Ok(found)
}

/// The line of the oil that the options describe.
fn line(given: &Given<'_>, found: &mut Calculated) -> Result<ViscosityLine, Refused> {
    let known = given.all("known").map(known).collect::<Result<Vec<_>, _>>()?;
    let index = given.number("index")?;
    let line = match (known.as_slice(), index) {
        ([], _) => return Err(given.missing("known")),
        ([first, second], None) => ViscosityLine::through(*first, *second)?,
        ([one], Some(index)) => ViscosityLine::through_with_index(*one, index)?,
        ([one], None) => {
            found.assume(format!(
                "viscosity index {USUAL_INDEX}, that of a plain solvent-refined mineral oil (common practice, no source)"
            ));
            ViscosityLine::through_with_index(*one, USUAL_INDEX)?
        }
        _ => {
            return Err(Refused::new(
                "too much is known: give two viscosities (--known 40C=68 --known 100C=8.53), or one and an index (--index 95)",
            ));
        }
    };
    Ok(found.take(line))
}

/// `40C=68`: a temperature and the viscosity there.
fn known(text: &str) -> Result<(Temperature, KinematicViscosity), Refused> {
    let Some((temperature, viscosity)) = text.split_once('=') else {
        return Err(Refused::new(format!(
            "--known is \"{text}\"; write the temperature, an equals sign and the viscosity there, such as 40C=68"
        )));
    };
    Ok((
        read("the temperature of --known", temperature, None)?,
        read("the viscosity of --known", viscosity, Some("mm2/s"))?,
    ))
}
