//! The order of the round: stopped before running, stand by stand on the shortest walk, what needs the same cover together.

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
    // From the front to the left, and what runs is looked at on the way back.
    assert_eq!(bench.left(NOW, 1.0, None), ["3", "2", "4", "1", "5"]);
    let round = bench.round(NOW, 1.0, None);
    let stands: Vec<_> =
        round.value().stands.iter().map(|at| (at.stand.as_ref().map(ToString::to_string), at.state)).collect();
    let some = |text: &str| Some(text.to_owned());
    assert_eq!(
        stands,
        [
            (some("front"), State::Stopped),
            (some("left"), State::Stopped),
            (some("left"), State::Running),
            (some("front"), State::Running)
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
fn places_that_nobody_charted_come_last() {
    let stands = "[[stand]]\nid = \"ladder\"\nname = \"Up the ladder\"\nx = 0\ny = 2\n";
    let chart =
        [stands.to_owned(), point("1", ""), point("2", "stand = \"front\""), point("3", "stand = \"ladder\"")].concat();
    assert_eq!(Bench::new(&chart).left(NOW, 1.0, None), ["2", "3", "1"], "front before ladder, by their ids");
}

#[test]
fn a_slide_that_two_stands_need_back_and_a_third_forward_is_moved_once_each_way() {
    let chart = [
        point("1", "stand = \"left\"\nsetup = [\"ram wound back\"]"),
        point("2", "stand = \"rear\"\nsetup = [\"ram wound forward\"]"),
        point("3", "stand = \"right\"\nsetup = [\"ram wound back\"]"),
        point("4", "stand = \"rear\""),
    ]
    .concat();
    let bench = Bench::new(&chart);
    // The walk left, rear, right would be shorter, and would wind the ram back twice.
    assert_eq!(bench.left(NOW, 1.0, None), ["4", "2", "1", "3"]);
    let round = bench.round(NOW, 1.0, None);
    let first: Vec<_> = crate::bench::points(round.value()).filter_map(advice::words::first).collect();
    assert_eq!(first, ["ram wound forward", "ram wound back"]);
    assert_eq!(round.value().stands[3].still, ["ram wound back"]);
}

#[test]
fn a_cover_is_opened_once_and_put_back_before_the_machine_runs() {
    let chart = [
        point("1", "stand = \"rear\"\nsetup = [\"stopped\", \"rear cover off\"]"),
        point("2", "stand = \"left\"\nsetup = [\"stopped\", \"Rear cover off\"]"),
        point("3", "stand = \"left\"\nsetup = [\"running\"]"),
    ]
    .concat();
    let round = Bench::new(&chart).round(NOW, 1.0, None);
    let first: Vec<_> = crate::bench::points(round.value()).map(|point| point.first.len()).collect();
    assert_eq!(first.iter().sum::<usize>(), 1, "{first:?}");
    assert_eq!(round.value().covers, ["rear cover"]);
    let back = advice::words::covers_back(round.value());
    assert_eq!(back.as_deref(), Some("Put back before it runs: rear cover."));
}

#[test]
fn a_plug_is_taken_out_at_each_point_anew() {
    let chart = [
        point("1", "stand = \"rear\"\nsetup = [\"plug out\"]"),
        point("2", "stand = \"rear\"\nsetup = [\"plug out\"]"),
    ]
    .concat();
    let round = Bench::new(&chart).round(NOW, 1.0, None);
    assert!(crate::bench::points(round.value()).all(|point| point.first.len() == 1));
}

#[test]
fn ways_are_wiped_before_any_oil_and_what_a_cover_hides_is_not() {
    let pair = |id: &str| format!("[[pair]]\nid = \"{id}\"\nkind = \"slideway\"\n");
    let chart = [
        pair("ram-way"),
        pair("block"),
        point("1", "stand = \"left\"\nfeeds = [\"ram-way\"]"),
        point("2", "stand = \"rear\"\nfeeds = [\"block\"]\nsetup = [\"rear cover off\"]"),
        point("3", "stand = \"front\"\nsetup = [\"strip wiped clean of chips\"]"),
    ]
    .concat();
    let mut bench = Bench::new(&chart);
    let wiped = |bench: &Bench| -> Vec<String> {
        bench.round(NOW, 1.0, None).value().wipe.iter().map(advice::words::wipe).collect()
    };
    assert_eq!(wiped(&bench), ["ram way", "strip"], "from the left to the front, which is oiled first");
    bench.dosed("1", "2026-11-25T08:50");
    assert_eq!(wiped(&bench), ["strip"], "what has its oil is not wiped again");
}

#[test]
fn the_order_does_not_change_while_it_is_worked_off() {
    let chart = [
        point("1", "stand = \"left\""),
        point("2", "stand = \"rear\""),
        point("3", "stand = \"front\""),
        point("4", "stand = \"right\"\nsetup = [\"cover off\"]"),
    ]
    .concat();
    let order = |bench: &Bench| -> Vec<String> {
        crate::bench::points(bench.round(NOW, 1.0, None).value()).map(|point| point.id.to_string()).collect()
    };
    let mut bench = Bench::new(&chart);
    let first = order(&bench);
    for point in &first {
        bench.dosed(point, "2026-11-25T08:50");
        assert_eq!(order(&bench), first);
    }
}
