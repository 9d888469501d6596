//! The invented shop, as a visitor's first command builds it.

use crate::run::run;

#[test]
fn it_prints_the_round_and_ends_well() {
    let demo = run(&["demo", "--print"]).well();
    for wanted in [
        "20-inch crank shaper",
        "Horizontal knee mill",
        "Bench lathe",
        "Pillar drill",
        "BEFORE YOU START",
        "look for:",
        "due:",
    ] {
        assert!(demo.out.contains(wanted), "{wanted} is missing from\n{}", demo.out);
    }
}

#[test]
fn the_same_bytes_twice() {
    let first = run(&["demo", "--print", "--json"]).well();
    let second = run(&["demo", "--print", "--json"]).well();
    assert_eq!(first.out, second.out);
    let rounds = first.json();
    let rounds = rounds["rounds"].as_array().expect("six machines");
    assert_eq!(rounds.len(), 6);
    for round in rounds {
        assert!(round["at"].as_str().is_some_and(|at| at.starts_with("2026-11-25T09:00")));
        let points: usize = round["stands"]
            .as_array()
            .expect("stands")
            .iter()
            .map(|s| s["points"].as_array().map_or(0, Vec::len))
            .sum();
        assert!(points >= 5, "a visitor sees something to do: {round}");
    }
}

#[test]
fn the_working_is_always_in_the_json_and_shown_when_asked() {
    let json = run(&["demo", "--print", "--json"]).well().json();
    assert!(json["rounds"][0]["working"].as_array().is_some_and(|steps| !steps.is_empty()));
    let shown = run(&["demo", "--print", "--working"]).well();
    assert!(shown.out.contains("How this was worked out") && shown.out.contains("common practice, no source"));
}
