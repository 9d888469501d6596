//! Flow through a tube from pressure, or pressure from flow; with what its ends and bends take where that matters.

use tribology::feed::{Liquid, Tube, flow_with_losses, pressure_with_losses, tube_flow, tube_pressure, tube_reynolds};
use tribology::quantity::{Length, Pressure, VolumeFlow};

use super::given::{Given, Refused, number};
use super::liquid::liquid;
use super::{Calculated, Item, Topic, Value};

pub(super) const TOPIC: Topic = Topic {
    name: "tube",
    title: "Flow through a tube",
    about: "The oil that a pressure drives through a round tube, or the pressure that a flow needs, as long as the flow is laminar. \
            What the ends and the bends take is added where it is above two in a hundred.",
    words: None,
    options: &[
        Topic::once("bore", "inside diameter", "3mm"),
        Topic::once("length", "length", "0.5m"),
        Topic::once("viscosity", "viscosity of the oil as cold as it is", "60mPa.s"),
        Topic::once("pressure", "pressure between the ends", "5kPa"),
        Topic::once("flow", "flow, in place of the pressure", "20mL/min"),
        Topic::once("density", "density of the oil", "870"),
        Topic::once("bends", "count of square bends", "3"),
    ],
    examples: &[
        "tube --bore 3mm --length 0.5m --viscosity 60mPa.s --pressure 5kPa",
        "tube --bore 3mm --length 0.5m --viscosity 60mPa.s --flow 20mL/min --bends 3",
    ],
    answer,
};

/// From this part on what ends and bends take matters.
const MATTERS: f64 = 0.02;
/// More bends than anybody makes.
const MOST_BENDS: f64 = 1000.0;

fn answer(given: &Given<'_>) -> Result<Calculated, Refused> {
    let mut found = Calculated::default();
    let tube = Tube::new(given.must::<Length>("bore", None)?, given.must::<Length>("length", None)?)?;
    let oil = liquid(given, &mut found)?;
    let bends = bends(given)?;
    let pressure = given.quantity::<Pressure>("pressure", Some("kPa"))?;
    match (pressure, given.quantity::<VolumeFlow>("flow", Some("mL/min"))?) {
        (Some(pressure), None) => from_pressure(&mut found, tube, bends, oil, pressure)?,
        (None, Some(flow)) => from_flow(&mut found, tube, bends, oil, flow)?,
        _ => {
            return Err(Refused::new(
                "one of two is wanted: the pressure between the ends (--pressure 5kPa), or the flow (--flow 20mL/min)",
            ));
        }
    }
    Ok(found)
}

fn from_pressure(
    found: &mut Calculated,
    tube: Tube,
    bends: u32,
    oil: Liquid,
    pressure: Pressure,
) -> Result<(), Refused> {
    let flow = found.take(tube_flow(tube, oil.dynamic(), pressure)?);
    found.push(Item::quantity("flow_ml_min", "Flow through the straight tube", flow, "mL/min"));
    let re = found.take(tube_reynolds(tube, oil.kinematic(), flow)?);
    found.push(Item::new("reynolds", "Reynolds number", Value::Number(re)));
    let whole = flow_with_losses(tube, bends, oil, pressure)?;
    if flow.m3_s() - whole.value.m3_s() > MATTERS * flow.m3_s() {
        let flow = found.take(whole);
        found.push(Item::quantity("flow_with_losses_ml_min", "Flow with its ends and bends", flow, "mL/min"));
    }
    Ok(())
}

fn from_flow(found: &mut Calculated, tube: Tube, bends: u32, oil: Liquid, flow: VolumeFlow) -> Result<(), Refused> {
    let pressure = found.take(tube_pressure(tube, oil.dynamic(), flow)?);
    found.push(Item::quantity("pressure_kpa", "Pressure for the straight tube", pressure, "kPa"));
    let re = found.take(tube_reynolds(tube, oil.kinematic(), flow)?);
    found.push(Item::new("reynolds", "Reynolds number", Value::Number(re)));
    let whole = pressure_with_losses(tube, bends, oil, flow)?;
    if whole.value.pa() - pressure.pa() > MATTERS * pressure.pa() {
        let pressure = found.take(whole);
        found.push(Item::quantity("pressure_with_losses_kpa", "Pressure with its ends and bends", pressure, "kPa"));
    }
    Ok(())
}

fn bends(given: &Given<'_>) -> Result<u32, Refused> {
    let Some(text) = given.text("bends") else { return Ok(0) };
    let count = number("--bends", text)?;
    if count.fract() != 0.0 || !(0.0..=MOST_BENDS).contains(&count) {
        return Err(Refused::new(format!("--bends is \"{text}\"; write a whole number of bends, such as 3")));
    }
    // A whole number of this size has the same bits in every type.
    Ok(count as u32)
}
