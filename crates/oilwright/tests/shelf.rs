//! The shelf from the command line: an oil from its data sheet, what came and went, and what is left.

use crate::run::Bench;

const NOW: &str = "2026-11-25T09:00";

#[test]
fn an_oil_is_written_down_and_counted() {
    let bench = Bench::new();
    let add = [
        "shelf",
        "add",
        "red-220",
        "--name",
        "Gear 220, the red can",
        "--family",
        "gear",
        "--known",
        "100F=1000SUS",
        "--known",
        "210F=105SUS",
        "--symbol",
        "ISO-L-CKC 220",
        "--pack",
        "5 L at 31.50 EUR",
        "--stock",
        "4 L",
        "--at",
        NOW,
    ];
    let said = bench.run(&add).well().out;
    // 1000 SUS at 100 °F is the Saybolt number of ISO VG 220, though its middle lies a little above: ASTM D2422, table 1.
    assert!(said.contains("Gear 220, the red can is on the shelf:") && said.contains("220"), "{said}");
    assert!(bench.run(&add).wrong_use().contains("is on the shelf already"));
    bench.run(&["shelf", "used", "red-220", "250 mL", "--note", "chain", "--at", "2026-11-25T09:01"]).well();
    bench.run(&["shelf", "bought", "red-220", "5 L", "--price", "31.50 EUR", "--at", "2026-11-25T09:02"]).well();
    let twice = ["shelf", "thrown-away", "red-220", "1 L", "--key", "tip-1", "--at", "2026-11-25T09:03"];
    bench.run(&twice).well();
    bench.run(&twice).well();
    let left = |bench: &Bench, at: &str| {
        let stock = bench.run(&["shelf", "stock", "--json", "--at", at]).well().json();
        let rows = stock["stock"].as_array().expect("rows");
        rows.iter().find(|row| row["oil"] == "red-220").and_then(|row| row["left_l"].as_f64()).expect("litres")
    };
    // 4 − 0.25 + 5 − 1.
    assert!((left(&bench, "2026-11-25T09:04") - 7.75).abs() < 1e-9);
    // What was recorded later is not known before.
    assert!((left(&bench, "2026-11-25T09:01") - 3.75).abs() < 1e-9);
    bench.run(&["shelf", "counted", "red-220", "7.5 L", "--at", "2026-11-25T09:05"]).well();
    assert!((left(&bench, "2026-11-25T09:06") - 7.5).abs() < 1e-9);
    let said = bench.run(&["shelf", "stock", "--at", "2026-11-25T09:06"]).well().out;
    assert!(said.contains("Gear 220, the red can: about 7.5 L (7.5 L there)"), "{said}");
}

#[test]
fn what_cannot_be_is_one_sentence_each_and_nothing_is_kept() {
    let bench = Bench::new();
    let add = |more: &[&str]| {
        let mut words = vec!["shelf", "add", "odd", "--name", "Odd", "--family", "way", "--at", NOW];
        words.extend(more);
        bench.run(&words).wrong_use()
    };
    for (more, says) in [
        (&["--known", "68"][..], "40C=68mm2/s"),
        (&["--known", "40C=300"][..], "without a unit"),
        (&["--known", "40C=68mm2/s", "--known", "100C=80mm2/s"][..], ""),
        (&["--known", "40C=68mm2/s", "--index=-400"][..], ""),
        (&["--pack", "a drum"][..], "20 L or 400 g"),
        (&["--ep-sulphur", "perhaps"][..], "not stated"),
    ] {
        let said = add(more);
        assert!(said.contains(says) && !said.trim().is_empty(), "{more:?}: {said}");
    }
    assert!(
        bench.run(&["shelf", "bought", "way-86", "5 L", "--at", NOW]).wrong_use().contains("did you mean \"way-68\"")
    );
    assert!(bench.run(&["shelf", "bought", "way-68", "much", "--at", NOW]).wrong_use().contains("20 L or 400 g"));
    assert!(
        bench
            .run(&["shelf", "bought", "way-68", "5 L", "--price", "31", "--at", NOW])
            .wrong_use()
            .contains("85.50 EUR")
    );
    let stock = bench.run(&["shelf", "stock", "--json", "--at", NOW]).well().json();
    assert!(stock["stock"].as_array().expect("rows").iter().all(|row| row["oil"] != "odd"));
}

#[test]
fn an_entry_is_put_right_from_the_command_line() {
    let bench = Bench::new();
    let ran = bench.run(&["log", "ran", "bench-drill", "13 h", "--json", "--at", NOW]).well().json();
    let entry = ran["entries"][0].as_i64().expect("a number").to_string();
    bench.run(&["log", "ran", "bench-drill", "3 h", "--instead-of", &entry, "--at", "2026-11-25T09:05"]).well();
    let log = bench.run(&["logbook", "bench-drill", "--json", "--at", "2026-11-25T09:10"]).well().json();
    let said: Vec<&str> =
        log["entries"].as_array().expect("entries").iter().filter_map(|entry| entry["says"].as_str()).collect();
    assert!(said.contains(&"ran 3 h") && !said.contains(&"ran 13 h"), "{said:?}");
    let twice = ["log", "ran", "bench-drill", "4 h", "--instead-of", &entry, "--at", "2026-11-25T09:06"];
    assert!(!bench.run(&twice).wrong_use().is_empty(), "it counts no more already");
}
