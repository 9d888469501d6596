//! The time by the shop's own log, its sums done by hand.

use advice::round::Pace;
use advice::working::Assumption;

use crate::bench::Bench;

const NOW: &str = "2026-11-25T09:00";

fn bench() -> Bench {
    let point = |n: usize| {
        let stand = ["front", "left", "rear", "right"][n / 2];
        format!(
            "[[point]]\nid = \"{n}\"\nname = \"n\"\nmethod = \"oil hole\"\nstand = \"{stand}\"\ndose = \"2 drops\"\nevery = \"1 use\"\n"
        )
    };
    Bench::new(&(0..8).map(point).collect::<String>())
}

#[test]
fn without_a_log_the_rule_of_thumb_says_the_time() {
    let round = bench().round(NOW, 1.0, None);
    assert!(!round.assumed.iter().any(|assumed| matches!(assumed, Assumption::OwnPace(_))));
}

#[test]
fn the_times_between_presses_are_the_shop_s_own_pace() {
    let mut bench = bench();
    // Two points at each of four stands, pressed two minutes apart.
    for n in 0..8 {
        bench.dosed(&n.to_string(), &format!("2026-11-24T09:{:02}", 2 * n));
    }
    let pace = Pace::of(&bench.machine).expect("eight points in one round");
    // Seven gaps of 120 s; by rule of thumb 20 s for each point and 10 s for each of three changes of stand.
    assert_eq!(pace, Pace { taken: 840, expected: 170, points: 7 });
    let own = bench.round(NOW, 1.0, None);
    // Eight acts of 20 s, four stands of 10 s, and between them three walks of 1.42 m, rounded up to 2 s, with 10 s to come to
    // rest: 206 s, times 840 / 170, are 1018 s.
    assert_eq!(own.value().minutes, 17);
    assert!(own.assumed.contains(&Assumption::OwnPace(pace)));
}

#[test]
fn what_was_written_down_afterwards_or_interrupted_says_nothing_of_the_pace() {
    let mut bench = bench();
    for n in 0..8 {
        bench.dosed(&n.to_string(), "2026-11-24T09:00");
    }
    assert_eq!(Pace::of(&bench.machine), None, "all in one minute");
    for n in 0..8 {
        bench.dosed(&n.to_string(), &format!("2026-11-24T{:02}:00", 9 + n));
    }
    assert_eq!(Pace::of(&bench.machine), None, "an hour between each");
}
