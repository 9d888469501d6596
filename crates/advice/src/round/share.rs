//! One short morning for several machines: how the minutes are shared out among them, so that what matters most is done.

use shop::shelf::Shelf;
use shop::snapshot::{MachineSnapshot, Moment};

use super::{Plan, Round, within};
use crate::working::Reasoned;

/// The rounds of several machines for which there are only so many minutes together.
///
/// Each machine's best round is worked out for every whole number of minutes, as by [`within()`]; the minutes are then shared out
/// exactly, so that the weights of what is left undone come to as little as whole minutes allow. Of equal ways that which needs
/// fewer minutes is taken, and of those that which gives more to the machine named first. The way from machine to machine is not
/// counted: no chart tells it.
#[must_use]
pub fn shared(
    machines: &[(&MachineSnapshot, Plan)],
    shelf: &Shelf,
    moment: &Moment,
    minutes: u32,
) -> Vec<Reasoned<Round>> {
    let rounds: Vec<Vec<Reasoned<Round>>> =
        machines.iter().map(|(machine, plan)| by_minutes(machine, shelf, moment, plan, minutes)).collect();
    let count = minutes as usize + 1;
    // For the machines so far and so many minutes: the least weight left undone, and the minutes of the last machine.
    let mut best: Vec<Vec<(u64, usize)>> = vec![vec![(0, 0); count]];
    for of_machine in &rounds {
        let before = best.last().expect("it begins with one row");
        let least = |all: usize| {
            let ways =
                (0..=all.min(of_machine.len() - 1)).map(|own| (before[all - own].0 + left(&of_machine[own]), own));
            ways.min().unwrap_or((u64::MAX, 0))
        };
        let row = (0..count).map(least).collect();
        best.push(row);
    }
    let least = best[rounds.len()][count - 1].0;
    let mut all = (0..count).find(|all| best[rounds.len()][*all].0 == least).unwrap_or(count - 1);
    let mut chosen = Vec::with_capacity(rounds.len());
    for (number, mut of_machine) in rounds.into_iter().enumerate().rev() {
        let own = best[number + 1][all].1;
        all -= own;
        chosen.push(of_machine.swap_remove(own));
    }
    chosen.reverse();
    chosen
}

/// A machine's rounds for no minute, one, two and so on, up to the first that leaves nothing undone.
fn by_minutes(
    machine: &MachineSnapshot,
    shelf: &Shelf,
    moment: &Moment,
    plan: &Plan,
    minutes: u32,
) -> Vec<Reasoned<Round>> {
    let mut rounds = Vec::new();
    for minutes in 0..=minutes {
        rounds.push(within(machine, shelf, moment, plan, minutes));
        if rounds.last().is_some_and(|round| round.value().left_undone.is_empty()) {
            break;
        }
    }
    rounds
}

fn left(round: &Reasoned<Round>) -> u64 {
    round.value().left_undone.iter().map(|left| u64::from(left.weight)).sum()
}
