//! Saybolt seconds: the time that 60 mL take to run through the small hole (Universal) or the large one (Furol), after ASTM D2161.

use super::{step, symbol, viscosity};
use crate::quantity::{KinematicViscosity, Temperature};
use crate::root::root;
use crate::working::Step;
use crate::{Answer, Error, Standing};

/// From here up, in mm²/s, the formula for Universal seconds holds; it is about 32 seconds.
const UNIVERSAL_FROM: f64 = 1.8;
/// Temperatures in °F for which the standard gives the factor (from memory).
const FACTOR_RANGE: [f64; 2] = [0.0, 350.0];
/// Viscosities in mm²/s for which Furol seconds are meant.
const FUROL_RANGE: [f64; 2] = [48.0, 1300.0];
/// How far from 122 °F or 210 °F, in °F, a reading in Furol seconds still is one of that temperature.
const FUROL_NEAR: f64 = 2.5;
const SOURCE: &str = "astm-d2161";
const FORMULA: &str = "SUS = (1 + 0.000061 (t − 100)) (4.6324 ν + (1 + 0.03264 ν) / ((3930.2 + 262.7 ν + 23.97 ν² + 1.646 ν³) 10⁻⁵)), \
                       ν in mm²/s, t in °F";

/// Saybolt Universal seconds of an oil at the temperature of the reading.
///
/// `SUS = (1 + 0.000061 (t − 100)) (4.6324 ν + (1 + 0.03264 ν) / ((3930.2 + 262.7 ν + 23.97 ν² + 1.646 ν³) 10⁻⁵))`
///
/// - `kinematic`: kinematic viscosity at the temperature of the reading, `ν`.
/// - `at`: the temperature of the reading, `t` in °F.
/// - returns: seconds.
///
/// # Range
/// From 1.8 mm²/s up; 0 to 350 °F. The factor of temperature is from memory; it agrees with the printed factors at 100 °F and
/// 210 °F to 0.02 %.
///
/// # Errors
/// [`Error::OutOfRange`] below 1.8 mm²/s, and when the temperature is not above 0 K.
///
/// # Source
/// `astm-d2161`
///
/// # Example
/// ```
/// use tribology::oil::saybolt_seconds;
/// use tribology::quantity::{KinematicViscosity, Temperature};
/// let seconds = saybolt_seconds(KinematicViscosity::from_mm2_s(32.0), Temperature::from_fahrenheit(100.0));
/// assert!(seconds.is_ok_and(|seconds| (seconds.value - 150.49).abs() < 0.1));
/// ```
pub fn saybolt_seconds(kinematic: KinematicViscosity, at: Temperature) -> Result<Answer<f64>, Error> {
    Error::quantity_positive("temperature", at)?;
    let lowest = KinematicViscosity::from_mm2_s(UNIVERSAL_FROM * (1.0 - 1e-12));
    Error::quantity_within("viscosity", kinematic, lowest, KinematicViscosity::from_m2_s(f64::MAX))?;
    let seconds = factor(at) * universal_at_100(kinematic.mm2_s());
    let inputs = vec![viscosity("ν", kinematic.mm2_s()), symbol("t", at.kelvin(), "K")];
    let found =
        step("Saybolt Universal seconds", FORMULA, inputs, symbol("SUS", seconds, ""), SOURCE, Standing::Standard);
    Ok(in_factor_range(Answer::of(seconds, found), at))
}

/// The viscosity of an oil that takes so many Saybolt Universal seconds.
///
/// [`saybolt_seconds`], solved for the viscosity to the last digits; it rises steadily.
///
/// - `seconds`: the reading.
/// - `at`: the temperature of the reading.
/// - returns: kinematic viscosity at that temperature.
///
/// # Range
/// From about 32 seconds up; 0 to 350 °F.
///
/// # Errors
/// [`Error::OutOfRange`] below the seconds of 1.8 mm²/s, and when the temperature is not above 0 K.
///
/// # Source
/// `astm-d2161`
///
/// # Example
/// ```
/// use tribology::oil::viscosity_of_saybolt;
/// use tribology::quantity::Temperature;
/// let found = viscosity_of_saybolt(300.0, Temperature::from_fahrenheit(100.0));
/// assert!(found.is_ok_and(|found| (found.value.mm2_s() - 64.64).abs() < 0.05));
/// ```
pub fn viscosity_of_saybolt(seconds: f64, at: Temperature) -> Result<Answer<KinematicViscosity>, Error> {
    Error::quantity_positive("temperature", at)?;
    let factor = factor(at);
    let lowest = factor * universal_at_100(UNIVERSAL_FROM);
    Error::unless_within("Saybolt Universal seconds", seconds, lowest * (1.0 - 1e-12), f64::MAX)?;
    // The second term is above nought, so that the first alone gives an upper end.
    let upper = seconds / factor / 4.6324;
    let ends = [UNIVERSAL_FROM * (1.0 - 1e-9), upper];
    let found = root("viscosity", ends, 0.0, |mm2_s| factor * universal_at_100(mm2_s) - seconds)?;
    let inputs = vec![symbol("SUS", seconds, ""), symbol("t", at.kelvin(), "K")];
    let result = viscosity("ν", found.at);
    let found_step = step("Viscosity of the Saybolt reading", FORMULA, inputs, result, SOURCE, Standing::Standard);
    Ok(in_factor_range(Answer::of(KinematicViscosity::from_mm2_s(found.at), found_step), at))
}

/// Saybolt Furol seconds of an oil at 122 °F or 210 °F.
///
/// `SFS = 0.4717 ν + 13924 / (ν² − 72.59 ν + 6816)` at 122 °F, `SFS = 0.4792 ν + 5610 / (ν² + 2130)` at 210 °F
///
/// - `kinematic`: kinematic viscosity at the temperature of the reading, `ν`.
/// - `at`: the temperature of the reading.
/// - returns: seconds.
///
/// # Range
/// 48 to 1300 mm²/s; within 2.5 °F of 122 °F (50 °C) or 210 °F. The constants are from memory; up to 4 % above an older table.
///
/// # Errors
/// [`Error::OutOfRange`] when the viscosity is not above zero or the temperature is neither of the two.
///
/// # Source
/// `astm-d2161`
///
/// # Example
/// ```
/// use tribology::oil::saybolt_furol_seconds;
/// use tribology::quantity::{KinematicViscosity, Temperature};
/// let seconds = saybolt_furol_seconds(KinematicViscosity::from_mm2_s(300.0), Temperature::from_fahrenheit(122.0));
/// assert!(seconds.is_ok_and(|seconds| (seconds.value - 141.7).abs() < 1.4));
/// ```
pub fn saybolt_furol_seconds(kinematic: KinematicViscosity, at: Temperature) -> Result<Answer<f64>, Error> {
    Error::quantity_positive("viscosity", kinematic)?;
    let scale = Furol::at(at)?;
    let seconds = scale.seconds(kinematic.mm2_s());
    let inputs = vec![viscosity("ν", kinematic.mm2_s()), symbol("t", at.kelvin(), "K")];
    let found = scale.step("Saybolt Furol seconds", inputs, symbol("SFS", seconds, ""));
    Ok(in_furol_range(Answer::of(seconds, found), kinematic))
}

/// The viscosity of an oil that takes so many Saybolt Furol seconds at 122 °F or 210 °F.
///
/// [`saybolt_furol_seconds`], solved for the viscosity.
///
/// - `seconds`: the reading.
/// - `at`: the temperature of the reading.
/// - returns: kinematic viscosity at that temperature.
///
/// # Range
/// 25 seconds up, 48 to 1300 mm²/s; within 2.5 °F of 122 °F (50 °C) or 210 °F. The constants are from memory.
///
/// # Errors
/// [`Error::OutOfRange`] below 25 seconds, where the formula turns back, and when the temperature is neither of the two.
///
/// # Source
/// `astm-d2161`
///
/// # Example
/// ```
/// use tribology::oil::viscosity_of_saybolt_furol;
/// use tribology::quantity::Temperature;
/// let found = viscosity_of_saybolt_furol(141.7, Temperature::from_fahrenheit(122.0));
/// assert!(found.is_ok_and(|found| (found.value.mm2_s() - 300.0).abs() < 3.0));
/// ```
pub fn viscosity_of_saybolt_furol(seconds: f64, at: Temperature) -> Result<Answer<KinematicViscosity>, Error> {
    let scale = Furol::at(at)?;
    let low = scale.seconds(FUROL_FROM);
    Error::unless_within("Saybolt Furol seconds", seconds, low * (1.0 - 1e-12), f64::MAX)?;
    let ends = [FUROL_FROM * (1.0 - 1e-9), seconds / 0.4717];
    let found = root("viscosity", ends, 0.0, |mm2_s| scale.seconds(mm2_s) - seconds)?;
    let kinematic = KinematicViscosity::from_mm2_s(found.at);
    let inputs = vec![symbol("SFS", seconds, ""), symbol("t", at.kelvin(), "K")];
    let found_step = scale.step("Viscosity of the Furol reading", inputs, viscosity("ν", found.at));
    Ok(in_furol_range(Answer::of(kinematic, found_step), kinematic))
}

/// From here up, in mm²/s, Furol seconds rise steadily at both temperatures; it is about 25 seconds.
const FUROL_FROM: f64 = 48.0;

/// The two temperatures of Furol readings.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Furol {
    At122,
    At210,
}

impl Furol {
    fn at(temperature: Temperature) -> Result<Self, Error> {
        let near = |fahrenheit: f64| (temperature.fahrenheit() - fahrenheit).abs() <= FUROL_NEAR;
        if near(122.0) {
            return Ok(Self::At122);
        }
        if near(210.0) {
            return Ok(Self::At210);
        }
        let [low, high] = [122.0, 210.0].map(|fahrenheit| Temperature::from_fahrenheit(fahrenheit).kelvin());
        let (name, value) = ("temperature of a Furol reading", temperature.kelvin());
        Err(Error::OutOfRange { name, value, low, high, unit: "K" })
    }

    fn seconds(self, mm2_s: f64) -> f64 {
        match self {
            Self::At122 => 0.4717 * mm2_s + 13924.0 / (mm2_s * mm2_s - 72.59 * mm2_s + 6816.0),
            Self::At210 => 0.4792 * mm2_s + 5610.0 / (mm2_s * mm2_s + 2130.0),
        }
    }

    fn step(self, name: &'static str, inputs: Vec<crate::Symbol>, result: crate::Symbol) -> Step {
        let formula = match self {
            Self::At122 => "SFS = 0.4717 ν + 13924 / (ν² − 72.59 ν + 6816), ν in mm²/s at 122 °F",
            Self::At210 => "SFS = 0.4792 ν + 5610 / (ν² + 2130), ν in mm²/s at 210 °F",
        };
        step(name, formula, inputs, result, SOURCE, Standing::FromMemory)
    }
}

fn universal_at_100(mm2_s: f64) -> f64 {
    let below = 3930.2 + 262.7 * mm2_s + 23.97 * mm2_s * mm2_s + 1.646 * mm2_s * mm2_s * mm2_s;
    4.6324 * mm2_s + (1.0 + 0.03264 * mm2_s) / (below * 1e-5)
}

fn factor(at: Temperature) -> f64 {
    1.0 + 0.000_061 * (at.fahrenheit() - 100.0)
}

fn in_factor_range<T>(answer: Answer<T>, at: Temperature) -> Answer<T> {
    let [low, high] = FACTOR_RANGE.map(Temperature::from_fahrenheit);
    answer.quantity_vouched_within("temperature", at, low, high)
}

fn in_furol_range<T>(answer: Answer<T>, kinematic: KinematicViscosity) -> Answer<T> {
    let [low, high] = [FUROL_RANGE[0] * (1.0 - 1e-9), FUROL_RANGE[1]].map(KinematicViscosity::from_mm2_s);
    answer.quantity_vouched_within("viscosity", kinematic, low, high)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn both_scales_rise_steadily() {
        let mut mm2_s = UNIVERSAL_FROM;
        while mm2_s < 1e5 {
            let next = mm2_s * 1.001;
            assert!(universal_at_100(next) > universal_at_100(mm2_s), "{mm2_s}");
            if mm2_s >= FUROL_FROM {
                for scale in [Furol::At122, Furol::At210] {
                    assert!(scale.seconds(next) > scale.seconds(mm2_s), "{mm2_s}");
                }
            }
            mm2_s = next;
        }
    }

    #[test]
    fn what_cannot_be_is_refused() {
        let at = Temperature::from_fahrenheit;
        assert!(viscosity_of_saybolt(31.0, at(100.0)).is_err() && viscosity_of_saybolt(f64::NAN, at(100.0)).is_err());
        assert!(viscosity_of_saybolt(300.0, at(-500.0)).is_err());
        assert!(viscosity_of_saybolt_furol(141.0, at(100.0)).is_err());
        assert!(viscosity_of_saybolt_furol(20.0, at(122.0)).is_err());
        assert_eq!(viscosity_of_saybolt(300.0, at(400.0)).expect("an answer").warnings.len(), 1);
    }
}
