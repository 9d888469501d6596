//! What the thickness of the film and the cleanness of the oil do to the life of a rolling bearing.

use super::Class;
use super::viscosity_ratio::RATIOS;
use crate::contact::line::{line, number};
use crate::{Answer, Error, Standing, math};

/// The most that the factor may be.
///
/// Source: `iso-281`; from memory.
const MOST: f64 = 50.0;
/// Where the exponents change: the viscosity ratio below which the row holds, its exponent, and its factor for balls and for rollers.
///
/// Source: `iso-281`. One public program prints 0.019087 in the second row: a slip, for only 0.19087 meets its neighbours.
const BRANCHES: [(f64, f64, f64, f64); 3] =
    [(0.4, 0.054_381, 2.2649, 1.3993), (1.0, 0.190_87, 1.9987, 1.2348), (f64::INFINITY, 0.071_739, 1.9987, 1.2348)];
const SOURCE: &str = "iso-281";

/// The factor by which film and dirt change the life of a rolling bearing, `a_ISO`.
///
/// `a = 0.1 (1 − (2.5671 − c/κ^m)^0.83 s^(1/3))^−9.3` for balls, `a = 0.1 (1 − (1.5859 − c/κ^m) s^0.4)^−9.185` for rollers;
/// `s = e C_u / P`, for thrust bearings a third of it with balls and two fifths with rollers
///
/// - `class`: the sort of bearing.
/// - `kappa`: the viscosity ratio, `κ`; more than 4 counts as 4.
/// - `contamination_load`: contamination factor times fatigue load limit over equivalent load, `e C_u / P`, dimensionless.
/// - returns: the factor, 0.1 to 50; nothing below a ratio of 0.1, of which the method does not speak.
///
/// # Range
/// `0.1 <= κ <= 4`; outside it the answer carries a warning. The thrust forms and the limit of 50 are from memory. The branches meet
/// at 0.4 and 1 within the printed digits (0.004 % of the inner term); rollers at just 0.1 come out 0.05 % below 0.1 for the same reason. No printed value was found to hold it against.
///
/// # Errors
/// [`Error::OutOfRange`] when the ratio is not above zero, or the other number below zero.
///
/// # Source
/// `iso-281`
///
/// # Example
/// ```
/// use tribology::contact::rolling::{Class, life_modification};
/// let found = life_modification(Class::RadialBall, 0.7, 0.2).map(|answer| answer.value);
/// assert!(found.is_ok_and(|a| a.is_some_and(|a| (a - 2.383).abs() < 0.005)));
/// ```
pub fn life_modification(class: Class, kappa: f64, contamination_load: f64) -> Result<Answer<Option<f64>>, Error> {
    Error::unless_positive("viscosity ratio", kappa)?;
    Error::unless_within("contamination load", contamination_load, 0.0, f64::MAX)?;
    let counted = kappa.min(RATIOS[1]);
    let (_, m, balls, rollers) = *BRANCHES.iter().find(|row| counted < row.0).unwrap_or(&BRANCHES[2]);
    let s = contamination_load / divisor(class);
    let standing = if class.is_thrust() { Standing::FromMemory } else { Standing::Standard };
    let (c, remainder, formula) = if class.has_balls() {
        let c = balls;
        let inner = (2.5671 - c / math::pow(counted, m)).max(0.0);
        let formula = "a = 0.1 (1 − (2.5671 − c/κ^m)^0.83 s^(1/3))^−9.3; s = e Cu/P radial, e Cu/(3 P) thrust";
        (c, 1.0 - math::pow(inner, 0.83) * math::cbrt(s), formula)
    } else {
        let c = rollers;
        let formula = "a = 0.1 (1 − (1.5859 − c/κ^m) s^0.4)^−9.185; s = e Cu/P radial, e Cu/(2.5 P) thrust";
        (c, 1.0 - (1.5859 - c / math::pow(counted, m)) * math::pow(s, 0.4), formula)
    };
    let exponent = if class.has_balls() { -9.3 } else { -9.185 };
    // At nought and below the power has no end: the limit takes over.
    let raw = if remainder > 0.0 { 0.1 * math::pow(remainder, exponent) } else { f64::INFINITY };
    let value = (kappa >= RATIOS[0]).then_some(raw.min(MOST));
    let inputs = vec![number("κ", counted), number("m", m), number("c", c), number("s", s)];
    let mut answer = Answer { value, warnings: Vec::new(), steps: Vec::new() };
    if raw <= MOST && value.is_some() {
        answer.steps.push(line("Life modification", formula, inputs, number("a", raw), SOURCE, standing));
    } else if value.is_some() {
        answer.steps.push(line(
            "What the film leaves of one",
            formula,
            inputs,
            number("1 − …", remainder),
            SOURCE,
            standing,
        ));
        let (name, formula) = ("Upper limit of life modification", "a is at most 50");
        answer.steps.push(line(name, formula, Vec::new(), number("a", MOST), SOURCE, Standing::FromMemory));
    }
    Ok(answer.vouched_within("viscosity ratio", kappa, RATIOS[0], RATIOS[1]))
}

/// What the load counts more in a thrust bearing.
fn divisor(class: Class) -> f64 {
    match class {
        Class::RadialBall | Class::RadialRoller => 1.0,
        Class::ThrustBall => 3.0,
        Class::ThrustRoller => 2.5,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn a(class: Class, kappa: f64, load: f64) -> Option<f64> {
        life_modification(class, kappa, load).expect("it may be asked").value
    }

    #[test]
    fn dirt_without_end_leaves_a_tenth() {
        for (class, _) in Class::ALL {
            assert!(a(class, 2.0, 0.0).is_some_and(|a| (a - 0.1).abs() < 1e-15), "{class:?}");
        }
    }

    #[test]
    fn below_the_method_there_is_no_number_but_a_warning() {
        for (class, _) in Class::ALL {
            let found = life_modification(class, 0.05, 0.5).expect("thin oil is no fault of the question");
            assert_eq!((found.value, found.warnings.len(), found.steps.len()), (None, 1, 0));
        }
    }

    #[test]
    fn above_four_counts_as_four_and_says_so() {
        let (four, ten) = (a(Class::RadialBall, 4.0, 0.1), a(Class::RadialBall, 10.0, 0.1));
        assert_eq!(four, ten);
        assert!(life_modification(Class::RadialBall, 10.0, 0.1).is_ok_and(|found| found.warnings.len() == 1));
    }

    #[test]
    fn what_cannot_be_is_refused() {
        for (kappa, load) in [(0.0, 0.5), (-1.0, 0.5), (f64::NAN, 0.5), (1.0, -0.1), (1.0, f64::NAN)] {
            assert!(life_modification(Class::RadialBall, kappa, load).is_err(), "{kappa} {load}");
        }
    }
}
