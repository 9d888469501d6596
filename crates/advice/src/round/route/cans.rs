//! Changes of can: within one stop, and along a route whose stops stand in order. A hand holds can `number + 1`, or none yet: 0.

use std::cmp::Reverse;

use super::{Layout, Part, Stop};

/// More parts than this at one stop are done as they stand: the sets of parts would be too many to go through.
const PARTS: usize = 10;

/// By set of parts done and hand then: the fewest changes, the part that was done last, and the hand before it.
type States = Vec<Vec<Option<(u32, usize, usize)>>>;

/// The fewest changes of can within a stop, from any hand to any other.
pub(super) struct Within<'s> {
    stop: &'s Stop,
    hands: usize,
    /// Whether every slide keeps to standing in each place once; not, where the parts leave no such order.
    pub(super) is_strict: bool,
    /// By the hand before.
    states: Vec<States>,
}

impl<'s> Within<'s> {
    pub(super) fn of(cans: usize, stop: &'s Stop) -> Self {
        let mut within = Self { stop, hands: cans + 1, is_strict: true, states: Vec::new() };
        within.states = within.all();
        if within.states[0].last().is_none_or(|hands| hands.iter().all(Option::is_none)) {
            within.is_strict = false;
            within.states = within.all();
        }
        within
    }

    /// The fewest changes when it is come to with one hand and left with another; nothing where that cannot be.
    pub(super) fn changes(&self, before: usize, after: usize) -> Option<u32> {
        self.states[before].last().and_then(|hands| hands[after]).map(|(changes, ..)| changes)
    }

    /// The parts in the order of the fewest changes, each with its cans in order, and how many changes there are.
    pub(super) fn order(&self, before: usize, after: usize) -> (Vec<(usize, Vec<usize>)>, u32) {
        let all = self.states[before].len() - 1;
        let (mut set, mut hand) = (all, after);
        let mut parts = Vec::new();
        let changes = self.changes(before, after).expect("the hands of a route are chosen among those that can be");
        while set > 0 {
            let Some((_, part, hand_before)) = self.states[before][set][hand] else { break };
            parts.push((part, taken(&self.stop.parts[part], hand_before, hand)));
            set = self.without(set, part);
            hand = hand_before;
        }
        parts.reverse();
        (parts, changes)
    }

    /// A set of parts is a number whose bits are the parts; where there are too many, it counts those done in their order.
    fn without(&self, set: usize, part: usize) -> usize {
        if self.is_few() { set & !(1 << part) } else { set - 1 }
    }

    fn is_few(&self) -> bool {
        self.stop.parts.len() <= PARTS
    }

    fn all(&self) -> Vec<States> {
        (0..self.hands).map(|before| self.from(before)).collect()
    }

    fn from(&self, before: usize) -> States {
        let count = self.stop.parts.len();
        let sets = if self.is_few() { 1 << count } else { count + 1 };
        let mut states = vec![vec![None; self.hands]; sets];
        states[0][before] = Some((0, 0, before));
        for set in 0..sets {
            for hand in 0..self.hands {
                let Some((changes, ..)) = states[set][hand] else { continue };
                for part in 0..count {
                    let next = if self.is_few() { set | (1 << part) } else { set + 1 };
                    let is_next = if self.is_few() { set & (1 << part) == 0 } else { set == part };
                    if !is_next || (self.is_few() && self.is_strict && !self.may_follow(set, part)) {
                        continue;
                    }
                    for (after, known) in states[next].iter_mut().enumerate() {
                        let Some(more) = changes_of(&self.stop.parts[part], hand, after) else { continue };
                        // Of equal ones that is kept whose last part is the later one, so that the earlier parts come first.
                        if known.is_none_or(|(least, last, _)| {
                            (changes + more, last) < (least, part) || (changes + more == least && last < part)
                        }) {
                            *known = Some((changes + more, part, hand));
                        }
                    }
                }
            }
        }
        states
    }

    /// Whether a part may come after a set of others: no slide leaves a position to which a part still to come needs it back.
    fn may_follow(&self, set: usize, part: usize) -> bool {
        let parts = &self.stop.parts;
        parts[part].held.iter().all(|held| {
            let needs = |other: usize| parts[other].held.iter().find(|o| o.slide == held.slide && o.at != held.at);
            let is_begun = |at: usize| {
                (0..parts.len())
                    .any(|o| set & (1 << o) != 0 && parts[o].held.iter().any(|h| h.slide == held.slide && h.at == at))
            };
            (0..parts.len()).filter(|o| set & (1 << o) == 0 && *o != part).filter_map(needs).all(|o| !is_begun(o.at))
        })
    }
}

/// The changes of can for one part; nothing where the part cannot be left with that hand.
fn changes_of(part: &Part, before: usize, after: usize) -> Option<u32> {
    let count = u32::try_from(part.cans.len()).expect("a part has few cans");
    if count == 0 {
        return (before == after).then_some(0);
    }
    let has = |hand: usize| hand > 0 && part.cans.contains(&(hand - 1));
    if !has(after) {
        return None;
    }
    Some(match before {
        0 => count - 1,
        before if has(before) && (before != after || count == 1) => count - 1,
        _ => count,
    })
}

/// The cans of a part in the order in which they are taken.
fn taken(part: &Part, before: usize, after: usize) -> Vec<usize> {
    if part.cans.is_empty() {
        return Vec::new();
    }
    let (first, last) = (before.wrapping_sub(1), after - 1);
    let is_first = |can: usize| can == first && (can != last || part.cans.len() == 1);
    let middle = part.cans.iter().copied().filter(|can| !is_first(*can) && *can != last);
    let start = part.cans.iter().copied().filter(|can| is_first(*can) && *can != last);
    let mut middle: Vec<usize> = middle.collect();
    middle.sort_unstable();
    start.chain(middle).chain([last]).collect()
}

/// The hand after each visit, for the fewest changes along the whole order.
pub(super) fn hands(layout: &Layout, order: &[Vec<usize>]) -> Vec<usize> {
    let visits: Vec<Within<'_>> = layout
        .phases
        .iter()
        .zip(order)
        .flat_map(|(stops, order)| order.iter().map(|stop| Within::of(layout.cans, &stops[*stop])))
        .collect();
    let hands = layout.cans + 1;
    // The fewest changes from each visit to the end, by the hand before it.
    let mut to_come: Vec<Vec<u32>> = vec![vec![0; hands]];
    for within in visits.iter().rev() {
        let later = to_come.last().expect("it begins with one");
        let best = |before: usize| {
            let ways = (0..hands).filter_map(|after| Some(within.changes(before, after)?.saturating_add(later[after])));
            ways.min().unwrap_or(u32::MAX)
        };
        let fewest = (0..hands).map(best).collect();
        to_come.push(fewest);
    }
    to_come.reverse();
    let mut hand = 0;
    let mut after = Vec::with_capacity(visits.len());
    for (number, within) in visits.iter().enumerate() {
        let later = &to_come[number + 1];
        let next = (0..hands)
            .filter_map(|after| Some((within.changes(hand, after)?.saturating_add(later[after]), Reverse(after))))
            .min();
        // Of equal ways that which ends with the later can begins with the earlier one.
        hand = next.map_or(hand, |(_, Reverse(after))| after);
        after.push(hand);
    }
    after
}
