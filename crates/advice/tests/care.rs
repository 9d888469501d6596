//! Cautions stand with the act that they concern, and only there (common practice; see the usual cautions of the trade: stop and hold
//! off before reaching in, nothing by hand into a running machine, hot oil, heights, grease under pressure).

use advice::round::Caution;

use crate::bench::{Bench, points};

#[track_caller]
fn cautions(rest: &str) -> Vec<Caution> {
    let bench = Bench::new(&format!("[[point]]\nid = \"1\"\nname = \"n\"\nevery = \"1 use\"\n{rest}\n"));
    let round = bench.round("2026-11-25T09:00", 1.0, None);
    points(round.value()).flat_map(|point| point.cautions.clone()).collect()
}

#[test]
fn no_can_goes_into_a_running_machine_but_where_the_point_is_made_for_it() {
    let running = "setup = [\"running\"]\ndose = \"2 drops\"\n";
    assert_eq!(cautions(&format!("method = \"oil hole\"\n{running}")), [Caution::CanIntoRunning]);
    assert_eq!(cautions(&format!("method = \"drip\"\n{running}")), []);
    assert_eq!(cautions("method = \"oil hole\"\nsetup = [\"running\"]\nsign = \"wet\""), [], "a look is no oil");
}

#[test]
fn what_is_turned_lies_high_or_is_under_pressure_says_so() {
    assert_eq!(
        cautions("method = \"oil hole\"\nsetup = [\"pulley turned until the hole is on top\"]"),
        [Caution::TurnedByHand]
    );
    assert_eq!(cautions("method = \"oil hole\"\nwhere = \"hanger of the countershaft\""), [Caution::HighUp]);
    assert_eq!(cautions("method = \"nipple\"\ndose = \"2 strokes\""), [Caution::Gun]);
    assert_eq!(cautions("method = \"oil hole\"\nsetup = [\"ram wound back\"]"), []);
}

#[test]
fn a_level_is_hot_for_an_hour_after_a_run() {
    let chart = "[[reservoir]]\nid = \"r\"\nkind = \"sump\"\n[[point]]\nid = \"1\"\nname = \"n\"\nmethod = \"bath\"\n\
                 reservoir = \"r\"\nevery = \"1 use\"\n";
    let mut bench = Bench::new(chart);
    bench.ran("2026-11-25T08:30", 0.5, None);
    let at =
        |bench: &Bench, when| points(bench.round(when, 1.0, None).value()).flat_map(|p| p.cautions.clone()).count();
    assert_eq!((at(&bench, "2026-11-25T09:00"), at(&bench, "2026-11-25T09:31")), (1, 0));
}

#[test]
fn the_same_caution_is_said_once_at_a_stand() {
    let point = |id: &str| {
        format!(
            "[[point]]\nid = \"{id}\"\nname = \"n\"\nmethod = \"nipple\"\ndose = \"2 strokes\"\nstand = \"front\"\n\
             every = \"1 use\"\n"
        )
    };
    let bench = Bench::new(&[point("1"), point("2")].concat());
    let round = bench.round("2026-11-25T09:00", 1.0, None);
    assert_eq!(points(round.value()).map(|point| point.cautions.len()).collect::<Vec<_>>(), [1, 0]);
}
