//! `shelf-plan`, from a shop and straight from files: the object that programs rely on, the exit codes, and what people read.

use crate::run::{Bench, run};

const CHART: &str = "chart = 1\n[machine]\nname = \"Bench drill\"\n[[pair]]\nid = \"quill\"\nkind = \"journal\"\ndiameter = \"40 mm\"\n\
                     speeds = [\"200 rpm\"]\nsurfaces = [\"steel\", \"bronze\"]\n[[pair]]\nid = \"way\"\nkind = \"slideway\"\n\
                     [[point]]\nid = \"1\"\nname = \"Quill\"\nmethod = \"oil hole\"\nfeeds = [\"quill\"]\ndose = \"3 drops\"\nevery = [\"1 use\"]\n\
                     [[point]]\nid = \"2\"\nname = \"Way\"\nmethod = \"wick\"\nfeeds = [\"quill\", \"way\"]\n\
                     [[point]]\nid = \"3\"\nname = \"Motor\"\nmethod = \"nipple\"\nfeeds = [\"quill\"]\n";
const SHELF: &str = "shelf = 1\n[[oil]]\nid = \"drum-68\"\nname = \"Drum\"\nfamily = \"circulating\"\nv40 = \"68 mm2/s\"\nindex = 95\n\
                     symbol = \"ISO-L-CKB 68\"\nstock = \"3 L\"\n[[oil]]\nid = \"axle\"\nname = \"Axle\"\nfamily = \"gear\"\nv40 = \"140 mm2/s\"\n\
                     index = 95\nsymbol = \"API GL-5\"\n[[oil]]\nid = \"way-68\"\nname = \"Way\"\nfamily = \"way\"\nv40 = \"68 mm2/s\"\nindex = 95\n\
                     symbol = \"ISO-L-G\"\ntackifier = \"yes\"\nfriction_modifier = \"yes\"\n\
                     [[oil]]\nid = \"tub\"\nname = \"Tub\"\nfamily = \"grease\"\nthickener = \"lithium\"\nnlgi = \"2\"\n";

#[test]
fn a_plan_is_had_straight_from_files() {
    let bench = Bench::new();
    bench.write("drill.toml", CHART);
    bench.write("four.toml", SHELF);
    let (chart, shelf) = (bench.path("drill.toml"), bench.path("four.toml"));
    let files = ["--chart", chart.as_str(), "--shelf", shelf.as_str()];
    let plan = run(&[&["shelf-plan"], &files[..], &["--json"]].concat()).well().json();
    let frontier = plan["frontier"].as_array().expect("a frontier");
    // Bronze: the axle oil is never given, and one clean oil is enough to keep all going.
    assert_eq!((&frontier[0]["k"], &frontier[0]["proven"], &frontier[0]["gap"]), (&1.into(), &true.into(), &0.into()));
    assert!(frontier.iter().all(|choice| !choice["oils"].to_string().contains("axle")), "{plan}");
    let suffers = frontier[0]["suffers"].as_array().expect("who suffers");
    assert!(suffers.iter().all(|one| one["verdict"] == "serves" || one["verdict"] == "stopgap"), "{plan}");
    assert!(suffers.iter().any(|one| one["point"] == "2"), "the way or the wick gets along: {plan}");
    assert_eq!(plan["greases"]["frontier"][0]["oils"], serde_json::json!(["tub"]));
    assert_eq!(plan["without_candidate"], serde_json::json!([]));
    let said = run(&[&["shelf-plan", "--working"], &files[..]].concat()).well().out;
    assert!(
        said.starts_with("3 oils are on the shelf; ") && said.contains("Harm of a choice: ") && said.contains("proven"),
        "{said}"
    );
}

#[test]
fn a_shelf_that_does_for_nothing_is_no_plan_and_buying_mends_it() {
    let bench = Bench::new();
    bench.write("drill.toml", CHART);
    let chart = bench.path("drill.toml");
    let none = run(&["shelf-plan", "--chart", &chart, "--json"]);
    assert_eq!(none.code, Some(1), "{}{}", none.out, none.err);
    assert_eq!(none.json()["frontier"], serde_json::json!([]));
    assert_eq!(none.json()["without_candidate"], serde_json::json!(["1", "2", "3"]));
    let bought = run(&["shelf-plan", "--chart", &chart, "--buy", "--json", "--most", "1"]).well().json();
    assert_eq!(bought["frontier"].as_array().map(Vec::len), Some(1), "{bought}");
    assert_eq!(bought["without_candidate"], serde_json::json!([]));
}

#[test]
fn a_machine_of_the_shop_is_planned_and_wrong_use_is_told() {
    let bench = Bench::new();
    let said = bench.run(&["shelf-plan", "bench-drill"]).well().out;
    assert!(said.contains("way-68"), "{said}");
    for (words, says) in [
        (&["shelf-plan", "nowhere"][..], "nowhere"),
        (&["shelf-plan", "--most", "0"][..], "--most 0"),
        (&["shelf-plan", "bench-drill", "--chart", "x.toml"][..], "cannot be used"),
    ] {
        let told = bench.run(words).wrong_use();
        assert!(told.contains(says), "{words:?}: {told}");
    }
}
