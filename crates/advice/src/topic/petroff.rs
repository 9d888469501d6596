//! Petroff's drag: what oil holds back a journal that runs in the middle of its bearing.

use tribology::contact::journal::petroff;
use tribology::quantity::{DynamicViscosity, Length, Rotation};

use super::given::{Given, Refused};
use super::{Calculated, Item, Topic};

pub(super) const TOPIC: Topic = Topic {
    name: "petroff",
    title: "Drag of an unloaded journal",
    about: "The drag of the oil on a journal that turns in the middle of its bearing: the least that it can be. A loaded journal has \
            more: `journal` says how much.",
    words: None,
    options: &[
        Topic::once("diameter", "diameter of the journal", "50mm"),
        Topic::once("length", "length of the bearing", "50mm"),
        Topic::once("clearance", "clearance on the diameter", "0.05mm"),
        Topic::once("speed", "speed of the journal", "1800rpm"),
        Topic::once("viscosity", "dynamic viscosity of the oil when warm", "25mPa.s"),
    ],
    examples: &["petroff --diameter 50mm --length 50mm --clearance 0.05mm --speed 1800rpm --viscosity 25mPa.s"],
    answer,
};

fn answer(given: &Given<'_>) -> Result<Calculated, Refused> {
    let mut found = Calculated::default();
    let diameter = given.must::<Length>("diameter", None)?;
    let length = given.must::<Length>("length", None)?;
    let clearance = given.must::<Length>("clearance", None)?;
    let speed = given.must::<Rotation>("speed", Some("rpm"))?;
    let viscosity = given.must::<DynamicViscosity>("viscosity", Some("mPa.s"))?;
    let drag = found.take(petroff(diameter, length, clearance, speed, viscosity)?);
    found.push(Item::quantity("friction_force_n", "Drag at the surface", drag.force, "N"));
    found.push(Item::quantity("friction_torque_n_m", "Torque of the drag", drag.torque, "N.m"));
    found.assume("no load, and a film that fills the gap all round");
    Ok(found)
}
