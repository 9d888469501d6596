//! The fewest of many that serve all, by bare numbers: how much each oil harms each place, without a word of the shop. Start at
//! [`fewest`]. For one oil, two, three and so on it finds the choice that does the least harm when each place takes the best of the chosen;
//! `model` says what is left of the numbers when what is alike is merged, `good` finds a good choice, `bound` says how much better one could
//! be, and `exact` closes what is open between the two: by `all`, or by cutting branches off.

mod all;
mod bound;
mod exact;
mod good;
mod model;
mod set;

use bound::Bound;
use good::{Cover, Value};
use model::Model;

/// How much each oil harms each place.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Matrix {
    /// For each place the harm that each oil does there; nothing where it may never be given.
    pub rows: Vec<Vec<Option<u32>>>,
    /// For each oil the harm that counts with it wherever it is given, for being on the shelf at all.
    pub prices: Vec<u32>,
    /// For each oil how unwelcome it is among choices that do equally little harm. Of equally welcome ones the first is taken.
    pub reluctance: Vec<u32>,
}

/// How long may be searched. Whatever the limit, a choice is answered, with how much better one might be.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Effort {
    /// The most sums for going through every choice of a number of oils; where there are more, branches are cut off.
    pub sums: u64,
    /// The most branches for each number of oils.
    pub nodes: u64,
    /// The most that may be left to these branches, in places times oils; more is left unproven.
    pub cells: usize,
    /// A limit in seconds beside these, for slow computers. Only what it cuts off may differ from one run to the next.
    pub seconds: u32,
}

impl Effort {
    /// For a person who waits.
    pub const USUAL: Self = Self { sums: 50_000_000, nodes: 2_000, cells: 40_000, seconds: 5 };
    /// No exact search: a good choice, and how much better one might be.
    pub const NONE: Self = Self { sums: 0, nodes: 0, cells: 0, seconds: 0 };
}

/// The best choices, from the fewest oils on.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Frontier {
    /// The places that no oil may be given to; everything else holds for the others.
    pub hopeless: Vec<usize>,
    /// The numbers of oils with which some place is left without any.
    pub too_few: Vec<TooFew>,
    /// The best choice for each number of oils that does less harm than any smaller number.
    pub choices: Vec<Choice>,
    /// No choice of however many does less harm.
    pub least: u64,
    /// Of how many places and oils the sum was left, once what is alike was merged and what is never better was dropped.
    pub merged: (usize, usize),
}

/// A number of oils with which some place is left without any.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TooFew {
    /// How many.
    pub k: usize,
    /// Whether that is proven; else nobody has found a choice and nobody knows that there is none.
    pub is_proven: bool,
}

/// The best choice of so many oils.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Choice {
    /// Which, in rising order.
    pub oils: Vec<usize>,
    /// The harm that they do.
    pub harm: u64,
    /// No choice of so many does less than this; it is proven to be the best when that is the harm itself.
    pub bound: u64,
}

impl Choice {
    /// Whether no choice of so many oils does less harm.
    #[must_use]
    pub fn is_proven(&self) -> bool {
        self.bound == self.harm
    }
}

/// The best choices of one oil, two, three and so on, at most so many, up to the number from which more do no less harm.
#[must_use]
pub fn fewest(matrix: &Matrix, most: usize, effort: Effort) -> Frontier {
    let (model, hopeless) = Model::of(matrix);
    let mut frontier = Frontier {
        hopeless,
        too_few: Vec::new(),
        choices: Vec::new(),
        least: model.base,
        merged: (model.wishes.len(), model.oils.len()),
    };
    if matrix.rows.len() == frontier.hopeless.len() {
        return frontier;
    }
    // Where oils have no price of their own, all of them together do the least.
    if model.prices.iter().any(|price| *price > 0) {
        frontier.least = choice(&model, model.oils.len(), &[], effort).harm_bound;
    }
    let mut start: Vec<usize> = Vec::new();
    for k in 1..=most.min(model.oils.len()) {
        let found = choice(&model, k, &start, effort);
        let Some(cover) = found.cover else {
            frontier.too_few.push(TooFew { k, is_proven: found.is_closed });
            continue;
        };
        start.clone_from(&cover.chosen);
        let mut oils: Vec<usize> = cover.chosen.iter().map(|oil| model.oils[*oil]).collect();
        oils.sort_unstable();
        let harm = cover.value.harm;
        // With fewer oils it did as well: then more of them are no answer.
        if frontier.choices.last().is_none_or(|last| harm < last.harm) {
            frontier.choices.retain(|before| before.oils.len() < oils.len());
            frontier.choices.push(Choice { oils, harm, bound: found.harm_bound.min(harm) });
        }
        if harm == frontier.least {
            break;
        }
    }
    frontier
}

/// What was found for one number of oils.
struct Found<'m> {
    cover: Option<Cover<'m>>,
    /// No choice does less harm.
    harm_bound: u64,
    /// Whether nothing is left to search.
    is_closed: bool,
}

fn choice<'m>(model: &'m Model, k: usize, start: &[usize], effort: Effort) -> Found<'m> {
    let mut best = good::good(model, k, start);
    let mut bound = Bound::new(model, k);
    bound.tighten(&mut best);
    if !bound.meets(&best)
        && let Some(found) = exact::search(model, k, &bound, &best, effort)
    {
        bound.raise(found.bound);
        if let Some(oils) = found.oils {
            let cover = good::bettered(Cover::of(model, &oils));
            if cover.value < best.value {
                best = cover;
            }
        }
    }
    let is_closed = bound.meets(&best);
    let harm_bound = bound.harm().max(model.base);
    let is_served = best.value.missed == 0;
    Found { cover: is_served.then(|| best.without_idle()), harm_bound, is_closed }
}

/// The weight of harm against reluctance for so many oils: harm always comes first.
fn scale(model: &Model, k: usize) -> u64 {
    1 + k as u64 * model.reluctance.iter().copied().max().unwrap_or(0)
}

/// Harm and reluctance as one number.
fn total(model: &Model, k: usize, value: &Value) -> u64 {
    scale(model, k) * value.harm + value.reluctance
}

/// What an oil costs by itself, harm and reluctance as one number.
fn cost(model: &Model, k: usize, oil: usize) -> u64 {
    scale(model, k) * model.prices[oil] + model.reluctance[oil]
}
