//! What film and dirt do to the life of a rolling bearing.

use tribology::contact::rolling::{Class, Reliability, life_modification, modified_life};
use tribology::quantity::{Force, Rotation};

use super::given::{Given, Refused};
use super::{Calculated, Item, Topic, Value};

pub(super) const TOPIC: Topic = Topic {
    name: "rolling-life",
    title: "Life of a rolling bearing",
    about: "The factor by which the thickness of the film and the dirt in the oil lengthen or shorten the life that a catalogue gives; \
            with capacity, load and speed the life itself. Below a viscosity ratio of 0.1 the method says nothing.",
    words: None,
    options: &[
        Topic::once("class", "radial-ball, radial-roller, thrust-ball or thrust-roller", "radial-ball"),
        Topic::once("kappa", "viscosity over what is wanted, as `rolling` gives it", "0.5"),
        Topic::once("contamination-load", "contamination factor times fatigue load limit over equivalent load", "0.3"),
        Topic::once("capacity", "basic dynamic load rating", "29.6kN"),
        Topic::once("load", "equivalent dynamic load", "2.5kN"),
        Topic::once("speed", "turning speed", "1500rpm"),
    ],
    examples: &[
        "rolling-life --class radial-ball --kappa 0.5 --contamination-load 0.3",
        "rolling-life --class radial-ball --kappa 2 --contamination-load 0.134 --capacity 29.6kN --load 2.5kN --speed 1500rpm",
    ],
    answer,
};

fn answer(given: &Given<'_>) -> Result<Calculated, Refused> {
    let mut found = Calculated::default();
    let class = class(given)?;
    let kappa = given.number("kappa")?.ok_or_else(|| given.missing("kappa"))?;
    let load = given.number("contamination-load")?.ok_or_else(|| given.missing("contamination-load"))?;
    let factor = found.take(life_modification(class, kappa, load)?);
    found.push(Item::new("a_iso", "Life modification", factor.map_or(Value::Nothing, Value::Number)));
    if factor.is_none() {
        found.assume(
            "no factor: below a viscosity ratio of 0.1 the faces touch, and wear ends the life, not tired steel",
        );
    }
    if ["capacity", "load", "speed"].into_iter().any(|name| given.has(name)) {
        let capacity = given.must::<Force>("capacity", None)?;
        let (load, speed) = (given.must::<Force>("load", None)?, given.must::<Rotation>("speed", None)?);
        let life = match factor {
            Some(factor) => Some(found.take(modified_life(class, capacity, load, factor, Reliability::Ninety, speed)?)),
            None => None,
        };
        found.push(Item::maybe("life_h", "Running time that nine of ten reach", life.map(|life| life.time), "h"));
        found.assume("nine of ten such bearings reach that life, and only tired steel ends it");
    }
    Ok(found)
}

fn class(given: &Given<'_>) -> Result<Class, Refused> {
    let text = given.text("class").ok_or_else(|| given.missing("class"))?;
    let wanted = text.trim().to_lowercase().replace(' ', "-");
    let known = Class::ALL.into_iter().find(|(_, spelled)| *spelled == wanted);
    known.map(|(class, _)| class).ok_or_else(|| {
        Refused::new(format!("--class is \"{text}\"; it is radial-ball, radial-roller, thrust-ball or thrust-roller"))
    })
}
