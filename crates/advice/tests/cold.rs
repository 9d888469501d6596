//! What gives up in a cold shop. The trade's rule: hand pumps, wicks, meter units and rings fail long before the bearings do, below about
//! 10 °C (common practice, no source); at 20 °C nobody complains.

use advice::need::{ColdFeed, cold_feed, feed, movable};
use advice::round::{WhyCold, cold};
use advice::words;
use shop::shelf::Shelf;
use tribology::feed::FEEDS;
use tribology::quantity::{Temperature, Units};

use crate::bench::Bench;

const METHODS: [&str; 9] = [
    "oil hole",
    "cup",
    "wick",
    "felt",
    "ring",
    "one-shot with meter units",
    "total-loss pump",
    "circulating pump",
    "splash",
];

fn bench() -> Bench {
    let point = |(n, method): (usize, &&str)| {
        format!("[[point]]\nid = \"{n}\"\nname = \"n\"\nmethod = \"{method}\"\noil = \"way 68\"\n")
    };
    Bench::new(&METHODS.iter().enumerate().map(point).collect::<String>())
}

#[track_caller]
fn named(bench: &Bench, celsius: f64) -> Vec<&'static str> {
    let found = cold(&bench.machine, &bench.shelf, Temperature::from_celsius(celsius));
    let method = |cold: &advice::round::Cold| METHODS[cold.id.as_str().parse::<usize>().expect("a number")];
    found.value().iter().map(method).collect()
}

/// At 3 °C the usual oil has some 780 mm²/s, at 9 °C 480 and at 20 °C 220 (ASTM D341 for an index of 95).
#[test]
fn feeds_give_up_below_ten_degrees_and_the_hand_does_not() {
    let bench = bench();
    assert_eq!(named(&bench, 3.0), METHODS[2..7]);
    assert_eq!(named(&bench, 9.0), METHODS[2..7]);
    assert_eq!(named(&bench, 11.0), METHODS[2..4], "rings, meter units and hand pumps stand a little more than wicks");
    assert!(named(&bench, 20.0).is_empty());
}

#[test]
fn a_wick_that_will_not_deliver_is_named_with_what_to_do() {
    let bench = bench();
    let found = cold(&bench.machine, &bench.shelf, Temperature::from_celsius(3.0));
    let wick = found.value().iter().find(|cold| cold.method == shop::chart::Method::Wick).expect("the wick is named");
    let says = words::cold(wick, Units::Metric);
    assert!(
        says.contains("wick gives up below about 15 °C") || says.contains("wick gives up below about 16 °C"),
        "{says}"
    );
    assert!(words::cold_remedy(wick).contains("by hand before the start"));
}

#[test]
fn a_pump_behind_a_strainer_gives_up_before_one_without() {
    let strained = "[[reservoir]]\nid = \"tank\"\nkind = \"tank\"\nstrainer = \"gauze\"\n[[point]]\nid = \"7\"\nname = \"n\"\nmethod = \
                    \"circulating pump\"\nreservoir = \"tank\"\noil = \"way 68\"\n";
    assert_eq!(named(&Bench::new(strained), 5.0), ["circulating pump"]);
    assert!(!named(&bench(), 5.0).contains(&"circulating pump"));
}

#[test]
fn grease_is_not_asked_how_it_flows() {
    let mut bench = Bench::new("[[point]]\nid = \"0\"\nname = \"n\"\nmethod = \"nipple\"\noil = \"grease 2\"\n");
    let shelf =
        "shelf = 1\n[[oil]]\nid = \"g\"\nname = \"G\"\nfamily = \"grease\"\nnlgi = \"2\"\nbase_v40 = \"460 mm2/s\"\n";
    bench.shelf = Shelf::read(shelf).value.expect("the shelf is right");
    assert!(named(&bench, -5.0).is_empty());
}

/// An oil that no warmth makes too thick for a splash has no limit, and the working leaves out what it does not know.
#[test]
fn the_working_never_shows_what_is_no_number() {
    for v40 in [3.0, 68.0, 900.0] {
        let text = format!("shelf = 1\n[[oil]]\nid = \"o\"\nname = \"O\"\nfamily = \"way\"\nv40 = \"{v40} mm2/s\"\n");
        let shelf = Shelf::read(&text).value.expect("a shelf");
        for way in FEEDS {
            let Some(answer) = cold_feed(way, &shelf.oils[0], Temperature::from_celsius(5.0)) else { continue };
            let steps: Vec<String> = answer.steps.iter().map(|step| words::step(step, Units::Metric)).collect();
            assert!(steps.iter().all(|step| !step.contains("NaN")), "{steps:?}");
        }
    }
}

#[test]
fn an_oil_that_does_not_pour_reaches_nothing() {
    let mut bench = bench();
    let shelf =
        "shelf = 1\n[[oil]]\nid = \"w\"\nname = \"W\"\nfamily = \"way\"\nv40 = \"68 mm2/s\"\npour_point = \"-9 C\"\n";
    bench.shelf = Shelf::read(shelf).value.expect("the shelf is right");
    assert_eq!(named(&bench, -9.0).len(), METHODS.len());
    let found = cold(&bench.machine, &bench.shelf, Temperature::from_celsius(-10.0));
    assert!(found.value().iter().all(|cold| matches!(cold.why, WhyCold::NotPouring { .. })));
}

/// What can just be moved is what an oil of that body just is: the two ways of asking agree.
#[test]
fn the_thickest_that_is_moved_is_where_an_oil_begins_to_fail() {
    let bench = bench();
    for celsius in [0.0, 8.0, 20.0] {
        let at = Temperature::from_celsius(celsius);
        for way in FEEDS {
            let most = movable(way, at).expect("an oil of the usual index").most.mm2_s();
            let fails = |v40: f64| {
                let text =
                    format!("shelf = 1\n[[oil]]\nid = \"o\"\nname = \"O\"\nfamily = \"way\"\nv40 = \"{v40} mm2/s\"\n");
                let shelf = Shelf::read(&text).value.expect("a shelf");
                matches!(cold_feed(way, &shelf.oils[0], at).map(|answer| answer.value), Some(ColdFeed::Fails { .. }))
            };
            assert!(fails(most * 1.01) && !fails(most * 0.99), "{way:?} at {celsius} °C: {most}");
        }
    }
    assert!(bench.machine.chart.points.iter().all(|point| feed(&bench.machine.chart, point).is_some()));
}
