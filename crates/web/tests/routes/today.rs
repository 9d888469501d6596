//! `GET /` and the acts that are pressed on it. That oil was given and that its sign was seen are two entries, and neither implies
//! the other: the rule of the project that most of these hold.

use scraper::Html;
use shop::id::Id;
use shop::logbook::{Body, Entry, Kind, Subject};

use crate::ask::all;
use crate::bench::{Bench, find, form, led, words};

const DRILL: &str = "/?machine=drill";

/// What counts, as `point kind`.
fn said(entries: &[Entry]) -> Vec<String> {
    let point = |entry: &Entry| entry.said.subject.point().map_or_else(String::new, |point| point.to_string());
    entries.iter().map(|entry| format!("{} {}", point(entry), entry.said.body.kind())).collect()
}

/// The words of the row of a point at the stand with this anchor.
#[track_caller]
fn row(page: &Html, anchor: &str, point: &str) -> String {
    let balloons = words(page, &format!("#{anchor} .point-row .balloon"));
    let at =
        balloons.iter().position(|balloon| balloon == point).unwrap_or_else(|| panic!("no row {point} at {anchor}"));
    words(page, &format!("#{anchor} .point-row")).remove(at)
}

#[tokio::test]
async fn the_round_is_laid_out_by_stand_with_its_cautions_before_the_acts() {
    let page = Bench::new().await.page(DRILL).await;
    assert_eq!(words(&page, ".stand-head h2"), ["Rear", "Left side", "Left side"]);
    assert_eq!(words(&page, ".title-block dd"), ["Bench drill", "Ordinary work", "3 h", "not said"]);
    // One caution for each state of the machine, each before the first button that it concerns.
    assert_eq!(all(&page, ".note").len(), 2);
    let order: Vec<&str> = all(&page, ".note, .button-whole").iter().map(|e| e.value().name()).collect();
    assert_eq!(order, ["div", "button", "button", "div"]);
    // Point 7 sleeps until its job wakes it; point 8 is not on this example at all.
    assert!(words(&page, "main > p").contains(&"Asleep: 1 point that only another job needs.".to_owned()));
    assert_eq!(words(&page, ".balloon"), ["4", "5", "1", "2", "3", "6"]);
    assert!(row(&page, "set-left", "1").contains("2 strokes"), "1.6 mL by a can of 0.8 mL");
}

#[tokio::test]
async fn a_whole_stand_is_oiled_in_one_press_and_every_sign_is_left_unset() {
    let bench = Bench::new().await;
    let whole = form(&bench.page(DRILL).await, "The left side is oiled", "");
    assert_eq!(led(&bench.press(&whole, &[]).await), "/?machine=drill#set-left");

    let entries = bench.entries().await;
    assert_eq!(said(&entries), ["1 dosed", "2 dosed", "3 dosed"]);
    let id = |text: &str| Id::new(text).expect("a right id");
    assert_eq!(entries[0].said.subject, Subject::Point(id("drill"), id("1")));
    let by_can =
        Body::Dosed { oil: Some(id("drum-68")), can: Some(id("long-spout")), amount: Some("2 strokes".into()) };
    assert_eq!(entries[0].said.body, by_can);

    let page = bench.page(DRILL).await;
    for point in ["1", "2"] {
        let row = row(&page, "set-left", point);
        assert!(row.contains("Oiled at 9:00") && !row.contains("seen at"), "{row}");
        assert!(
            find(&page, "Seen", &format!("point {point},")).is_some(),
            "the sign of {point} waits for its own press"
        );
    }
    assert!(find(&page, "The left side is oiled", "").is_none());
    assert!(find(&page, "Seen", "point 3,").is_none(), "point 3 has no sign");
    assert!(words(&page, "main > p").contains(&"2 signs still to look for where oil was given.".to_owned()));
}

#[tokio::test]
async fn a_sign_that_is_seen_says_nothing_of_the_oil_and_is_an_entry_of_its_own() {
    let bench = Bench::new().await;
    let page = bench.page(DRILL).await;
    bench.press(&form(&page, "Oiled", "point 2,"), &[]).await;
    let page = bench.pass(2).page(DRILL).await;
    led(&bench.press(&form(&page, "Seen", "point 2,"), &[]).await);
    assert_eq!(said(&bench.entries().await), ["2 dosed", "2 sign seen"]);
    let page = bench.page(DRILL).await;
    assert!(row(&page, "set-left", "2").contains("Oiled at 9:00, seen at 9:02"));
    assert!(row(&page, "set-left", "1").contains("Oiled"), "point 1 still waits");

    // A look while the machine runs writes that something was seen, and no oil.
    led(&bench.press(&form(&page, "Not seen", "point 6,"), &[]).await);
    assert_eq!(said(&bench.entries().await)[2..], ["6 sign missing"]);
    assert!(row(&bench.page(DRILL).await, "running-left", "6").contains("Not seen at 9:02"));
}

#[tokio::test]
async fn a_running_stand_has_no_large_button_and_takes_no_oil() {
    let bench = Bench::new().await;
    let page = bench.page(DRILL).await;
    assert!(all(&page, "#running-left .button-whole").is_empty());
    let mut oiled = form(&page, "Oiled", "point 1,");
    for pair in oiled.pairs.iter_mut().filter(|(name, _)| name == "points") {
        pair.1 = "1,6".into();
    }
    assert_eq!(bench.press(&oiled, &[]).await.status, 400);
    assert!(bench.entries().await.is_empty(), "all or nothing");
}

#[tokio::test]
async fn the_same_form_sent_twice_counts_once() {
    let bench = Bench::new().await;
    let page = bench.page(DRILL).await;
    let whole = form(&page, "The left side is oiled", "");
    for _ in 0..3 {
        led(&bench.press(&whole, &[]).await);
    }
    // The single row of the stale page asks for what the round has already.
    led(&bench.press(&form(&page, "Oiled", "point 1,"), &[]).await);
    assert_eq!(bench.entries().await.len(), 3);
    let sign = form(&bench.page(DRILL).await, "Seen", "point 1,");
    led(&bench.press(&sign, &[]).await);
    led(&bench.press(&sign, &[]).await);
    assert_eq!(bench.entries().await.len(), 4);
}

#[tokio::test]
async fn undo_takes_back_the_whole_last_act_of_the_stand_and_nothing_is_lost() {
    let bench = Bench::new().await;
    led(&bench.press(&form(&bench.page(DRILL).await, "Oiled", "point 2,"), &[]).await);
    bench.pass(1);
    let whole = form(&bench.page(DRILL).await, "The left side is oiled", "");
    led(&bench.press(&whole, &[]).await);
    assert_eq!(said(&bench.entries().await), ["2 dosed", "1 dosed", "3 dosed"]);

    let undo = form(&bench.pass(1).page(DRILL).await, "Undo", "Left side");
    assert_eq!(led(&bench.press(&undo, &[]).await), "/?machine=drill#set-left");
    led(&bench.press(&undo, &[]).await);
    let counting: Vec<String> =
        said(&bench.entries().await).into_iter().filter(|said| !said.ends_with("withdrawn")).collect();
    assert_eq!(counting, ["2 dosed"]);
    assert_eq!(bench.whole_log().await.len(), 5, "three entries and the two that take back");
    let page = bench.page(DRILL).await;
    assert!(find(&page, "Oiled", "point 1,").is_some());
    assert!(row(&page, "set-left", "2").contains("Oiled at 9:00"));

    // A browser that sends the old form anew does not bring back what was taken back.
    led(&bench.press(&whole, &[]).await);
    assert_eq!(bench.whole_log().await.len(), 5);
}

#[tokio::test]
async fn a_job_wakes_its_points_and_is_carried_by_every_form_and_link() {
    let bench = Bench::new().await;
    let page = bench.page("/?machine=drill&job=tapping&hours=90%20min").await;
    assert!(words(&page, ".balloon").contains(&"7".to_owned()));
    assert_eq!(words(&page, ".title-block dd")[1..3], ["Tapping", "1.5 h"]);
    for press in all(&page, "form[method=post]:not([action='/log/runs'])") {
        let page = Html::parse_fragment(&press.html());
        for (name, value) in [("machine", "drill"), ("job", "tapping"), ("hours", "90 min")] {
            assert_eq!(all(&page, &format!("input[name={name}][value='{value}']")).len(), 1, "{}", press.html());
        }
    }
    let oiled = form(&page, "Oiled", "point 7,");
    assert_eq!(led(&bench.press(&oiled, &[]).await), "/?machine=drill&job=tapping&hours=90%20min#stand-left");
    let to = all(&page, ".point-row-name a")[0].attr("href");
    assert_eq!(to, Some("/machines/drill/points/4?job=tapping&hours=90%20min"));
}

#[tokio::test]
async fn a_choice_that_cannot_be_is_told_beside_its_field() {
    let bench = Bench::new().await;
    let page = bench.page("/?machine=drill&job=threading&hours=two").await;
    assert_eq!(all(&page, "#choose-hours[aria-invalid=true]")[0].attr("value"), Some("two"));
    assert_eq!(
        words(&page, "#choose-hours-fault"),
        [
            "What was typed here is \"two\", which does not begin with a number; write it like \"3\", \"2.5 h\" or \"90 min\"."
        ]
    );
    assert_eq!(words(&page, "#choose-job-fault").len(), 1);
    assert_eq!(all(&page, "details[open] .filter").len(), 1, "the form is in sight");
    assert_eq!(words(&page, ".title-block dd")[1..3], ["Ordinary work", "3 h"], "the usual is taken meanwhile");
}

#[tokio::test]
async fn why_and_how_unfold_below() {
    let page = Bench::new().await.page(DRILL).await;
    let folds = words(&page, "main > div > .fold");
    let fold = |line: &str| folds.iter().find(|fold| fold.starts_with(line)).unwrap_or_else(|| panic!("no {line}"));
    assert!(fold("Why these points").contains("Never logged yet"));
    assert!(fold("How this was worked out").contains("The machine will run 3 h today."));
    assert!(fold("What to do when the work is done").contains("Write down how long it ran."));
}

#[tokio::test]
async fn when_nothing_is_left_it_says_so_calmly_and_the_run_can_be_logged() {
    let bench = Bench::new().await;
    let page = bench.page("/?machine=shaper").await;
    led(&bench.press(&form(&page, "The front is oiled", ""), &[]).await);
    let page = bench.page("/?machine=shaper").await;
    assert!(words(&page, "main > p").contains(&"Nothing is left to oil before this job.".to_owned()));
    assert!(find(&page, "Log the run", "").is_some());
}

#[tokio::test]
async fn the_first_machine_is_shown_when_none_is_named_and_an_unknown_one_is_not_found() {
    let bench = Bench::new().await;
    assert_eq!(words(&bench.page("/").await, ".title-block dd")[0], "Bench drill");
    let answer = bench.get("/?machine=shapr").await;
    assert_eq!(answer.status, 404);
    assert_eq!(words(&answer.page(), "h1"), ["There is no machine \"shapr\" here."]);
    let near = all(&answer.page(), "main a").iter().map(|a| a.text().collect::<String>()).next();
    assert_eq!(near.as_deref(), Some("Did you mean Hand shaper?"));
}

#[tokio::test]
async fn a_shop_without_a_machine_says_what_to_do_first() {
    let page = Bench::empty().await.page("/").await;
    assert!(words(&page, ".empty")[0].contains("chart import"));
}

#[tokio::test]
async fn every_kind_of_entry_that_the_page_writes_is_about_a_point_or_a_run() {
    let bench = Bench::new().await;
    let page = bench.page("/?machine=shaper").await;
    led(&bench.press(&form(&page, "Oiled", "point 1,"), &[]).await);
    led(&bench.press(&form(&page, "Log the run", ""), &[("hours", "2 h")]).await);
    let kinds: Vec<Kind> = bench.entries().await.iter().map(|entry| entry.said.body.kind()).collect();
    assert_eq!(kinds, [Kind::Dosed, Kind::Ran]);
}

#[tokio::test]
async fn a_sign_seen_before_the_oil_says_nothing_of_the_oil_to_come() {
    let bench = Bench::new().await;
    led(&bench.press(&form(&bench.page("/machines/drill/points/1").await, "Seen", ""), &[]).await);
    let page = bench.pass(5).page(DRILL).await;
    led(&bench.press(&form(&page, "Oiled", "point 1,"), &[]).await);
    let page = bench.page(DRILL).await;
    let row = row(&page, "set-left", "1");
    assert!(row.contains("Oiled at 9:05") && !row.contains("seen at"), "{row}");
    assert!(find(&page, "Seen", "point 1,").is_some());
}

#[tokio::test]
async fn an_old_form_sent_anew_does_not_write_what_it_left_out_the_first_time() {
    let bench = Bench::new().await;
    let stale = bench.page(DRILL).await;
    let whole = form(&stale, "The left side is oiled", "");
    led(&bench.press(&form(&stale, "Oiled", "point 2,"), &[]).await);
    led(&bench.press(&whole, &[]).await);
    assert_eq!(said(&bench.entries().await), ["2 dosed", "1 dosed", "3 dosed"], "point 2 had its oil already");
    for _ in 0..2 {
        let undo = form(&bench.pass(1).page(DRILL).await, "Undo", "Left side");
        led(&bench.press(&undo, &[]).await);
    }
    let before = bench.whole_log().await.len();
    led(&bench.press(&whole, &[]).await);
    assert_eq!(bench.whole_log().await.len(), before);
}

#[tokio::test]
async fn what_is_set_on_the_way_is_told_once_and_put_back_before_the_start() {
    let page = Bench::new().await.page(DRILL).await;
    let all = words(&page, "main").remove(0);
    assert!(all.contains("Set the machine: belt guard off"), "{all}");
    assert!(all.contains("Put back before it runs: belt guard."), "{all}");
    let place = |text: &str| all.find(text).unwrap_or_else(|| panic!("no {text}"));
    assert!(place("Now set the machine") < place("Put back before it runs"));
    assert!(place("Put back before it runs") < place("Guards on, sleeves tight"));
}

#[tokio::test]
async fn all_places_are_oiled_in_one_press_that_one_undo_takes_back() {
    let bench = Bench::new().await;
    let page = bench.page(DRILL).await;
    led(&bench.press(&form(&page, "All of these places are oiled", "5 points"), &[]).await);
    assert_eq!(said(&bench.entries().await).len(), 5);
    let page = bench.page(DRILL).await;
    assert!(find(&page, "All of these places are oiled", "").is_none());
    assert!(find(&page, "Seen", "point 6,").is_some(), "a look is not oil");
    led(&bench.press(&form(&page, "Undo", "Rear"), &[]).await);
    let counting = said(&bench.entries().await).into_iter().filter(|said| !said.ends_with("withdrawn")).count();
    assert_eq!(counting, 0);
}

#[tokio::test]
async fn a_short_morning_shows_what_matters_most_and_what_is_left_undone() {
    let bench = Bench::new().await;
    let page = bench.page("/?machine=drill&minutes=1").await;
    let said = words(&page, "main > p");
    assert!(said.iter().any(|said| said.starts_with("In 1 minute:") && said.ends_with("left undone.")), "{said:?}");
    let left = words(&page, ".steps").into_iter().find(|steps| steps.starts_with("Left undone"));
    assert!(left.is_some());
    assert_eq!(all(&page, "#short-minutes[value='1']").len(), 1);
    assert!(words(&page, "summary").contains(&"Short of time? 1 minute chosen".to_owned()));
    // The time travels with the acts, so that the choice stays while it is worked off.
    let chosen: Vec<String> = words(&page, ".balloon");
    let whole = all(&page, ".button-whole").len();
    assert!(whole > 0 && chosen.len() < 6, "{chosen:?}");
    let press = form(&page, "Oiled", "");
    assert!(led(&bench.press(&press, &[]).await).contains("minutes=1"));
    assert_eq!(words(&bench.page("/?machine=drill&minutes=1").await, ".balloon"), chosen);
    let wrong = bench.page("/?machine=drill&minutes=none").await;
    assert!(words(&wrong, "details[open] #short-minutes-fault")[0].contains("10 min"), "the form is in sight");
}

#[tokio::test]
async fn several_machines_stand_on_one_page_and_an_act_comes_back_to_it() {
    let bench = Bench::new().await;
    let page = bench.page("/?machine=shaper&with=drill").await;
    assert_eq!(words(&page, ".title-block dd")[0], "Bench drill and Hand shaper");
    // A browser sends ticked boxes one by one; the page is the same.
    let ticked = bench.page("/?machine=shaper&with=drill&with=").await;
    assert_eq!(words(&ticked, ".balloon"), words(&page, ".balloon"));
    assert_eq!(all(&page, "input[type=checkbox][name=with][value=drill][checked]").len(), 1);
    let ids: Vec<&str> = all(&page, "[id]").iter().filter_map(|element| element.attr("id")).collect();
    let mut once = ids.clone();
    once.sort_unstable();
    once.dedup();
    assert_eq!(once.len(), ids.len(), "each anchor is there once");
    let press = form(&page, "The rear is oiled", "");
    assert_eq!(led(&bench.press(&press, &[]).await), "/?machine=drill&with=shaper#drill-stand-rear");
    let back = bench.page("/?machine=drill&with=shaper").await;
    assert_eq!(words(&back, ".title-block dd")[0], "Bench drill and Hand shaper", "the order is the shop's");
    assert_eq!(bench.get("/?machine=drill&with=shapr").await.status, 404);
}

#[tokio::test]
async fn a_cold_shop_is_told_before_the_first_stand() {
    let bench = Bench::new().await;
    let page = bench.page("/?machine=drill&temperature=5%20C").await;
    let cold = words(&page, ".steps").into_iter().find(|steps| steps.starts_with("Too cold"));
    assert!(cold.is_some_and(|cold| cold.contains("6 Drip glass") && cold.contains("needle")));
    let warm = bench.page("/?machine=drill&temperature=68%20F").await;
    assert!(words(&warm, ".steps").iter().any(|steps| steps.starts_with("Not too cold")), "68 °F are 20 °C");
    let wrong = bench.page("/?machine=drill&temperature=5").await;
    assert_eq!(words(&wrong, "#choose-temperature-fault").len(), 1);
}

#[tokio::test]
async fn what_comes_due_in_the_middle_of_a_long_job_is_told_with_its_time() {
    let page = Bench::new().await.page("/?machine=shaper&hours=9").await;
    let steps = words(&page, ".steps");
    let later = steps.iter().find(|steps| steps.starts_with("In the middle of the job"));
    assert!(later.is_some_and(|later| later.contains("After 4 h of running")), "{steps:?}");
}
