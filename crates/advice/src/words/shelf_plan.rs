//! The fewest oils in sentences.

use shop::id::Id;

use crate::shelf_plan::fewest::TooFew;
use crate::shelf_plan::{Choice, Given, PointAt, ShelfPlan, Side};
use crate::verdict::Verdict;

use super::count;

/// The answer in one sentence: how many of what the shop has do for how many points.
#[must_use]
pub fn plan_answer(plan: &ShelfPlan) -> String {
    let side = |side: &Side, thing: &str| Some((side.points, clause(side, side.advice()?, thing)));
    let parts: Vec<(usize, String)> =
        [side(&plan.oils, "oil"), side(&plan.greases, "grease")].into_iter().flatten().collect();
    let parts: Vec<&str> = parts.iter().filter(|(points, _)| *points > 0).map(|(_, says)| says.as_str()).collect();
    let without = match plan.without_candidate.len() {
        0 => String::new(),
        left => format!(" For {} nothing that may be chosen will do: leave the machine stopped.", count(left, "point")),
    };
    if !plan.is_there() || parts.is_empty() {
        return format!("There is no plan with what may be chosen.{without}");
    }
    format!("{}.{without}", parts.join(". "))
}

/// `7 oils are on the shelf; 3 do for 168 of 174 points, and 6 get along with a stopgap`.
fn clause(side: &Side, choice: &Choice, thing: &str) -> String {
    let stopgaps = choice.given.iter().filter(|given| given.verdict == Verdict::Stopgap).count();
    let verb = if choice.oils.len() == 1 { "does" } else { "do" };
    let points = count(side.points, "point");
    let served = match (side.points, stopgaps) {
        (1, 0) => "for its one point".to_owned(),
        (_, 0) => format!("for all {points}"),
        (all, stopgaps) => format!("for {} of {points}", all - stopgaps),
    };
    let rest = match stopgaps {
        0 => String::new(),
        1 => ", and 1 gets along with a stopgap".to_owned(),
        several => format!(", and {several} get along with a stopgap"),
    };
    let there = match side.present {
        0 => return format!("{} {verb} {served}{rest}", count(choice.oils.len(), thing)),
        1 => format!("1 {thing} is on the shelf"),
        several => format!("{several} {thing}s are on the shelf"),
    };
    format!("{there}; {} {verb} {served}{rest}", choice.oils.len())
}

/// How sure it is that no choice of so many does less harm.
#[must_use]
pub fn proof(choice: &Choice) -> String {
    if choice.is_proven() {
        "proven".to_owned()
    } else {
        format!("not proven: it may be {} less", choice.harm - choice.bound)
    }
}

/// Why so many are too few.
#[must_use]
pub fn too_few(too_few: &TooFew) -> String {
    if too_few.is_proven {
        "leaves some point without any that does no harm".to_owned()
    } else {
        "no choice was found that leaves no point without, and nobody has proven that there is none".to_owned()
    }
}

/// A point by its id; of several machines with the machine before it.
#[must_use]
pub fn point_at(plan: &ShelfPlan, at: &PointAt) -> String {
    if plan.machines > 1 { format!("{}/{}", at.machine, at.point) } else { at.point.to_string() }
}

/// Which lubricants, by what stands on them.
#[must_use]
pub fn names(plan: &ShelfPlan, oils: &[Id]) -> String {
    let names: Vec<&str> =
        oils.iter().map(|id| plan.candidate(id).map_or(id.as_str(), |one| one.oil.name.as_str())).collect();
    // Names have commas in them.
    names.join("; ")
}

/// What a point gets and why that is no better.
#[must_use]
pub fn suffers(plan: &ShelfPlan, given: &Given) -> String {
    let names = names(plan, std::slice::from_ref(&given.oil));
    let why = given.reasons.first().map(|reason| format!(": {}", reason.says)).unwrap_or_default();
    let word = match given.verdict {
        Verdict::Stopgap => "is a stopgap",
        _ => "serves",
    };
    let better = if given.best > given.verdict { "" } else { "; nothing that may be chosen does more" };
    format!("{names} {word}{why}{better}")
}
