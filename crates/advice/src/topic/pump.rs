//! What a plunger pump delivers.

use tribology::feed::{Plunger, plunger_flow, stroke_volume};
use tribology::quantity::{Length, Rotation};

use super::given::{Given, Refused, share};
use super::{Calculated, Item, Topic};

pub(super) const TOPIC: Topic = Topic {
    name: "pump",
    title: "Delivery of a plunger pump",
    about: "What a plunger pump delivers from its plunger, its stroke and its rate. The efficiency is the part of each stroke that \
            comes out: catch fifty strokes in a glass to know it. In the cold a pump may not refill in time and gives less.",
    words: None,
    options: &[
        Topic::once("plunger", "diameter of the plunger", "6mm"),
        Topic::once("stroke", "length of a stroke", "4.5mm"),
        Topic::once("rate", "strokes in a time", "90/min"),
        Topic::once("efficiency", "part of each stroke that is delivered", "0.8"),
    ],
    examples: &["pump --plunger 6mm --stroke 4.5mm --rate 90/min --efficiency 0.8"],
    answer,
};

fn answer(given: &Given<'_>) -> Result<Calculated, Refused> {
    let mut found = Calculated::default();
    let plunger = Plunger::new(given.must::<Length>("plunger", None)?, given.must::<Length>("stroke", None)?)?;
    let rate = given.must::<Rotation>("rate", Some("/min"))?;
    let efficiency = match given.text("efficiency") {
        Some(text) => share("--efficiency", text)?,
        None => {
            found.assume("nothing slips: the whole of each stroke is delivered");
            1.0
        }
    };
    let flow = found.take(plunger_flow(plunger, rate, efficiency)?);
    found.push(Item::quantity("flow_ml_min", "Delivery", flow, "mL/min"));
    found.push(Item::quantity("stroke_ul", "Volume of a stroke", stroke_volume(plunger)?.value, "uL"));
    Ok(found)
}
