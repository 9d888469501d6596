//! Density at a temperature, and specific gravity from API degrees.

use tribology::oil::{density_at, relative_density};
use tribology::quantity::{Density, Temperature};

use super::given::{Given, Refused};
use super::{Calculated, Item, Topic, Value};

pub(super) const TOPIC: Topic = Topic {
    name: "density",
    title: "Density",
    about: "The density of a lubricating oil at a temperature from that at 15 °C; or its specific gravity from API degrees.",
    words: None,
    options: &[
        Topic::once("rho15", "density at 15 °C", "900"),
        Topic::once("at", "temperature", "60C"),
        Topic::once("api", "API degrees", "25"),
    ],
    examples: &["density --rho15 900 --at 60C", "density --api 25"],
    answer,
};

fn answer(given: &Given<'_>) -> Result<Calculated, Refused> {
    let mut found = Calculated::default();
    match (given.quantity::<Density>("rho15", Some("kg/m3"))?, given.number("api")?) {
        (Some(rho15), None) => {
            let at = given.must::<Temperature>("at", None)?;
            let density = found.take(density_at(rho15, at)?);
            found.push(Item::quantity("kg_m3", "Density", density, "kg/m3"));
        }
        (None, Some(api)) => {
            let relative = found.take(relative_density(api)?);
            found.push(Item::new("specific_gravity", "Specific gravity, both at 60 °F", Value::Number(relative)));
        }
        _ => {
            return Err(Refused::new(
                "one of two is wanted: a density with a temperature (--rho15 900 --at 60C), or API degrees (--api 25)",
            ));
        }
    }
    Ok(found)
}
