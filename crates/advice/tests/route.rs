//! The walk held against all orders, one by one, and against the walk to the nearest stop.

use advice::round::route::{EXACT, Held, Layout, Part, Place, Route, Stop, nearest, shortest, walk};
use proptest::prelude::*;
use tribology::quantity::Length;

/// So many places round a machine, and seconds between them, rounded up.
fn seconds(places: &[(f64, f64)]) -> Vec<Vec<u32>> {
    let places: Vec<Place> =
        places.iter().map(|(x, y)| Place { x: Length::from_m(*x), y: Length::from_m(*y) }).collect();
    let apart = |a: &Place, b: &Place| if a == b { 0 } else { walk(&places, *a, *b).m().ceil() as u32 + 3 };
    places.iter().map(|a| places.iter().map(|b| apart(a, b)).collect()).collect()
}

/// The cans of a part, and its slides with their positions.
type Drawn = (Vec<usize>, Vec<(usize, usize)>);

/// A stop at a place: cans, and the slides with their positions.
fn stop(place: usize, parts: &[Drawn]) -> Stop {
    let part = |(cans, held): &Drawn| Part {
        cans: cans.clone(),
        held: held.iter().map(|(slide, at)| Held { slide: *slide, at: *at }).collect(),
    };
    Stop { place: Some(place), parts: parts.iter().map(part).collect() }
}

/// Every order of the numbers below a count.
fn orders(count: usize) -> Vec<Vec<usize>> {
    let Some(less) = count.checked_sub(1) else { return vec![vec![]] };
    let with = |order: Vec<usize>| {
        (0..=order.len()).map(move |at| {
            let mut longer = order.clone();
            longer.insert(at, less);
            longer
        })
    };
    orders(less).into_iter().flat_map(with).collect()
}

/// The fewest seconds over every order of the stops, of the parts and of the cans, written down as plainly as it can be.
fn brute_force(layout: &Layout) -> Option<u32> {
    let mut states = vec![(0_u32, None::<usize>, None::<usize>)];
    for stops in &layout.phases {
        let mut next = Vec::new();
        for order in orders(stops.len()) {
            let acts: Vec<Vec<(usize, &Part)>> = parts_in_every_order(stops, &order);
            for acts in acts.into_iter().filter(|acts| keeps_slides(acts)) {
                for (seconds, place, can) in &states {
                    next.extend(cans_in_every_order(layout, stops, &acts, (*seconds, *place, *can)));
                }
            }
        }
        states = next;
        // Only the best way to each end matters for what follows.
        states.sort_by_key(|(seconds, place, can)| (*place, *can, *seconds));
        states.dedup_by_key(|(_, place, can)| (*place, *can));
    }
    states.into_iter().map(|(seconds, ..)| seconds).min()
}

fn parts_in_every_order<'l>(stops: &'l [Stop], order: &[usize]) -> Vec<Vec<(usize, &'l Part)>> {
    let mut ways: Vec<Vec<(usize, &Part)>> = vec![vec![]];
    for stop in order {
        let parts = &stops[*stop].parts;
        let longer = |way: &Vec<(usize, &'l Part)>| -> Vec<Vec<(usize, &'l Part)>> {
            let more = orders(parts.len()).into_iter();
            more.map(|order| way.iter().copied().chain(order.iter().map(|part| (*stop, &parts[*part]))).collect())
                .collect()
        };
        ways = ways.iter().flat_map(longer).collect();
    }
    ways
}

/// Whether each slide stands in each of its places once.
fn keeps_slides(acts: &[(usize, &Part)]) -> bool {
    let mut gone: Vec<Held> = Vec::new();
    let mut now: Vec<Held> = Vec::new();
    for held in acts.iter().flat_map(|(_, part)| &part.held) {
        if gone.contains(held) {
            return false;
        }
        gone.extend(now.iter().copied().filter(|other| other.slide == held.slide && other.at != held.at));
        now.retain(|other| other.slide != held.slide);
        now.push(*held);
    }
    true
}

fn cans_in_every_order(
    layout: &Layout,
    stops: &[Stop],
    acts: &[(usize, &Part)],
    from: (u32, Option<usize>, Option<usize>),
) -> Vec<(u32, Option<usize>, Option<usize>)> {
    let mut ways = vec![from];
    for (stop, part) in acts {
        let place = stops[*stop].place;
        let mut next = Vec::new();
        for (seconds, at, can) in ways {
            let walked = seconds + at.zip(place).map_or(0, |(at, to)| layout.walk[at][to]);
            for order in orders(part.cans.len()) {
                let (mut seconds, mut hand) = (walked, can);
                for number in order {
                    let taken = Some(part.cans[number]);
                    seconds += if hand.is_some() && hand != taken { layout.change } else { 0 };
                    hand = taken;
                }
                next.push((seconds, place, hand));
            }
        }
        ways = next;
    }
    ways
}

#[track_caller]
fn check(layout: &Layout) -> Route {
    let route = shortest(layout);
    match brute_force(layout) {
        Some(seconds) => {
            assert!(route.is_proven, "{layout:?}");
            assert_eq!(layout.seconds(&route.cost), seconds, "{layout:?}");
        }
        None => assert!(!route.is_proven, "some slide has to be moved twice"),
    }
    let visited: Vec<usize> = route.phases.iter().map(Vec::len).collect();
    assert_eq!(visited, layout.phases.iter().map(Vec::len).collect::<Vec<_>>(), "every stop once");
    for (visits, stops) in route.phases.iter().zip(&layout.phases) {
        let mut numbers: Vec<usize> = visits.iter().map(|visit| visit.stop).collect();
        numbers.sort_unstable();
        assert_eq!(numbers, (0..stops.len()).collect::<Vec<_>>());
        for visit in visits {
            let mut parts: Vec<usize> = visit.parts.iter().map(|(part, _)| *part).collect();
            parts.sort_unstable();
            assert_eq!(parts, (0..stops[visit.stop].parts.len()).collect::<Vec<_>>(), "every part once");
        }
    }
    route
}

fn places() -> impl Strategy<Value = Vec<(f64, f64)>> {
    prop::collection::vec((-3.0..3.0_f64, -3.0..3.0_f64), 4)
}

fn phases() -> impl Strategy<Value = Vec<Vec<Stop>>> {
    let part =
        (prop::collection::btree_set(0..3_usize, 0..3), prop::collection::btree_map(0..2_usize, 0..2_usize, 0..2))
            .prop_map(|(cans, held)| (cans.into_iter().collect::<Vec<_>>(), held.into_iter().collect::<Vec<_>>()));
    let parts = prop::collection::vec(part, 1..3);
    let stops = prop::collection::btree_map(0..4_usize, parts, 0..4);
    // A stop that needs one slide in two places is only in a layout whose other stops do not need it: so stops are built.
    let stops = stops.prop_map(|stops| {
        let stops: Vec<Stop> = stops.into_iter().map(|(place, parts)| stop(place, &parts)).collect();
        apart(stops)
    });
    prop::collection::vec(stops, 1..4)
}

/// Splits stops by the slides that other stops need, as the round does.
fn apart(stops: Vec<Stop>) -> Vec<Stop> {
    let mut split: Vec<Stop> = Vec::new();
    for stop in stops {
        for part in stop.parts {
            let same = split.iter_mut().find(|other| other.place == stop.place && other.parts[0].held == part.held);
            match same {
                Some(other) => other.parts.push(part),
                None => split.push(Stop { place: stop.place, parts: vec![part] }),
            }
        }
    }
    split.truncate(4);
    split
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    #[test]
    fn no_order_of_few_stops_is_shorter(places in places(), phases in phases(), change in 0..9_u32) {
        check(&Layout { walk: seconds(&places), cans: 3, change, again: 30, phases });
    }
}

/// Layouts from a fixed seed, so that every run walks the same thousand.
fn thousand() -> Vec<Layout> {
    let mut state = 20_261_125_u64;
    let mut below = move |count: usize| {
        // The generator of Knuth's MMIX; its high bits are as even as this needs.
        state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        ((state >> 33) % count as u64) as usize
    };
    let mut layouts = Vec::new();
    for _ in 0..1000 {
        let count = 3 + below(6);
        let places: Vec<(f64, f64)> =
            (0..count).map(|_| (below(800) as f64 / 100.0 - 4.0, below(800) as f64 / 100.0 - 4.0)).collect();
        let phases = (0..3).map(|_| {
            let here: Vec<usize> = (0..count).filter(|_| below(4) > 0).collect();
            here.into_iter().map(|place| stop(place, &[(vec![below(2)], vec![])])).collect()
        });
        let phases = phases.collect();
        layouts.push(Layout { walk: seconds(&places), cans: 2, change: 5, again: 30, phases });
    }
    layouts
}

#[test]
fn on_a_thousand_layouts_the_walk_is_never_longer_than_to_the_nearest_stop() {
    let mut shorter = 0;
    for layout in thousand() {
        let (best, near) = (shortest(&layout), nearest(&layout));
        assert!(best.is_proven);
        assert!(layout.seconds(&best.cost) <= layout.seconds(&near.cost), "{layout:?}");
        shorter += usize::from(layout.seconds(&best.cost) < layout.seconds(&near.cost));
    }
    assert!(
        shorter > 300,
        "only {shorter} of a thousand were shorter, so that the exact way would not be worth its time"
    );
}

#[test]
fn beyond_the_exact_size_it_is_no_worse_than_the_nearest_stop_and_says_that_it_is_not_proven() {
    let places: Vec<(f64, f64)> = (0..=EXACT).map(|n| ((n * 7 % 15) as f64 - 7.0, (n * 4 % 15) as f64 - 7.0)).collect();
    let stops: Vec<Stop> = (0..places.len()).map(|place| stop(place, &[(vec![place % 2], vec![])])).collect();
    let layout = Layout { walk: seconds(&places), cans: 2, change: 5, again: 30, phases: vec![stops] };
    let route = shortest(&layout);
    assert!(!route.is_proven);
    assert!(layout.seconds(&route.cost) <= layout.seconds(&nearest(&layout).cost));
    assert_eq!(route.phases[0].len(), places.len());
}

#[test]
fn slides_that_cannot_keep_to_one_move_each_are_said_not_to_be_proven() {
    let crossed = [(0, 0), (0, 1), (1, 0), (1, 1)];
    let stops = crossed.iter().enumerate().map(|(place, (a, b))| stop(place, &[(vec![], vec![(0, *a), (1, 2 + *b)])]));
    let places = [(0.0, 1.0), (1.0, 0.0), (0.0, -1.0), (-1.0, 0.0)];
    let layout = Layout { walk: seconds(&places), cans: 0, change: 5, again: 30, phases: vec![stops.collect()] };
    let route = check(&layout);
    assert_eq!(route.cost.again, 1, "one of the two slides goes back once");
}

#[test]
fn a_person_walks_round_the_machine_and_not_through_it() {
    let place = |x: f64, y: f64| Place { x: Length::from_m(x), y: Length::from_m(y) };
    let [front, right, rear, left] = [place(0.0, 1.0), place(1.0, 0.0), place(0.0, -1.0), place(-1.0, 0.0)];
    let all = [front, right, rear, left];
    let far = |a: Place, b: Place| walk(&all, a, b).m();
    // By hand: the straight line past the corner is the root of two; to the other side the two tangents to a circle of 0.6 m are
    // 0.8 m each, and the arc between them spans 180 degrees less twice the 53.13 whose cosine is 0.6.
    assert!((far(front, left) - std::f64::consts::SQRT_2).abs() < 1e-6);
    assert!((far(left, right) - (1.6 + 0.6 * 73.739_795_f64.to_radians())).abs() < 1e-6);
    for (a, b, over) in [(front, rear, left), (left, right, front), (left, right, rear)] {
        assert!(far(a, b) <= far(a, over) + far(over, b) + 1e-12);
    }
}
