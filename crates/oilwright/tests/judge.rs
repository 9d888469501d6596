//! `needs` and `judge`, from a shop and straight from files.

use crate::run::{Bench, run};

const CHART: &str = "chart = 1\n[machine]\nname = \"Bench drill\"\n[[pair]]\nid = \"quill\"\nkind = \"journal\"\ndiameter = \"40 mm\"\n\
                     speeds = [\"200 rpm\"]\nsurfaces = [\"steel\", \"bronze\"]\n[[point]]\nid = \"1\"\nname = \"Quill\"\nmethod = \"oil hole\"\n\
                     feeds = [\"quill\"]\n";
const SHELF: &str = "shelf = 1\n[[oil]]\nid = \"drum-68\"\nname = \"Drum\"\nfamily = \"circulating\"\nv40 = \"68 mm2/s\"\nindex = 95\n\
                     symbol = \"ISO-L-CKB 68\"\n[[oil]]\nid = \"axle\"\nname = \"Axle\"\nfamily = \"gear\"\nv40 = \"140 mm2/s\"\nindex = 95\n\
                     symbol = \"API GL-5\"\n";

#[test]
fn oils_are_judged_straight_from_files() {
    let bench = Bench::new();
    bench.write("drill.toml", CHART);
    bench.write("two.toml", SHELF);
    let (chart, shelf) = (bench.path("drill.toml"), bench.path("two.toml"));
    let files = ["--chart", chart.as_str(), "--shelf", shelf.as_str()];
    let judged = run(&[&["judge"], &files[..], &["--json"]].concat()).well().json();
    let verdicts = judged["points"][0]["verdicts"].as_array().expect("verdicts");
    assert_eq!(judged["points"][0]["id"], "1");
    assert_eq!((&verdicts[0]["oil"], &verdicts[0]["verdict"]), (&"drum-68".into(), &"suits".into()));
    assert_eq!((&verdicts[1]["oil"], &verdicts[1]["verdict"]), (&"axle".into(), &"never".into()));
    let why = verdicts[1]["reasons"][0].as_str().expect("a reason");
    assert!(why.contains("GL-5") && why.contains("R2"), "{why}");
    let one = run(&[&["judge", "1", "--oil", "axle"], &files[..]].concat()).well().out;
    assert!(one.contains("Drum suits.") && one.contains("never    axle") && !one.contains("     suits"), "{one}");
    let by_name = run(&[&["judge", "1", "--oil", "axle"], &files[..]].concat()).well().out;
    assert_eq!(
        by_name,
        run(&[&["judge", "1", "--oil", "AXLE"], &files[..]].concat()).well().out,
        "by what stands on the can"
    );
    let needs = run(&["needs", "--chart", &chart, "--json"]).well().json();
    let band = &needs["points"][0]["band"];
    let (low, high) = (band["v40_low"].as_f64().expect("a number"), band["v40_high"].as_f64().expect("a number"));
    assert!(low > 30.0 && low < 68.0 + 1.0 && high > 68.0 && high < 200.0, "{needs}");
    // 40 mm at 200 rpm makes little heat: it works a little above the 18 °C of a usual shop, and there the same oils are thicker.
    let work = &needs["points"][0]["pairs"][0]["at_work"];
    let celsius = work["temperature_c"].as_f64().expect("a temperature");
    assert!((18.0..40.0).contains(&celsius) && work["low_mm2_s"].as_f64() > Some(low), "{work}");
    assert!(needs["points"][0]["label"].as_str().is_some_and(|label| label.contains("ISO-L-CKB")));
}

#[test]
fn what_is_in_a_box_is_told_of_a_shop_and_not_of_a_file() {
    let bench = Bench::new();
    let chart = format!(
        "{CHART}[[reservoir]]\nid = \"head\"\nkind = \"box\"\n[[point]]\nid = \"2\"\nname = \"Head\"\nmethod = \"bath\"\n\
         reservoir = \"head\"\nfeeds = [\"quill\"]\n"
    );
    bench.write("head.toml", &chart);
    bench.write("two.toml", SHELF);
    let (chart, shelf) = (bench.path("head.toml"), bench.path("two.toml"));
    bench.run(&["shelf", "import", &shelf, "--at", "2026-11-20T09:00"]).well();
    bench.run(&["chart", "import", &chart, "--at", "2026-11-20T09:00"]).well();
    let at = |at: &str| {
        bench.run(&["judge", "head", "2", "--json", "--at", at]).well().json()["points"][0]["contents"].clone()
    };
    let never = at("2026-11-20T10:00");
    assert_eq!((&never["verdict"], &never["oil"]), (&"unknown".into(), &serde_json::Value::Null), "{never}");
    bench.run(&["log", "drained", "head", "head", "--at", "2026-11-21T10:00"]).well();
    bench.run(&["log", "filled", "head", "head", "--oil", "axle", "--at", "2026-11-21T10:10"]).well();
    let wrong = at("2026-11-22T10:00");
    assert_eq!(
        (&wrong["reservoir"], &wrong["oil"], &wrong["since"], &wrong["verdict"], &wrong["act"]),
        (&"head".into(), &"axle".into(), &"2026-11-21T10:10:00+01:00".into(), &"wrong".into(), &"do not run".into()),
        "{wrong}"
    );
    let text = bench.run(&["judge", "head", "2", "--at", "2026-11-22T10:00"]).well().out;
    assert!(text.contains("In it is Axle, since 21 November 2026.") && text.contains("Do not run"), "{text}");
    let file = run(&["judge", "2", "--chart", &chart, "--shelf", &shelf, "--json"]).well().json();
    assert!(file["points"][0]["contents"].is_null(), "{file}");
}

#[test]
fn a_machine_of_the_shop_is_judged_by_its_shelf_and_what_is_not_there_is_said() {
    let bench = Bench::new();
    let said = bench.run(&["judge", "bench-drill", "1"]).well().out;
    assert!(said.contains("(1) Quill sleeve:") && said.contains("way-68"), "{said}");
    for (words, says) in [
        (&["judge", "nowhere"][..], "nowhere"),
        (&["judge", "bench-drill", "9"][..], "no point \"9\""),
        (&["judge", "bench-drill", "1", "--oil", "way-86"][..], "did you mean \"way-68\""),
        (&["needs"][..], "name a machine"),
    ] {
        let told = bench.run(words).wrong_use();
        assert!(told.contains(says), "{words:?}: {told}");
    }
}

const SPINDLE: &str = "chart = 1\n[machine]\nname = \"Small grinder\"\n[[pair]]\nid = \"spindle\"\nkind = \"journal\"\ndiameter = \"60 mm\"\n\
                       speeds = [\"1000 rpm\", \"3000 rpm\"]\nclearance = \"0.02 mm\"\n[[point]]\nid = \"1\"\nname = \"Spindle\"\nmethod = \"ring\"\n\
                       feeds = [\"spindle\"]\noil = \"circulating 68\"\n";

#[test]
fn films_are_told_over_speed_and_temperature_and_a_spindle_too_tight_is_warned_of() {
    let bench = Bench::new();
    bench.write("grinder.toml", SPINDLE);
    bench.write("guessed.toml", &SPINDLE.replace("clearance = \"0.02 mm\"\n", ""));
    bench.write("by-hand.toml", &SPINDLE.replace("\"ring\"", "\"cup\""));
    let needs = |chart: &str, more: &[&str]| {
        let chart = bench.path(chart);
        run(&[&["needs", "--chart", chart.as_str(), "--temperature", "20C"], more].concat()).well()
    };
    let json = needs("grinder.toml", &["--json"]).json();
    let point = &json["points"][0];
    let warning = point["warnings"][0]["says"].as_str().expect("a warning");
    assert!(warning.starts_with("spindle is too tight for circulating 68 at 3000 rpm"), "{warning}");
    let pair = &point["pairs"][0];
    let days = pair["regimes"].as_array().expect("three days");
    assert_eq!(
        days.iter().map(|day| day["day"].as_str()).collect::<Vec<_>>(),
        [Some("cold"), Some("usual"), Some("warm")]
    );
    assert_eq!((&days[1]["air_c"], &days[1]["air_assumed"]), (&20.0.into(), &false.into()));
    let warmth: Vec<f64> =
        days[1]["speeds"].as_array().into_iter().flatten().filter_map(|at| at["temperature_c"].as_f64()).collect();
    assert!(warmth.len() == 2 && 20.0 < warmth[0] && warmth[0] < warmth[1], "{warmth:?}");
    let whats = |key: &str| -> Vec<String> {
        let rows = pair[key].as_array().into_iter().flatten();
        let mut whats: Vec<String> = rows.filter_map(|row| row["what"].as_str().map(str::to_owned)).collect();
        whats.sort();
        whats
    };
    assert!(
        whats("assumed").contains(&"load_mpa".to_owned()) && !whats("assumed").contains(&"clearance_mm".to_owned())
    );
    assert_eq!(whats("assumed"), whats("swing"));
    for other in ["guessed.toml", "by-hand.toml"] {
        let json = needs(other, &["--json"]).json();
        assert_eq!(json["points"][0]["warnings"], serde_json::json!([]), "{other}");
        assert!(json["points"][0]["pairs"][0]["regimes"].is_array(), "{other}");
    }
    let said = needs("grinder.toml", &[]).out;
    for part in [
        "warning: spindle is too tight",
        "at 20 °C and given all the oil it wants: full film at all its speeds",
        "worth measuring",
    ] {
        assert!(said.contains(part), "{part}: {said}");
    }
    assert!(!said.contains("f W U") && needs("grinder.toml", &["--working"]).out.contains("f W U = k A (T − Tamb)"));
}
