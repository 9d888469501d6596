//! How much of a bearing's fatigue limit the dirt in its oil leaves: a guide table, and an equation that is remembered.

use super::viscosity_ratio::RATIOS;
use crate::contact::line::{line, measured, number};
use crate::quantity::Length;
use crate::working::Warning;
use crate::{Answer, Error, Standing, math};

/// The mean diameter in mm from which the second column of the guide holds.
///
/// Source: `iso-281`.
const LARGE_MM: f64 = 100.0;
const SOURCE: &str = "iso-281";

/// How clean a bearing is kept, in words.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Cleanliness {
    /// Particles no larger than the film: the laboratory.
    Extreme,
    /// Finely filtered oil; sealed and greased for life.
    High,
    /// Filtered oil; shielded and greased for life.
    Normal,
    /// A little dirt.
    Slight,
    /// The dirt that is usual without seals and with a coarse filter.
    Typical,
    /// Much dirt.
    Severe,
    /// So much that it wears instead of tiring.
    VerySevere,
}

/// How oil comes to the bearing, and how clean by ISO 4406.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Supply {
    /// Oil bath, −/13/10.
    Bath13,
    /// Oil bath, −/15/12.
    Bath15,
    /// Oil bath, −/17/14.
    Bath17,
    /// Oil bath, −/19/16.
    Bath19,
    /// Oil bath, −/21/18.
    Bath21,
    /// Grease of high cleanliness.
    GreaseHigh,
    /// Grease of normal cleanliness.
    GreaseNormal,
}

impl Cleanliness {
    /// Every state, cleanest first.
    pub const ALL: [Cleanliness; 7] = [
        Cleanliness::Extreme,
        Cleanliness::High,
        Cleanliness::Normal,
        Cleanliness::Slight,
        Cleanliness::Typical,
        Cleanliness::Severe,
        Cleanliness::VerySevere,
    ];
}

impl Supply {
    /// Every supply; the baths cleanest first, then the greases.
    pub const ALL: [Supply; 7] = [
        Supply::Bath13,
        Supply::Bath15,
        Supply::Bath17,
        Supply::Bath19,
        Supply::Bath21,
        Supply::GreaseHigh,
        Supply::GreaseNormal,
    ];
}

/// The contamination factor by the guide table, from and to.
///
/// - `cleanliness`: how clean, in words.
/// - `pitch_diameter`: diameter of the circle of the rolling bodies.
/// - returns: the lowest and the highest factor, dimensionless.
///
/// # Range
/// Two columns: below 100 mm, and from there on.
///
/// # Errors
/// [`Error::OutOfRange`] when the diameter is not above zero.
///
/// # Source
/// `iso-281`
///
/// # Example
/// ```
/// use tribology::contact::rolling::{Cleanliness, contamination_range};
/// use tribology::quantity::Length;
/// let found = contamination_range(Cleanliness::Normal, Length::from_mm(60.0)).map(|answer| answer.value);
/// assert_eq!(found, Ok((0.5, 0.6)));
/// ```
pub fn contamination_range(cleanliness: Cleanliness, pitch_diameter: Length) -> Result<Answer<(f64, f64)>, Error> {
    let diameter = Error::quantity_positive("pitch diameter", pitch_diameter)?;
    let (small, large) = match cleanliness {
        Cleanliness::Extreme => ((1.0, 1.0), (1.0, 1.0)),
        Cleanliness::High => ((0.6, 0.8), (0.8, 0.9)),
        Cleanliness::Normal => ((0.5, 0.6), (0.6, 0.8)),
        Cleanliness::Slight => ((0.3, 0.5), (0.4, 0.6)),
        Cleanliness::Typical => ((0.1, 0.3), (0.2, 0.4)),
        Cleanliness::Severe => ((0.0, 0.1), (0.0, 0.1)),
        Cleanliness::VerySevere => ((0.0, 0.0), (0.0, 0.0)),
    };
    let found = if diameter.mm() < LARGE_MM { small } else { large };
    let inputs = vec![measured("D", pitch_diameter), number("highest e", found.1)];
    let formula = "guide table: extreme, high, normal, slight, typical, severe, very severe; below 100 mm and above";
    let result = number("lowest e", found.0);
    Ok(Answer::of(found, line("Contamination factor", formula, inputs, result, SOURCE, Standing::Standard)))
}

/// The contamination factor by equation.
///
/// `e = a (1 − b / D^(1/3))`, `a = min(1, c κ^0.68 D^0.55)`, `D` in mm
///
/// - `supply`: how oil comes and how clean it is; gives `b` and `c`.
/// - `kappa`: the viscosity ratio.
/// - `pitch_diameter`: diameter of the circle of the rolling bodies, `D`.
/// - returns: the factor, dimensionless.
///
/// # Range
/// The constants are from memory. Small bearings come out far below the guide table; where `D^(1/3)` is not above `b` the equation gives
/// nothing above zero: then the answer is zero with a warning. No printed value was found to hold it against.
///
/// # Errors
/// [`Error::OutOfRange`] when the ratio or the diameter is not above zero.
///
/// # Source
/// `iso-281`
///
/// # Example
/// ```
/// use tribology::contact::rolling::{Supply, contamination_factor};
/// use tribology::quantity::Length;
/// let found = contamination_factor(Supply::Bath17, 1.0, Length::from_mm(60.0));
/// assert!(found.is_ok_and(|found| (found.value - 0.0725).abs() < 0.0005));
/// ```
pub fn contamination_factor(supply: Supply, kappa: f64, pitch_diameter: Length) -> Result<Answer<f64>, Error> {
    Error::unless_positive("viscosity ratio", kappa)?;
    let d = Error::quantity_positive("pitch diameter", pitch_diameter)?.mm();
    let (c, b) = match supply {
        Supply::Bath13 => (0.0864, 0.5796),
        Supply::Bath15 => (0.0288, 1.141),
        Supply::Bath17 => (0.0133, 1.670),
        Supply::Bath19 => (0.008_64, 2.5164),
        Supply::Bath21 => (0.004_11, 3.8974),
        Supply::GreaseHigh => (0.0864, 0.6796),
        Supply::GreaseNormal => (0.0432, 1.141),
    };
    let a = (c * math::pow(kappa, 0.68) * math::pow(d, 0.55)).min(1.0);
    let found = a * (1.0 - b / math::cbrt(d));
    let inputs = vec![number("κ", kappa), measured("D", pitch_diameter), number("b", b), number("c", c)];
    let formula = "e = a (1 − b / D^(1/3)), a = min(1, c κ^0.68 D^0.55), D in mm";
    let step = line("Contamination factor", formula, inputs, number("e", found), SOURCE, Standing::FromMemory);
    let mut answer = Answer::of(found, step).vouched_within("viscosity ratio", kappa, RATIOS[0], RATIOS[1]);
    if found < 0.0 {
        let low = Length::from_mm(b * b * b).m();
        let (name, value, high) = ("pitch diameter", pitch_diameter.m(), f64::MAX);
        answer.warnings.push(Warning::BeyondSource { name, value, low, high, unit: "m" });
        let inputs = vec![number("e", found)];
        let (name, formula) = ("No factor is below zero", "e = max(0, e)");
        answer.steps.push(line(name, formula, inputs, number("e", 0.0), "own-calculation", Standing::OwnCalculation));
        answer.value = 0.0;
    }
    Ok(answer)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_bearing_too_small_for_the_equation_is_told() {
        let found = contamination_factor(Supply::Bath21, 1.0, Length::from_mm(40.0)).expect("a bearing");
        assert_eq!((found.value, found.warnings.len(), found.steps.len()), (0.0, 1, 2));
        assert!(contamination_factor(Supply::Bath21, 1.0, Length::from_mm(80.0)).is_ok_and(|found| found.value > 0.0));
    }

    /// Worked by hand at 125 mm, whose cube root is 5, and at a ratio of one: 125^0.55 is 14.233.
    #[test]
    fn each_supply_has_its_own_constants() {
        let by_hand = [0.88408, 0.31637, 0.12607, 0.061083, 0.012900, 0.86408, 0.47455];
        for (supply, wanted) in Supply::ALL.into_iter().zip(by_hand) {
            let found = contamination_factor(supply, 1.0, Length::from_mm(125.0)).expect("a bearing").value;
            assert!((found / wanted - 1.0).abs() < 2e-4, "{supply:?}: {found}, not {wanted}");
        }
    }

    #[test]
    fn the_columns_of_the_guide_change_at_a_hundred() {
        let of = |mm| contamination_range(Cleanliness::High, Length::from_mm(mm)).map(|found| found.value);
        assert_eq!((of(99.9), of(100.0)), (Ok((0.6, 0.8)), Ok((0.8, 0.9))));
        assert!(of(0.0).is_err());
    }
}
