//! How warm a rolling bearing runs that nothing cools but the air about its housing, and what its viscosity ratio says of the film.

use std::f64::consts::TAU;

use super::torque::load_free_torque;
use super::viscosity_ratio::RATIOS;
use crate::contact::journal::Surroundings;
use crate::contact::line::{line, measured, number};
use crate::oil::ViscosityLine;
use crate::quantity::{KinematicViscosity, Length, Rotation, Temperature, Torque};
use crate::root::root;
use crate::{Answer, Error, Standing, math};

/// The thinnest viscosity for which the chart of viscosity and temperature is drawn, mm²/s.
///
/// Source: `astm-d341`.
const THINNEST: f64 = 0.21;
/// The power of the film ratio that is the viscosity ratio.
///
/// Source: `iso-281`, from memory.
const POWER: f64 = 1.3;

/// A rolling bearing that has warmed up.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Warmed {
    /// Temperature of bearing, oil and housing.
    pub temperature: Temperature,
    /// Viscosity of the oil there.
    pub viscosity: KinematicViscosity,
    /// What turning costs without load.
    pub torque: Torque,
}

/// The temperature at which a rolling bearing gives off as much heat by its housing as churning its oil makes.
///
/// `M₀ 2 π n = k A (T − T_amb)`
///
/// - `f0`: factor of bearing and oiling, as [`friction_factor`](super::friction_factor) gives it, dimensionless.
/// - `speed`: turning speed, `n`.
/// - `pitch_diameter`: diameter of the circle of the rolling bodies.
/// - `oil`: viscosity and temperature.
/// - `surroundings`: what takes the heat away.
/// - returns: temperature, viscosity and torque.
///
/// # Range
/// As [`load_free_torque`]: what the load adds is left out, so that a loaded or preloaded bearing runs warmer.
///
/// # Errors
/// [`Error::NotBracketed`], with both temperatures in kelvins, when more heat is made than given off up to the end of the oil's chart;
/// [`Error::OutOfRange`] when an input is not above zero.
///
/// # Source
/// `palmgren-1957` for the torque; the balance is that of `iso-7902`
///
/// # Example
/// ```
/// use tribology::contact::{journal::Surroundings, rolling::warmed};
/// use tribology::oil::ViscosityLine;
/// use tribology::quantity::{Area, HeatTransfer, KinematicViscosity, Length, Rotation, Temperature};
/// let oil = ViscosityLine::with_index(KinematicViscosity::from_mm2_s(32.0), 95.0)?.value;
/// let surroundings = Surroundings {
///     ambient: Temperature::from_celsius(20.0),
///     area: Area::from_cm2(300.0),
///     coefficient: HeatTransfer::from_w_m2_k(17.5),
/// };
/// let found = warmed(2.0, Rotation::from_rpm(1000.0), Length::from_mm(60.0), oil, surroundings)?.value;
/// assert!((22.0..40.0).contains(&found.temperature.celsius()));
/// # Ok::<(), tribology::Error>(())
/// ```
pub fn warmed(
    f0: f64,
    speed: Rotation,
    pitch_diameter: Length,
    oil: ViscosityLine,
    surroundings: Surroundings,
) -> Result<Answer<Warmed>, Error> {
    let area = Error::quantity_positive("area", surroundings.area)?.m2();
    let coefficient = Error::quantity_positive("heat transfer coefficient", surroundings.coefficient)?.w_m2_k();
    let ambient = Error::quantity_positive("ambient temperature", surroundings.ambient)?.kelvin();
    let at = |kelvin: f64| {
        let viscosity = oil.at(Temperature::from_kelvin(kelvin));
        load_free_torque(f0, viscosity, speed, pitch_diameter).map(|torque| (viscosity, torque))
    };
    // What is wrong with the bearing itself is said as it is.
    at(ambient)?;
    let turning = TAU * speed.per_second();
    let excess = |kelvin: f64| {
        at(kelvin)
            .map_or(f64::NAN, |(_, torque)| torque.value.n_m() * turning - coefficient * area * (kelvin - ambient))
    };
    let found = root("bearing temperature", [ambient, oil.kelvin_of(THINNEST)], 1e-6, excess)?;
    let temperature = Temperature::from_kelvin(found.at);
    let (viscosity, torque) = at(found.at)?;
    let inputs = vec![
        measured("M0", torque.value),
        measured("n", speed),
        measured("k", surroundings.coefficient),
        measured("A", surroundings.area),
        measured("Tamb", surroundings.ambient),
    ];
    let formula = "M0 2 π n = k A (T − Tamb), what the load adds left out";
    let step = line(
        "Temperature of the bearing",
        formula,
        inputs,
        measured("T", temperature),
        "palmgren-1957",
        Standing::OwnCalculation,
    );
    let value = Warmed { temperature, viscosity, torque: torque.value };
    Ok(torque.map(|_| value).after(Answer::of((), step)))
}

/// The film over the roughness that goes with a viscosity ratio.
///
/// `Λ = κ^(1/1.3)`
///
/// - `kappa`: the viscosity ratio, as [`viscosity_ratio`](super::viscosity_ratio) gives it, dimensionless.
/// - returns: the film ratio, dimensionless.
///
/// # Range
/// Ratios of 0.1 to 4, and bearings of ordinary finish; a rough guide in any case.
///
/// # Errors
/// [`Error::OutOfRange`] when the ratio is not above zero.
///
/// # Source
/// `iso-281`, from memory
///
/// # Example
/// ```
/// use tribology::contact::rolling::film_ratio_of;
/// assert!(film_ratio_of(1.0).is_ok_and(|found| (found.value - 1.0).abs() < 1e-12));
/// ```
pub fn film_ratio_of(kappa: f64) -> Result<Answer<f64>, Error> {
    Error::unless_positive("viscosity ratio", kappa)?;
    let ratio = math::pow(kappa, 1.0 / POWER);
    let (inputs, result) = (vec![number("κ", kappa)], number("Λ", ratio));
    let step =
        line("Film ratio of a rolling bearing", "Λ = κ^(1/1.3)", inputs, result, "iso-281", Standing::FromMemory);
    Ok(Answer::of(ratio, step).vouched_within("viscosity ratio", kappa, RATIOS[0], RATIOS[1]))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Area, HeatTransfer};

    fn at(f0: f64, rpm: f64, celsius: f64, cm2: f64) -> Result<Answer<Warmed>, Error> {
        let oil = ViscosityLine::with_index(KinematicViscosity::from_mm2_s(46.0), 95.0)?.value;
        let surroundings = Surroundings {
            ambient: Temperature::from_celsius(celsius),
            area: Area::from_cm2(cm2),
            coefficient: HeatTransfer::from_w_m2_k(17.5),
        };
        warmed(f0, Rotation::from_rpm(rpm), Length::from_mm(60.0), oil, surroundings)
    }

    #[test]
    fn what_is_made_is_given_off() {
        for (f0, rpm, celsius) in [(1.0, 50.0, 5.0), (2.0, 1000.0, 20.0), (6.0, 4000.0, 30.0)] {
            let found = at(f0, rpm, celsius, 300.0).expect("a balance").value;
            let made = found.torque.n_m() * TAU * rpm / 60.0;
            let given = 17.5 * 0.03 * (found.temperature.celsius() - celsius);
            assert!((made - given).abs() < 1e-3 * made, "{f0} {rpm}: {made} W made, {given} W given off");
        }
    }

    #[test]
    fn it_is_warmer_for_speed_drag_and_room_and_cooler_for_surface() {
        let of = |f0, rpm, celsius, cm2| at(f0, rpm, celsius, cm2).expect("a balance").value.temperature;
        let usual = of(2.0, 800.0, 20.0, 300.0);
        assert!(of(2.0, 1600.0, 20.0, 300.0) > usual && of(4.0, 800.0, 20.0, 300.0) > usual);
        assert!(of(2.0, 800.0, 30.0, 300.0) > usual && of(2.0, 800.0, 20.0, 600.0) < usual);
        assert!(
            at(2.0, 0.0, 20.0, 300.0).is_err()
                && at(2.0, 800.0, 20.0, 0.0).is_err()
                && at(0.0, 800.0, 20.0, 1.0).is_err()
        );
        assert!(film_ratio_of(0.0).is_err() && film_ratio_of(f64::NAN).is_err());
    }

    /// ISO 281's guide: the film is full at a viscosity ratio of about four, which texts call a film ratio of about three.
    #[test]
    fn a_viscosity_ratio_of_four_is_a_film_ratio_of_about_three() {
        let found = film_ratio_of(4.0).expect("a ratio");
        assert!((found.value - 3.0).abs() < 0.15 && found.warnings.is_empty());
        assert_eq!(film_ratio_of(20.0).expect("a ratio").warnings.len(), 1);
    }
}
