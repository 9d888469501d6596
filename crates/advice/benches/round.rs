//! How long a round takes to work out, for machines of the usual size and of the largest, and how much shorter the proven walk is
//! than that to the nearest stop. The ratios are printed at the end. Nothing is asserted about a time.

#![allow(missing_docs)]

use std::io::Write as _;

use advice::round::route::{EXACT, Layout, Part, Place, Stop, nearest, shortest, walk};
use advice::round::{Plan, round, within};
use advice::working::Assumption;
use divan::{Bencher, black_box};
use jiff::Timestamp;
use jiff::tz::TimeZone;
use shop::chart::Chart;
use shop::id::Id;
use shop::shelf::Shelf;
use shop::snapshot::{MachineSnapshot, Moment};
use tribology::quantity::{Length, Time};

/// Points and stands of the machines.
const SIZES: [(usize, usize); 3] = [(20, 4), (60, 8), (60, 12)];

fn main() {
    divan::main();
    let mut out = std::io::stdout();
    for (points, stands) in SIZES.into_iter().take(if is_measured() { 3 } else { 1 }) {
        let (machine, shelf, moment, plan) = machine(points, stands);
        let all = round(&machine, &shelf, &moment, &plan).value().minutes;
        let chosen = |minutes| within(&machine, &shelf, &moment, &plan, minutes);
        let is_proven = |minutes: &u32| chosen(*minutes).assumed.contains(&Assumption::Chosen { is_proven: true });
        let proven = (1..=all).filter(is_proven).count();
        writeln!(out, "{points} points, {stands} stands: the choice is proven for {proven} of 1 to {all} minutes")
            .expect("somebody reads");
    }
    for stands in [4, 8, 12] {
        let drawn = if is_measured() { 1000 } else { 3 };
        let mut ratios: Vec<f64> = (0..drawn).map(|seed| ratio(&layout(stands, seed))).collect();
        ratios.sort_by(f64::total_cmp);
        let mean = ratios.iter().sum::<f64>() / ratios.len() as f64;
        let longer = ratios.iter().filter(|ratio| **ratio > 1.0).count();
        let line = format!(
            "{stands:>3} stands, {drawn} layouts: to the nearest stop is {mean:.3} times the proven walk on average, {:.3} at most; \
             longer in {longer}",
            ratios.last().copied().unwrap_or(1.0)
        );
        writeln!(out, "{line}").expect("somebody reads");
    }
}

#[divan::bench(args = SIZES, sample_count = 10)]
fn whole_round(bencher: Bencher<'_, '_>, (points, stands): (usize, usize)) {
    let (machine, shelf, moment, plan) = machine(points, stands);
    bencher.bench(|| round(black_box(&machine), &shelf, &moment, &plan));
}

/// Whether this is `cargo bench`. The tests run each benchmark once, to see that it still runs.
fn is_measured() -> bool {
    std::env::args().any(|argument| argument == "--bench")
}

/// The choice for half of the time that the whole round takes, where there is most to choose.
#[divan::bench(args = SIZES, sample_count = 3, sample_size = 1)]
fn half_the_time(bencher: Bencher<'_, '_>, (points, stands): (usize, usize)) {
    let (machine, shelf, moment, plan) = machine(points, stands);
    let minutes = round(&machine, &shelf, &moment, &plan).value().minutes / 2;
    bencher.bench(|| within(black_box(&machine), &shelf, &moment, &plan, minutes));
}

#[divan::bench(args = [4, 8, 12, EXACT])]
fn proven_walk(bencher: Bencher<'_, '_>, stands: usize) {
    let layout = layout(stands, 1);
    bencher.bench(|| shortest(black_box(&layout)));
}

#[divan::bench(args = [4, 8, 12, EXACT])]
fn nearest_stop(bencher: Bencher<'_, '_>, stands: usize) {
    let layout = layout(stands, 1);
    bencher.bench(|| nearest(black_box(&layout)));
}

fn ratio(layout: &Layout) -> f64 {
    let seconds = |route: advice::round::route::Route| f64::from(layout.seconds(&route.cost).max(1));
    seconds(nearest(layout)) / seconds(shortest(layout))
}

/// Draws numbers from a seed: the generator of Knuth's MMIX.
struct Drawn(u64);

impl Drawn {
    fn below(&mut self, count: usize) -> usize {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        ((self.0 >> 33) % count as u64) as usize
    }
}

/// A layout of three phases, each at most of the stands, with two cans.
fn layout(stands: usize, seed: u64) -> Layout {
    let mut drawn = Drawn(seed.wrapping_mul(7919).wrapping_add(stands as u64));
    let mut metres = || Length::from_m(drawn.below(800) as f64 / 100.0 - 4.0);
    let places: Vec<Place> = (0..stands).map(|_| Place { x: metres(), y: metres() }).collect();
    let apart =
        |a: usize, b: usize| if a == b { 0 } else { walk(&places, places[a], places[b]).m().ceil() as u32 + 10 };
    let phases = (0..3).map(|_| {
        let here: Vec<usize> = (0..stands).filter(|_| drawn.below(5) > 0).collect();
        let stop =
            |place| Stop { place: Some(place), parts: vec![Part { cans: vec![drawn.below(2)], held: Vec::new() }] };
        here.into_iter().map(stop).collect()
    });
    Layout {
        phases: phases.collect(),
        walk: (0..stands).map(|a| (0..stands).map(|b| apart(a, b)).collect()).collect(),
        cans: 2,
        change: 5,
        again: 30,
    }
}

/// A machine of so many points at so many stands, every third behind a cover or under a slide, nothing of it ever logged.
fn machine(points: usize, stands: usize) -> (MachineSnapshot, Shelf, Moment, Plan) {
    const SETUPS: [&str; 6] = [
        "rear cover off",
        "belt guard open",
        "ram wound back",
        "ram wound forward",
        "table wound left",
        "switch locked off",
    ];
    const OILS: [&str; 3] = ["way 68", "circulating 68", "spindle 22"];
    const METHODS: [&str; 4] = ["oil hole", "ball oiler", "cup", "bath"];
    let mut drawn = Drawn(points as u64 * 31 + stands as u64);
    let mut text = "chart = 1\n[machine]\nname = \"drawn\"\n".to_owned();
    for stand in 0..stands {
        let (x, y) = (drawn.below(60) as f64 / 10.0 - 3.0, drawn.below(60) as f64 / 10.0 - 3.0);
        text += &format!("[[stand]]\nid = \"s{stand}\"\nname = \"S\"\nx = {x}\ny = {y}\n");
    }
    for pair in 0..points / 2 {
        let dear = drawn.below(4) == 0;
        text += &format!("[[pair]]\nid = \"p{pair}\"\nkind = \"journal\"\nirreplaceable = {dear}\n");
    }
    for point in 1..=points {
        let setup =
            if drawn.below(3) == 0 { format!("setup = [\"{}\"]\n", SETUPS[drawn.below(6)]) } else { String::new() };
        text += &format!(
            "[[point]]\nid = \"{point}\"\nname = \"n\"\nmethod = \"{}\"\nstand = \"s{}\"\nfeeds = [\"p{}\"]\n{setup}oil = \"{}\"\n\
             dose = \"3 drops\"\nevery = \"1 use\"\n",
            METHODS[drawn.below(4)],
            drawn.below(stands),
            drawn.below(points / 2),
            OILS[drawn.below(3)],
        );
    }
    let chart = Chart::read(&text).value.expect("a drawn chart has no fault");
    let shelf = "shelf = 1\n[[oil]]\nid = \"w\"\nname = \"W\"\nfamily = \"way\"\n[[oil]]\nid = \"c\"\nname = \"C\"\nfamily = \"circulating\"\n\
                 [[oil]]\nid = \"s\"\nname = \"S\"\nfamily = \"spindle\"\n";
    let shelf = Shelf::read(shelf).value.expect("the shelf is right");
    let id = Id::new("drawn").expect("letters");
    let machine = MachineSnapshot {
        id,
        revision: 1,
        chart,
        points: Default::default(),
        runs: Vec::new(),
        contents: Default::default(),
    };
    let moment = Moment { instant: Timestamp::UNIX_EPOCH, zone: TimeZone::UTC };
    (machine, shelf, moment, Plan { job: None, hours: Time::from_hours(3.0) })
}
