//! A choice of lubricants with what each point then gets, and which choice is advised.

use shop::id::Id;
use shop::shelf::Stated;

use super::Side;
use super::candidate::{Candidate, Whence};
use super::fewest::{Effort, Matrix, fewest};
use super::harm::{BUY, CAN, RISK, harm};
use super::sharing::Sharing;
use crate::label::{Property, stated};
use crate::verdict::{Reason, Verdict};

/// A point of a machine.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct PointAt {
    /// The machine's id in the shop.
    pub machine: Id,
    /// The point's id on its chart.
    pub point: Id,
}

/// Lubricants with what each point gets of them.
#[derive(Clone, Debug, PartialEq)]
pub struct Choice {
    /// Which, in the order of ids, the shelf first.
    pub oils: Vec<Id>,
    /// The harm that they do, with what their cans count for.
    pub harm: u64,
    /// What of it counts for the cans: those with active sulphur that would do harm somewhere, and those that have to be bought.
    pub for_cans: u64,
    /// No choice of so many does less than this; it is proven to be the best when that is the harm itself.
    pub bound: u64,
    /// What each point gets.
    pub given: Vec<Given>,
}

/// What a point gets.
#[derive(Clone, Debug, PartialEq)]
pub struct Given {
    /// The point.
    pub at: PointAt,
    /// What it is called.
    pub name: String,
    /// What it gets.
    pub oil: Id,
    /// How far that does.
    pub verdict: Verdict,
    /// How far the best of all candidates would do.
    pub best: Verdict,
    /// How much the point weighs.
    pub weight: u32,
    /// Why no further.
    pub reasons: Vec<Reason>,
}

impl Given {
    /// The harm at this point.
    #[must_use]
    pub fn harm(&self) -> u32 {
        self.weight * harm(self.verdict).unwrap_or(0)
    }
}

impl Choice {
    /// Whether no choice of so many lubricants does less harm.
    #[must_use]
    pub fn is_proven(&self) -> bool {
        self.bound == self.harm
    }

    /// The points that get less than what suits them.
    pub fn suffers(&self) -> impl Iterator<Item = &Given> {
        self.given.iter().filter(|given| given.verdict != Verdict::Suits)
    }
}

/// The plan of one side from these of all candidates, and the points that none of them does for.
pub(super) fn side(
    sharings: &[Sharing],
    candidates: &[Candidate],
    own: &[usize],
    most: usize,
    effort: Effort,
) -> (Side, Vec<PointAt>) {
    let matrix = Matrix {
        rows: sharings.iter().map(|sharing| own.iter().map(|at| sharing.harm(*at)).collect()).collect(),
        prices: own.iter().map(|at| price(sharings, *at, &candidates[*at])).collect(),
        reluctance: own.iter().map(|at| candidates[*at].reluctance()).collect(),
    };
    let frontier = fewest(&matrix, most, effort);
    let points = |sharing: &Sharing| sharing.members.iter().map(|member| member.at.clone()).collect::<Vec<_>>();
    let without = frontier.hopeless.iter().flat_map(|at| points(&sharings[*at])).collect();
    let served: Vec<&Sharing> =
        sharings.iter().enumerate().filter(|(at, _)| !frontier.hopeless.contains(at)).map(|(_, one)| one).collect();
    let choices: Vec<Choice> = frontier
        .choices
        .iter()
        .map(|choice| {
            let chosen: Vec<usize> = choice.oils.iter().map(|at| own[*at]).collect();
            Choice {
                oils: chosen.iter().map(|at| candidates[*at].oil.id.clone()).collect(),
                harm: choice.harm,
                for_cans: choice.oils.iter().map(|at| u64::from(matrix.prices[*at])).sum(),
                bound: choice.bound,
                given: served.iter().flat_map(|sharing| given(sharing, &chosen, own, candidates)).collect(),
            }
        })
        .collect();
    // A can must save as much harm as one stopgap: each is one more chance of the wrong can.
    let worth = |choice: &Choice| choice.harm + u64::from(CAN) * choice.oils.len() as u64;
    let side = Side {
        points: served.iter().map(|sharing| sharing.members.len()).sum(),
        present: 0,
        advised: (0..choices.len()).min_by_key(|at| (worth(&choices[*at]), *at)),
        choices,
        too_few: frontier.too_few,
        least: frontier.least,
    };
    (side, without)
}

/// The harm that counts with a candidate for standing on the shelf at all.
fn price(sharings: &[Sharing], at: usize, candidate: &Candidate) -> u32 {
    let is_sharp = stated(&candidate.oil, Property::EpSulphur).stated == Stated::Yes;
    let mut members = sharings.iter().flat_map(|sharing| &sharing.members);
    let harms = members.any(|member| member.held[at].verdict == Verdict::Never);
    let risk = if is_sharp && harms { RISK } else { 0 };
    risk + if candidate.whence == Whence::Catalogue { BUY } else { 0 }
}

/// What points that share their oil get of the chosen: what does least harm; of equals what stands nearest to what they want.
fn given<'s>(
    sharing: &'s Sharing,
    chosen: &[usize],
    own: &'s [usize],
    candidates: &'s [Candidate],
) -> impl Iterator<Item = Given> + use<'s> {
    let best = chosen.iter().copied().filter_map(|at| Some((sharing.harm(at)?, sharing.place(at), at))).min();
    let (_, _, oil) = best.expect("a choice serves every point that can be served");
    sharing.members.iter().map(move |member| Given {
        at: member.at.clone(),
        name: member.name.clone(),
        oil: candidates[oil].oil.id.clone(),
        verdict: member.held[oil].verdict,
        best: own.iter().map(|at| member.held[*at].verdict).max().unwrap_or(Verdict::Never),
        weight: member.weight,
        reasons: member.held[oil].reasons.clone(),
    })
}
