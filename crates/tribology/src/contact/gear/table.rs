//! The oils that gears of old machines usually get, by table: the curves of standards were not found, and this is what the trade does.

use crate::contact::line::{line, number};
use crate::contact::usual_oil::{Additive, Amount, Dose, Family, Often, UsualOil, grades};
use crate::{Answer, Standing};

/// Gears as the table tells them apart.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Gear {
    /// Change gears in the open.
    OpenChange,
    /// A large slow wheel in the open, as that of a planer.
    OpenLarge,
    /// Spur gears in a headstock or feed box.
    Enclosed,
    /// The same, slow and heavily loaded.
    EnclosedHeavy,
    /// The small worm and bevels of an apron.
    Apron,
    /// A loaded worm in a box.
    Worm,
}

impl Gear {
    /// Every row, in the order of the table.
    pub const ALL: [Gear; 6] =
        [Gear::OpenChange, Gear::OpenLarge, Gear::Enclosed, Gear::EnclosedHeavy, Gear::Apron, Gear::Worm];
}

/// The oil that such gears usually get.
///
/// - `gear`: the gears.
/// - returns: grades, families, dose, and how firmly the row stands.
///
/// # Range
/// Old manual machine tools. Bronze beside the gears forbids sulphur whatever the row says.
///
/// # Source
/// `common-practice`, `worm-gear-oils`
///
/// # Example
/// ```
/// use tribology::contact::gear::{Gear, usual_oil};
/// let (thinnest, thickest) = usual_oil(Gear::OpenChange).value.grades.expect("they are oiled");
/// assert_eq!((thinnest.number(), thickest.number()), (150, 320));
/// ```
#[must_use]
pub fn usual_oil(gear: Gear) -> Answer<UsualOil> {
    use Family::{Circulating, Compounded, Gear as GearOil, Grease, Hydraulic, Way};
    let of = |thinnest, thickest, families, amount, often| UsualOil {
        grades: Some(grades(thinnest, thickest)),
        families,
        without: &[],
        dose: Dose { amount, often: Some(often) },
        standing: Standing::CommonPractice,
    };
    let row = match gear {
        Gear::OpenChange => of(150, 320, &[Way, GearOil, Grease], Amount::Coat, Often::Weekly),
        Gear::OpenLarge => of(220, 460, &[GearOil, Way], Amount::Coat, Often::Weekly),
        Gear::Enclosed => of(32, 68, &[Circulating, Hydraulic], Amount::BathToMark, Often::Daily),
        Gear::EnclosedHeavy => of(68, 150, &[GearOil, Circulating], Amount::BathToMark, Often::Daily),
        Gear::Apron => of(68, 68, &[Way, Circulating], Amount::BathToMark, Often::Daily),
        Gear::Worm => UsualOil {
            without: &[Additive::SulphurEp],
            standing: Standing::Handbook,
            ..of(460, 680, &[Compounded], Amount::BathToMark, Often::Daily)
        },
    };
    let source = if row.standing == Standing::Handbook { "worm-gear-oils" } else { "common-practice" };
    let place = Gear::ALL.iter().position(|one| *one == gear).unwrap_or_default();
    let ends = row.grades.map_or(Vec::new(), |(thinnest, thickest)| {
        vec![number("thinnest VG", f64::from(thinnest.number())), number("thickest VG", f64::from(thickest.number()))]
    });
    let result = number("row", place as f64 + 1.0);
    let step = line("Usual oil of the gears", "table of gears", ends, result, source, row.standing);
    Answer::of(row, step)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_row_is_whole() {
        for gear in Gear::ALL {
            let found = usual_oil(gear).value;
            assert!(found.grades.is_some_and(|(thinnest, thickest)| thinnest <= thickest), "{gear:?}");
            assert!(!found.families.is_empty(), "{gear:?}");
        }
    }

    #[test]
    fn a_loaded_worm_is_kept_from_sulphur_and_a_box_from_grease() {
        assert!(usual_oil(Gear::Worm).value.without.contains(&Additive::SulphurEp));
        for gear in [Gear::Enclosed, Gear::EnclosedHeavy, Gear::Apron, Gear::Worm] {
            assert!(!usual_oil(gear).value.families.contains(&Family::Grease), "{gear:?}");
        }
    }
}
