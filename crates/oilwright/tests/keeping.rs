//! A morning at the machine: the round, the log, the round again.

use serde_json::Value;

use crate::run::Bench;

const NOW: &str = "2026-11-25T09:00";

fn due(bench: &Bench, words: &[&str]) -> Vec<String> {
    let mut all = vec!["round", "bench-drill", "--json"];
    all.extend(words);
    let round = bench.run(&all).well().json();
    let points =
        round["stands"].as_array().expect("stands").iter().flat_map(|s| s["points"].as_array().expect("points"));
    points.map(|point| point["id"].as_str().expect("an id").to_owned()).collect()
}

#[test]
fn what_is_logged_leaves_the_round_and_comes_back_by_its_own_clock() {
    let bench = Bench::new();
    assert_eq!(due(&bench, &["--at", NOW]), ["1", "2"]);
    assert_eq!(due(&bench, &["--at", NOW, "--job", "tapping"]), ["1", "2", "3"]);
    bench.run(&["log", "dosed", "bench-drill", "1", "2", "--at", NOW]).well();
    assert_eq!(due(&bench, &["--at", "2026-11-25T09:05"]), Vec::<String>::new());
    bench.run(&["log", "ran", "drill", "2 h", "--at", "2026-11-25T12:00"]).well();
    assert_eq!(due(&bench, &["--at", "2026-11-25T13:00"]), ["1"], "used once since");
    assert_eq!(due(&bench, &["--at", "2026-12-02T09:00"]), ["1", "2"], "and a week has gone");
}

#[test]
fn the_dose_and_oil_of_the_round_are_logged_and_the_sign_is_not() {
    let bench = Bench::new();
    bench.run(&["log", "dosed", "bench-drill", "1", "--by", "pupil", "--at", NOW]).well();
    let log = bench.run(&["logbook", "bench-drill", "1", "--json"]).well().json();
    assert_eq!(log["entries"].as_array().map(Vec::len), Some(1), "the sign is an entry of its own");
    assert_eq!(log["entries"][0]["says"], "oiled: 2 strokes, way-68");
    assert_eq!(log["entries"][0]["by"], "pupil");
}

#[test]
fn the_same_key_is_kept_once_and_undo_brings_the_point_back() {
    let bench = Bench::new();
    let twice = ["log", "dosed", "bench-drill", "1", "--key", "tap-1", "--at", NOW];
    let first = bench.run(&[&twice[..], &["--json"]].concat()).well().json();
    let second = bench.run(&[&twice[..], &["--json"]].concat()).well().json();
    assert_eq!(first, second);
    let entry = first["entries"][0].as_i64().expect("a number").to_string();
    bench.run(&["log", "undo", &entry, "--at", "2026-11-25T09:02"]).well();
    assert!(due(&bench, &["--at", "2026-11-25T09:03"]).contains(&"1".to_owned()));
    assert!(
        !due(&bench, &["--at", "2026-11-25T09:01"]).contains(&"1".to_owned()),
        "an answer of before stays as it was"
    );
    let again = bench.run(&["log", "undo", &entry]);
    assert_eq!(again.code, Some(2), "{}", again.err);
    let shown = bench.run(&["logbook", "--withdrawn", "--json"]).well().json();
    let gone: Vec<&Value> =
        shown["entries"].as_array().expect("entries").iter().filter(|e| !e["superseded_by"].is_null()).collect();
    assert_eq!(gone.len(), 1, "withdrawn, and still there");
}

#[test]
fn wrong_words_are_answered_with_right_ones_and_nothing_is_logged() {
    let bench = Bench::new();
    let before = bench.run(&["logbook", "--json"]).well().out;
    for (words, says) in [
        (vec!["log", "dosed", "bench-dirll", "1"], "did you mean bench-drill?"),
        (vec!["log", "dosed", "bench-drill", "1", "9"], "has no point \"9\""),
        (vec!["log", "ran", "bench-drill", "two"], "\"2.5 h\""),
        (vec!["log", "ran", "bench-drill", "0"], "above 0"),
        (vec!["log", "not-reached", "bench-drill", "1", "--because", "  "], "a few words"),
        (vec!["round", "bench-drill", "--job", "tappng"], "did you mean tapping?"),
        (vec!["round", "--at", "yesterday"], "2026-11-25T09:00"),
        (vec!["log", "note", "bench-drill", "x", "--at", NOW, "--happened", "2026-11-26T09:00"], "before it happens"),
    ] {
        let run = bench.run(&words);
        assert_eq!(run.code, Some(2), "{words:?}: {}", run.err);
        assert!(run.err.contains(says), "{words:?} should say {says}: {}", run.err);
    }
    assert_eq!(bench.run(&["logbook", "--json"]).well().out, before);
}
