//! The points of a round laid out as stops and put in order: what is wiped, where to stand, which cover to open on the way.

use std::collections::BTreeMap;

use shop::chart::{Chart, Point};
use shop::id::Id;

use super::act::Act;
use super::pace::{of_act, of_setup, seconds};
use super::phase::Phase;
use super::reach::{called, open_pairs};
use super::route::{Cost, Held, Layout, Part, Place, Stop, shortest, walk};
use super::setup::{Reading, SetUp};

/// The phases in order, as a layout numbers them.
const PHASES: [Phase; 4] = [Phase::Wipe, Phase::Stopped, Phase::Set, Phase::Running];

/// A point as the order sees it.
#[derive(Clone, Debug)]
pub(super) struct Task {
    pub(super) id: Id,
    pub(super) phase: Phase,
    /// The number of its stand; nothing where the chart names none.
    pub(super) place: Option<usize>,
    /// The number of its can, or of its oil where no can holds it.
    pub(super) can: Option<usize>,
    /// What must hold there, as numbers in [`Ground::setups`].
    pub(super) setups: Vec<usize>,
    /// What is wiped before it, as numbers in [`Ground::wipes`].
    pub(super) wipes: Vec<usize>,
    /// Seconds for the act itself.
    pub(super) seconds: u32,
}

/// What all orders of one machine share.
#[derive(Debug)]
pub(super) struct Ground {
    pub(super) stands: Vec<Id>,
    walk: Vec<Vec<u32>>,
    cans: usize,
    pub(super) setups: Vec<SetUp>,
    /// For a slide that points need in several places, its number and that of the place.
    held: Vec<Option<Held>>,
    /// What is wiped, and from which stand.
    pub(super) wipes: Vec<(String, Option<usize>)>,
}

/// An order with what it costs.
#[derive(Clone, Debug, Default)]
pub(super) struct Tour {
    /// Wiping: from which stand, and what.
    pub(super) wipes: Vec<(Option<usize>, Vec<usize>)>,
    /// Visits: the phase, and the tasks in order.
    pub(super) visits: Vec<(Phase, Vec<usize>)>,
    pub(super) seconds: Seconds,
    pub(super) is_proven: bool,
    /// How many sums it took to find, about.
    pub(super) sums: u64,
}

/// What a round costs, in seconds.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct Seconds {
    pub(super) acts: u32,
    pub(super) walk: u32,
    pub(super) cans: u32,
    pub(super) sets: u32,
    pub(super) wipes: u32,
}

impl Seconds {
    pub(super) fn total(&self) -> u32 {
        self.acts + self.walk + self.cans + self.sets + self.wipes
    }
}

/// A point with what is to be done there and the can or oil that it takes.
pub(super) struct Wanted<'c> {
    pub(super) point: &'c Point,
    pub(super) act: Act,
    pub(super) can: Option<&'c Id>,
}

/// The ground and the tasks of these points, the tasks by the numbers of their points.
pub(super) fn lay_out(chart: &Chart, wanted: &[Wanted<'_>]) -> (Ground, Vec<Task>) {
    let mut stands: Vec<&shop::chart::Stand> = chart.stands.iter().collect();
    stands.sort_by(|a, b| a.id.cmp(&b.id));
    let places: Vec<Place> = stands.iter().map(|stand| Place { x: stand.x, y: stand.y }).collect();
    let used = |place: usize| wanted.iter().any(|one| one.point.stand.as_ref() == Some(&stands[place].id));
    let near: Vec<Place> = (0..places.len()).filter(|place| used(*place)).map(|place| places[place]).collect();
    let apart = |from: usize, to: usize| -> u32 {
        if from == to {
            return 0;
        }
        // Rounded up, so that a walk over a third stand never comes out shorter.
        (walk(&near, places[from], places[to]).m() * seconds::METRE).ceil() as u32 + seconds::ARRIVE
    };
    let mut cans: Vec<&Id> = Vec::new();
    let mut setups: Vec<SetUp> = Vec::new();
    let mut wiped: Vec<Id> = Vec::new();
    let mut wipes: Vec<(String, Option<usize>)> = Vec::new();
    let mut tasks = Vec::with_capacity(wanted.len());
    for one in wanted {
        let point = one.point;
        let place = point.stand.as_ref().and_then(|id| stands.iter().position(|stand| stand.id == *id));
        let own: Vec<SetUp> = point.moves.iter().map(|text| SetUp::read(text)).collect();
        let mut task = Task {
            id: point.id.clone(),
            phase: Phase::of(point.state, &own),
            place,
            can: one.can.filter(|_| one.act != Act::Look).map(|can| number(&mut cans, can)),
            setups: Vec::new(),
            wipes: Vec::new(),
            seconds: of_act(one.act),
        };
        for setup in own {
            if setup.reading == Reading::Wipe {
                task.wipes.push(wipes.len());
                wipes.push((setup.what, place));
                wiped.push(point.id.clone());
                continue;
            }
            let known = setups.iter().position(|known| known.is_same_act(&setup));
            task.setups.push(known.unwrap_or(setups.len()));
            if known.is_none() {
                setups.push(setup);
            }
        }
        // What is only looked at needs no wiping.
        let wiped_first = if one.act == Act::Look { Vec::new() } else { open_pairs(chart, point) };
        for pair in wiped_first {
            let known = wiped.iter().position(|known| *known == pair.id);
            task.wipes.push(known.unwrap_or(wipes.len()));
            if known.is_none() {
                wipes.push((called(pair), place));
                wiped.push(pair.id.clone());
            }
        }
        task.setups.sort_unstable();
        task.wipes.sort_unstable();
        tasks.push(task);
    }
    let walk = (0..places.len()).map(|from| (0..places.len()).map(|to| apart(from, to)).collect()).collect();
    let held = held(&setups, &tasks);
    let stands = stands.into_iter().map(|stand| stand.id.clone()).collect();
    (Ground { stands, walk, cans: cans.len(), setups, held, wipes }, tasks)
}

/// The slides that stopped points need in more than one place.
fn held(setups: &[SetUp], tasks: &[Task]) -> Vec<Option<Held>> {
    let is_used = |setup: usize| tasks.iter().any(|task| task.phase == Phase::Set && task.setups.contains(&setup));
    let is_slide = |setup: usize| setups[setup].reading == Reading::Slide && is_used(setup);
    let mut slides: Vec<&str> = Vec::new();
    (0..setups.len())
        .map(|setup| {
            let what = setups[setup].what.as_str();
            let is_elsewhere = |other: usize| other != setup && is_slide(other) && setups[other].what == what;
            (is_slide(setup) && (0..setups.len()).any(is_elsewhere))
                .then(|| Held { slide: number(&mut slides, what), at: setup })
        })
        .collect()
}

/// The number of a thing in a list to which it is added when it is new.
fn number<T: PartialEq>(list: &mut Vec<T>, thing: T) -> usize {
    list.iter().position(|known| *known == thing).unwrap_or_else(|| {
        list.push(thing);
        list.len() - 1
    })
}

/// The stops of one phase, each with the tasks of its parts.
type Stops = Vec<(Stop, Vec<Vec<usize>>)>;

impl Ground {
    /// The best order of these tasks.
    pub(super) fn tour(&self, tasks: &[Task], active: &[usize]) -> Tour {
        let wipes = self.wipe_stops(tasks, active);
        let phases: Vec<Stops> = PHASES[1..].iter().map(|phase| self.stops(tasks, active, *phase)).collect();
        let wiping = wipes.iter().map(|(place, _)| Stop { place: *place, parts: vec![Part::default()] }).collect();
        let stops = phases.iter().map(|stops| stops.iter().map(|(stop, _)| stop.clone()).collect());
        let layout = Layout {
            walk: self.walk.clone(),
            cans: self.cans,
            change: seconds::CHANGE,
            again: seconds::SLIDE,
            phases: [wiping].into_iter().chain(stops).collect(),
        };
        let route = shortest(&layout);
        let mut tour = Tour {
            wipes: route.phases[0].iter().map(|visit| wipes[visit.stop].clone()).collect(),
            seconds: self.seconds(tasks, active, &layout, &route.cost),
            is_proven: route.is_proven,
            sums: layout.sums(),
            ..Tour::default()
        };
        for ((stops, visits), phase) in phases.iter().zip(&route.phases[1..]).zip(&PHASES[1..]) {
            for visit in visits {
                let mut order = Vec::new();
                for (part, cans) in &visit.parts {
                    order.extend(by_can(tasks, &stops[visit.stop].1[*part], cans));
                }
                tour.visits.push((*phase, order));
            }
        }
        tour
    }

    fn seconds(&self, tasks: &[Task], active: &[usize], layout: &Layout, cost: &Cost) -> Seconds {
        let mut setups: Vec<usize> = active.iter().flat_map(|task| tasks[*task].setups.iter().copied()).collect();
        setups.sort_unstable();
        setups.dedup();
        let wipes = self.wiped(tasks, active).len();
        let unknown = layout.phases.iter().flatten().filter(|stop| stop.place.is_none()).count();
        let known = layout.phases.iter().flatten().any(|stop| stop.place.is_some());
        let arrive = (unknown + usize::from(known)) as u32 * seconds::ARRIVE;
        Seconds {
            acts: active.iter().map(|task| tasks[*task].seconds).sum(),
            walk: cost.walk + arrive,
            cans: cost.changes * layout.change,
            sets: setups.iter().map(|setup| of_setup(self.setups[*setup].reading)).sum::<u32>()
                + cost.again * layout.again,
            wipes: wipes as u32 * seconds::WIPE,
        }
    }

    fn wiped(&self, tasks: &[Task], active: &[usize]) -> Vec<usize> {
        let mut wipes: Vec<usize> = active.iter().flat_map(|task| tasks[*task].wipes.iter().copied()).collect();
        wipes.sort_unstable();
        wipes.dedup();
        wipes
    }

    fn wipe_stops(&self, tasks: &[Task], active: &[usize]) -> Vec<(Option<usize>, Vec<usize>)> {
        let mut stops: BTreeMap<(bool, Option<usize>), Vec<usize>> = BTreeMap::new();
        for wipe in self.wiped(tasks, active) {
            let place = self.wipes[wipe].1;
            stops.entry((place.is_none(), place)).or_default().push(wipe);
        }
        stops.into_iter().map(|((_, place), wipes)| (place, wipes)).collect()
    }

    /// A stand is one stop, but for the slides that others need elsewhere: each place of such a slide is a stop of its own.
    fn stops(&self, tasks: &[Task], active: &[usize], phase: Phase) -> Stops {
        let of_phase: Vec<usize> = active.iter().copied().filter(|task| tasks[*task].phase == phase).collect();
        let held =
            |task: usize| -> Vec<Held> { tasks[task].setups.iter().filter_map(|setup| self.held[*setup]).collect() };
        let is_shared = |held: &Held, place: Option<usize>| {
            of_phase.iter().any(|task| {
                tasks[*task].place != place && self.held_by(&tasks[*task]).any(|other| other.slide == held.slide)
            })
        };
        let mut stops: BTreeMap<(bool, Option<usize>, Vec<Held>), Vec<usize>> = BTreeMap::new();
        for &task in &of_phase {
            let place = tasks[task].place;
            let shared = held(task).into_iter().filter(|held| is_shared(held, place)).collect();
            stops.entry((place.is_none(), place, shared)).or_default().push(task);
        }
        // What needs none of those slides is done together with what does, wherever the stand has such a stop.
        let free: Vec<_> = stops.keys().filter(|(_, _, shared)| shared.is_empty()).cloned().collect();
        for key in free {
            let other = stops.keys().find(|other| other.1 == key.1 && !other.2.is_empty()).cloned();
            if let (Some(other), Some(mut tasks)) = (other.clone(), other.and_then(|_| stops.remove(&key))) {
                stops.entry(other).or_default().append(&mut tasks);
            }
        }
        let stops = stops.into_iter().map(|((_, place, _), mut of_stop)| {
            of_stop.sort_unstable();
            let parts = self.parts(tasks, &of_stop, phase);
            let part = |of_part: &Vec<usize>| Part { cans: cans(tasks, of_part), held: held(of_part[0]) };
            (Stop { place, parts: parts.iter().map(part).collect() }, parts)
        });
        stops.collect()
    }

    fn held_by<'g>(&'g self, task: &'g Task) -> impl Iterator<Item = Held> + 'g {
        task.setups.iter().filter_map(|setup| self.held[*setup])
    }

    /// The tasks of a stop, those together that need the machine set in the same way.
    fn parts(&self, tasks: &[Task], of_stop: &[usize], phase: Phase) -> Vec<Vec<usize>> {
        let mut parts: Vec<(Vec<usize>, Vec<usize>)> = Vec::new();
        for &task in of_stop {
            let is_set = |setup: &&usize| phase == Phase::Set && self.setups[**setup].reading.sets_machine();
            let set: Vec<usize> = tasks[task].setups.iter().filter(is_set).copied().collect();
            match parts.iter_mut().find(|(known, _)| *known == set) {
                Some((_, part)) => part.push(task),
                None => parts.push((set, vec![task])),
            }
        }
        parts.into_iter().map(|(_, part)| part).collect()
    }
}

fn cans(tasks: &[Task], of_part: &[usize]) -> Vec<usize> {
    let mut cans: Vec<usize> = of_part.iter().filter_map(|task| tasks[*task].can).collect();
    cans.sort_unstable();
    cans.dedup();
    cans
}

/// The tasks of a part in the order in which its cans are taken; those without a can stay behind the one before them.
fn by_can(tasks: &[Task], part: &[usize], cans: &[usize]) -> Vec<usize> {
    let mut turn = 0;
    let mut turns: Vec<(usize, usize)> = Vec::with_capacity(part.len());
    for task in part {
        turn = tasks[*task].can.and_then(|can| cans.iter().position(|known| *known == can)).unwrap_or(turn);
        turns.push((turn, *task));
    }
    turns.sort_by_key(|(turn, _)| *turn);
    turns.into_iter().map(|(_, task)| task).collect()
}

/// The order of ids as people count: `2` before `10`, numbers before names.
pub(super) fn counted(id: &Id) -> (u64, String) {
    let text = id.as_str();
    let digits: String = text.chars().take_while(char::is_ascii_digit).collect();
    (digits.parse().unwrap_or(u64::MAX), text.to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ids_are_counted_as_people_do() {
        let id = |text: &str| Id::new(text).expect("a right id");
        let mut ids = ["10", "a1", "2", "2b", "1"].map(id);
        ids.sort_by_key(counted);
        assert_eq!(ids.map(|id| id.to_string()), ["1", "2", "2b", "10", "a1"]);
    }
}
