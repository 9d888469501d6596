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
    what_must_not_be_done_is_said(rounds);
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

/// The planted wrong oil stops the mill and nothing else (`demo/truth.toml`); the grinder's spindle wants an oil that the shelf has not; the gun
/// is never set at an oil hole.
fn what_must_not_be_done_is_said(rounds: &[serde_json::Value]) {
    let of = |machine: &str| rounds.iter().find(|round| round["machine"] == machine).expect("the machine has a round");
    let stopped: Vec<&str> = rounds
        .iter()
        .filter(|round| round["do_not_run"].as_array().is_some_and(|why| !why.is_empty()))
        .filter_map(|round| round["machine"].as_str())
        .collect();
    assert_eq!(stopped, ["knee-mill"]);
    let unsuited = of("surface-grinder")["unsuited"].as_array().expect("a list");
    let spindle = unsuited.iter().find(|one| one["id"] == "5").expect("the spindle's sump");
    assert!(spindle["verdict"] == "never" && spindle["rather"].is_null(), "{spindle}");
    let kept = of("small-lathe")["keep_apart"].as_array().expect("a list");
    assert!(kept.iter().any(|can| can["can"] == "gun"), "{kept:?}");
}

#[test]
fn the_working_is_always_in_the_json_and_shown_when_asked() {
    let json = run(&["demo", "--print", "--json"]).well().json();
    assert!(json["rounds"][0]["working"].as_array().is_some_and(|steps| !steps.is_empty()));
    let shown = run(&["demo", "--print", "--working"]).well();
    assert!(shown.out.contains("How this was worked out") && shown.out.contains("common practice, no source"));
}
