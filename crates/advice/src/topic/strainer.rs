//! The pressure that a strainer of woven wire takes, clean and partly blocked.

use tribology::feed::{Screen, strainer_pressure};
use tribology::quantity::{Length, Velocity};

use super::given::{Given, Refused, share};
use super::liquid::liquid;
use super::{Calculated, Item, Topic};

pub(super) const TOPIC: Topic = Topic {
    name: "strainer",
    title: "Pressure across a strainer",
    about: "The pressure that a strainer of plain woven wire takes from oil that comes to it at a speed, clean and with part of its \
            area blocked. The speed is the flow over the whole area of the strainer. Oil is slower and thicker than what was tried.",
    words: None,
    options: &[
        Topic::once("mesh", "wires to the inch", "60"),
        Topic::once("wire", "diameter of the wire", "0.19mm"),
        Topic::once("approach", "speed of the oil before it", "20mm/s"),
        Topic::once("viscosity", "viscosity of the oil as cold as it is", "60mPa.s"),
        Topic::once("density", "density of the oil", "870"),
        Topic::once("blocked", "part of the area that is blocked", "30%"),
    ],
    examples: &[
        "strainer --mesh 60 --wire 0.19mm --approach 20mm/s --viscosity 60mPa.s --density 870 --blocked 30%",
        "strainer --mesh 60 --wire 0.19mm --approach 20mm/s --viscosity 150mm2/s",
    ],
    answer,
};

fn answer(given: &Given<'_>) -> Result<Calculated, Refused> {
    let mut found = Calculated::default();
    let mesh = given.number("mesh")?.ok_or_else(|| given.missing("mesh"))?;
    let screen = Screen::of_mesh(mesh, given.must::<Length>("wire", Some("mm"))?)?;
    let approach = given.must::<Velocity>("approach", Some("mm/s"))?;
    let oil = liquid(given, &mut found)?;
    let blocked = given.text("blocked").map(|text| share("--blocked", text)).transpose()?.unwrap_or(0.0);
    let pressure = found.take(strainer_pressure(screen, oil, approach, blocked)?);
    found.push(Item::quantity("pressure_pa", "Pressure across the strainer", pressure, "Pa"));
    if blocked > 0.0 {
        let clean = strainer_pressure(screen, oil, approach, 0.0)?.value;
        found.push(Item::quantity("clean_pa", "The same when clean", clean, "Pa"));
    }
    found.push(Item::quantity("opening_um", "Side of a hole", screen.opening(), "um"));
    Ok(found)
}
