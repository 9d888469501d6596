//! The oil of a sum about feeding: its viscosity as typed, dynamic or kinematic, and its density, assumed where nobody says it.

use tribology::feed::Liquid;
use tribology::oil::USUAL_DENSITY_KG_M3;
use tribology::quantity::{Density, DynamicViscosity, Kind, KinematicViscosity, Unit, number_and_unit};

use super::Calculated;
use super::given::{Given, Refused};

/// The oil that `--viscosity` and `--density` describe; a viscosity without a unit is in mPa·s.
pub(super) fn liquid(given: &Given<'_>, found: &mut Calculated) -> Result<Liquid, Refused> {
    let density = match given.quantity::<Density>("density", Some("kg/m3"))? {
        Some(density) => density,
        None => {
            found.assume(format!("density {USUAL_DENSITY_KG_M3} kg/m³ (common practice, no source)"));
            Density::from_kg_m3(USUAL_DENSITY_KG_M3)
        }
    };
    let is_kinematic = given.text("viscosity").is_some_and(is_kinematic);
    Ok(if is_kinematic {
        Liquid::from_kinematic(given.must::<KinematicViscosity>("viscosity", Some("mm2/s"))?, density)?
    } else {
        Liquid::new(given.must::<DynamicViscosity>("viscosity", Some("mPa.s"))?, density)?
    })
}

/// Whether the typed unit is one of kinematic viscosity.
fn is_kinematic(text: &str) -> bool {
    number_and_unit(text).is_ok_and(|(_, unit)| Unit::find(Kind::KinematicViscosity, unit).is_some())
}
