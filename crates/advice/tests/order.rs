//! The order of the round: stopped before running, stand by stand, what needs the same cover together.

use shop::chart::State;

use crate::bench::Bench;

const NOW: &str = "2026-11-25T09:00";

fn point(id: &str, rest: &str) -> String {
    format!(
        "[[point]]\nid = \"{id}\"\nname = \"n\"\nmethod = \"oil hole\"\ndose = \"2 drops\"\nevery = \"1 use\"\n{rest}\n"
    )
}

#[test]
fn stopped_points_stand_before_running_ones_and_each_stand_is_visited_once_in_each_state() {
    let chart = [
        point("1", "stand = \"left\"\nsetup = [\"running\"]"),
        point("2", "stand = \"left\""),
        point("3", "stand = \"front\""),
        point("4", "stand = \"left\""),
        point("5", "stand = \"front\"\nsetup = [\"running\"]"),
    ]
    .concat();
    let bench = Bench::new(&chart);
    assert_eq!(bench.left(NOW, 1.0, None), ["3", "2", "4", "5", "1"]);
    let round = bench.round(NOW, 1.0, None);
    let stands: Vec<_> =
        round.value().stands.iter().map(|at| (at.stand.as_ref().map(ToString::to_string), at.state)).collect();
    let some = |text: &str| Some(text.to_owned());
    assert_eq!(
        stands,
        [
            (some("front"), State::Stopped),
            (some("left"), State::Stopped),
            (some("front"), State::Running),
            (some("left"), State::Running)
        ]
    );
}

#[test]
fn points_behind_one_cover_follow_each_other_after_the_open_ones() {
    let chart = [
        point("1", "stand = \"rear\"\nsetup = [\"cover off\"]"),
        point("2", "stand = \"rear\""),
        point("3", "stand = \"rear\"\nsetup = [\"ram back\"]"),
        point("4", "stand = \"rear\"\nsetup = [\"cover off\"]"),
    ]
    .concat();
    assert_eq!(Bench::new(&chart).left(NOW, 1.0, None), ["2", "1", "4", "3"]);
}

#[test]
fn the_chart_s_own_stands_come_in_its_order_and_unknown_places_last() {
    let stands = "[[stand]]\nid = \"ladder\"\nname = \"Up the ladder\"\nx = 0\ny = 2\n";
    let chart =
        [stands.to_owned(), point("1", ""), point("2", "stand = \"front\""), point("3", "stand = \"ladder\"")].concat();
    assert_eq!(Bench::new(&chart).left(NOW, 1.0, None), ["3", "2", "1"]);
}
