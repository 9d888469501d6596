//! The fewest oils for the shop: for one oil, two, three and so on those that do the least harm over all points, which point then gets what,
//! and who suffers. Start at [`shelf_plan`]. Every oil is held against every point by [`crate::judge`]; [`harm`] makes numbers of the
//! verdicts, [`fewest`] finds the choice, and nothing that is *never* is given to anything. Greases are planned apart from oils.

pub mod fewest;
pub mod harm;

mod candidate;
mod choice;
mod fate;
mod mix_up;
mod sharing;
mod shopping;
mod year;

pub use candidate::{Buying, Candidate, Whence};
pub use choice::{Choice, Given, PointAt};
pub use fate::{Fate, fates};
pub use mix_up::{Alike, MixUp, mix_ups};
pub use shopping::{Packs, Purchase, shopping};
pub use year::{Use, Year, thumb, use_of};

use shop::logbook::Movement;
use shop::shelf::Shelf;
use shop::snapshot::MachineSnapshot;
use tribology::{Standing, Step, Symbol};

use crate::verdict::Verdict;
use crate::working::{Assumption, Reasoned};
use fewest::{Effort, TooFew};
use sharing::Sharing;

/// What a plan is asked for.
#[derive(Clone, Copy, Debug)]
pub struct Asked<'a> {
    /// The machines to be oiled.
    pub machines: &'a [MachineSnapshot],
    /// What the shop has.
    pub shelf: &'a Shelf,
    /// What came and went of it; where nothing was ever logged of an oil, the shelf's own figure counts.
    pub movements: &'a [Movement],
    /// Whether oils may be bought that are not on the shelf.
    pub buying: Buying,
    /// The most oils; greases are not counted.
    pub most: Option<usize>,
    /// How long may be searched.
    pub effort: Effort,
}

/// The fewest oils.
#[derive(Clone, Debug, PartialEq)]
pub struct ShelfPlan {
    /// For the points that take oil.
    pub oils: Side,
    /// For the points that take grease.
    pub greases: Side,
    /// The points that nothing may be given to.
    pub without_candidate: Vec<PointAt>,
    /// The points of which nobody knows what they feed; they are among the others.
    pub unknown: Vec<PointAt>,
    /// How many points are only looked at, and get nothing.
    pub looked_at: usize,
    /// For how many machines it is.
    pub machines: usize,
    /// What could be chosen from.
    pub candidates: Vec<Candidate>,
}

/// The plan for what takes oil, or for what takes grease.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Side {
    /// How many points it is for.
    pub points: usize,
    /// How many lubricants of the side are on the shelf.
    pub present: usize,
    /// The best choice for each number of lubricants that does less harm than any smaller number.
    pub choices: Vec<Choice>,
    /// The numbers with which some point is left without any.
    pub too_few: Vec<TooFew>,
    /// No choice of however many does less harm.
    pub least: u64,
    /// Which of the choices is advised.
    pub advised: Option<usize>,
}

impl Side {
    /// The choice that is advised: the one with the least harm when each can counts as much as a stopgap, [`harm::CAN`].
    #[must_use]
    pub fn advice(&self) -> Option<&Choice> {
        self.choices.get(self.advised?)
    }

    /// The choice of so many, or of the nearest smaller number that does as little harm.
    #[must_use]
    pub fn of(&self, k: usize) -> Option<&Choice> {
        self.choices.iter().rev().find(|choice| choice.oils.len() <= k)
    }
}

impl ShelfPlan {
    /// Whether there is a plan at all.
    #[must_use]
    pub fn is_there(&self) -> bool {
        let has = |side: &Side| side.points == 0 || !side.choices.is_empty();
        has(&self.oils) && has(&self.greases) && self.oils.choices.len() + self.greases.choices.len() > 0
    }

    /// A candidate by its id.
    #[must_use]
    pub fn candidate(&self, oil: &shop::id::Id) -> Option<&Candidate> {
        self.candidates.iter().find(|candidate| candidate.oil.id == *oil)
    }
}

/// The fewest oils for machines.
#[must_use]
pub fn shelf_plan(asked: &Asked<'_>) -> Reasoned<ShelfPlan> {
    let candidates = candidate::candidates(asked);
    let met = sharing::met(asked.machines, &candidates);
    let (greased, oiled): (Vec<Sharing>, Vec<Sharing>) =
        met.sharings.into_iter().partition(|sharing| sharing.takes_grease(&candidates));
    let own = |wanted: bool| -> Vec<usize> {
        (0..candidates.len()).filter(|at| candidates[*at].is_grease() == wanted).collect()
    };
    let present = |own: &[usize]| own.iter().filter(|at| candidates[**at].whence == Whence::Shelf).count();
    let most = asked.most.unwrap_or(usize::MAX);
    let (mut oils, mut without_candidate) = choice::side(&oiled, &candidates, &own(false), most, asked.effort);
    let (mut greases, none) = choice::side(&greased, &candidates, &own(true), usize::MAX, asked.effort);
    (oils.present, greases.present) = (present(&own(false)), present(&own(true)));
    without_candidate.extend(none);
    without_candidate.sort();
    told(ShelfPlan {
        oils,
        greases,
        without_candidate,
        unknown: met.unknown,
        looked_at: met.looked_at,
        machines: asked.machines.len(),
        candidates,
    })
}

/// The plan with its sums and with what was assumed.
fn told(plan: ShelfPlan) -> Reasoned<ShelfPlan> {
    let steps = [&plan.oils, &plan.greases].into_iter().flat_map(|side| &side.choices).map(sum).collect();
    let mut assumed = vec![Assumption::HarmByOwnNumbers];
    if !plan.unknown.is_empty() {
        assumed.push(Assumption::UnknownFollowsTheShelf(plan.unknown.len()));
    }
    if plan.looked_at > 0 {
        assumed.push(Assumption::OnlyLookedAt(plan.looked_at));
    }
    if plan.candidates.iter().any(|candidate| candidate.whence == Whence::Catalogue) {
        assumed.push(Assumption::TypicalOfItsClass);
    }
    let mut reasoned = Reasoned::new(plan);
    reasoned.answer.steps = steps;
    reasoned.assumed = assumed;
    reasoned
}

/// The harm of a choice as a sum.
fn sum(choice: &Choice) -> Step {
    let of = |verdict: Verdict| {
        let weights = choice.given.iter().filter(|given| given.verdict == verdict).map(|given| given.weight);
        f64::from(weights.sum::<u32>())
    };
    let symbol = |symbol, si| Symbol { symbol, si, unit: "" };
    Step {
        name: "Harm of a choice",
        formula: "1 × weight of what is served + 10 × weight of what gets a stopgap + what the cans count for",
        symbols: vec![
            symbol("lubricants", choice.oils.len() as f64),
            symbol("served", of(Verdict::Serves)),
            symbol("stopgap", of(Verdict::Stopgap)),
            symbol("cans", choice.for_cans as f64),
        ],
        result: symbol("harm", choice.harm as f64),
        source: "common-practice",
        standing: Standing::CommonPractice,
    }
}
