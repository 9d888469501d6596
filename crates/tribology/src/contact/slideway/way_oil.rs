//! Which grade of way oil a slideway usually gets, by how it lies, what it carries and how fast it moves.

use crate::contact::line::{line, number};
use crate::contact::usual_oil::grades;
use crate::oil::IsoGrade;
use crate::{Answer, Standing};

/// How a way lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Orientation {
    /// Level.
    Horizontal,
    /// At a slant.
    Inclined,
    /// Upright: oil runs off it.
    Vertical,
}

/// What a way carries.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Weight {
    /// A compound slide, a small table.
    Light,
    /// A carriage, a knee-type table.
    Medium,
    /// A planer table, a large saddle.
    Heavy,
}

/// How fast a way moves.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Pace {
    /// So slowly that it may stick and slip.
    Creeping,
    /// At feed speed or faster.
    Moving,
}

/// The grades of way oil that a slideway usually gets.
///
/// 220 upright or heavy; 68 level, light to medium and moving; 100 to 150 between.
///
/// - `orientation`: how it lies.
/// - `weight`: what it carries.
/// - `pace`: how fast it moves.
/// - returns: the thinnest and the thickest grade.
///
/// # Range
/// Old manual machine tools at ordinary workshop temperatures. Where one oil runs the hydraulics too, see [`hydraulic_way_oil`].
///
/// # Source
/// `common-practice`
///
/// # Example
/// ```
/// use tribology::contact::slideway::{Orientation, Pace, Weight, way_oil};
/// let (thinnest, _) = way_oil(Orientation::Horizontal, Weight::Medium, Pace::Moving).value;
/// assert_eq!(thinnest.number(), 68);
/// ```
#[must_use]
pub fn way_oil(orientation: Orientation, weight: Weight, pace: Pace) -> Answer<(IsoGrade, IsoGrade)> {
    let found = match (orientation, weight, pace) {
        (Orientation::Vertical, _, _) | (_, Weight::Heavy, _) => grades(220, 220),
        (Orientation::Horizontal, _, Pace::Moving) => grades(68, 68),
        (Orientation::Horizontal | Orientation::Inclined, _, _) => grades(100, 150),
    };
    let inputs = vec![number("thinnest VG", f64::from(found.0.number()))];
    let formula = "220 upright or heavy; 68 level, light to medium and moving; 100 to 150 between";
    let result = number("thickest VG", f64::from(found.1.number()));
    let step = line("Grade of way oil", formula, inputs, result, "common-practice", Standing::CommonPractice);
    Answer::of(found, step)
}

/// The grade where one oil serves the ways and the hydraulics: 32, of the class for both.
///
/// - returns: the grade.
///
/// # Source
/// `plant-handbook-bs-5063`
#[must_use]
pub fn hydraulic_way_oil() -> Answer<IsoGrade> {
    let (grade, _) = grades(32, 32);
    let (formula, source) = ("HG 32 for ways and hydraulics together", "plant-handbook-bs-5063");
    let result = number("VG", f64::from(grade.number()));
    let step = line("Grade for ways and hydraulics", formula, Vec::new(), result, source, Standing::Handbook);
    Answer::of(grade, step)
}

#[cfg(test)]
mod tests {
    use super::*;

    const ORIENTATIONS: [Orientation; 3] = [Orientation::Horizontal, Orientation::Inclined, Orientation::Vertical];
    const WEIGHTS: [Weight; 3] = [Weight::Light, Weight::Medium, Weight::Heavy];

    #[test]
    fn steeper_heavier_and_slower_never_want_thinner() {
        for pace in [Pace::Creeping, Pace::Moving] {
            for weight in WEIGHTS {
                let along: Vec<_> = ORIENTATIONS.map(|way| way_oil(way, weight, pace).value).to_vec();
                assert!(along.is_sorted(), "{weight:?} {pace:?} {along:?}");
            }
            for way in ORIENTATIONS {
                let along: Vec<_> = WEIGHTS.map(|weight| way_oil(way, weight, pace).value).to_vec();
                assert!(along.is_sorted(), "{way:?} {pace:?} {along:?}");
            }
        }
        for way in ORIENTATIONS {
            for weight in WEIGHTS {
                let of = |pace| way_oil(way, weight, pace).value;
                assert!(of(Pace::Creeping) >= of(Pace::Moving), "{way:?} {weight:?}");
            }
        }
    }

    #[test]
    fn the_oil_for_both_is_thinner_than_any_for_ways_alone() {
        assert!(hydraulic_way_oil().value < way_oil(Orientation::Horizontal, Weight::Light, Pace::Moving).value.0);
    }
}
