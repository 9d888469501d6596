//! What it costs to turn a rolling bearing through its oil.

use tribology::contact::rolling::load_free_torque;
use tribology::quantity::{KinematicViscosity, Length, Rotation};

use super::given::{Given, Refused};
use super::{Calculated, Item, Topic};

pub(super) const TOPIC: Topic = Topic {
    name: "rolling-friction",
    title: "Drag of a rolling bearing",
    about: "The torque that turns a rolling bearing through its oil before any load. The factor f0 is about 0.7 to 2 for a deep-groove \
            ball bearing in grease, 1 in mist, 2 in a bath; taper rollers have three times that.",
    words: None,
    options: &[
        Topic::once("f0", "factor of the sort of bearing and the way of oiling", "1.7"),
        Topic::once("viscosity", "viscosity of the oil at running temperature", "22mm2/s"),
        Topic::once("speed", "turning speed", "2800rpm"),
        Topic::once("pitch-diameter", "diameter of the circle of the rolling bodies", "45mm"),
    ],
    examples: &["rolling-friction --f0 1.7 --viscosity 22mm2/s --speed 2800rpm --pitch-diameter 45mm"],
    answer,
};

fn answer(given: &Given<'_>) -> Result<Calculated, Refused> {
    let mut found = Calculated::default();
    let f0 = given.number("f0")?.ok_or_else(|| given.missing("f0"))?;
    let viscosity = given.must::<KinematicViscosity>("viscosity", Some("mm2/s"))?;
    let speed = given.must::<Rotation>("speed", None)?;
    let pitch_diameter = given.must::<Length>("pitch-diameter", None)?;
    let torque = found.take(load_free_torque(f0, viscosity, speed, pitch_diameter)?);
    found.push(Item::quantity("torque_n_mm", "Torque without load", torque, "N.mm"));
    found.assume("the bearing is neither flooded nor starved, and what its load adds is left out");
    Ok(found)
}
