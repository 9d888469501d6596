//! The order in which a person walks: phase after phase, in each phase to every stop once, with the shortest walk and the fewest
//! changes of can. Start at [`shortest`]; [`nearest`] is the walk of somebody who always goes to the nearest stop.
//!
//! A slide that must stand in two places stands in each of them once: all stops that need the one come before those that need
//! the other. Nothing here knows an oiling point; a stop is a number of a place with what is needed there.

mod cans;
mod exact;
mod good;
mod walk;

pub use good::nearest;
pub use walk::{Place, walk};

use cans::Within;

/// The most stops in one phase for which the shortest route is found and proven: twelve stands, and two to come back to because
/// of a slide that others need elsewhere.
pub const EXACT: usize = 14;

/// What is to be walked.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Layout {
    /// Seconds from place to place, by their numbers. Never longer than over a third place.
    pub walk: Vec<Vec<u32>>,
    /// How many cans there are.
    pub cans: usize,
    /// Seconds to change the can.
    pub change: u32,
    /// Seconds to move a slide once more than needed, which the shortest route does only where it cannot be helped.
    pub again: u32,
    /// The stops of each phase. Of stops between which nothing decides, the first comes first.
    pub phases: Vec<Vec<Stop>>,
}

/// Where to stand and what is needed there.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Stop {
    /// The number of the place. A stop of no known place comes last in its phase, without any walk.
    pub place: Option<usize>,
    /// What is done there, in parts that each need the machine set in one way.
    pub parts: Vec<Part>,
}

/// What is done at a stop without setting the machine anew.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Part {
    /// The numbers of the cans that it needs, each once.
    pub cans: Vec<usize>,
    /// The slides that must stand somewhere.
    pub held: Vec<Held>,
}

/// A slide and where it must stand.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Held {
    /// The number of the slide.
    pub slide: usize,
    /// The number of the position, one for each slide and place.
    pub at: usize,
}

/// A route through a layout.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Route {
    /// The visits of each phase.
    pub phases: Vec<Vec<Visit>>,
    /// What it costs.
    pub cost: Cost,
    /// Whether no route is shorter.
    pub is_proven: bool,
}

/// A visit of a stop.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Visit {
    /// The stop's number in its phase.
    pub stop: usize,
    /// Its parts, in the order in which they are done, each with its cans in order.
    pub parts: Vec<(usize, Vec<usize>)>,
}

/// What a route costs.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Cost {
    /// Seconds of walking.
    pub walk: u32,
    /// How often the can is changed. To take up the first is no change.
    pub changes: u32,
    /// How often a slide is moved once more to where it stood before.
    pub again: u32,
}

impl Layout {
    /// What a cost comes to, in seconds.
    #[must_use]
    pub fn seconds(&self, cost: &Cost) -> u32 {
        cost.walk + cost.changes * self.change + cost.again * self.again
    }

    /// How many sums the exact way takes, about: `2^n n^2` for each phase of `n` stops.
    #[must_use]
    pub fn sums(&self) -> u64 {
        let of_phase = |stops: &Vec<Stop>| {
            let count = stops.len().min(EXACT) as u64;
            (count * count) << count
        };
        self.phases.iter().map(of_phase).sum()
    }
}

/// The shortest route; of several the one that names the earlier stops first.
///
/// Up to [`EXACT`] stops in a phase: an exact dynamic programme, from the last phase back, over the set of stops that are done, the
/// last of them, and the can in hand; for `n` stops and `c` cans of the order of `2^n n^2 c^2` sums. Beyond that, or where some
/// slide has to be moved twice, the walk to the nearest stop bettered by moving and turning around stretches of it, which nobody
/// has proven the shortest.
#[must_use]
pub fn shortest(layout: &Layout) -> Route {
    let fits = layout.phases.iter().all(|stops| stops.iter().filter(|stop| stop.place.is_some()).count() <= EXACT);
    let exact = if fits { exact::route(layout) } else { None };
    exact.unwrap_or_else(|| good::route(layout))
}

/// The route that visits the stops of each phase in this order, with the fewest changes of can. `order` holds the numbers of the
/// stops of known places; those of no known place follow.
fn along(layout: &Layout, order: &[Vec<usize>]) -> Route {
    let full = layout.phases.iter().zip(order).map(|(stops, order)| {
        let last = (0..stops.len()).filter(|stop| stops[*stop].place.is_none());
        order.iter().copied().chain(last).collect::<Vec<usize>>()
    });
    let full: Vec<Vec<usize>> = full.collect();
    let hands = cans::hands(layout, &full);
    let mut route = Route { is_proven: false, ..Route::default() };
    let (mut at, mut hand) = (None, 0);
    let mut hands = hands.into_iter();
    for (stops, order) in layout.phases.iter().zip(&full) {
        let mut stood = Stood::default();
        let mut visits = Vec::with_capacity(order.len());
        for &stop in order {
            let after = hands.next().expect("one hand for each visit");
            let within = Within::of(layout.cans, &stops[stop]);
            let (parts, changes) = within.order(hand, after);
            route.cost.changes += changes;
            hand = after;
            route.cost.walk += step(layout, at, stops[stop].place);
            at = stops[stop].place.or(at);
            for (part, _) in &parts {
                route.cost.again += stood.moved(&stops[stop].parts[*part]);
            }
            visits.push(Visit { stop, parts });
        }
        route.phases.push(visits);
    }
    route
}

fn step(layout: &Layout, from: Option<usize>, to: Option<usize>) -> u32 {
    from.zip(to).map_or(0, |(from, to)| layout.walk[from][to])
}

/// Where slides stand, and where they stood before.
#[derive(Default)]
struct Stood {
    now: Vec<Held>,
    before: Vec<Held>,
}

impl Stood {
    /// Sets the slides for a part, and says how many had to go back to where they stood before.
    fn moved(&mut self, part: &Part) -> u32 {
        let mut again = 0;
        for held in part.held.iter().filter(|held| !self.now.contains(held)).copied().collect::<Vec<_>>() {
            again += u32::from(self.before.contains(&held));
            self.now.retain(|other| other.slide != held.slide);
            self.now.push(held);
            self.before.push(held);
        }
        again
    }
}
