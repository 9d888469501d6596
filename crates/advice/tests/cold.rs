//! What gives up in a cold shop. The trade's rule: hand pumps, wicks, meter units and rings fail long before the bearings do, below about
//! 10 °C (common practice, no source).

use advice::round::{WhyCold, cold};
use shop::shelf::Shelf;
use tribology::quantity::Temperature;

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

#[test]
fn feeds_give_up_below_ten_degrees_and_the_hand_does_not() {
    let bench = bench();
    assert_eq!(named(&bench, 9.0), METHODS[2..8]);
    assert!(named(&bench, 10.0).is_empty());
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
