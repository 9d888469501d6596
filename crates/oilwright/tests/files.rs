//! A wrong `--shop`: says which, and leaves the file as it was.

use crate::run::{Bench, run};

#[test]
fn a_shop_that_is_none_is_told_and_left_as_it_was() {
    let bench = Bench::new();
    bench.write("letter.shop", "Dear Sir, the shaper squeals.");
    bench.write("empty.shop", "");
    std::fs::create_dir(bench.file("folder.shop")).expect("a folder");
    for (name, says) in [
        ("missing.shop", "there is no file"),
        ("folder.shop", "is a folder"),
        ("letter.shop", "is no shop's data file"),
        ("empty.shop", "is empty"),
    ] {
        let before = std::fs::read(bench.file(name)).ok();
        let run = run(&["--shop", &bench.path(name), "machines"]);
        assert_eq!(run.code, Some(3), "{name}: {}", run.err);
        assert!(run.err.contains(says) && run.err.contains(name), "{name}: {}", run.err);
        assert_eq!(std::fs::read(bench.file(name)).ok(), before, "{name}");
    }
    assert!(!bench.file("missing.shop").exists());
}

#[test]
fn naming_no_shop_is_wrong_use_with_a_way_on() {
    let run = run(&["round"]);
    assert_eq!(run.code, Some(2));
    assert!(run.err.contains("--shop FILE") && run.err.contains("demo"), "{}", run.err);
}

#[test]
fn a_shop_is_never_made_over_another() {
    let bench = Bench::new();
    let before = std::fs::read(bench.file("our.shop")).expect("the shop");
    let again = run(&["shop", "new", &bench.path("our.shop")]);
    assert_eq!(again.code, Some(2), "{}", again.err);
    assert!(again.err.contains("not overwritten"), "{}", again.err);
    assert_eq!(std::fs::read(bench.file("our.shop")).expect("the shop"), before);
}

#[test]
fn a_backup_is_restored_to_the_same_shop_and_a_flipped_byte_is_found() {
    let bench = Bench::new();
    bench.run(&["log", "dosed", "bench-drill", "1", "--at", "2026-11-25T09:00"]).well();
    let (backup, restored) = (bench.path("safe.shop"), bench.path("again.shop"));
    bench.run(&["backup", &backup]).well();
    let over = bench.run(&["backup", &backup]);
    assert!(over.code == Some(2) && over.err.contains("not overwritten"), "{}", over.err);
    run(&["--shop", &restored, "restore", &backup]).well();
    let log = |file: &str| run(&["--shop", file, "logbook", "--json"]).well().out;
    assert_eq!(log(&restored), log(&bench.path("our.shop")));
    assert!(run(&["--shop", &restored, "verify"]).well().out.contains("nothing is damaged"));

    let mut bytes = std::fs::read(&restored).expect("the restored shop");
    let name = b"Quill sleeve";
    let at = bytes.windows(name.len()).position(|window| window == name).expect("the chart's text stands in the file");
    bytes[at] ^= 1;
    std::fs::write(&restored, &bytes).expect("the folder can be written");
    let verify = run(&["--shop", &restored, "verify", "--json"]);
    assert_eq!(verify.code, Some(1), "{}{}", verify.out, verify.err);
    assert!(!verify.json()["damage"].as_array().expect("a list").is_empty());
    let refused = run(&["--shop", &bench.path("third.shop"), "restore", &restored]);
    assert_eq!(refused.code, Some(3), "{}", refused.err);
    assert!(!bench.file("third.shop").exists());
}

#[test]
fn everything_goes_out_as_tables_and_comes_back_as_an_equal_shop() {
    let bench = Bench::new();
    bench.run(&["log", "dosed", "bench-drill", "1", "--at", "2026-11-25T09:00"]).well();
    bench.run(&["log", "note", "bench-drill", "=1+1 is no formula", "--at", "2026-11-25T09:01"]).well();
    let (tables, again) = (bench.path("tables"), bench.path("again.shop"));
    bench.run(&["csv", "export", &tables]).well();
    run(&["--shop", &again, "csv", "import", &tables]).well();
    for words in [
        &["logbook", "--json"][..],
        &["round", "--json", "--at", "2026-11-26T09:00"],
        &["chart", "show", "bench-drill"],
    ] {
        let told = |file: &str| run(&[&["--shop", file], words].concat()).well().out;
        assert_eq!(told(&again), told(&bench.path("our.shop")), "{words:?}");
    }
    let over = run(&["--shop", &again, "csv", "import", &tables]);
    assert!(over.code == Some(2) && over.err.contains("not overwritten"), "{}", over.err);
}
