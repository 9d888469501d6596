//! Viscosity index from two viscosities, and the missing one of the three.

use tribology::oil::{v40_of_index, v100_of_index, viscosity_index};
use tribology::quantity::KinematicViscosity;

use super::given::{Given, Refused};
use super::{Calculated, Item, Topic, Value};

pub(super) const TOPIC: Topic = Topic {
    name: "index",
    title: "Viscosity index",
    about: "The viscosity index from the viscosities at 40 °C and 100 °C; or, from the index and one of them, the other.",
    words: None,
    options: &[
        Topic::once("v40", "viscosity at 40 °C", "73.30"),
        Topic::once("v100", "viscosity at 100 °C", "8.86"),
        Topic::once("index", "viscosity index", "95"),
    ],
    examples: &["index --v40 73.30 --v100 8.86", "index --v40 68 --index 95", "index --v100 8.86 --index 95"],
    answer,
};

fn answer(given: &Given<'_>) -> Result<Calculated, Refused> {
    let mut found = Calculated::default();
    let viscosity = |name| given.quantity::<KinematicViscosity>(name, Some("mm2/s"));
    match (viscosity("v40")?, viscosity("v100")?, given.number("index")?) {
        (Some(v40), Some(v100), None) => {
            let index = found.take(viscosity_index(v40, v100)?);
            found.push(Item::new("viscosity_index", "Viscosity index", Value::Number(index)));
            // Half goes to the even neighbour, as the standard rounds.
            found.push(Item::new("rounded", "as it is reported", Value::Whole(index.round_ties_even() as i64)));
        }
        (Some(v40), None, Some(index)) => {
            let v100 = found.take(v100_of_index(v40, index)?);
            found.push(Item::quantity("v100_mm2_s", "Viscosity at 100 °C", v100, "mm2/s"));
        }
        (None, Some(v100), Some(index)) => {
            let v40 = found.take(v40_of_index(v100, index)?);
            found.push(Item::quantity("v40_mm2_s", "Viscosity at 40 °C", v40, "mm2/s"));
        }
        _ => {
            return Err(Refused::new(
                "two of the three are wanted: --v40 73.30 --v100 8.86 for the index, or one of them with --index 95 for the other",
            ));
        }
    }
    Ok(found)
}
