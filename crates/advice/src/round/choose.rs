//! Which points to do when there is not time for all: those of the greatest weight whose acts, covers, slides, wiping, cans and
//! walking fit into the time. Chosen exactly by branch and bound.
//!
//! Points that share phase, stand, setting, can and wiping are one group: what the group costs beside its acts does not depend on
//! which of its points are done. First it is settled which covers and slides that several groups need are opened or moved at all, then
//! which groups are taken in. A branch is given up when even shares of the points still to come, at the least that they can
//! cost, would not better the best so far: no walk is longer than over a third stand, so that a set of groups never costs less when one is
//! added, and each stand that is come to costs its own seconds. The search begins from a good choice, made by taking groups in and
//! leaving them out one at a time as long as that gives more. At the end of a branch the points are chosen by the exact
//! dynamic programme of the knapsack, over whole seconds.

use std::collections::{BTreeMap, BTreeSet};

use super::bound::{Piece, envelope, most, sorted};
use super::pace::{of_setup, seconds};
use super::phase::Phase;
use super::tour::{Ground, Task};

/// So many sums are spent on walks at most; beyond that the best so far is said not to be proven.
const SUMS: u64 = 10_000_000;

/// Between two phases a stand may be left and come to without a step; there are so many such seams.
const SEAMS: f64 = 3.0;

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
    /// Those of the most weight for their time first.
    tasks: Vec<usize>,
    phase: Phase,
    place: Option<usize>,
    /// Seconds that no other group shares: its own covers, slides and wiping.
    own: u32,
}

/// A cover, a slide or a thing to wipe that several groups need.
struct Gate {
    seconds: u32,
    groups: Vec<usize>,
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
    let rising = |tasks: &mut dyn Iterator<Item = usize>| tasks.collect::<BTreeSet<usize>>().into_iter().collect();
    let all: Vec<usize> = rising(&mut done.iter().chain(open).copied());
    if ground.tour(tasks, &all).seconds.total() <= budget {
        return Chosen { tasks: all, is_proven: true };
    }
    let (groups, gates) = Sorting { ground, tasks, weights, done }.groups(open);
    let mut search = Search {
        ground,
        tasks,
        weights,
        done,
        budget,
        groups,
        gates,
        known: BTreeMap::new(),
        sums: 0,
        best: (0, u32::MAX, Vec::new()),
        is_proven: true,
    };
    search.begin();
    search.settle(&mut Vec::new());
    Chosen { tasks: rising(&mut done.iter().chain(&search.best.2).copied()), is_proven: search.is_proven }
}

/// What groups are made from.
struct Sorting<'s> {
    ground: &'s Ground,
    tasks: &'s [Task],
    weights: &'s [u32],
    done: &'s [usize],
}

impl Sorting<'_> {
    /// The groups, those first that give most for their time, and what several of them need.
    fn groups(&self, open: &[usize]) -> (Vec<Group>, Vec<Gate>) {
        let mut groups: Vec<Group> = Vec::new();
        for &number in open {
            let task = &self.tasks[number];
            let is_like = |group: &&mut Group| {
                let other = &self.tasks[group.tasks[0]];
                (task.phase, task.place, task.can, &task.setups, &task.wipes)
                    == (other.phase, other.place, other.can, &other.setups, &other.wipes)
            };
            match groups.iter_mut().find(is_like) {
                Some(group) => group.tasks.push(number),
                None => groups.push(Group { tasks: vec![number], phase: task.phase, place: task.place, own: 0 }),
            }
        }
        let weight = |task: usize| u64::from(self.weights[task]);
        let time = |task: usize| u64::from(self.tasks[task].seconds);
        for group in &mut groups {
            // By weight for the time, greatest first: `a / s` against `b / t` without a fraction.
            group.tasks.sort_by(|a, b| (weight(*b) * time(*a)).cmp(&(weight(*a) * time(*b))).then(a.cmp(b)));
        }
        groups.sort_by(|a, b| {
            let sum = |group: &Group, of: &dyn Fn(usize) -> u64| group.tasks.iter().map(|task| of(*task)).sum::<u64>();
            let (over_a, over_b) = (sum(b, &weight) * sum(a, &time), sum(a, &weight) * sum(b, &time));
            over_a.cmp(&over_b).then(a.tasks[0].cmp(&b.tasks[0]))
        });
        let gates = self.gates(&mut groups);
        (groups, gates)
    }

    /// What must be opened, moved or wiped for the groups: what one alone needs becomes its own, the rest are gates. What is done
    /// already needs nothing more.
    fn gates(&self, groups: &mut [Group]) -> Vec<Gate> {
        let setups = (0..self.ground.setups.len()).map(|setup| {
            let needs = move |task: &Task| task.setups.contains(&setup);
            (of_setup(self.ground.setups[setup].reading), Box::new(needs) as Box<dyn Fn(&Task) -> bool>)
        });
        let wipes = (0..self.ground.wipes.len()).map(|wipe| {
            let needs = move |task: &Task| task.wipes.contains(&wipe);
            (seconds::WIPE, Box::new(needs) as Box<dyn Fn(&Task) -> bool>)
        });
        let mut gates = Vec::new();
        for (seconds, needs) in setups.chain(wipes) {
            if seconds == 0 || self.done.iter().any(|task| needs(&self.tasks[*task])) {
                continue;
            }
            let behind: Vec<usize> =
                (0..groups.len()).filter(|group| needs(&self.tasks[groups[*group].tasks[0]])).collect();
            match behind.as_slice() {
                [] => {}
                [only] => groups[*only].own += seconds,
                _ => gates.push(Gate { seconds, groups: behind }),
            }
        }
        gates.sort_by_key(|gate| std::cmp::Reverse((gate.seconds, gate.groups.len())));
        gates
    }
}

struct Search<'s> {
    ground: &'s Ground,
    tasks: &'s [Task],
    weights: &'s [u32],
    done: &'s [usize],
    budget: u32,
    groups: Vec<Group>,
    gates: Vec<Gate>,
    /// Seconds beside the acts of the groups, by the groups taken in.
    known: BTreeMap<Vec<usize>, u32>,
    sums: u64,
    /// Weight, seconds and tasks of the best so far.
    best: (u32, u32, Vec<usize>),
    is_proven: bool,
}

/// A branch of the search: the gates that are opened, the groups that are shut out, and those taken in of all before `next`.
struct Branch<'b> {
    open: &'b [bool],
    next: usize,
    taken: &'b mut Vec<usize>,
}

impl Search<'_> {
    /// A good choice to begin with: groups are taken in or left out one at a time as long as that gives more.
    fn begin(&mut self) {
        let mut taken: BTreeSet<usize> = BTreeSet::new();
        let mut worth = 0.0;
        loop {
            let changed = |group: usize| {
                let mut changed = taken.clone();
                if !changed.remove(&group) {
                    changed.insert(group);
                }
                changed
            };
            let ways: Vec<BTreeSet<usize>> = (0..self.groups.len()).map(changed).collect();
            let ways = ways.into_iter().filter_map(|way| Some((self.worth(&way)?, way)));
            let best = ways.reduce(|best, way| if way.0 > best.0 { way } else { best });
            match best {
                Some((better, way)) if better > worth + 0.5 => (worth, taken) = (better, way),
                _ => break,
            }
        }
        let taken: Vec<usize> = taken.into_iter().collect();
        if let Some(frame) = self.frame(&taken).filter(|frame| *frame <= self.budget) {
            self.fill(&taken, frame);
        }
    }

    /// The most weight that groups give within the time, with a share of the last point.
    fn worth(&mut self, taken: &BTreeSet<usize>) -> Option<f64> {
        let taken: Vec<usize> = taken.iter().copied().collect();
        let left = self.budget.checked_sub(self.frame(&taken)?)?;
        let pieces = taken.iter().flat_map(|group| self.pieces(*group, 0)).collect();
        Some(most(f64::from(left), &sorted(pieces)))
    }

    /// Settles gate after gate, then group after group.
    fn settle(&mut self, open: &mut Vec<bool>) {
        let mut taken = Vec::new();
        if !self.may_better(&Branch { open, next: 0, taken: &mut taken }, 0) {
            return;
        }
        if open.len() == self.gates.len() {
            self.branch(Branch { open, next: 0, taken: &mut taken });
            return;
        }
        for choice in [true, false] {
            open.push(choice);
            self.settle(open);
            open.pop();
        }
    }

    fn branch(&mut self, branch: Branch<'_>) {
        let Branch { open, next, taken } = branch;
        if !self.may_better(&Branch { open, next, taken }, 0) {
            return;
        }
        let Some(frame) = self.frame(taken) else { return };
        if !self.may_better(&Branch { open, next, taken }, frame) {
            return;
        }
        if next == self.groups.len() {
            self.fill(taken, frame);
            return;
        }
        if self.is_open(open, next) {
            taken.push(next);
            self.branch(Branch { open, next: next + 1, taken });
            taken.pop();
        }
        self.branch(Branch { open, next: next + 1, taken });
    }

    /// Whether all gates that a group needs are open or not settled yet.
    fn is_open(&self, open: &[bool], group: usize) -> bool {
        open.iter().zip(&self.gates).all(|(is_open, gate)| *is_open || !gate.groups.contains(&group))
    }

    /// Whether a branch may still hold something better than the best so far. `frame` is what its groups cost at least.
    fn may_better(&self, branch: &Branch<'_>, frame: u32) -> bool {
        let Branch { open, next, taken } = branch;
        let before = self.known.get(&taken[..taken.len().saturating_sub(1)]).copied().unwrap_or(0);
        let own = taken.last().map_or(0, |group| self.groups[*group].own);
        let is_paid = |gate: &Gate| gate.groups.iter().any(|group| taken.contains(group));
        let gates: u32 =
            open.iter().zip(&self.gates).filter(|(is, gate)| **is && !is_paid(gate)).map(|(_, g)| g.seconds).sum();
        let least = frame.max(before + own) + gates;
        let Some(left) = self.budget.checked_sub(least) else { return false };
        let come: Vec<usize> = (*next..self.groups.len()).filter(|group| self.is_open(open, *group)).collect();
        let bound = |left: f64, key: &dyn Fn(usize) -> (Option<Phase>, Option<usize>)| {
            let known: BTreeSet<_> = taken.iter().map(|group| key(*group)).collect();
            let done = self.done.iter().map(|task| &self.tasks[*task]);
            let done: BTreeSet<_> =
                done.flat_map(|task| [(Some(task.phase), task.place), (None, task.place)]).collect();
            let mut at: BTreeMap<_, Vec<Piece>> = BTreeMap::new();
            let mut pieces: Vec<Piece> = taken.iter().flat_map(|group| self.pieces(*group, 0)).collect();
            for group in &come {
                let key = key(*group);
                let of_group = self.pieces(*group, self.groups[*group].own);
                if known.contains(&key) || done.contains(&key) {
                    pieces.extend(of_group);
                } else {
                    at.entry(key).or_default().extend(of_group);
                }
            }
            pieces.extend(at.into_values().flat_map(|pieces| envelope(f64::from(seconds::ARRIVE), &sorted(pieces))));
            most(left, &sorted(pieces))
        };
        let left = f64::from(left);
        let by_stand = |group: usize| (None, self.groups[group].place);
        let by_stop = |group: usize| (Some(self.groups[group].phase), self.groups[group].place);
        let better = f64::from(self.best.0) + 0.5;
        bound(left, &by_stand) >= better && bound(left + SEAMS * f64::from(seconds::ARRIVE), &by_stop) >= better
    }

    /// A group's weight over its time as pieces of falling slope, its own seconds in the first.
    fn pieces(&self, group: usize, own: u32) -> Vec<Piece> {
        let piece =
            |task: &usize| Piece { weight: f64::from(self.weights[*task]), time: f64::from(self.tasks[*task].seconds) };
        envelope(f64::from(own), &self.groups[group].tasks.iter().map(piece).collect::<Vec<_>>())
    }

    /// Seconds for all that is done already and for the frame of the groups taken in; nothing when too many were gone through.
    fn frame(&mut self, taken: &[usize]) -> Option<u32> {
        if let Some(seconds) = self.known.get(taken) {
            return Some(*seconds);
        }
        if self.sums >= SUMS {
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
        self.sums += tour.sums;
        self.known.insert(taken.to_vec(), seconds);
        Some(seconds)
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
