//! A round for a short morning in sentences: what fits into the time, and what that leaves undone.

use crate::round::{LeftUndone, Round};

use super::{count, due_because, join};

/// `In 5 minutes: 8 of 14 points, those that matter most. 6 are left undone.` Nothing when the whole round was asked for.
#[must_use]
pub fn within(round: &Round) -> Option<String> {
    let minutes = round.within?;
    let chosen: usize = round.stands.iter().map(|at| at.points.len()).sum();
    let left = round.left_undone.len();
    let time = count(minutes as usize, "minute");
    Some(match left {
        0 => format!("Everything that is due fits into {time}."),
        left => {
            let all = count(chosen + left, "point");
            let are = if left == 1 { "is" } else { "are" };
            format!("In {time}: {chosen} of {all}, those that matter most. {left} {are} left undone.")
        }
    })
}

/// What is left undone and why it is due: `14 Driving shaft, rear bearing: wanted before every use`.
#[must_use]
pub fn left_undone(left: &LeftUndone) -> String {
    let why = due_because(&left.due);
    let parts = [format!("{} {}", left.id, left.name), why];
    let said: Vec<&str> = parts.iter().map(String::as_str).filter(|part| !part.is_empty()).collect();
    match said.as_slice() {
        [name, why] => format!("{name}: {why}"),
        other => join(other),
    }
}
