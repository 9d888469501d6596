//! What is left of an oil, counted by the logbook: from what was written down or counted last, with what was bought, less what was
//! given, used and thrown away. Method: a plain sum over the movements since; what was given without an amount is told and not guessed.

use std::collections::BTreeMap;

use shop::amount::{DROP, Dose, DoseAmount};
use shop::id::Id;
use shop::logbook::{Movement, Way};
use shop::shelf::{Amount, Oil, Shelf};
use tribology::quantity::{Mass, Volume};

/// What is left of an oil.
#[derive(Clone, Debug, PartialEq)]
pub struct Stock {
    /// How much is left; nothing where it was never written down how much there was, or where the sum would be below nothing.
    pub left: Option<Amount>,
    /// The sums, each with what it is, in the order in which they count.
    pub sums: Vec<(Sum, Amount)>,
    /// How often oil was given of which nobody wrote how much.
    pub uncounted: usize,
}

/// What a sum is of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Sum {
    /// What was there when it was written down or counted last.
    There,
    /// What was bought since.
    Bought,
    /// What was given to points and filled into reservoirs.
    Given,
    /// What was used for something else.
    Used,
    /// What was thrown away.
    ThrownAway,
}

/// What is left of an oil.
///
/// - `movements`: those of all oils, in any order.
#[must_use]
pub fn stock<'m>(oil: &Oil, shelf: &Shelf, movements: &'m [Movement]) -> Stock {
    let mut own: Vec<&'m Movement> = movements.iter().filter(|movement| movement.oil == oil.id).collect();
    own.sort_by_key(|movement| movement.happened);
    // From the last count on; what happened at the same instant as a count was counted with it.
    let from = own.iter().rposition(|movement| matches!(movement.way, Way::Opening | Way::Counted));
    let density = oil.density.as_ref().map(|density| density.value.kg_m3());
    // People write the same few amounts over and over, and a text that is none is looked at long: each is read once.
    let mut known: BTreeMap<(&str, Option<&Id>), Option<Amount>> = BTreeMap::new();
    let mut amount_of = |movement: &'m Movement| {
        let text = movement.amount.as_deref()?;
        *known.entry((text, movement.can.as_ref())).or_insert_with(|| {
            given(text, movement.can.as_ref(), shelf).map(Amount::Volume).or_else(|| Amount::read(text).ok())
        })
    };
    let by_mass = from.is_some_and(|from| matches!(amount_of(own[from]), Some(Amount::Mass(_))));
    // In kilograms or cubic metres, as the first figure is; a stroke of grease is weighed by its density.
    let number = |amount: Amount| match (amount, by_mass) {
        (Amount::Volume(volume), true) => density.map(|density| volume.m3() * density),
        (Amount::Mass(mass), false) => density.map(|density| mass.kg() / density),
        (amount, _) => Some(amount.si()),
    };
    let measured = |number: f64| {
        if by_mass { Amount::Mass(Mass::from_kg(number)) } else { Amount::Volume(Volume::from_m3(number)) }
    };
    let mut sums: Vec<(Sum, f64)> = Vec::new();
    let mut uncounted = 0;
    for movement in &own[from.unwrap_or(0)..] {
        let sum = match movement.way {
            Way::Opening | Way::Counted => Sum::There,
            Way::Bought => Sum::Bought,
            Way::Given => Sum::Given,
            Way::Used => Sum::Used,
            Way::ThrownAway => Sum::ThrownAway,
        };
        match amount_of(movement).and_then(number) {
            Some(number) => match sums.iter_mut().find(|(known, _)| *known == sum) {
                Some((_, total)) => *total += number,
                None => sums.push((sum, number)),
            },
            None => uncounted += 1,
        }
    }
    sums.sort_by_key(|(sum, _)| *sum);
    let is_known = sums.first().is_some_and(|(sum, _)| *sum == Sum::There);
    let signed = |(sum, number): &(Sum, f64)| if matches!(sum, Sum::There | Sum::Bought) { *number } else { -number };
    let left = sums.iter().map(signed).sum::<f64>();
    Stock {
        left: (is_known && left >= 0.0).then(|| measured(left)),
        sums: sums.into_iter().map(|(sum, number)| (sum, measured(number))).collect(),
        uncounted,
    }
}

/// The volume of a dose in the strokes of the can that was used, or in drops; nothing for turns, whose volume nobody has measured.
pub(crate) fn given(text: &str, can: Option<&Id>, shelf: &Shelf) -> Option<Volume> {
    match Dose::read(text).ok()?.amount {
        DoseAmount::Volume(volume) => Some(volume),
        DoseAmount::Drops(drops) => Some(Volume::from_m3(drops * DROP.m3())),
        DoseAmount::Strokes(strokes) => {
            let stroke = shelf.cans.iter().find(|known| Some(&known.id) == can)?.stroke.as_ref()?.value;
            Some(Volume::from_m3(strokes * stroke.m3()))
        }
        DoseAmount::Turns(_) => None,
    }
}

#[cfg(test)]
mod tests {
    use shop::id::Id;

    use super::*;

    const SHELF: &str = "shelf = 1\n[[oil]]\nid = \"way\"\nname = \"Way\"\nfamily = \"way\"\n[[oil]]\nid = \"tub\"\nname = \"Tub\"\n\
                         family = \"grease\"\ndensity = \"900 kg/m3\"\n[[can]]\nid = \"short\"\noil = \"way\"\nstroke = \"0.5 mL\"\n";

    fn shelf() -> Shelf {
        Shelf::read(SHELF).value.expect("a shelf without faults")
    }

    fn moved(oil: &str, day: i64, way: Way, amount: &str) -> Movement {
        let id = |text: &str| Id::new(text).expect("an id");
        Movement {
            oil: id(oil),
            happened: jiff::Timestamp::from_second(day * 86_400).expect("an instant"),
            way,
            amount: (!amount.is_empty()).then(|| amount.to_owned()),
            can: (way == Way::Given).then(|| id("short")),
        }
    }

    fn litres(stock: &Stock) -> f64 {
        match stock.left {
            Some(Amount::Volume(volume)) => volume.litres(),
            other => panic!("{other:?}"),
        }
    }

    #[test]
    fn what_came_less_what_went_is_left() {
        let movements = [
            moved("way", 1, Way::Opening, "5 L"),
            moved("way", 2, Way::Given, "4 strokes"),
            moved("way", 2, Way::Given, "30 drops"),
            moved("way", 3, Way::Given, "0.5 L"),
            moved("way", 3, Way::Given, ""),
            moved("way", 4, Way::Bought, "1 L"),
            moved("way", 5, Way::ThrownAway, "250 mL"),
            moved("way", 5, Way::Used, "50 mL"),
            moved("tub", 5, Way::Used, "3 kg"),
        ];
        let shelf = shelf();
        let stock = stock(&shelf.oils[0], &shelf, &movements);
        // 5 L − 4 × 0.5 mL − 30 drops of 1/30 mL − 0.5 L + 1 L − 0.25 L − 0.05 L.
        assert!((litres(&stock) - 5.197).abs() < 1e-9, "{stock:?}");
        assert_eq!(stock.uncounted, 1);
    }

    #[test]
    fn a_count_begins_anew() {
        let shelf = shelf();
        let movements = [
            moved("way", 1, Way::Opening, "5 L"),
            moved("way", 2, Way::Given, "2 L"),
            moved("way", 3, Way::Counted, "2.8 L"),
            moved("way", 4, Way::Given, "0.3 L"),
        ];
        assert!((litres(&stock(&shelf.oils[0], &shelf, &movements)) - 2.5).abs() < 1e-9);
    }

    #[test]
    fn a_grease_is_weighed_and_nothing_is_guessed() {
        let shelf = shelf();
        let movements = [
            moved("tub", 1, Way::Opening, "1 kg"),
            moved("tub", 2, Way::Used, "100 mL"),
            moved("tub", 2, Way::Given, "1/4 turn"),
        ];
        let tub = stock(&shelf.oils[1], &shelf, &movements);
        assert!(matches!(tub.left, Some(Amount::Mass(mass)) if (mass.kg() - 0.91).abs() < 1e-12), "{tub:?}");
        assert_eq!(tub.uncounted, 1);
        // Never written down, or more gone than there was: nothing is said.
        assert_eq!(stock(&shelf.oils[0], &shelf, &[moved("way", 2, Way::Given, "1 L")]).left, None);
        let overdrawn = [moved("way", 1, Way::Opening, "1 L"), moved("way", 2, Way::Given, "2 L")];
        assert_eq!(stock(&shelf.oils[0], &shelf, &overdrawn).left, None);
    }
}
