//! The round in sentences: how much there is to do, the state of the machine, the usual cautions.

use shop::amount::Interval;
use shop::chart::State;

use crate::round::{AtStand, Round};

use super::{count, join};

/// `11 points at 3 places, about 5 minutes. Two cans: the short can, the long spout.`
#[must_use]
pub fn summary(round: &Round) -> String {
    let left = round.left();
    if left == 0 {
        return "Nothing is left to oil before this job.".to_owned();
    }
    let places = round.stands.iter().filter(|at| at.points.iter().any(|point| !point.is_done())).count();
    let cans: Vec<&str> = round.cans().iter().map(|can| can.name.as_str()).collect();
    let with = match cans.as_slice() {
        [] => String::new(),
        [only] => format!(" One can: {only}."),
        cans => format!(" {} cans: {}.", number(cans.len()), join(cans)),
    };
    format!(
        "{} at {}, about {}.{with}",
        count(left, "point"),
        count(places, "place"),
        count(round.minutes as usize, "minute")
    )
}

/// The state of the machine and the caution that goes with it, as sentences.
#[must_use]
pub fn caution(state: State) -> &'static str {
    match state {
        State::Stopped => {
            "Machine stopped, switched off and held off, so that nobody can start it while your hands are in it. Local rules come first."
        }
        State::Running => {
            "Guards on, sleeves tight, no rag in hand. Look from outside the guards; hands stay clear of everything that moves."
        }
    }
}

/// What must be moved for every point at a stand: the moves that all of them need.
#[must_use]
pub fn moved(at: &AtStand) -> Option<String> {
    let first = &at.points.first()?.moves;
    let common: Vec<&str> = first
        .iter()
        .filter(|one| at.points.iter().all(|point| point.moves.contains(one)))
        .map(String::as_str)
        .collect();
    (!common.is_empty()).then(|| join(&common))
}

/// Intervals behind one another: `1 use or 4 h, whichever comes first`.
#[must_use]
pub fn short_interval(every: &[Interval]) -> Option<String> {
    match every {
        [] => None,
        [only] => Some(only.typed.clone()),
        more => {
            let typed: Vec<&str> = more.iter().map(|interval| interval.typed.as_str()).collect();
            Some(format!("{}, whichever comes first", typed.join(" or ")))
        }
    }
}

fn number(number: usize) -> String {
    match number {
        2 => "Two".to_owned(),
        3 => "Three".to_owned(),
        4 => "Four".to_owned(),
        5 => "Five".to_owned(),
        more => more.to_string(),
    }
}
