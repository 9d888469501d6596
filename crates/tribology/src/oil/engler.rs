//! Engler degrees, the old continental scale: the time of 200 mL beside that of water. No one formula is the standard's own.

use super::{step, symbol, viscosity};
use crate::quantity::KinematicViscosity;
use crate::root::root;
use crate::{Answer, Error, Standing, math};

/// Below this the scale says too little.
const LOWEST: f64 = 1.3;
const SOURCE: &str = "engler-din";
const FORMULA: &str = "ν = E · 7.6^(1 − 1/E³), in mm²/s";

/// The viscosity of an oil of so many Engler degrees, at the temperature of the reading.
///
/// `ν = E · 7.6^(1 − 1/E³)`
///
/// - `degrees`: the reading, `E`.
/// - returns: kinematic viscosity.
///
/// # Range
/// From 1.3 degrees up. Take a reading as ±4 %: the formulas in use spread by up to 6.5 %.
///
/// # Errors
/// [`Error::OutOfRange`] below 1.3 degrees.
///
/// # Source
/// `engler-din`
///
/// # Example
/// ```
/// use tribology::oil::viscosity_of_engler;
/// assert!(viscosity_of_engler(8.79).is_ok_and(|found| (found.value.mm2_s() - 65.0).abs() < 2.6));
/// ```
pub fn viscosity_of_engler(degrees: f64) -> Result<Answer<KinematicViscosity>, Error> {
    Error::unless_within("Engler degrees", degrees, LOWEST * (1.0 - 1e-12), f64::MAX)?;
    let found = mm2_s(degrees);
    let inputs = vec![symbol("E", degrees, "")];
    let name = "Viscosity of the Engler reading";
    let found_step = step(name, FORMULA, inputs, viscosity("ν", found), SOURCE, Standing::FromMemory);
    Ok(Answer::of(KinematicViscosity::from_mm2_s(found), found_step))
}

/// The Engler degrees of an oil, at the temperature of its viscosity.
///
/// [`viscosity_of_engler`], solved for the degrees to the last digits; it rises steadily.
///
/// - `kinematic`: kinematic viscosity.
/// - returns: degrees.
///
/// # Range
/// From 3.9 mm²/s (1.3 degrees) up.
///
/// # Errors
/// [`Error::OutOfRange`] below that.
///
/// # Source
/// `engler-din`
///
/// # Example
/// ```
/// use tribology::{oil::engler_degrees, quantity::KinematicViscosity};
/// let degrees = engler_degrees(KinematicViscosity::from_mm2_s(29.9));
/// assert!(degrees.is_ok_and(|degrees| (degrees.value - 4.06).abs() < 0.02));
/// ```
pub fn engler_degrees(kinematic: KinematicViscosity) -> Result<Answer<f64>, Error> {
    let lowest = KinematicViscosity::from_mm2_s(mm2_s(LOWEST) * (1.0 - 1e-12));
    Error::quantity_within("viscosity", kinematic, lowest, KinematicViscosity::from_m2_s(f64::MAX))?;
    let wanted = kinematic.mm2_s();
    let ends = [LOWEST * (1.0 - 1e-9), wanted];
    let degrees = root("Engler degrees", ends, 0.0, |degrees| mm2_s(degrees) - wanted)?.at;
    let inputs = vec![viscosity("ν", wanted)];
    let found_step = step("Engler degrees", FORMULA, inputs, symbol("E", degrees, ""), SOURCE, Standing::FromMemory);
    Ok(Answer::of(degrees, found_step))
}

fn mm2_s(degrees: f64) -> f64 {
    degrees * math::pow(7.6, 1.0 - 1.0 / (degrees * degrees * degrees))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn below_the_scale_nothing_is_said() {
        assert!(viscosity_of_engler(1.29).is_err() && viscosity_of_engler(f64::NAN).is_err());
        assert!(engler_degrees(KinematicViscosity::from_mm2_s(2.0)).is_err());
        assert!(viscosity_of_engler(1.3).is_ok());
    }
}
