//! How thick an oil a rolling bearing asks for at its speed, and how the oil that it has compares.

use crate::contact::line::{line, measured, number};
use crate::quantity::{KinematicViscosity, Length, Rotation};
use crate::{Answer, Error, Standing, math};

/// The speed in rpm at which the second branch takes over.
///
/// Source: `iso-281`.
const BRANCH_RPM: f64 = 1000.0;
const SOURCE: &str = "iso-281";

/// The viscosity ratios for which the life formulas are made.
///
/// Source: `iso-281`.
pub(super) const RATIOS: [f64; 2] = [0.1, 4.0];

/// The viscosity at running temperature at which the film of a rolling bearing is just adequate.
///
/// `ν₁ = 45000 n^−0.83 D^−0.5` below 1000 rpm, `ν₁ = 4500 n^−0.5 D^−0.5` from there on, in mm²/s, rpm and mm
///
/// - `speed`: turning speed, `n`.
/// - `pitch_diameter`: diameter of the circle of the rolling bodies, `D`; about half the sum of bore and outside diameter.
/// - returns: the reference kinematic viscosity.
///
/// # Range
/// Any speed. At 1000 rpm the second branch begins 2.3 % below the first: the step is in the formula. The second is from memory.
/// No printed value was found to hold it against.
///
/// # Errors
/// [`Error::OutOfRange`] when the speed or the diameter is not above zero.
///
/// # Source
/// `iso-281`
///
/// # Example
/// ```
/// use tribology::{contact::rolling::reference_viscosity, quantity::{Length, Rotation}};
/// let found = reference_viscosity(Rotation::from_rpm(500.0), Length::from_mm(60.0));
/// assert!(found.is_ok_and(|found| (found.value.mm2_s() - 33.42).abs() < 0.01));
/// ```
pub fn reference_viscosity(speed: Rotation, pitch_diameter: Length) -> Result<Answer<KinematicViscosity>, Error> {
    let n = Error::quantity_positive("speed", speed)?.rpm();
    let d = Error::quantity_positive("pitch diameter", pitch_diameter)?.mm();
    let (found, formula, standing) = if n < BRANCH_RPM {
        let found = 45_000.0 * math::pow(n, -0.83) / math::sqrt(d);
        (found, "ν1 = 45000 n^−0.83 D^−0.5 below 1000 rpm, in mm²/s, rpm, mm", Standing::Standard)
    } else {
        let found = 4500.0 / math::sqrt(n * d);
        (found, "ν1 = 4500 n^−0.5 D^−0.5 from 1000 rpm, in mm²/s, rpm, mm", Standing::FromMemory)
    };
    let found = KinematicViscosity::from_mm2_s(found);
    let inputs = vec![measured("n", speed), measured("D", pitch_diameter)];
    let step = line("Reference viscosity", formula, inputs, measured("ν1", found), SOURCE, standing);
    Ok(Answer::of(found, step))
}

/// How the oil of a rolling bearing compares with what it asks for.
///
/// `κ = ν / ν₁`
///
/// - `running`: kinematic viscosity at running temperature, `ν`.
/// - `speed`, `pitch_diameter`: as [`reference_viscosity`].
/// - returns: the ratio, dimensionless; below 1 the film is thinner than it should be.
///
/// # Range
/// The life formulas take 0.1 to 4; more than 4 counts as 4, and below 0.1 they say nothing.
///
/// # Errors
/// [`Error::OutOfRange`] when an input is not above zero.
///
/// # Source
/// `iso-281`
///
/// # Example
/// ```
/// use tribology::{contact::rolling::viscosity_ratio, quantity::{KinematicViscosity, Length, Rotation}};
/// let thin = KinematicViscosity::from_mm2_s(12.0);
/// let found = viscosity_ratio(thin, Rotation::from_rpm(500.0), Length::from_mm(60.0));
/// assert!(found.is_ok_and(|found| (found.value - 0.359).abs() < 0.001));
/// ```
pub fn viscosity_ratio(
    running: KinematicViscosity,
    speed: Rotation,
    pitch_diameter: Length,
) -> Result<Answer<f64>, Error> {
    Error::quantity_positive("viscosity", running)?;
    let wanted = reference_viscosity(speed, pitch_diameter)?;
    let kappa = running / wanted.value;
    let inputs = vec![measured("ν", running), measured("ν1", wanted.value)];
    let step = line("Viscosity ratio", "κ = ν / ν1", inputs, number("κ", kappa), SOURCE, Standing::Standard);
    Ok(Answer::of(kappa, step).vouched_within("viscosity ratio", kappa, RATIOS[0], RATIOS[1]).after(wanted))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_cannot_be_is_named() {
        let of = |rpm, mm| reference_viscosity(Rotation::from_rpm(rpm), Length::from_mm(mm));
        for (rpm, mm, wrong) in [(0.0, 60.0, "speed"), (-5.0, 60.0, "speed"), (500.0, 0.0, "pitch diameter")] {
            let Err(Error::OutOfRange { name, .. }) = of(rpm, mm) else { panic!("{rpm} {mm}") };
            assert_eq!(name, wrong);
        }
        let none = KinematicViscosity::from_mm2_s(0.0);
        assert!(viscosity_ratio(none, Rotation::from_rpm(500.0), Length::from_mm(60.0)).is_err());
    }

    #[test]
    fn each_branch_says_how_firmly_it_stands() {
        let of = |rpm| reference_viscosity(Rotation::from_rpm(rpm), Length::from_mm(60.0)).expect("a speed").steps;
        let standing = |rpm| of(rpm)[0].standing;
        assert_eq!((standing(999.9), standing(1000.0)), (Standing::Standard, Standing::FromMemory));
    }
}
