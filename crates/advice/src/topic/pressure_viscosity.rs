//! How fast an oil thickens under pressure, from what its data sheet says.

use tribology::oil::{
    USUAL_DENSITY_KG_M3, USUAL_INDEX, ViscosityLine, density_at, dynamic_viscosity, pressure_viscosity_wooster,
};
use tribology::quantity::{Density, KinematicViscosity, Temperature};

use super::given::{Given, Refused};
use super::{Calculated, Item, Topic};

pub(super) const TOPIC: Topic = Topic {
    name: "pressure-viscosity",
    title: "Viscosity under pressure",
    about: "The pressure-viscosity coefficient of a mineral oil at a temperature, estimated from its viscosity; within about a \
            quarter of measured values.",
    words: None,
    options: &[
        Topic::once("v40", "viscosity at 40 °C", "68"),
        Topic::once("v100", "viscosity at 100 °C", "8.6"),
        Topic::once("index", "viscosity index", "95"),
        Topic::once("density", "density at 15 °C", "880"),
        Topic::once("at", "temperature", "60C"),
    ],
    examples: &["pressure-viscosity --v40 68 --at 60C"],
    answer,
};

fn answer(given: &Given<'_>) -> Result<Calculated, Refused> {
    let mut found = Calculated::default();
    let v40 = given.must::<KinematicViscosity>("v40", Some("mm2/s"))?;
    let at = given.must::<Temperature>("at", None)?;
    let v100 = given.quantity::<KinematicViscosity>("v100", Some("mm2/s"))?;
    let [forty, hundred] = [40.0, 100.0].map(Temperature::from_celsius);
    let line = match (v100, given.number("index")?) {
        (Some(v100), None) => ViscosityLine::through((forty, v40), (hundred, v100))?,
        (None, Some(index)) => ViscosityLine::with_index(v40, index)?,
        (None, None) => {
            found.assume(format!("viscosity index {USUAL_INDEX} (common practice, no source)"));
            ViscosityLine::with_index(v40, USUAL_INDEX)?
        }
        (Some(_), Some(_)) => return Err(Refused::new("--v100 and --index say the same thing twice; leave one out")),
    };
    let line = found.take(line);
    let rho15 = match given.quantity::<Density>("density", Some("kg/m3"))? {
        Some(density) => density,
        None => {
            found.assume(format!("density {USUAL_DENSITY_KG_M3} kg/m³ at 15 °C (common practice, no source)"));
            Density::from_kg_m3(USUAL_DENSITY_KG_M3)
        }
    };
    let kinematic = found.take(line.viscosity(at)?);
    let density = found.take(density_at(rho15, at)?);
    let dynamic = found.take(dynamic_viscosity(kinematic, density)?);
    let alpha = found.take(pressure_viscosity_wooster(dynamic)?);
    found.push(Item::quantity("alpha_per_gpa", "Pressure-viscosity coefficient", alpha, "/GPa"));
    Ok(found)
}
