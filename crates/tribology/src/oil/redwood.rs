//! Redwood seconds, the old British scale: No. 1 for most oils, No. 2 (Admiralty) for thick ones. Each has two pieces that do not
//! quite meet; constants differ between books by four or five percent.

use super::{step, symbol, viscosity};
use crate::quantity::KinematicViscosity;
use crate::root::root;
use crate::{Answer, Error, Standing};

const SOURCE: &str = "redwood-ip-70";

/// A Redwood viscometer: its two formulas `ν = a R − b / R`, the lower up to a number of seconds.
struct Redwood {
    name: &'static str,
    formula: &'static str,
    /// Seconds from which the source gives the formula.
    from: f64,
    /// Seconds up to which the lower formula holds.
    join: f64,
    low: (f64, f64),
    high: (f64, f64),
}

const NO_1: Redwood = Redwood {
    name: "Redwood No. 1 seconds",
    formula: "ν = 0.260 R − 179 / R up to 100 s, ν = 0.247 R − 50 / R above, in mm²/s",
    from: 34.0,
    join: 100.0,
    low: (0.260, 179.0),
    high: (0.247, 50.0),
};

const NO_2: Redwood = Redwood {
    name: "Redwood No. 2 seconds",
    formula: "ν = 2.458 R − 100 / R up to 90 s, ν = 2.447 R above, in mm²/s",
    from: 32.5,
    join: 90.0,
    low: (2.458, 100.0),
    high: (2.447, 0.0),
};

/// The viscosity of an oil that takes so many seconds in the Redwood viscometer No. 1, at the temperature of the reading.
///
/// `ν = 0.260 R − 179 / R` up to 100 s, `ν = 0.247 R − 50 / R` above
///
/// - `seconds`: the reading, `R`.
/// - returns: kinematic viscosity.
///
/// # Range
/// From 34 seconds up. Take a reading as ±5 %: older constants give 4 to 5 % more above 100 seconds.
///
/// # Errors
/// [`Error::OutOfRange`] when the formula gives no viscosity above zero, below 27 seconds.
///
/// # Source
/// `redwood-ip-70`
///
/// # Example
/// ```
/// use tribology::oil::viscosity_of_redwood_1;
/// assert!(viscosity_of_redwood_1(75.0).is_ok_and(|found| (found.value.mm2_s() - 17.11).abs() < 0.02));
/// ```
pub fn viscosity_of_redwood_1(seconds: f64) -> Result<Answer<KinematicViscosity>, Error> {
    NO_1.viscosity(seconds)
}

/// The seconds of an oil in the Redwood viscometer No. 1, at the temperature of its viscosity.
///
/// [`viscosity_of_redwood_1`], solved for the seconds; at 100 seconds, where its pieces overlap by 0.01 mm²/s, the lower piece counts.
///
/// - `kinematic`: kinematic viscosity.
/// - returns: seconds.
///
/// # Range
/// From 3.6 mm²/s (34 seconds) up.
///
/// # Errors
/// [`Error::OutOfRange`] when the viscosity is not above zero.
///
/// # Source
/// `redwood-ip-70`
///
/// # Example
/// ```
/// use tribology::{oil::redwood_1_seconds, quantity::KinematicViscosity};
/// let seconds = redwood_1_seconds(KinematicViscosity::from_mm2_s(17.11));
/// assert!(seconds.is_ok_and(|seconds| (seconds.value - 75.0).abs() < 0.1));
/// ```
pub fn redwood_1_seconds(kinematic: KinematicViscosity) -> Result<Answer<f64>, Error> {
    NO_1.seconds(kinematic)
}

/// The viscosity of an oil that takes so many seconds in the Redwood viscometer No. 2, at the temperature of the reading.
///
/// `ν = 2.458 R − 100 / R` up to 90 s, `ν = 2.447 R` above
///
/// - `seconds`: the reading, `R`.
/// - returns: kinematic viscosity.
///
/// # Range
/// From 32.5 seconds up. Take a reading as ±5 %.
///
/// # Errors
/// [`Error::OutOfRange`] when the formula gives no viscosity above zero, below 7 seconds.
///
/// # Source
/// `redwood-ip-70`
///
/// # Example
/// ```
/// use tribology::oil::viscosity_of_redwood_2;
/// assert!(viscosity_of_redwood_2(150.0).is_ok_and(|found| (found.value.mm2_s() - 367.05).abs() < 0.1));
/// ```
pub fn viscosity_of_redwood_2(seconds: f64) -> Result<Answer<KinematicViscosity>, Error> {
    NO_2.viscosity(seconds)
}

/// The seconds of an oil in the Redwood viscometer No. 2, at the temperature of its viscosity.
///
/// [`viscosity_of_redwood_2`], solved for the seconds; in the gap of 0.12 mm²/s between its pieces, 90 seconds.
///
/// - `kinematic`: kinematic viscosity.
/// - returns: seconds.
///
/// # Range
/// From 77 mm²/s (32.5 seconds) up.
///
/// # Errors
/// [`Error::OutOfRange`] when the viscosity is not above zero.
///
/// # Source
/// `redwood-ip-70`
///
/// # Example
/// ```
/// use tribology::{oil::redwood_2_seconds, quantity::KinematicViscosity};
/// let seconds = redwood_2_seconds(KinematicViscosity::from_mm2_s(367.05));
/// assert!(seconds.is_ok_and(|seconds| (seconds.value - 150.0).abs() < 0.1));
/// ```
pub fn redwood_2_seconds(kinematic: KinematicViscosity) -> Result<Answer<f64>, Error> {
    NO_2.seconds(kinematic)
}

impl Redwood {
    fn mm2_s(&self, seconds: f64) -> f64 {
        let (a, b) = if seconds <= self.join { self.low } else { self.high };
        a * seconds - b / seconds
    }

    fn viscosity(&self, seconds: f64) -> Result<Answer<KinematicViscosity>, Error> {
        let lowest = crate::math::sqrt(self.low.1 / self.low.0);
        Error::unless_within(self.name, seconds, lowest.next_up(), f64::MAX)?;
        let found = self.mm2_s(seconds);
        let result = viscosity("ν", found);
        let inputs = vec![symbol("R", seconds, "")];
        let found_step =
            step("Viscosity of the Redwood reading", self.formula, inputs, result, SOURCE, Standing::Handbook);
        let answer = Answer::of(KinematicViscosity::from_mm2_s(found), found_step);
        Ok(answer.vouched_within(self.name, seconds, self.from, f64::MAX))
    }

    fn seconds(&self, kinematic: KinematicViscosity) -> Result<Answer<f64>, Error> {
        Error::quantity_positive("viscosity", kinematic)?;
        let wanted = kinematic.mm2_s();
        let at = |piece: (f64, f64)| move |seconds: f64| piece.0 * seconds - piece.1 / seconds - wanted;
        let seconds = if at(self.low)(self.join) >= 0.0 {
            root(self.name, [1e-3, self.join], 0.0, at(self.low))?.at
        } else if at(self.high)(self.join) >= 0.0 {
            self.join
        } else {
            let upper = 2.0 * wanted / self.high.0 + self.high.1;
            root(self.name, [self.join, upper], 0.0, at(self.high))?.at
        };
        let inputs = vec![viscosity("ν", wanted)];
        let found_step = step(self.name, self.formula, inputs, symbol("R", seconds, ""), SOURCE, Standing::Handbook);
        Ok(Answer::of(seconds, found_step).vouched_within(self.name, seconds, self.from, f64::MAX))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The pieces of No. 1 overlap and those of No. 2 leave a gap; both are as the source has them.
    #[test]
    fn at_the_joins_the_inverse_stays_near() {
        for (instrument, join) in [(&NO_1, [24.20, 24.205, 24.21]), (&NO_2, [220.0, 220.15, 220.3])] {
            for mm2_s in join {
                let seconds = instrument.seconds(KinematicViscosity::from_mm2_s(mm2_s)).expect("above zero").value;
                assert!((instrument.mm2_s(seconds) / mm2_s - 1.0).abs() < 6e-4, "{mm2_s}: {seconds}");
            }
        }
    }

    #[test]
    fn below_the_source_is_warned_of_and_nonsense_refused() {
        assert_eq!(viscosity_of_redwood_1(30.0).expect("thin").warnings.len(), 1);
        assert!(viscosity_of_redwood_1(26.0).is_err() && viscosity_of_redwood_2(0.0).is_err());
        assert!(redwood_1_seconds(KinematicViscosity::from_mm2_s(-1.0)).is_err());
    }
}
