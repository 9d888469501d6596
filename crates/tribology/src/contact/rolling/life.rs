//! How long a rolling bearing lasts before its steel tires, once film and dirt are counted.

use super::Class;
use crate::contact::line::{line, measured, number};
use crate::quantity::{Force, Rotation, Time};
use crate::{Answer, Error, Standing, math};

/// Loads over the capacity up to which the formula is meant; from memory.
///
/// Source: `iso-281`.
const LOADS: [f64; 2] = [0.0, 0.5];
const SOURCE: &str = "iso-281";

/// How many of a hundred bearings reach the life.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Reliability {
    /// Ninety, as catalogues count.
    Ninety,
    /// Ninety-five.
    NinetyFive,
    /// Ninety-nine.
    NinetyNine,
}

/// A life of a bearing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Life {
    /// Millions of turns.
    pub million_turns: f64,
    /// The running time of so many turns.
    pub time: Time,
}

impl Reliability {
    /// The factor on the life, and how firmly it stands: one by definition at ninety, else from memory.
    #[must_use]
    pub fn factor(self) -> (f64, Standing) {
        match self {
            Reliability::Ninety => (1.0, Standing::Standard),
            Reliability::NinetyFive => (0.64, Standing::FromMemory),
            Reliability::NinetyNine => (0.25, Standing::FromMemory),
        }
    }
}

/// The modified rating life of a rolling bearing.
///
/// `L = a₁ a (C / P)^p` in millions of turns, `p` 3 with balls and 10/3 with rollers; `L / n` in time
///
/// - `class`: the sort of bearing.
/// - `capacity`: basic dynamic load rating, `C`.
/// - `load`: equivalent dynamic load, `P`.
/// - `modification`: the factor for film and dirt, `a`, as [`life_modification`](super::life_modification) gives it.
/// - `reliability`: how many of a hundred reach it; gives `a₁`.
/// - `speed`: turning speed, `n`.
/// - returns: millions of turns and running time.
///
/// # Range
/// Loads up to half the capacity (from memory); above it the answer carries a warning. Tired steel only: rust, chips and wear end most
/// bearings of old machines long before. No printed value was found to hold it against.
///
/// # Errors
/// [`Error::OutOfRange`] when an input is not above zero.
///
/// # Source
/// `iso-281`
///
/// # Example
/// ```
/// use tribology::contact::rolling::{Class, Reliability, modified_life};
/// use tribology::quantity::{Force, Rotation};
/// let (capacity, load) = (Force::from_kn(29.6), Force::from_kn(2.96));
/// let life = modified_life(Class::RadialBall, capacity, load, 1.0, Reliability::Ninety, Rotation::from_rpm(1000.0));
/// assert!(life.is_ok_and(|life| (life.value.million_turns - 1000.0).abs() < 1e-6));
/// ```
pub fn modified_life(
    class: Class,
    capacity: Force,
    load: Force,
    modification: f64,
    reliability: Reliability,
    speed: Rotation,
) -> Result<Answer<Life>, Error> {
    Error::quantity_positive("capacity", capacity)?;
    Error::quantity_positive("load", load)?;
    Error::unless_positive("life modification", modification)?;
    let n = Error::quantity_positive("speed", speed)?.per_second();
    let (a1, how) = reliability.factor();
    let p = if class.has_balls() { 3.0 } else { 10.0 / 3.0 };
    let million_turns = a1 * modification * math::pow(capacity / load, p);
    let time = Time::from_seconds(1e6 * million_turns / n);
    let inputs =
        vec![number("a1", a1), number("a", modification), measured("C", capacity), measured("P", load), number("p", p)];
    let turns = number("L in millions of turns", million_turns);
    let first = line("Modified rating life", "L = a1 a (C / P)^p, in millions of turns", inputs, turns, SOURCE, how);
    let inputs = vec![turns, measured("n", speed)];
    let result = measured("running time", time);
    let second = line("Running time of the life", "L / n", inputs, result, SOURCE, Standing::Standard);
    let mut answer = Answer::of(Life { million_turns, time }, first);
    answer.steps.push(second);
    Ok(answer.vouched_within("load over capacity", load / capacity, LOADS[0], LOADS[1]))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn life(load_kn: f64, rpm: f64, a: f64) -> Result<Answer<Life>, Error> {
        let (capacity, load) = (Force::from_kn(30.0), Force::from_kn(load_kn));
        modified_life(Class::RadialRoller, capacity, load, a, Reliability::Ninety, Rotation::from_rpm(rpm))
    }

    #[test]
    fn what_cannot_be_is_named() {
        for (load, rpm, a, wrong) in [
            (0.0, 100.0, 1.0, "load"),
            (-1.0, 100.0, 1.0, "load"),
            (3.0, 0.0, 1.0, "speed"),
            (3.0, 100.0, 0.0, "life modification"),
        ] {
            let Err(Error::OutOfRange { name, .. }) = life(load, rpm, a) else { panic!("{load} {rpm} {a}") };
            assert_eq!(name, wrong);
        }
    }

    #[test]
    fn an_overload_is_answered_with_a_warning() {
        assert!(life(20.0, 100.0, 1.0).is_ok_and(|found| found.warnings.len() == 1));
        assert!(life(15.0, 100.0, 1.0).is_ok_and(|found| found.warnings.is_empty()));
    }
}
