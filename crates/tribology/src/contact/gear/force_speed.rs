//! How hard gears press for their speed: the factor by which German practice chooses their oil. The curve from the factor to a viscosity
//! was not found, so none is given here.

use crate::contact::line::{line, measured, number};
use crate::quantity::{Force, Length, Pressure, Rotation, Torque, Velocity};
use crate::working::{Standing, Symbol};
use crate::{Answer, Error};

/// The usual product of the squares of zone factor and contact-ratio factor.
///
/// Source: `din-51509`.
pub const USUAL_ZONE_FACTOR: f64 = 3.0;
const SOURCE: &str = "din-51509";

/// Rolling pressure of spur, helical or bevel gears over the speed of their pitch line.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct ForceSpeed(f64);

/// Torque over size and speed of a worm gear.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct WormForceSpeed(f64);

/// A pair of spur or helical gears with its load.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spur {
    /// Force along the pitch circle.
    pub force: Force,
    /// Width of the teeth.
    pub width: Length,
    /// Pitch diameter of the pinion.
    pub pinion_diameter: Length,
    /// Teeth of the wheel over teeth of the pinion, at least one.
    pub ratio: f64,
    /// The product of the squares of zone factor and contact-ratio factor; [`USUAL_ZONE_FACTOR`] when nothing is known.
    pub zone_factor: f64,
    /// How much shocks add to the force; one when it is steady.
    pub application_factor: f64,
}

impl ForceSpeed {
    /// The number in MPa·s/m.
    #[must_use]
    pub fn mpa_s_per_m(self) -> f64 {
        self.0 / 1e6
    }
}

impl WormForceSpeed {
    /// The number in N·min/m².
    #[must_use]
    pub fn n_min_per_m2(self) -> f64 {
        self.0 / 60.0
    }
}

/// The rolling pressure of a pair of spur gears after Stribeck.
///
/// `k = F / (b d₁) · (u + 1)/u · Z² · K`
///
/// - `spur`: force `F`, width `b`, pinion diameter `d₁`, ratio `u`, zone factor `Z²`, application factor `K`.
/// - returns: the rolling pressure.
///
/// # Range
/// Outside teeth, steel on steel.
///
/// # Errors
/// [`Error::OutOfRange`] when a size, the force or a factor is not above zero, or the ratio below one.
///
/// # Source
/// `din-51509`
///
/// # Example
/// ```
/// use tribology::contact::gear::{Spur, rolling_pressure};
/// use tribology::quantity::{Force, Length};
/// let (force, width, pinion_diameter) = (Force::from_n(3000.0), Length::from_mm(25.0), Length::from_mm(230.0));
/// let spur = Spur { force, width, pinion_diameter, ratio: 2.5, zone_factor: 3.0, application_factor: 1.0 };
/// assert!(rolling_pressure(&spur).is_ok_and(|found| (found.value.mpa() - 2.19).abs() < 0.01));
/// ```
pub fn rolling_pressure(spur: &Spur) -> Result<Answer<Pressure>, Error> {
    let force = Error::quantity_positive("force on the teeth", spur.force)?;
    let width = Error::quantity_positive("width of the teeth", spur.width)?;
    let diameter = Error::quantity_positive("pinion diameter", spur.pinion_diameter)?;
    let u = Error::unless_within("ratio", spur.ratio, 1.0, f64::MAX)?;
    let zone = Error::unless_positive("zone factor", spur.zone_factor)?;
    let application = Error::unless_positive("application factor", spur.application_factor)?;
    let found = force / (width * diameter) * ((u + 1.0) / u * zone * application);
    let inputs = vec![
        measured("F", force),
        measured("b", width),
        measured("d1", diameter),
        number("u", u),
        number("Z²", zone),
        number("K", application),
    ];
    let formula = "k = F / (b d1) (u + 1)/u Z² K";
    let result = measured("k", found);
    Ok(Answer::of(found, line("Rolling pressure", formula, inputs, result, SOURCE, Standing::Handbook)))
}

/// The force-speed factor of a pair of spur gears.
///
/// `k / v`
///
/// - `spur`: as [`rolling_pressure`].
/// - `pitch_line`: speed of the pitch line, `v`.
/// - returns: the factor.
///
/// # Range
/// As [`rolling_pressure`].
///
/// # Errors
/// Those of [`rolling_pressure`], and [`Error::OutOfRange`] when the speed is not above zero.
///
/// # Source
/// `din-51509`
///
/// # Example
/// ```
/// use tribology::contact::gear::{Spur, force_speed_spur};
/// use tribology::quantity::{Force, Length, Velocity};
/// let (force, width, pinion_diameter) = (Force::from_n(3000.0), Length::from_mm(25.0), Length::from_mm(230.0));
/// let spur = Spur { force, width, pinion_diameter, ratio: 2.5, zone_factor: 3.0, application_factor: 1.0 };
/// let found = force_speed_spur(&spur, Velocity::from_m_s(4.0));
/// assert!(found.is_ok_and(|found| (found.value.mpa_s_per_m() - 0.548).abs() < 0.001));
/// ```
pub fn force_speed_spur(spur: &Spur, pitch_line: Velocity) -> Result<Answer<ForceSpeed>, Error> {
    let speed = Error::quantity_positive("pitch-line speed", pitch_line)?;
    let pressure = rolling_pressure(spur)?;
    let found = ForceSpeed(pressure.value.pa() / speed.m_s());
    let inputs = vec![measured("k", pressure.value), measured("v", speed)];
    let result = Symbol { symbol: "k/v", si: found.0, unit: "Pa·s/m" };
    Ok(Answer::of(found, line("Force-speed factor", "k / v", inputs, result, SOURCE, Standing::Handbook))
        .after(pressure))
}

/// The force-speed factor of a worm gear.
///
/// `T₂ K / (a³ n₁)`
///
/// - `wheel_torque`: torque on the wheel, `T₂`.
/// - `centre_distance`: from the axis of the worm to that of the wheel, `a`.
/// - `worm_speed`: turning speed of the worm, `n₁`.
/// - `application_factor`: how much shocks add to the torque, `K`; one when it is steady.
/// - returns: the factor.
///
/// # Range
/// Worm and wheel on crossed axes. No printed value was found to hold it against.
///
/// # Errors
/// [`Error::OutOfRange`] when an input is not above zero.
///
/// # Source
/// `din-51509`
///
/// # Example
/// ```
/// use tribology::contact::gear::force_speed_worm;
/// use tribology::quantity::{Length, Rotation, Torque};
/// let found = force_speed_worm(Torque::from_n_m(300.0), Length::from_mm(100.0), Rotation::from_rpm(1500.0), 1.0);
/// assert!(found.is_ok_and(|found| (found.value.n_min_per_m2() - 200.0).abs() < 1e-6));
/// ```
pub fn force_speed_worm(
    wheel_torque: Torque,
    centre_distance: Length,
    worm_speed: Rotation,
    application_factor: f64,
) -> Result<Answer<WormForceSpeed>, Error> {
    let torque = Error::quantity_positive("torque on the wheel", wheel_torque)?;
    let a = Error::quantity_positive("centre distance", centre_distance)?.m();
    let speed = Error::quantity_positive("worm speed", worm_speed)?;
    let application = Error::unless_positive("application factor", application_factor)?;
    let found = WormForceSpeed(torque.n_m() * application / (a * a * a * speed.per_second()));
    let inputs =
        vec![measured("T2", torque), measured("a", centre_distance), measured("n1", speed), number("K", application)];
    let result = Symbol { symbol: "k/v", si: found.0, unit: "N·s/m²" };
    let formula = "k/v = T2 K / (a³ n1)";
    Ok(Answer::of(found, line("Force-speed factor of the worm", formula, inputs, result, SOURCE, Standing::Handbook)))
}

/// The factor that decides the oil of a train of gears in one box: of one or two stages the last, of three the mean of the second and
/// the third.
///
/// - `stages`: the factor of each stage, the fastest first.
/// - returns: the factor that decides.
///
/// # Range
/// One to three stages.
///
/// # Errors
/// [`Error::OutOfRange`] when there is none or there are more than three.
///
/// # Source
/// `din-51509`
pub fn deciding_stage(stages: &[ForceSpeed]) -> Result<Answer<ForceSpeed>, Error> {
    let found = match stages {
        [only] => *only,
        [_, last] => *last,
        [_, second, third] => ForceSpeed((second.0 + third.0) / 2.0),
        _ => {
            let value = stages.len() as f64;
            return Err(Error::OutOfRange { name: "number of stages", value, low: 1.0, high: 3.0, unit: "" });
        }
    };
    let of = |stage: &ForceSpeed| Symbol { symbol: "k/v of a stage", si: stage.0, unit: "Pa·s/m" };
    let result = Symbol { symbol: "k/v", si: found.0, unit: "Pa·s/m" };
    let formula = "the last of one or two stages; the mean of the second and third of three";
    let inputs = stages.iter().map(of).collect();
    Ok(Answer::of(found, line("Stage that decides", formula, inputs, result, SOURCE, Standing::Handbook)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_slow_stages_decide() {
        let of = |stages: &[f64]| {
            let stages: Vec<_> = stages.iter().map(|factor| ForceSpeed(*factor)).collect();
            deciding_stage(&stages).map(|found| found.value.0)
        };
        assert_eq!((of(&[1.0]), of(&[1.0, 4.0]), of(&[1.0, 4.0, 8.0])), (Ok(1.0), Ok(4.0), Ok(6.0)));
        assert!(of(&[]).is_err() && of(&[1.0; 4]).is_err());
    }

    #[test]
    fn what_cannot_be_is_named() {
        let spur = Spur {
            force: Force::from_n(3000.0),
            width: Length::from_mm(25.0),
            pinion_diameter: Length::from_mm(230.0),
            ratio: 2.5,
            zone_factor: USUAL_ZONE_FACTOR,
            application_factor: 1.0,
        };
        for (wrong, name) in [
            (Spur { force: Force::from_n(0.0), ..spur }, "force on the teeth"),
            (Spur { width: Length::from_mm(-1.0), ..spur }, "width of the teeth"),
            (Spur { ratio: 0.5, ..spur }, "ratio"),
            (Spur { zone_factor: f64::NAN, ..spur }, "zone factor"),
        ] {
            assert!(matches!(rolling_pressure(&wrong), Err(Error::OutOfRange { name: named, .. }) if named == name));
        }
        assert!(force_speed_spur(&spur, Velocity::from_m_s(0.0)).is_err());
        let none = Rotation::from_rpm(0.0);
        assert!(force_speed_worm(Torque::from_n_m(300.0), Length::from_mm(100.0), none, 1.0).is_err());
    }
}
