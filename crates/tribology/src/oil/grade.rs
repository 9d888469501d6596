//! The grades by which oils are sold: ISO 3448, each ten percent either side of its midpoint at 40 °C, with gaps between.

use super::{step, symbol, viscosity};
use crate::quantity::KinematicViscosity;
use crate::{Answer, Error, Standing, math};

/// A viscosity grade of ISO 3448.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct IsoGrade {
    number: u32,
    tenths: u32,
}

/// Every grade, thinnest first.
///
/// Source: `iso-3448`; the limits of 2200 and 3200 follow from the rule of the others.
pub const GRADES: [IsoGrade; 20] = [
    grade(2, 22),
    grade(3, 32),
    grade(5, 46),
    grade(7, 68),
    grade(10, 100),
    grade(15, 150),
    grade(22, 220),
    grade(32, 320),
    grade(46, 460),
    grade(68, 680),
    grade(100, 1000),
    grade(150, 1500),
    grade(220, 2200),
    grade(320, 3200),
    grade(460, 4600),
    grade(680, 6800),
    grade(1000, 10_000),
    grade(1500, 15_000),
    grade(2200, 22_000),
    grade(3200, 32_000),
];

const fn grade(number: u32, tenths: u32) -> IsoGrade {
    IsoGrade { number, tenths }
}

/// How a viscosity lies among the grades.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Classified {
    /// The grade whose limits enclose it; nothing in a gap or beyond the ends.
    pub grade: Option<IsoGrade>,
    /// The grade whose midpoint is nearest by ratio.
    pub nearest: IsoGrade,
    /// The thickest grade that lies wholly below it.
    pub below: Option<IsoGrade>,
    /// The thinnest grade that lies wholly above it.
    pub above: Option<IsoGrade>,
}

impl IsoGrade {
    /// The grade of this number, such as 46.
    #[must_use]
    pub fn of(number: u32) -> Option<Self> {
        GRADES.into_iter().find(|grade| grade.number == number)
    }

    /// The number that stands behind "VG".
    #[must_use]
    pub fn number(self) -> u32 {
        self.number
    }

    /// The midpoint of its limits at 40 °C; 2.2, 3.2, 4.6 and 6.8 mm²/s for the four thinnest, else its number.
    #[must_use]
    pub fn middle(self) -> KinematicViscosity {
        KinematicViscosity::from_mm2_s(f64::from(self.tenths) / 10.0)
    }

    /// The lower limit at 40 °C, which is still in the grade.
    #[must_use]
    pub fn low(self) -> KinematicViscosity {
        KinematicViscosity::from_mm2_s(f64::from(9 * self.tenths) / 100.0)
    }

    /// The upper limit at 40 °C, which is still in the grade.
    #[must_use]
    pub fn high(self) -> KinematicViscosity {
        KinematicViscosity::from_mm2_s(f64::from(11 * self.tenths) / 100.0)
    }

    /// How many grades thicker another one is; below zero when it is thinner.
    #[must_use]
    pub fn steps_to(self, other: Self) -> i32 {
        other.place() - self.place()
    }

    fn place(self) -> i32 {
        GRADES.iter().position(|grade| *grade == self).map_or(0, |place| place as i32)
    }
}

/// The grade that an oil of this viscosity at 40 °C belongs to, or the two between which it lies.
///
/// `0.9 m <= ν40 <= 1.1 m`, with `m` the midpoint of the grade
///
/// - `v40`: kinematic viscosity at 40 °C.
/// - returns: the grade, the nearest one by ratio of viscosities, and its neighbours.
///
/// # Range
/// Any viscosity above zero; thinner or thicker than every grade has no grade and a nearest one.
///
/// # Errors
/// [`Error::OutOfRange`] when `v40` is not above zero.
///
/// # Source
/// `iso-3448`
///
/// # Example
/// ```
/// use tribology::{oil::classified, quantity::KinematicViscosity};
/// let gap = classified(KinematicViscosity::from_mm2_s(57.9)).map(|answer| answer.value);
/// assert!(gap.is_ok_and(|found| found.grade.is_none() && found.nearest.number() == 68));
/// ```
pub fn classified(v40: KinematicViscosity) -> Result<Answer<Classified>, Error> {
    let si = Error::quantity_positive("viscosity at 40 °C", v40)?.m2_s();
    // A limit is in the grade, also after its decimal digits have gone through base units.
    let near = 1.0 + 1e-12;
    let encloses = |grade: &IsoGrade| si * near >= grade.low().m2_s() && si <= grade.high().m2_s() * near;
    let mut nearest = GRADES[0];
    for grade in GRADES {
        let ratio = |grade: IsoGrade| math::ln(si / grade.middle().m2_s()).abs();
        if ratio(grade) < ratio(nearest) {
            nearest = grade;
        }
    }
    let found = Classified {
        grade: GRADES.into_iter().find(|grade| encloses(grade)),
        nearest,
        below: GRADES.into_iter().rev().find(|grade| grade.high().m2_s() * near < si),
        above: GRADES.into_iter().find(|grade| grade.low().m2_s() > si * near),
    };
    let limits = vec![
        viscosity("ν40", v40.mm2_s()),
        viscosity("lowest of the nearest grade", nearest.low().mm2_s()),
        viscosity("highest of the nearest grade", nearest.high().mm2_s()),
    ];
    let result = symbol("nearest grade", f64::from(nearest.number()), "");
    let formula = "the grade whose midpoint is nearest by ratio; limits are 0.9 and 1.1 times the midpoint";
    Ok(Answer::of(found, step("Viscosity grade", formula, limits, result, "iso-3448", Standing::Standard)))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn found(mm2_s: f64) -> Classified {
        classified(KinematicViscosity::from_mm2_s(mm2_s)).expect("above zero").value
    }

    #[test]
    fn limits_belong_to_their_grade() {
        for grade in GRADES {
            for limit in [grade.low(), grade.middle(), grade.high()] {
                assert_eq!(found(limit.mm2_s()).grade, Some(grade), "{grade:?} {limit:?}");
            }
        }
    }

    #[test]
    fn grades_do_not_meet_and_the_gap_knows_its_neighbours() {
        for pair in GRADES.windows(2) {
            let middle = (pair[0].high().mm2_s() + pair[1].low().mm2_s()) / 2.0;
            let gap = found(middle);
            assert_eq!((gap.grade, gap.below, gap.above), (None, Some(pair[0]), Some(pair[1])), "{middle}");
            assert_eq!(pair[0].steps_to(pair[1]), 1);
        }
    }

    #[test]
    fn beyond_the_ends_there_is_no_grade() {
        assert_eq!((found(1.0).grade, found(1.0).nearest.number(), found(1.0).below), (None, 2, None));
        assert_eq!((found(9000.0).grade, found(9000.0).nearest.number(), found(9000.0).above), (None, 3200, None));
        assert!(classified(KinematicViscosity::from_mm2_s(0.0)).is_err());
    }
}
