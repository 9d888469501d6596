//! How thick an oil a rolling bearing asks for, and how the oil that it has compares.

use tribology::contact::rolling::{SpeedMethod, reference_viscosity, speed_factor, viscosity_ratio};
use tribology::quantity::{KinematicViscosity, Length, Rotation};

use super::given::{Given, Refused};
use super::{Calculated, Item, Topic, Value};

pub(super) const TOPIC: Topic = Topic {
    name: "rolling",
    title: "Oil of a rolling bearing",
    about: "The viscosity at running temperature that a rolling bearing asks for by its size and speed and, when the viscosity that it \
            has is given, how the two compare: 1 is just enough.",
    words: None,
    options: &[
        Topic::once(
            "pitch-diameter",
            "diameter of the circle of the rolling bodies, about half the sum of bore and outside",
            "65mm",
        ),
        Topic::once("speed", "turning speed", "1000rpm"),
        Topic::once("viscosity", "viscosity of the oil at running temperature", "12mm2/s"),
    ],
    examples: &[
        "rolling --pitch-diameter 65mm --speed 1000rpm",
        "rolling --pitch-diameter 65mm --speed 1000rpm --viscosity 12mm2/s",
    ],
    answer,
};

fn answer(given: &Given<'_>) -> Result<Calculated, Refused> {
    let mut found = Calculated::default();
    let pitch_diameter = given.must::<Length>("pitch-diameter", None)?;
    let speed = given.must::<Rotation>("speed", None)?;
    let wanted = reference_viscosity(speed, pitch_diameter)?;
    let kappa = match given.quantity::<KinematicViscosity>("viscosity", Some("mm2/s"))? {
        Some(running) => Value::Number(found.take(viscosity_ratio(running, speed, pitch_diameter)?)),
        None => Value::Nothing,
    };
    let wanted = if kappa == Value::Nothing { found.take(wanted) } else { wanted.value };
    let factor = found.take(speed_factor(speed, pitch_diameter)?);
    found.push(Item::quantity("reference_mm2_s", "Viscosity wanted while running", wanted, "mm2/s"));
    found.push(Item::new("kappa", "Viscosity over what is wanted", kappa));
    found.push(Item::new("n_dm_mm_rpm", "Speed times diameter, mm·rpm", Value::Number(factor.mm_rpm)));
    found.push(Item::new("speed_asks", "That speed asks for", Value::Text(asks(factor.method).to_owned())));
    Ok(found)
}

fn asks(method: SpeedMethod) -> &'static str {
    match method {
        SpeedMethod::GeneralGrease => "general grease, or oil",
        SpeedMethod::SpecialGreaseOrOil => "grease for high speed, or oil",
        SpeedMethod::SpecialWays => "oil by special ways, such as mist or few drops",
    }
}
