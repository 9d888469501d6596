//! `round` as it is typed: the time there is, the list after use, the cold, and several machines.

use serde_json::Value;

use crate::run::{Bench, run};

const AT: &str = "2026-11-25T09:00";

const LATHE: &str = r#"chart = 1
[machine]
name = "Bench lathe"

[[job]]
id    = "threading"
name  = "Threading"
wakes = ["3"]

[[pair]]
id   = "bed-ways"
kind = "slideway"

[[reservoir]]
id        = "drip-cup"
kind      = "cup"
behaviour = "uses"

[[point]]
id     = "1"
name   = "Bed ways"
method = "oil hole"
feeds  = ["bed-ways"]
stand  = "front"
dose   = "4 drops"
oil    = "way 68"
every  = ["1 use", "4 h"]

[[point]]
id        = "2"
name      = "Headstock drip"
method    = "drip"
reservoir = "drip-cup"
stand     = "left"
setup     = ["stopped", "headstock cover open"]
oil       = "way 68"
every     = "1 use"
note      = "Shut it when the belt is off."

[[point]]
id     = "3"
name   = "Lead screw"
method = "brush"
stand  = "front"
dose   = "5 drops"
oil    = "way 68"
every  = "1 use"
"#;

fn ids(round: &Value, list: &str) -> Vec<String> {
    let of = |row: &Value| row["id"].as_str().expect("an id").to_owned();
    match list {
        "stands" => round["stands"]
            .as_array()
            .expect("a list")
            .iter()
            .flat_map(|stand| stand["points"].as_array().expect("a list").iter().map(of))
            .collect(),
        list => round[list].as_array().expect("a list").iter().map(of).collect(),
    }
}

#[test]
fn the_order_is_told_by_phases_and_the_working_tells_how_the_settings_were_read() {
    let bench = Bench::new();
    bench.write("lathe.toml", LATHE);
    let words = ["round", "--chart", &bench.path("lathe.toml"), "--shelf", &bench.path("shelf.toml"), "--at", AT];
    let out = run(&words).well().out;
    let place = |text: &str| out.find(text).unwrap_or_else(|| panic!("no {text} in {out}"));
    assert!(place("FIRST WIPE") < place("BEFORE YOU START"));
    assert!(place("( 1)") < place("NOW SET THE MACHINE") && place("First: headstock cover open") < place("( 2)"));
    let json = run(&[&words[..], &["--json", "--hours", "9"]].concat()).well().json();
    let phases: Vec<_> =
        json["stands"].as_array().expect("a list").iter().map(|stand| stand["phase"].clone()).collect();
    assert_eq!(phases, ["stopped", "set the machine"]);
    assert_eq!(json["wipe"][0]["what"][0], "bed ways");
    let later: Vec<_> =
        json["later"].as_array().expect("a list").iter().map(|stop| stop["after_hours"].clone()).collect();
    assert_eq!(later, [4.0, 8.0], "every four hours of nine");
    assert_eq!(json["later"][0]["points"][0], "1");
    let assumed = json["assumed"].to_string();
    assert!(assumed.contains(r#"\"headstock cover open\" is a cover"#), "{assumed}");
}

#[test]
fn minutes_choose_what_matters_most_and_name_the_rest() {
    let bench = Bench::new();
    bench.write("lathe.toml", LATHE);
    bench.run(&["chart", "import", &bench.path("lathe.toml"), "--at", "2026-11-20T08:00"]).well();
    let json = bench.run(&["round", "lathe", "--minutes", "1", "--json", "--at", AT]).well().json();
    assert_eq!((ids(&json, "stands"), ids(&json, "left_undone")), (vec!["1".to_owned()], vec!["2".to_owned()]));
    assert_eq!(json["within"], 1);
    assert!(json["working"].to_string().contains("How much a point matters"), "{json}");
    let out = bench.run(&["round", "lathe", "--minutes", "1 min", "--at", AT]).well().out;
    assert!(out.contains("In 1 minute: 1 of 2 points") && out.contains("LEFT UNDONE"), "{out}");
    // Both machines have the two minutes together.
    let both = bench.run(&["round", "--minutes", "2", "--json", "--at", AT]).well().json();
    let minutes: u64 = both["rounds"].as_array().expect("a list").iter().filter_map(|r| r["within"].as_u64()).sum();
    assert!(minutes <= 2, "{minutes}");
    for wrong in ["0", "ten", "9 h", "1.5"] {
        let run = bench.run(&["round", "lathe", "--minutes", wrong, "--at", AT]);
        assert_eq!(run.code, Some(2), "{wrong}");
        assert!(run.err.contains("10 min"), "{}", run.err);
    }
}

#[test]
fn after_gives_the_list_for_the_evening() {
    let bench = Bench::new();
    bench.write("lathe.toml", LATHE);
    let chart = bench.path("lathe.toml");
    let out = run(&["round", "--chart", &chart, "--after", "--at", AT]).well().out;
    assert!(out.contains("Brush the chips off") && out.contains("  bed ways"), "{out}");
    assert!(out.contains("2 Headstock drip: Shut it when the belt is off."), "the chart's own words: {out}");
    assert!(!out.contains("BEFORE YOU START"), "{out}");
    let json = run(&["round", "--chart", &chart, "--after", "--json", "--at", AT]).well().json();
    assert_eq!(json["after_use"].as_array().map(Vec::len), Some(6), "{}", json["after_use"]);
    let without = run(&["round", "--chart", &chart, "--json", "--at", AT]).well().json();
    assert!(without["after_use"].is_null());
}

#[test]
fn a_cold_shop_names_what_will_not_deliver_and_what_to_do() {
    let bench = Bench::new();
    bench.write("lathe.toml", LATHE);
    let words = ["round", "--chart", &bench.path("lathe.toml"), "--shelf", &bench.path("shelf.toml"), "--at", AT];
    let cold = |degrees: &str, more: &[&str]| run(&[&words[..], &["--temperature", degrees], more].concat()).well();
    let json = cold("8C", &["--json"]).json();
    assert_eq!(ids(&json, "cold"), ["2"]);
    assert!(json["cold"][0]["remedy"].as_str().is_some_and(|says| says.contains("drops")), "{json}");
    // A drip gives up at 300 mm²/s; an oil of 68 mm²/s at 40 °C and index 95 has that at 15.5 °C (ASTM D341), which is 60 °F.
    let us = cold("46 F", &["--units", "us"]).out;
    assert!(us.contains("gives up below about 60 °F with Way 68"), "{us}");
    assert!(cold("20C", &[]).out.contains("every way of oiling delivers"));
    assert_eq!(run(&[&words[..], &["--temperature", "8"]].concat()).code, Some(2), "a temperature needs its unit");
}

#[test]
fn a_job_counts_for_the_machines_that_have_it() {
    let bench = Bench::new();
    bench.write("lathe.toml", LATHE);
    bench.run(&["chart", "import", &bench.path("lathe.toml"), "--at", "2026-11-20T08:00"]).well();
    let json = bench.run(&["round", "--job", "threading", "--json", "--at", AT]).well().json();
    let jobs: Vec<_> = json["rounds"].as_array().expect("a list").iter().map(|round| round["job"].clone()).collect();
    assert_eq!(jobs, [Value::Null, "threading".into()]);
    let run = bench.run(&["round", "--job", "threding", "--at", AT]);
    assert_eq!(run.code, Some(2));
    assert!(run.err.contains("did you mean threading?"), "{}", run.err);
}
