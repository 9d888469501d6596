//! What it costs to turn a rolling bearing through its oil without load, and the factor for its sort and the way it is oiled.

use crate::contact::line::{line, measured, number};
use crate::quantity::{KinematicViscosity, Length, Rotation, Torque};
use crate::{Answer, Error, Standing, math};

/// Viscosity in mm²/s times speed in rpm from which the torque grows with it.
///
/// Source: `palmgren-1957`.
const GROWS_FROM: f64 = 2000.0;
const SOURCE: &str = "palmgren-1957";

/// A sort of bearing that the table of factors knows.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Bearing {
    /// Deep-groove ball bearing.
    DeepGroove,
    /// Angular-contact ball bearing.
    AngularContact,
    /// Cylindrical roller bearing with a cage.
    CylindricalRoller,
    /// Taper roller bearing.
    TaperRoller,
    /// Thrust ball bearing.
    ThrustBall,
}

/// A way of oiling that the table of factors knows.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Oiling {
    /// Grease.
    Grease,
    /// Oil mist.
    Mist,
    /// Oil bath.
    Bath,
    /// A jet of oil, or a bath on an upright shaft.
    Jet,
}

impl Bearing {
    /// Every sort, in the order of the table.
    pub const ALL: [Bearing; 5] = [
        Bearing::DeepGroove,
        Bearing::AngularContact,
        Bearing::CylindricalRoller,
        Bearing::TaperRoller,
        Bearing::ThrustBall,
    ];
}

impl Oiling {
    /// Every way, in the order of the table.
    pub const ALL: [Oiling; 4] = [Oiling::Grease, Oiling::Mist, Oiling::Bath, Oiling::Jet];
}

/// The factor `f₀` of a sort of bearing and a way of oiling, from and to.
///
/// - `bearing`: the sort.
/// - `oiling`: the way.
/// - returns: the lowest and the highest factor, dimensionless; nothing where no figure is known.
///
/// # Range
/// Fresh grease drags more until it has spread. All figures are from memory.
///
/// # Source
/// `palmgren-1957`
///
/// # Example
/// ```
/// use tribology::contact::rolling::{Bearing, Oiling, friction_factor};
/// let found = friction_factor(Bearing::DeepGroove, Oiling::Bath).map(|answer| answer.value);
/// assert_eq!(found, Some((2.0, 2.0)));
/// ```
#[must_use]
pub fn friction_factor(bearing: Bearing, oiling: Oiling) -> Option<Answer<(f64, f64)>> {
    let row = match bearing {
        Bearing::DeepGroove => [Some((0.7, 2.0)), one(1.0), one(2.0), one(4.0)],
        Bearing::AngularContact => [one(2.0), one(1.7), one(3.3), one(6.6)],
        Bearing::CylindricalRoller => [Some((0.6, 1.0)), None, Some((2.2, 4.0)), None],
        Bearing::TaperRoller => [one(6.0), one(3.0), one(6.0), Some((8.0, 10.0))],
        Bearing::ThrustBall => [one(5.5), one(0.8), one(1.5), one(3.0)],
    };
    let [grease, mist, bath, jet] = row;
    let (low, high) = match oiling {
        Oiling::Grease => grease,
        Oiling::Mist => mist,
        Oiling::Bath => bath,
        Oiling::Jet => jet,
    }?;
    let (inputs, result) = (vec![number("highest f0", high)], number("lowest f0", low));
    let formula = "table by sort of bearing and way of oiling";
    let step = line("Friction factor", formula, inputs, result, SOURCE, Standing::FromMemory);
    Some(Answer::of((low, high), step))
}

fn one(factor: f64) -> Option<(f64, f64)> {
    Some((factor, factor))
}

/// The torque that turns a rolling bearing without load.
///
/// `M₀ = 10⁻⁷ f₀ (ν n)^(2/3) d³` N·mm from `ν n = 2000` on, below `M₀ = 160·10⁻⁷ f₀ d³`; in mm²/s, rpm and mm
///
/// - `f0`: factor of bearing and oiling, as [`friction_factor`] gives it, dimensionless.
/// - `viscosity`: kinematic viscosity at running temperature, `ν`; of a grease that of its oil.
/// - `speed`: turning speed, `n`.
/// - `pitch_diameter`: diameter of the circle of the rolling bodies, `d`.
/// - returns: the torque.
///
/// # Range
/// Bearings neither flooded nor starved. Between the branches the torque steps by 0.8 %; it is in the formula. The part that the load
/// adds is left out. No printed value was found to hold it against.
///
/// # Errors
/// [`Error::OutOfRange`] when an input is not above zero.
///
/// # Source
/// `palmgren-1957`
///
/// # Example
/// ```
/// use tribology::{contact::rolling::load_free_torque, quantity::{KinematicViscosity, Length, Rotation}};
/// let (viscosity, speed) = (KinematicViscosity::from_mm2_s(30.0), Rotation::from_rpm(1000.0));
/// let found = load_free_torque(2.0, viscosity, speed, Length::from_mm(60.0));
/// assert!(found.is_ok_and(|found| (found.value.n_mm() - 41.71).abs() < 0.01));
/// ```
pub fn load_free_torque(
    f0: f64,
    viscosity: KinematicViscosity,
    speed: Rotation,
    pitch_diameter: Length,
) -> Result<Answer<Torque>, Error> {
    Error::unless_positive("friction factor", f0)?;
    let nu = Error::quantity_positive("viscosity", viscosity)?.mm2_s();
    let n = Error::quantity_positive("speed", speed)?.rpm();
    let d = Error::quantity_positive("pitch diameter", pitch_diameter)?.mm();
    let (churning, formula) = if nu * n >= GROWS_FROM {
        let grown = math::cbrt(nu * n);
        (grown * grown, "M0 = 1e-7 f0 (ν n)^(2/3) d³, in N·mm, mm²/s, rpm, mm")
    } else {
        (160.0, "M0 = 160e-7 f0 d³ where ν n is below 2000, in N·mm, mm²/s, rpm, mm")
    };
    let found = Torque::from_n_mm(1e-7 * f0 * churning * d * d * d);
    let inputs = vec![number("f0", f0), measured("ν", viscosity), measured("n", speed), measured("d", pitch_diameter)];
    let result = measured("M0", found);
    Ok(Answer::of(found, line("Torque without load", formula, inputs, result, SOURCE, Standing::Handbook)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_factor_is_above_zero_and_a_jet_never_drags_less_than_mist() {
        for bearing in Bearing::ALL {
            for oiling in Oiling::ALL {
                let found = friction_factor(bearing, oiling);
                assert!(found.is_none_or(|found| found.value.0 > 0.0 && found.value.0 <= found.value.1), "{bearing:?}");
            }
            let of = |oiling| friction_factor(bearing, oiling).map(|found| found.value.1);
            if let (Some(mist), Some(bath), Some(jet)) = (of(Oiling::Mist), of(Oiling::Bath), of(Oiling::Jet)) {
                assert!(mist < bath && bath < jet, "{bearing:?}");
            }
        }
    }

    #[test]
    fn what_cannot_be_is_named() {
        let of = |f0, nu, rpm, mm| {
            load_free_torque(f0, KinematicViscosity::from_mm2_s(nu), Rotation::from_rpm(rpm), Length::from_mm(mm))
        };
        for (found, wrong) in [
            (of(0.0, 30.0, 100.0, 60.0), "friction factor"),
            (of(2.0, 0.0, 100.0, 60.0), "viscosity"),
            (of(2.0, 30.0, 0.0, 60.0), "speed"),
            (of(2.0, 30.0, 100.0, -60.0), "pitch diameter"),
        ] {
            let Err(Error::OutOfRange { name, .. }) = found else { panic!("{wrong}") };
            assert_eq!(name, wrong);
        }
    }
}
