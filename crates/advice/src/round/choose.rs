//! Which points to do when there is not time for all: those of the greatest weight whose acts, covers, slides, wiping, cans and
//! walking fit into the time. Chosen exactly by branch and bound.
//!
//! Points that share phase, stand, setting, can and wiping are one group: what the group costs beside its acts does not depend on
//! which of its points are done. Groups are taken in or left out one by one; a branch is given up when even a share of each further
//! point, at no cost but its own, would not better the best so far. What a set of groups costs never falls when one more is taken
//! in, because no walk is longer than over a third stand. At the end of a branch the points are chosen by the exact
//! dynamic programme of the knapsack, over whole seconds.

use std::collections::BTreeMap;

use super::pace::{of_setup, seconds};
use super::tour::{Ground, Task};

/// So many sets of groups are gone through at most; beyond that the best so far is said not to be proven.
const SETS: usize = 20_000;

/// The points that were chosen.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Chosen {
    /// The numbers of the tasks, rising.
    pub(super) tasks: Vec<usize>,
    /// Whether nothing better is possible.
    pub(super) is_proven: bool,
}

/// Points of one group.
struct Group {
    tasks: Vec<usize>,
    /// Seconds that no other group shares: its own covers, slides and wiping.
    own: u32,
}

/// The best points of `open` beside all of `done`, in so many seconds for both.
pub(super) fn choose(
    ground: &Ground,
    tasks: &[Task],
    weights: &[u32],
    done: &[usize],
    open: &[usize],
    budget: u32,
) -> Chosen {
    let all: Vec<usize> = done.iter().chain(open).copied().collect();
    if ground.tour(tasks, &all).seconds.total() <= budget {
        return Chosen { tasks: sorted(all), is_proven: true };
    }
    let mut search = Search {
        ground,
        tasks,
        weights,
        done,
        budget,
        groups: grouped(ground, tasks, weights, done, open),
        known: BTreeMap::new(),
        best: (0, u32::MAX, Vec::new()),
        is_proven: true,
    };
    search.branch(0, &mut Vec::new());
    let chosen = done.iter().chain(&search.best.2).copied().collect();
    Chosen { tasks: sorted(chosen), is_proven: search.is_proven }
}

fn sorted(mut tasks: Vec<usize>) -> Vec<usize> {
    tasks.sort_unstable();
    tasks
}

/// The groups, those first that give most for their time.
fn grouped(ground: &Ground, tasks: &[Task], weights: &[u32], done: &[usize], open: &[usize]) -> Vec<Group> {
    let mut groups: Vec<Group> = Vec::new();
    for &task in open {
        let is_like = |other: usize| {
            let (a, b) = (&tasks[task], &tasks[other]);
            (a.phase, a.place, a.can, &a.setups, &a.wipes) == (b.phase, b.place, b.can, &b.setups, &b.wipes)
        };
        match groups.iter_mut().find(|group| is_like(group.tasks[0])) {
            Some(group) => group.tasks.push(task),
            None => groups.push(Group { tasks: vec![task], own: 0 }),
        }
    }
    for number in 0..groups.len() {
        let first = &tasks[groups[number].tasks[0]];
        let others = groups.iter().enumerate().filter(|(other, _)| *other != number).map(|(_, group)| group.tasks[0]);
        let others: Vec<&Task> = others.chain(done.iter().copied()).map(|task| &tasks[task]).collect();
        let setups = first.setups.iter().filter(|setup| others.iter().all(|other| !other.setups.contains(setup)));
        let wipes = first.wipes.iter().filter(|wipe| others.iter().all(|other| !other.wipes.contains(wipe)));
        let own = setups.map(|setup| of_setup(ground.setups[*setup].reading)).sum::<u32>()
            + wipes.count() as u32 * seconds::WIPE;
        groups[number].own = own;
    }
    for group in &mut groups {
        // By weight for the time, greatest first: `a / s` against `b / t` without a fraction.
        group.tasks.sort_by(|a, b| {
            let (wa, wb) = (u64::from(weights[*a]), u64::from(weights[*b]));
            let (sa, sb) = (u64::from(tasks[*a].seconds), u64::from(tasks[*b].seconds));
            (wb * sa).cmp(&(wa * sb)).then(a.cmp(b))
        });
    }
    let worth = |group: &Group| -> (u64, u64) {
        let weight: u64 = group.tasks.iter().map(|task| u64::from(weights[*task])).sum();
        let time: u64 = group.tasks.iter().map(|task| u64::from(tasks[*task].seconds)).sum();
        (weight, time + u64::from(group.own) + 1)
    };
    groups.sort_by(|a, b| {
        let ((wa, ta), (wb, tb)) = (worth(a), worth(b));
        (wb * ta).cmp(&(wa * tb)).then(a.tasks[0].cmp(&b.tasks[0]))
    });
    groups
}

struct Search<'s> {
    ground: &'s Ground,
    tasks: &'s [Task],
    weights: &'s [u32],
    done: &'s [usize],
    budget: u32,
    groups: Vec<Group>,
    /// Seconds beside the acts of the groups, by the groups taken in.
    known: BTreeMap<Vec<usize>, (u32, bool)>,
    /// Weight, seconds and tasks of the best so far.
    best: (u32, u32, Vec<usize>),
    is_proven: bool,
}

impl Search<'_> {
    fn branch(&mut self, next: usize, taken: &mut Vec<usize>) {
        let Some(frame) = self.frame(taken) else { return };
        if frame > self.budget || self.bound(next, taken, self.budget - frame) < f64::from(self.best.0) + 0.5 {
            return;
        }
        if next == self.groups.len() {
            self.fill(taken, frame);
            return;
        }
        taken.push(next);
        self.branch(next + 1, taken);
        taken.pop();
        self.branch(next + 1, taken);
    }

    /// Seconds for all that is done already and for the frame of the groups taken in; nothing when too many were gone through.
    fn frame(&mut self, taken: &[usize]) -> Option<u32> {
        if let Some((seconds, _)) = self.known.get(taken) {
            return Some(*seconds);
        }
        if self.known.len() >= SETS {
            self.is_proven = false;
            return None;
        }
        let firsts = taken.iter().map(|group| self.groups[*group].tasks[0]);
        let active: Vec<usize> = self.done.iter().copied().chain(firsts).collect();
        let tour = self.ground.tour(self.tasks, &active);
        let own: u32 = taken.iter().map(|group| self.tasks[self.groups[*group].tasks[0]].seconds).sum();
        let seconds = tour.seconds.total() - own;
        // Only of a proven shortest walk is it known that it never shrinks when more is taken in.
        self.is_proven &= tour.is_proven;
        self.known.insert(taken.to_vec(), (seconds, tour.is_proven));
        Some(seconds)
    }

    /// No choice among the groups taken in and those still to come weighs more than this in so many seconds.
    fn bound(&self, next: usize, taken: &[usize], seconds: u32) -> f64 {
        let own = taken.iter().map(|group| (0, &self.groups[*group]));
        let further = self.groups[next..].iter().map(|group| (group.own, group));
        let mut pieces: Vec<(f64, f64)> =
            own.chain(further).flat_map(|(first, group)| self.pieces(first, &group.tasks)).collect();
        pieces.sort_by(|a, b| (b.0 * a.1).total_cmp(&(a.0 * b.1)));
        let (mut left, mut weight) = (f64::from(seconds), 0.0);
        for (piece, time) in pieces {
            if time >= left {
                return weight + piece * left / time;
            }
            left -= time;
            weight += piece;
        }
        weight
    }

    /// A group's weight over its time as pieces of falling slope that lie nowhere below it: the first piece runs from nothing to
    /// where weight for time, with the group's own seconds, is greatest.
    fn pieces(&self, first: u32, tasks: &[usize]) -> Vec<(f64, f64)> {
        let mut whole = Vec::with_capacity(tasks.len());
        let (mut weight, mut time) = (0.0, f64::from(first));
        for task in tasks {
            weight += f64::from(self.weights[*task]);
            time += f64::from(self.tasks[*task].seconds);
            whole.push((weight, time));
        }
        let best = (0..whole.len()).max_by(|a, b| {
            let ((wa, ta), (wb, tb)) = (whole[*a], whole[*b]);
            (wa * tb).total_cmp(&(wb * ta))
        });
        let Some(best) = best else { return Vec::new() };
        let rest = tasks[best + 1..].iter();
        let rest = rest.map(|task| (f64::from(self.weights[*task]), f64::from(self.tasks[*task].seconds)));
        [whole[best]].into_iter().chain(rest).collect()
    }

    /// The best points of the groups taken in: knapsack over whole seconds.
    fn fill(&mut self, taken: &[usize], frame: u32) {
        let left = (self.budget - frame) as usize;
        let tasks: Vec<usize> = taken.iter().flat_map(|group| self.groups[*group].tasks.iter().copied()).collect();
        let all: u32 = tasks.iter().map(|task| self.tasks[*task].seconds).sum();
        let left = left.min(all as usize);
        let mut best = vec![vec![0_u32; left + 1]];
        for task in &tasks {
            let before = best.last().expect("it begins with one row");
            let (seconds, weight) = (self.tasks[*task].seconds as usize, self.weights[*task]);
            let row = (0..=left).map(|room| {
                let with = if room >= seconds { before[room - seconds] + weight } else { 0 };
                before[room].max(with)
            });
            let row = row.collect();
            best.push(row);
        }
        let weight = best[tasks.len()][left];
        let mut room = (0..=left).find(|room| best[tasks.len()][*room] == weight).unwrap_or(left);
        let total = frame + room as u32;
        if (weight, std::cmp::Reverse(total)) <= (self.best.0, std::cmp::Reverse(self.best.1)) {
            return;
        }
        let mut chosen = Vec::new();
        for (number, task) in tasks.iter().enumerate().rev() {
            if best[number + 1][room] != best[number][room] {
                room -= self.tasks[*task].seconds as usize;
                chosen.push(*task);
            }
        }
        self.best = (weight, total, chosen);
    }
}
