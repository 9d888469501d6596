//! What a drip comes to in an hour.

use tribology::feed::{Glass, drip_flow, usual_drop};
use tribology::quantity::{Rotation, Volume};

use super::given::{Given, Refused};
use super::{Calculated, Item, Topic};

pub(super) const TOPIC: Topic = Topic {
    name: "drip",
    title: "Drops to volume",
    about: "What a drip comes to in an hour. A drop in air is taken for 33 µL, thirty to the millilitre; in a glass filled with \
            liquid for three times as much. Count drops into a measure to know your own.",
    words: None,
    options: &[
        Topic::once("rate", "drops in a time", "10/min"),
        Topic::once("drop", "volume of a drop", "33uL"),
        Topic::once("glass", "what the drops go through: air or liquid", "air"),
    ],
    examples: &["drip --rate 10/min", "drip --rate 10/min --drop 33uL", "drip --rate 4/min --glass liquid"],
    answer,
};

fn answer(given: &Given<'_>) -> Result<Calculated, Refused> {
    let mut found = Calculated::default();
    let rate = given.must::<Rotation>("rate", Some("/min"))?;
    let glass = glass(given)?;
    let drop = match (given.quantity::<Volume>("drop", Some("uL"))?, glass) {
        (Some(drop), None) => drop,
        (Some(_), Some(_)) => {
            return Err(Refused::new("--drop and --glass both say how large a drop is; leave one out"));
        }
        (None, glass) => {
            let drop = found.take(usual_drop(glass.unwrap_or(Glass::Air)));
            found.assume(match glass.unwrap_or(Glass::Air) {
                Glass::Air => "a drop of 33 µL, falling in air (common practice, no source)",
                Glass::Liquid => {
                    "a drop of 99 µL, three times one in air, rising in liquid (common practice, no source)"
                }
            });
            drop
        }
    };
    let flow = found.take(drip_flow(rate, drop)?);
    found.push(Item::quantity("ml_h", "Flow", flow, "mL/h"));
    Ok(found)
}

fn glass(given: &Given<'_>) -> Result<Option<Glass>, Refused> {
    match given.text("glass").map(|text| text.trim().to_lowercase()).as_deref() {
        None => Ok(None),
        Some("air") => Ok(Some(Glass::Air)),
        Some("liquid") => Ok(Some(Glass::Liquid)),
        Some(other) => Err(Refused::new(format!("--glass is \"{other}\"; it is air or liquid"))),
    }
}
