//! `chart check` and `chart import`.

use crate::run::{Bench, CHART, run};

#[test]
fn faults_are_told_with_file_line_and_column_and_exit_1() {
    let bench = Bench::new();
    bench.write(
        "bad.toml",
        &CHART.replace("\"3 drops\"", "\"3\"").replace("name   = \"Column\"", "nmae   = \"Column\""),
    );
    let file = bench.path("bad.toml");
    let check = run(&["chart", "check", &file]);
    assert_eq!(check.code, Some(1));
    for place in [":22:1: the point has no key `nmae`: did you mean `name`?", ":25:10: `dose` of the point \"2\""] {
        assert!(check.out.contains(&format!("{file}{place}")), "{place} is missing from\n{}", check.out);
    }
    assert!(check.out.contains("^^^"));
    let json = run(&["chart", "check", &file, "--json"]);
    assert_eq!(json.code, Some(1));
    assert_eq!(json.json()["faults"].as_array().map(Vec::len), Some(2));
    assert_eq!(json.json()["faults"][0]["line"], 22);
}

#[test]
fn a_right_chart_exits_0() {
    let bench = Bench::new();
    let check = run(&["chart", "check", &bench.path("bench-drill.toml")]).well();
    assert!(check.out.contains(": no faults"), "{}", check.out);
}

#[test]
fn a_faulty_chart_is_not_taken_and_the_old_one_stays() {
    let bench = Bench::new();
    bench.write("bench-drill.toml", &CHART.replace("oil hole", "oil whole"));
    let import = bench.run(&["chart", "import", &bench.path("bench-drill.toml")]);
    assert_eq!(import.code, Some(2));
    assert!(import.err.contains("nothing was changed") && import.err.contains("\"oil hole\""), "{}", import.err);
    assert_eq!(bench.run(&["machines", "--json"]).well().json()["machines"][0]["revision"], 1);
}

#[test]
fn a_file_that_is_not_there_is_wrong_use() {
    let check = run(&["chart", "check", "nowhere.toml"]);
    assert_eq!(check.code, Some(2));
    assert_eq!(check.err, "oilwright: nowhere.toml could not be read: there is no such file\n");
}

#[test]
fn a_round_straight_from_files_holds_every_point_that_has_an_interval() {
    let bench = Bench::new();
    let round =
        run(&["round", "--chart", &bench.path("bench-drill.toml"), "--shelf", &bench.path("shelf.toml"), "--json"]);
    let round = round.well().json();
    assert_eq!(round["stands"][0]["points"][0]["dose"], "2 strokes");
    assert_eq!(round["stands"][0]["points"][0]["oil"], "way-68");
    assert_eq!(round["stands"].as_array().map(Vec::len), Some(2));
}
