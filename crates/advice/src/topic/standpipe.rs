//! Oil that runs down the bore of a standpipe in a film.

use tribology::feed::{film_flow, film_flow_curved};
use tribology::quantity::{KinematicViscosity, Length};

use super::given::{Given, Refused};
use super::{Calculated, Item, Topic};

pub(super) const TOPIC: Topic = Topic {
    name: "standpipe",
    title: "Flow down a standpipe",
    about: "The oil that runs down the whole bore of a standpipe in a film of a given thickness: as if the wall were flat, and with \
            its curve, which counts in a narrow pipe. For oils from about ISO VG 68 up; a thin liquid goes over the lip as over a weir.",
    words: None,
    options: &[
        Topic::once("bore", "inside diameter", "10mm"),
        Topic::once("film", "thickness of the film", "0.7mm"),
        Topic::once("viscosity", "kinematic viscosity as cold as it is", "150mm2/s"),
    ],
    examples: &["standpipe --bore 10mm --film 0.7mm --viscosity 150mm2/s"],
    answer,
};

fn answer(given: &Given<'_>) -> Result<Calculated, Refused> {
    let mut found = Calculated::default();
    let bore = given.must::<Length>("bore", None)?;
    let film = given.must::<Length>("film", None)?;
    let viscosity = given.must::<KinematicViscosity>("viscosity", Some("mm2/s"))?;
    let flat = found.take(film_flow(bore, film, viscosity)?);
    found.push(Item::quantity("flow_ml_min", "Flow, the wall taken for flat", flat, "mL/min"));
    // Its warning, if any, is the one of the flat film.
    let curved = film_flow_curved(bore, film, viscosity)?;
    found.steps.extend(curved.steps);
    found.push(Item::quantity("curved_ml_min", "Flow with the curve of the wall", curved.value, "mL/min"));
    found.assume("the film runs all round the bore and is as thick everywhere");
    Ok(found)
}
