//! Cans that are easy to take for one another where the wrong one does harm.

use shop::id::Id;
use shop::shelf::Oil;
use tribology::math;

use super::choice::{Choice, PointAt};
use super::{Asked, ShelfPlan, Whence};
use crate::judge::judged;
use crate::need::need;
use crate::verdict::Verdict;

/// Two cans that are easy to take for one another.
#[derive(Clone, Debug, PartialEq)]
pub struct MixUp {
    /// The one that the plan gives.
    pub right: Id,
    /// The one that may be taken for it.
    pub wrong: Id,
    /// Why they are alike.
    pub alike: Vec<Alike>,
    /// The points that the right one is for and the wrong one harms.
    pub harmed: Vec<PointAt>,
}

/// Why two cans are alike.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Alike {
    /// They are of one sort.
    Sort,
    /// They pour alike.
    Body,
    /// The same number stands on both.
    Number(String),
}

/// Bodies nearer than this cannot be told apart by pouring (common practice): less than one ISO grade.
const NEAR: f64 = 1.4;

/// The cans of a choice that are easy to take for another of it, or for one that stands on the shelf, where that would do harm.
#[must_use]
pub fn mix_ups(asked: &Asked<'_>, plan: &ShelfPlan, choice: &Choice) -> Vec<MixUp> {
    let mut found = Vec::new();
    for right in &choice.oils {
        let Some(one) = plan.candidate(right) else { continue };
        for other in &plan.candidates {
            let is_there = other.whence == Whence::Shelf || choice.oils.contains(&other.oil.id);
            if other.oil.id == *right || !is_there || other.is_grease() != one.is_grease() {
                continue;
            }
            let alike = alike(&one.oil, &other.oil);
            if alike.is_empty() {
                continue;
            }
            let harmed = harmed(asked, choice, right, &other.oil);
            if !harmed.is_empty() {
                found.push(MixUp { right: right.clone(), wrong: other.oil.id.clone(), alike, harmed });
            }
        }
    }
    found
}

fn alike(one: &Oil, other: &Oil) -> Vec<Alike> {
    let mut alike = Vec::new();
    if one.family == other.family {
        alike.push(Alike::Sort);
    }
    if let (Some(a), Some(b)) = (&one.v40, &other.v40)
        && math::ln(a.value.mm2_s() / b.value.mm2_s()).abs() < math::ln(NEAR)
    {
        alike.push(Alike::Body);
    }
    let numbers = |oil: &Oil| -> Vec<String> {
        let parts = oil.name.split(|letter: char| !letter.is_ascii_digit());
        parts.filter(|part| !part.is_empty()).map(str::to_owned).collect()
    };
    let others = numbers(other);
    alike.extend(numbers(one).into_iter().filter(|number| others.contains(number)).map(Alike::Number));
    alike
}

fn harmed(asked: &Asked<'_>, choice: &Choice, right: &Id, wrong: &Oil) -> Vec<PointAt> {
    let of = |at: &PointAt| {
        let machine = asked.machines.iter().find(|machine| machine.id == at.machine)?;
        let point = machine.chart.point(&at.point)?;
        let verdict = judged(&need(&machine.chart, point), wrong).verdict;
        (verdict == Verdict::Never).then(|| at.clone())
    };
    choice.given.iter().filter(|given| given.oil == *right).filter_map(|given| of(&given.at)).collect()
}
