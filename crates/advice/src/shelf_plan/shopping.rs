//! What to buy for a year: what a choice of lubricants takes, less what is in stock, in whole packs, with prices where they are known.

use shop::id::Id;
use shop::shelf::{Amount, Pack, Price};
use tribology::quantity::{Density, Mass, Volume};
use tribology::{Standing, Step, Symbol};

use super::year::{Use, Year, use_of};
use super::{Asked, Candidate, Choice, ShelfPlan};
use crate::working::{Assumption, Reasoned};

/// What is to be had of one lubricant.
#[derive(Clone, Debug, PartialEq)]
pub struct Purchase {
    /// The lubricant.
    pub oil: Id,
    /// What it is needed for.
    pub needed: Use,
    /// How much of it a year takes.
    pub takes: Amount,
    /// What is left of it, as far as that is known.
    pub left: Option<Amount>,
    /// What is lacking.
    pub lacks: Option<Amount>,
    /// The packs that make up for it, as far as packs are known.
    pub packs: Option<Packs>,
}

/// So many of one pack.
#[derive(Clone, Debug, PartialEq)]
pub struct Packs {
    /// How many.
    pub count: u32,
    /// Of which.
    pub pack: Pack,
    /// What they cost together.
    pub price: Option<Price>,
}

/// A grease whose density nobody has written down (common practice).
const GREASE: Density = Density::from_kg_m3(900.0);

/// What to buy for a year so that a choice of lubricants serves it.
#[must_use]
pub fn shopping(asked: &Asked<'_>, plan: &ShelfPlan, choices: &[&Choice], year: &Year) -> Reasoned<Vec<Purchase>> {
    let each = choices.iter().flat_map(|choice| choice.oils.iter().map(move |oil| (*choice, oil)));
    let bought = each.filter_map(|(choice, oil)| {
        let candidate = plan.candidate(oil)?;
        Some(purchase(candidate, use_of(asked, plan, choice, oil, year)))
    });
    let purchases: Vec<Purchase> = bought.collect();
    let uncounted: usize = purchases.iter().map(|purchase| purchase.needed.uncounted.len()).sum();
    let mut reasoned = Reasoned::new(purchases);
    reasoned.answer.steps = reasoned.value().iter().map(step).collect();
    reasoned.assumed = vec![Assumption::YearOf { uses: year.uses, hours: year.hours }, Assumption::UseByRuleOfThumb];
    if uncounted > 0 {
        reasoned.assumed.push(Assumption::NotCounted(uncounted));
    }
    reasoned
}

fn purchase(candidate: &Candidate, needed: Use) -> Purchase {
    let volume = needed.baths + needed.hand;
    let takes = if candidate.is_grease() {
        let density = candidate.oil.density.as_ref().map_or(GREASE, |density| density.value);
        Amount::Mass(density * volume)
    } else {
        Amount::Volume(volume)
    };
    let lacking = takes.si() - candidate.left.and_then(|left| like(takes, left)).unwrap_or(0.0);
    let lacks = (lacking > 0.0).then(|| match takes {
        Amount::Volume(_) => Amount::Volume(Volume::from_m3(lacking)),
        Amount::Mass(_) => Amount::Mass(Mass::from_kg(lacking)),
    });
    let packs = lacks.and_then(|lacks| packs(&candidate.oil.packs, lacks));
    Purchase { oil: candidate.oil.id.clone(), needed, takes, left: candidate.left, lacks, packs }
}

/// The number of an amount where it is measured as another is.
fn like(measure: Amount, amount: Amount) -> Option<f64> {
    match (measure, amount) {
        (Amount::Volume(_), Amount::Volume(volume)) => Some(volume.m3()),
        (Amount::Mass(_), Amount::Mass(mass)) => Some(mass.kg()),
        _ => None,
    }
}

/// The packs of one size that make up for what is lacking: the cheapest where every price is known in one currency, else those that leave
/// least over; of equals the fewest.
fn packs(known: &[Pack], lacks: Amount) -> Option<Packs> {
    let sizes = known.iter().filter_map(|pack| Some((pack, like(lacks, pack.holds?)?)));
    let ways: Vec<(Packs, f64)> = sizes
        .map(|(pack, holds)| {
            // A hair less than a whole pack more is no reason to buy one.
            let count = (lacks.si() / holds - 1e-9).ceil().max(1.0);
            let price = pack.price.as_ref().map(|price| Price { number: price.number * count, ..price.clone() });
            (Packs { count: count as u32, pack: pack.clone(), price }, count * holds)
        })
        .collect();
    let currency = |way: &(Packs, f64)| way.0.price.as_ref().map(|price| price.currency.clone());
    let first = ways.first().and_then(currency);
    let by_price = first.is_some() && ways.iter().all(|way| currency(way) == first);
    let key = |way: &(Packs, f64)| match (&way.0.price, by_price) {
        (Some(price), true) => (price.number, way.1),
        _ => (way.1, f64::from(way.0.count)),
    };
    let best = ways.iter().min_by(|a, b| {
        let ((a1, a2), (b1, b2)) = (key(a), key(b));
        a1.total_cmp(&b1).then(a2.total_cmp(&b2))
    });
    best.map(|(packs, _)| packs.clone())
}

/// What a year takes, as a sum.
fn step(purchase: &Purchase) -> Step {
    let symbol = |symbol, volume: Volume| Symbol { symbol, si: volume.m3(), unit: "m³" };
    let (baths, hand) = (purchase.needed.baths, purchase.needed.hand);
    Step {
        name: "What a year takes of one lubricant",
        formula: "baths × changes + doses × times",
        symbols: vec![symbol("baths", baths), symbol("doses", hand)],
        result: symbol("takes", baths + hand),
        source: "common-practice",
        standing: Standing::CommonPractice,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(known: &[&str], lacks: &str, wanted: Option<(u32, &str, Option<&str>)>) {
        let known: Vec<Pack> = known.iter().map(|text| Pack::read(text).expect("a pack")).collect();
        let found = packs(&known, Amount::read(lacks).expect("an amount"));
        let found = found
            .as_ref()
            .map(|packs| (packs.count, packs.pack.text.as_str(), packs.price.as_ref().map(ToString::to_string)));
        let wanted = wanted.map(|(count, text, price)| (count, text, price.map(str::to_owned)));
        assert_eq!(found, wanted);
    }

    #[test]
    fn packs_are_whole_and_cheap_or_leave_little_over() {
        check(&["5 L at 30 EUR", "20 L at 90 EUR"], "12 L", Some((3, "5 L at 30 EUR", Some("90.00 EUR"))));
        check(&["5 L at 30 EUR", "20 L at 80 EUR"], "12 L", Some((1, "20 L at 80 EUR", Some("80.00 EUR"))));
        // One price is not known: what leaves least over.
        check(&["5 L", "20 L at 80 EUR"], "12 L", Some((3, "5 L", None)));
        check(&["5 L", "1 L"], "5 L", Some((1, "5 L", None)));
        check(&["5 L"], "5.001 L", Some((2, "5 L", None)));
        // A grease in litres is no pack for one by weight.
        check(&["1 L", "400 g at 6 EUR"], "0.5 kg", Some((2, "400 g at 6 EUR", Some("12.00 EUR"))));
        check(&["1 L"], "0.5 kg", None);
    }
}
