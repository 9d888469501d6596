//! What becomes of each can on the shelf: it is kept, others take over, or nothing needs it.

use shop::id::Id;

use super::choice::Choice;
use super::{Asked, ShelfPlan, Whence};
use crate::round::serving;

/// What becomes of a can.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Fate {
    /// The plan gives it to so many points.
    Kept {
        /// How many.
        points: usize,
    },
    /// The round gives it today; these take over, each so many points, and for some points there may be none.
    TakenOver {
        /// By which, and for how many points.
        by: Vec<(Id, usize)>,
    },
    /// No point asks for it today, and the plan does without.
    NotNeeded,
}

/// What becomes of each lubricant on the shelf, in the order of the candidates.
#[must_use]
pub fn fates(asked: &Asked<'_>, plan: &ShelfPlan, choices: &[&Choice]) -> Vec<(Id, Fate)> {
    let given = || choices.iter().flat_map(|choice| &choice.given);
    let mut today: Vec<(Id, &Id, &Id)> = Vec::new();
    for machine in asked.machines {
        for point in machine.chart.points_here() {
            if let Some(oil) = serving(&machine.chart, point, asked.shelf).oil {
                today.push((oil.id, &machine.id, &point.id));
            }
        }
    }
    let fate = |oil: &Id| {
        if choices.iter().any(|choice| choice.oils.contains(oil)) {
            return Fate::Kept { points: given().filter(|given| given.oil == *oil).count() };
        }
        let mut by: Vec<(Id, usize)> = Vec::new();
        for (_, machine, point) in today.iter().filter(|(one, ..)| one == oil) {
            let then = given().find(|given| given.at.machine == **machine && given.at.point == **point);
            match then.map(|given| (by.iter().position(|(known, _)| *known == given.oil), given)) {
                Some((Some(at), _)) => by[at].1 += 1,
                Some((None, given)) => by.push((given.oil.clone(), 1)),
                None => {}
            }
        }
        by.sort_by(|a, b| b.1.cmp(&a.1).then_with(|| a.0.cmp(&b.0)));
        if by.is_empty() { Fate::NotNeeded } else { Fate::TakenOver { by } }
    };
    let shelf = plan.candidates.iter().filter(|candidate| candidate.whence == Whence::Shelf);
    shelf.map(|candidate| (candidate.oil.id.clone(), fate(&candidate.oil.id))).collect()
}
