//! Pairs of which no sum was found: screw and nut, sliding collar or fork, cam, friction clutch, chain. What the trade gives them, by
//! table, each row with how firmly it stands.

use super::line::{line, number};
use super::usual_oil::{Additive, Amount, Dose, Family, Often, UsualOil, grades};
use crate::{Answer, Standing};

/// A pair that is answered by table.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Pair {
    /// A lead screw with its half-nuts.
    LeadScrew,
    /// The screw of a slide or table with its nut, and the collar that takes its thrust.
    FeedScrew,
    /// A collar that slides on its shaft, or a fork in its groove, in the open.
    SlidingCollar,
    /// The same inside a box whose oil splashes.
    SlidingCollarInBox,
    /// A cam with its follower, in the open.
    Cam,
    /// A cone or disc clutch that runs in oil.
    WetClutch,
    /// A cone, leather or fibre clutch that must stay dry.
    DryClutch,
    /// A roller chain in the open.
    Chain,
}

impl Pair {
    /// Every pair, in the order of the table.
    pub const ALL: [Pair; 8] = [
        Pair::LeadScrew,
        Pair::FeedScrew,
        Pair::SlidingCollar,
        Pair::SlidingCollarInBox,
        Pair::Cam,
        Pair::WetClutch,
        Pair::DryClutch,
        Pair::Chain,
    ];
}

/// The oil that such a pair usually gets.
///
/// - `pair`: the pair.
/// - returns: grades, families, dose, and how firmly the row stands; rows for cam and chain are from memory.
///
/// # Range
/// Old manual machine tools at ordinary workshop temperatures.
///
/// # Source
/// `common-practice`, `pairs-from-memory`
///
/// # Example
/// ```
/// use tribology::contact::by_table::{Pair, usual_oil};
/// let (thinnest, _) = usual_oil(Pair::FeedScrew).value.grades.expect("it is oiled");
/// assert_eq!(thinnest.number(), 68);
/// assert!(usual_oil(Pair::DryClutch).value.grades.is_none());
/// ```
#[must_use]
pub fn usual_oil(pair: Pair) -> Answer<UsualOil> {
    use Family::{Circulating, Hydraulic, Way};
    let of = |range: Option<(u32, u32)>, families, amount, often: Option<Often>| UsualOil {
        grades: range.map(|(thinnest, thickest)| grades(thinnest, thickest)),
        families,
        without: &[],
        dose: Dose { amount, often },
        standing: Standing::CommonPractice,
    };
    let row = match pair {
        Pair::LeadScrew => of(Some((68, 150)), &[Way], Amount::Plenty, Some(Often::EachUse)),
        Pair::FeedScrew => of(Some((68, 68)), &[Way], Amount::Drops(2, 3), Some(Often::Daily)),
        Pair::SlidingCollar => {
            of(Some((68, 68)), &[Circulating, Hydraulic, Way], Amount::Drops(2, 3), Some(Often::Daily))
        }
        Pair::SlidingCollarInBox => {
            of(Some((32, 68)), &[Circulating, Hydraulic], Amount::BathToMark, Some(Often::Daily))
        }
        Pair::Cam => UsualOil {
            standing: Standing::FromMemory,
            ..of(Some((68, 100)), &[Circulating, Way], Amount::Drops(2, 3), Some(Often::Daily))
        },
        Pair::WetClutch => UsualOil {
            without: &[Additive::FrictionModifier],
            ..of(Some((32, 68)), &[Circulating, Hydraulic], Amount::BathToMark, Some(Often::Daily))
        },
        Pair::DryClutch => of(None, &[], Amount::BushesOnly(1), None),
        Pair::Chain => UsualOil {
            standing: Standing::FromMemory,
            ..of(Some((68, 150)), &[Circulating, Way], Amount::Coat, Some(Often::Weekly))
        },
    };
    let source = if row.standing == Standing::FromMemory { "pairs-from-memory" } else { "common-practice" };
    let place = Pair::ALL.iter().position(|one| *one == pair).unwrap_or_default();
    let ends = row.grades.map_or(Vec::new(), |(thinnest, thickest)| {
        vec![number("thinnest VG", f64::from(thinnest.number())), number("thickest VG", f64::from(thickest.number()))]
    });
    let result = number("row", place as f64 + 1.0);
    let step = line("Usual oil of the pair", "table of pairs without a sum", ends, result, source, row.standing);
    Answer::of(row, step)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_row_is_whole() {
        for pair in Pair::ALL {
            let found = usual_oil(pair).value;
            assert!(found.grades.is_none_or(|(thinnest, thickest)| thinnest <= thickest), "{pair:?}");
            assert_eq!(found.grades.is_none(), found.families.is_empty(), "{pair:?}");
            assert!(!found.families.contains(&Family::Grease), "{pair:?}");
        }
    }

    /// Oil on a dry clutch takes its hold away: no row may ever say otherwise.
    #[test]
    fn friction_faces_are_kept_from_what_makes_them_slip() {
        assert!(matches!(usual_oil(Pair::DryClutch).value.dose.amount, Amount::BushesOnly(_)));
        assert!(usual_oil(Pair::WetClutch).value.without.contains(&Additive::FrictionModifier));
    }

    #[test]
    fn what_no_text_was_found_for_says_that_it_is_remembered() {
        let remembered = |pair| usual_oil(pair).value.standing == Standing::FromMemory;
        let found: Vec<_> = Pair::ALL.into_iter().filter(|pair| remembered(*pair)).collect();
        assert_eq!(found, [Pair::Cam, Pair::Chain]);
    }
}
