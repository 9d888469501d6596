//! The shortest route, proven: a dynamic programme from the last phase back to the first.

use super::cans::Within;
use super::{Held, Layout, Route, Stop, along};

/// More than any route.
const NEVER: u32 = u32::MAX / 4;

/// One phase: its stops of known places, and the last one of unknown place.
struct Phase<'l> {
    /// The stops' own numbers.
    stops: Vec<usize>,
    places: Vec<usize>,
    within: Vec<Within<'l>>,
    last: Vec<Within<'l>>,
    /// For each stop the stops, as bits, that need one of its slides elsewhere, gathered by position.
    others: Vec<Vec<u32>>,
    /// Seconds to the end of the round, by set of stops done, last of them and hand.
    to_come: Vec<u32>,
}

/// The shortest route; nothing where some slide has to be moved twice.
pub(super) fn route(layout: &Layout) -> Option<Route> {
    let mut phases: Vec<Phase<'_>> = layout.phases.iter().map(|stops| Phase::of(layout.cans, stops)).collect();
    if phases.iter().flat_map(|phase| phase.within.iter().chain(&phase.last)).any(|within| !within.is_strict) {
        return None;
    }
    for number in (0..phases.len()).rev() {
        let (before, after) = phases.split_at_mut(number + 1);
        before[number].fill(layout, after);
    }
    let order = follow(layout, &phases)?;
    Some(Route { is_proven: true, ..along(layout, &order) })
}

impl<'l> Phase<'l> {
    fn of(cans: usize, all: &'l [Stop]) -> Self {
        let (stops, last): (Vec<usize>, Vec<usize>) = (0..all.len()).partition(|stop| all[*stop].place.is_some());
        let within = |stop: &usize| Within::of(cans, &all[*stop]);
        let held = |stop: usize| all[stop].parts.iter().flat_map(|part| part.held.iter().copied());
        let need = |position: Held| {
            let bits = stops.iter().enumerate().filter(|(_, stop)| held(**stop).any(|other| other == position));
            bits.fold(0_u32, |set, (bit, _)| set | 1 << bit)
        };
        let others = |stop: &usize| {
            let mut elsewhere: Vec<Held> = stops
                .iter()
                .flat_map(|other| held(*other))
                .filter(|other| {
                    held(*stop).any(|own| own.slide == other.slide) && !held(*stop).any(|own| own == *other)
                })
                .collect();
            elsewhere.sort_unstable();
            elsewhere.dedup();
            elsewhere.into_iter().map(need).collect()
        };
        Self {
            places: stops.iter().filter_map(|stop| all[*stop].place).collect(),
            within: stops.iter().map(within).collect(),
            last: last.iter().map(within).collect(),
            others: stops.iter().map(others).collect(),
            to_come: Vec::new(),
            stops,
        }
    }

    /// Whether a stop may follow a set: no position of its slides is begun and not ended.
    fn may_follow(&self, set: u32, stop: usize) -> bool {
        set & (1 << stop) == 0 && self.others[stop].iter().all(|need| set & need == 0 || set & need == *need)
    }

    fn at(&self, layout: &Layout, set: u32, last: usize, hand: usize) -> usize {
        (set as usize * self.stops.len() + last) * (layout.cans + 1) + hand
    }

    fn fill(&mut self, layout: &Layout, after: &[Phase<'_>]) {
        let (count, hands) = (self.stops.len(), layout.cans + 1);
        let full = (1_u32 << count) - 1;
        self.to_come = vec![NEVER; (full as usize + 1) * count * hands];
        for set in (1..=full).rev() {
            for last in (0..count).filter(|last| set & (1 << last) != 0) {
                for hand in 0..hands {
                    let seconds = if set == full {
                        self.over(layout, after, Some(self.places[last]), hand)
                    } else {
                        self.ways(layout, set, Some(self.places[last]), hand)
                            .map(|way| way.seconds)
                            .min()
                            .unwrap_or(NEVER)
                    };
                    let state = self.at(layout, set, last, hand);
                    self.to_come[state] = seconds;
                }
            }
        }
    }

    /// The ways to go on within the phase.
    fn ways<'p>(
        &'p self,
        layout: &'p Layout,
        set: u32,
        place: Option<usize>,
        hand: usize,
    ) -> impl Iterator<Item = Way> + 'p {
        (0..self.stops.len()).filter(move |stop| self.may_follow(set, *stop)).flat_map(move |stop| {
            let walk = place.map_or(0, |from| layout.walk[from][self.places[stop]]);
            (0..=layout.cans).filter_map(move |after| {
                let changes = self.within[stop].changes(hand, after)?;
                let to_come = self.to_come[self.at(layout, set | (1 << stop), stop, after)];
                Some(Way { seconds: (walk + changes * layout.change + to_come).min(NEVER), stop, hand: after })
            })
        })
    }

    /// Seconds from the end of the stops of known places to the end of the round.
    fn over(&self, layout: &Layout, after: &[Phase<'_>], place: Option<usize>, hand: usize) -> u32 {
        let ends = self.ends(layout, hand);
        let ways = ends.into_iter().map(|(changes, hand)| changes * layout.change + begin(layout, after, place, hand));
        ways.min().unwrap_or(NEVER).min(NEVER)
    }

    /// The hands with which the stops of no known place may be left, each with the fewest changes.
    fn ends(&self, layout: &Layout, hand: usize) -> Vec<(u32, usize)> {
        let mut ends = vec![(0, hand)];
        for within in &self.last {
            let best = |after: usize| {
                let ways = ends.iter().filter_map(|(changes, hand)| Some(changes + within.changes(*hand, after)?));
                ways.min().map(|changes| (changes, after))
            };
            ends = (0..=layout.cans).filter_map(best).collect();
        }
        ends
    }
}

/// A way to go on.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
struct Way {
    seconds: u32,
    stop: usize,
    hand: usize,
}

/// Seconds from the beginning of a phase to the end of the round.
fn begin(layout: &Layout, phases: &[Phase<'_>], place: Option<usize>, hand: usize) -> u32 {
    let Some((first, after)) = phases.split_first() else { return 0 };
    if first.stops.is_empty() {
        return first.over(layout, after, place, hand);
    }
    first.ways(layout, 0, place, hand).map(|way| way.seconds).min().unwrap_or(NEVER)
}

/// The order of the stops, each time the first of the best.
fn follow(layout: &Layout, phases: &[Phase<'_>]) -> Option<Vec<Vec<usize>>> {
    let (mut place, mut hand) = (None, 0);
    let mut order = Vec::with_capacity(phases.len());
    for (number, phase) in phases.iter().enumerate() {
        let mut set = 0;
        let mut visits = Vec::with_capacity(phase.stops.len());
        while visits.len() < phase.stops.len() {
            let way = phase.ways(layout, set, place, hand).min().filter(|way| way.seconds < NEVER)?;
            set |= 1 << way.stop;
            (place, hand) = (Some(phase.places[way.stop]), way.hand);
            visits.push(phase.stops[way.stop]);
        }
        let after = &phases[number + 1..];
        let ends = phase.ends(layout, hand).into_iter();
        let end = ends.map(|(changes, hand)| (changes * layout.change + begin(layout, after, place, hand), hand)).min();
        hand = end.map_or(hand, |(_, hand)| hand);
        order.push(visits);
    }
    Some(order)
}
