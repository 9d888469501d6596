//! What comes due in the middle of a long job, counted by hand.

use advice::words;

use crate::bench::Bench;

fn point(id: &str, every: &str) -> String {
    format!("[[point]]\nid = \"{id}\"\nname = \"n{id}\"\nmethod = \"oil hole\"\nstand = \"front\"\nevery = [{every}]\n")
}

#[track_caller]
fn later(bench: &Bench, hours: f64) -> Vec<String> {
    bench.round("2026-11-25T09:00", hours, None).value().later.iter().map(words::later).collect()
}

#[test]
fn a_short_interval_comes_round_again_in_a_long_job() {
    let bench =
        Bench::new(&[point("1", "\"1 use\", \"4 h\""), point("2", "\"6 h\""), point("3", "\"1 day\"")].concat());
    assert!(later(&bench, 4.0).is_empty(), "four hours planned do not exceed four");
    // Three points at one stand are 70 seconds, two minutes when rounded up: the machine starts at 9:02.
    assert_eq!(
        later(&bench, 9.0),
        [
            "after 4 h of running, about 13:02: 1 n1",
            "after 6 h of running, about 15:02: 2 n2",
            "after 8 h of running, about 17:02: 1 n1",
        ]
    );
}

#[test]
fn what_comes_at_the_same_hour_is_one_stop() {
    let bench = Bench::new(&[point("1", "\"4 h\""), point("2", "\"2 h\"")].concat());
    assert_eq!(later(&bench, 4.5).len(), 2);
    assert_eq!(later(&bench, 4.5)[1], "after 4 h of running, about 13:01: 1 n1 and 2 n2");
}

#[test]
fn what_was_oiled_already_this_morning_comes_round_all_the_same() {
    let mut bench = Bench::new(&point("1", "\"4 h\""));
    bench.dosed("1", "2026-11-25T08:50");
    assert_eq!(later(&bench, 6.0), ["after 4 h of running, about 13:00: 1 n1"]);
}
