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
