//! The choice for a short morning held against every choice there is, one by one.

use advice::round::{Round, shared, within};
use advice::working::{Assumption, Reasoned};
use proptest::prelude::*;

use crate::bench::{Bench, at, points};
use advice::round::Plan;
use tribology::quantity::Time;

const NOW: &str = "2026-11-25T09:00";
const STANDS: [&str; 4] = ["front", "left", "rear", "right"];
const SETUPS: [&str; 5] = ["", "rear cover off", "ram wound back", "ram wound forward", "plug out"];
const METHODS: [&str; 3] = ["oil hole", "cup", "bath"];

/// What is drawn of a point: stand, setting, way of oiling, whether it feeds the pair that cannot be bought, and its can.
type Drawn = (usize, usize, usize, bool, bool);

const PAIRS: &str = "[[pair]]\nid = \"quill\"\nkind = \"journal\"\nirreplaceable = true\n\
                     [[pair]]\nid = \"way\"\nkind = \"slideway\"\n";

fn point(number: usize, (stand, setup, method, dear, way): Drawn) -> String {
    let feeds = match (dear, way) {
        (true, true) => "feeds = [\"quill\", \"way\"]\n",
        (true, false) => "feeds = [\"quill\"]\n",
        (false, true) => "feeds = [\"way\"]\n",
        (false, false) => "",
    };
    let setup = if setup == 0 { String::new() } else { format!("setup = [\"{}\"]\n", SETUPS[setup]) };
    let oil = if way { "way 68" } else { "gear 220" };
    format!(
        "[[point]]\nid = \"{number}\"\nname = \"n\"\nmethod = \"{}\"\nstand = \"{}\"\n{setup}{feeds}oil = \"{oil}\"\n\
         dose = \"2 drops\"\nevery = \"1 use\"\n",
        METHODS[method], STANDS[stand]
    )
}

fn bench(drawn: &[Drawn]) -> Bench {
    let points: String = drawn.iter().enumerate().map(|(number, drawn)| point(number, *drawn)).collect();
    Bench::new(&format!("{PAIRS}{points}"))
}

fn plan() -> Plan {
    Plan { job: None, hours: Time::from_hours(3.0) }
}

fn short(bench: &Bench, minutes: u32) -> Reasoned<Round> {
    within(&bench.machine, &bench.shelf, &at(NOW), &plan(), minutes)
}

/// The seconds of a round of these points alone, by its own working: all others are taken out of the chart, but what is wiped
/// stays where the whole round wipes it, which the drawn points keep by being at one stand.
fn seconds_of(bench: &Bench, keep: &[String]) -> f64 {
    let mut machine = bench.machine.clone();
    machine.chart.points.retain(|point| keep.contains(&point.id.to_string()));
    let round = advice::round(&machine, &bench.shelf, &at(NOW), &plan());
    let step = round.steps().iter().find(|step| step.name.starts_with("Time for the round"));
    step.map_or(0.0, |step| step.result.si)
}

fn weight_left(round: &Round) -> u32 {
    round.left_undone.iter().map(|left| left.weight).sum()
}

/// The least weight that any choice of points within the time leaves undone.
fn least_left(bench: &Bench, weights: &[(String, u32)], minutes: u32) -> u32 {
    let choices = 0..1_u32 << weights.len();
    let left = choices.filter_map(|choice| {
        let is_in = |number: usize| choice & (1 << number) != 0;
        let keep: Vec<String> = (0..weights.len()).filter(|n| is_in(*n)).map(|n| weights[n].0.clone()).collect();
        let left = (0..weights.len()).filter(|n| !is_in(*n)).map(|n| weights[n].1).sum::<u32>();
        (seconds_of(bench, &keep) <= f64::from(minutes * 60)).then_some(left)
    });
    left.min().expect("nothing at all fits into any time")
}

/// The weights as the round itself says them where nothing fits.
fn weights(bench: &Bench) -> Vec<(String, u32)> {
    let none = short(bench, 0);
    none.value().left_undone.iter().map(|left| (left.id.to_string(), left.weight)).collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(60))]

    #[test]
    fn no_other_choice_within_the_time_matters_more(
        drawn in prop::collection::vec((0..4_usize, 0..5_usize, 0..3_usize, any::<bool>(), Just(false)), 1..8),
        ways in prop::collection::vec((Just(0_usize), 0..2_usize, 0..3_usize, any::<bool>(), Just(true)), 0..2),
        minutes in 1..6_u32,
    ) {
        let drawn: Vec<Drawn> = drawn.into_iter().chain(ways).collect();
        let bench = bench(&drawn);
        let round = short(&bench, minutes);
        let weights = weights(&bench);
        prop_assert_eq!(weights.len(), drawn.len());
        prop_assert_eq!(weight_left(round.value()), least_left(&bench, &weights, minutes));
        let keep: Vec<String> = points(round.value()).map(|point| point.id.to_string()).collect();
        prop_assert!(seconds_of(&bench, &keep) <= f64::from(minutes * 60));
        let proven = Assumption::Chosen { is_proven: true };
        prop_assert!(round.assumed.contains(&proven));
        prop_assert_eq!(keep.len() + round.value().left_undone.len(), drawn.len(), "each point is in one of the two");
    }
}

#[test]
fn what_was_done_stays_and_the_rest_of_the_choice_with_it() {
    let drawn: Vec<Drawn> = (0..7).map(|n| (n % 4, n % 5, n % 3, n % 2 == 0, false)).collect();
    let mut bench = bench(&drawn);
    let ids = |bench: &Bench| -> Vec<String> {
        let mut ids: Vec<String> = points(short(bench, 4).value()).map(|point| point.id.to_string()).collect();
        ids.sort();
        ids
    };
    let chosen = ids(&bench);
    assert!(chosen.len() > 1 && chosen.len() < drawn.len(), "{chosen:?}");
    for point in &chosen {
        bench.dosed(point, "2026-11-25T08:59");
        assert_eq!(ids(&bench), chosen);
    }
}

#[test]
fn what_cannot_be_bought_again_goes_before_what_can() {
    let bench =
        bench(&[(0, 0, 0, false, false), (0, 0, 0, true, false), (0, 0, 0, false, false), (0, 0, 0, false, false)]);
    // Ten seconds to stand there and twenty for each: two points fit into a minute.
    let round = short(&bench, 1);
    let chosen: Vec<String> = points(round.value()).map(|point| point.id.to_string()).collect();
    assert_eq!(chosen.len(), 2);
    assert!(chosen.contains(&"1".to_owned()));
    let said = advice::words::within(round.value());
    assert_eq!(said.as_deref(), Some("In 1 minute: 2 of 4 points, those that matter most. 2 are left undone."));
}

#[test]
fn minutes_are_shared_out_among_machines_so_that_least_is_left() {
    let benches = [
        bench(&[(0, 0, 0, false, false), (1, 0, 0, false, false), (2, 0, 1, false, false)]),
        bench(&[(0, 0, 0, true, false), (1, 1, 0, true, false), (2, 0, 0, false, false)]),
    ];
    let machines: Vec<_> = benches.iter().map(|bench| (&bench.machine, plan())).collect();
    for minutes in 0..7 {
        let rounds = shared(&machines, &benches[0].shelf, &at(NOW), minutes);
        let left: u32 = rounds.iter().map(|round| weight_left(round.value())).sum();
        let split = |first: u32| -> u32 {
            let second = weight_left(short(&benches[1], minutes - first).value());
            weight_left(short(&benches[0], first).value()) + second
        };
        assert_eq!(Some(left), (0..=minutes).map(split).min());
        let used: u32 = rounds.iter().filter_map(|round| round.value().within).sum();
        assert!(used <= minutes);
    }
}
