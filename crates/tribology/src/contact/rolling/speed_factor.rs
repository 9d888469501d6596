//! Speed times size of a rolling bearing, by which the trade says where plain grease ends and where oil must come by other ways.

use crate::contact::line::{line, measured, number};
use crate::quantity::{Length, Rotation};
use crate::{Answer, Error, Standing};

/// Speed in rpm times mean diameter in mm up to which a general grease serves.
///
/// Source: `common-practice`.
const GENERAL_GREASE: f64 = 150_000.0;
/// The same for a special grease or ordinary oiling.
///
/// Source: `common-practice`.
const SPECIAL_GREASE_OR_OIL: f64 = 400_000.0;

/// What a speed asks for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum SpeedMethod {
    /// A general grease serves; so does oil.
    GeneralGrease,
    /// A grease for high speed, or oil.
    SpecialGreaseOrOil,
    /// Oil by special ways: mist, jet, minimal drops.
    SpecialWays,
}

/// Speed times size, and what it asks for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SpeedFactor {
    /// Speed in rpm times mean diameter in mm.
    pub mm_rpm: f64,
    /// What it asks for.
    pub method: SpeedMethod,
}

impl SpeedMethod {
    /// Every method, slowest first.
    pub const ALL: [SpeedMethod; 3] =
        [SpeedMethod::GeneralGrease, SpeedMethod::SpecialGreaseOrOil, SpeedMethod::SpecialWays];

    /// The speed factors in mm·rpm from which and to which it serves; the last has no end.
    #[must_use]
    pub fn span(self) -> (f64, Option<f64>) {
        match self {
            SpeedMethod::GeneralGrease => (0.0, Some(GENERAL_GREASE)),
            SpeedMethod::SpecialGreaseOrOil => (GENERAL_GREASE, Some(SPECIAL_GREASE_OR_OIL)),
            SpeedMethod::SpecialWays => (SPECIAL_GREASE_OR_OIL, None),
        }
    }
}

/// The speed factor of a rolling bearing.
///
/// `n d`, in rpm and mm
///
/// - `speed`: turning speed, `n`.
/// - `mean_diameter`: half the sum of bore and outside diameter, `d`.
/// - returns: the factor, and what it asks for.
///
/// # Range
/// Common practice and no limit of a standard; a maker's own limit beats it.
///
/// # Errors
/// [`Error::OutOfRange`] when the speed or the diameter is not above zero.
///
/// # Source
/// `common-practice`
///
/// # Example
/// ```
/// use tribology::contact::rolling::{SpeedMethod, speed_factor};
/// use tribology::quantity::{Length, Rotation};
/// let found = speed_factor(Rotation::from_rpm(3000.0), Length::from_mm(60.0)).map(|answer| answer.value.method);
/// assert_eq!(found, Ok(SpeedMethod::SpecialGreaseOrOil));
/// ```
pub fn speed_factor(speed: Rotation, mean_diameter: Length) -> Result<Answer<SpeedFactor>, Error> {
    let n = Error::quantity_positive("speed", speed)?.rpm();
    let d = Error::quantity_positive("mean diameter", mean_diameter)?.mm();
    let mm_rpm = n * d;
    let method = if mm_rpm < GENERAL_GREASE {
        SpeedMethod::GeneralGrease
    } else if mm_rpm <= SPECIAL_GREASE_OR_OIL {
        SpeedMethod::SpecialGreaseOrOil
    } else {
        SpeedMethod::SpecialWays
    };
    let inputs = vec![measured("n", speed), measured("d", mean_diameter)];
    let formula = "n d in mm and rpm; below 150000 general grease, to 400000 special grease or oil, above special ways";
    let result = number("n d", mm_rpm);
    let step = line("Speed factor", formula, inputs, result, "common-practice", Standing::CommonPractice);
    Ok(Answer::of(SpeedFactor { mm_rpm, method }, step))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn methods_meet_and_each_speed_has_its_own() {
        for pair in SpeedMethod::ALL.windows(2) {
            assert_eq!(pair[0].span().1, Some(pair[1].span().0));
        }
        for method in SpeedMethod::ALL {
            let (from, to) = method.span();
            let within = to.map_or(2.0 * from, |to| (from + to) / 2.0);
            let found = speed_factor(Rotation::from_rpm(within / 50.0), Length::from_mm(50.0)).expect("a speed").value;
            assert_eq!(found.method, method);
            assert!((found.mm_rpm / within - 1.0).abs() < 1e-12);
        }
        assert!(speed_factor(Rotation::from_rpm(0.0), Length::from_mm(50.0)).is_err());
    }
}
