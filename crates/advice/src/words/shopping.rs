//! What to buy, what becomes of each can, and which cans are easy to take for one another, in sentences.

use tribology::quantity::Units;

use crate::shelf_plan::{Alike, Fate, MixUp, Purchase, ShelfPlan};

use super::{amount, count, join, names};

/// `3 × 5 L at 34.50 EUR (103.50 EUR)`, or why nothing is bought.
#[must_use]
pub fn purchase(purchase: &Purchase, units: Units) -> String {
    match (&purchase.lacks, &purchase.packs) {
        (None, _) => "nothing, enough is there".to_owned(),
        (Some(_), Some(packs)) => {
            let price = packs.price.as_ref().filter(|_| packs.count > 1).map(|price| format!(", {price} together"));
            format!("{} × {}{}", packs.count, packs.pack.text, price.unwrap_or_default())
        }
        (Some(lacks), None) => format!("{}; in which packs it is sold is not written down", amount(*lacks, units)),
    }
}

/// What a year takes: `3.5 L for baths, 240 mL by hand, drip and pump`.
#[must_use]
pub fn taken(purchase: &Purchase, units: Units) -> String {
    use shop::shelf::Amount::Volume;
    let parts = [(purchase.needed.baths, "for baths"), (purchase.needed.hand, "by hand, drip and pump")];
    let said = parts.iter().filter(|(volume, _)| volume.m3() > 0.0);
    let said: Vec<String> = said.map(|(volume, what)| format!("{} {what}", amount(Volume(*volume), units))).collect();
    let said: Vec<&str> = said.iter().map(String::as_str).collect();
    let uncounted = match purchase.needed.uncounted.len() {
        0 => None,
        1 => Some("nobody says how much 1 point takes".to_owned()),
        points => Some(format!("nobody says how much {points} points take")),
    };
    match (said.is_empty(), uncounted) {
        (true, None) => "nothing".to_owned(),
        (true, Some(uncounted)) => uncounted,
        (false, None) => join(&said),
        (false, Some(uncounted)) => format!("{}; {uncounted}", join(&said)),
    }
}

/// What becomes of a can: `kept, for 12 points`.
#[must_use]
pub fn fate(plan: &ShelfPlan, fate: &Fate) -> String {
    match fate {
        Fate::Kept { points } => format!("kept, for {}", count(*points, "point")),
        Fate::TakenOver { by } => {
            let by: Vec<String> = by
                .iter()
                .map(|(oil, points)| {
                    let get = if *points == 1 { "gets" } else { "get" };
                    format!("{} {get} {}", count(*points, "point"), names(plan, std::slice::from_ref(oil)))
                })
                .collect();
            format!("not needed: {}", by.join("; "))
        }
        Fate::NotNeeded => "not needed: no point asks for it".to_owned(),
    }
}

/// Which can may be taken for which, why, and what it would harm.
#[must_use]
pub fn mix_up(plan: &ShelfPlan, mix_up: &MixUp) -> String {
    let name = |oil| names(plan, std::slice::from_ref(oil));
    let why: Vec<String> = mix_up
        .alike
        .iter()
        .map(|alike| match alike {
            Alike::Sort => "are of one sort".to_owned(),
            Alike::Body => "pour alike".to_owned(),
            Alike::Number(number) => format!("both bear the number {number}"),
        })
        .collect();
    let why: Vec<&str> = why.iter().map(String::as_str).collect();
    let places: Vec<String> = mix_up.harmed.iter().map(|at| super::point_at(plan, at)).collect();
    let places: Vec<&str> = places.iter().map(String::as_str).collect();
    format!(
        "\"{}\" and \"{}\" {}; the second in place of the first would do harm at {}. Mark the cans",
        name(&mix_up.right),
        name(&mix_up.wrong),
        join(&why),
        join(&places)
    )
}
