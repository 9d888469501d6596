//! The viscosity at 40 °C that a pair of gears asks for by the speed of its pitch line.

use crate::contact::line::{line, measured};
use crate::quantity::{KinematicViscosity, Velocity};
use crate::{Answer, Error, Standing, math};

/// Metres per second in a foot per minute, exact.
///
/// Source: `nist-sp-811`.
const FOOT_PER_MINUTE: f64 = 0.3048 / 60.0;
const SOURCE: &str = "gear-viscosity-7000";

/// The viscosity at 40 °C recommended for gears, from the speed of their pitch line.
///
/// `ν₄₀ = 7000 / √V`, `V` in ft/min, `ν₄₀` in mm²/s
///
/// - `pitch_line`: speed of the pitch line of the slowest pair, `V`.
/// - returns: kinematic viscosity at 40 °C.
///
/// # Range
/// Enclosed spur, helical and bevel gears under steady load; the source states no limits. Worms slide and want more. Another committee's
/// table has one known point beside it: at 5 m/s and 50 °C ISO VG 150, where this gives 223 mm²/s.
///
/// # Errors
/// [`Error::OutOfRange`] when the speed is not above zero.
///
/// # Source
/// `gear-viscosity-7000`
///
/// # Example
/// ```
/// use tribology::{contact::gear::recommended_viscosity, quantity::Velocity};
/// let found = recommended_viscosity(Velocity::from_m_s(2.032));
/// assert!(found.is_ok_and(|found| (found.value.mm2_s() - 350.0).abs() < 0.1));
/// ```
pub fn recommended_viscosity(pitch_line: Velocity) -> Result<Answer<KinematicViscosity>, Error> {
    let v = Error::quantity_positive("pitch-line speed", pitch_line)?.m_s() / FOOT_PER_MINUTE;
    let found = KinematicViscosity::from_mm2_s(7000.0 / math::sqrt(v));
    let (inputs, result) = (vec![measured("V", pitch_line)], measured("ν40", found));
    let formula = "ν40 = 7000 / √V, in mm²/s and ft/min";
    Ok(Answer::of(found, line("Viscosity for the gears", formula, inputs, result, SOURCE, Standing::Handbook)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn gears_that_stand_still_have_no_answer() {
        for speed in [0.0, -1.0, f64::NAN] {
            let found = recommended_viscosity(Velocity::from_m_s(speed));
            assert!(matches!(found, Err(Error::OutOfRange { name: "pitch-line speed", .. })), "{speed}");
        }
    }
}
