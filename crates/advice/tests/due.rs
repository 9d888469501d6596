//! When a point is due, clock by clock.

use advice::round::Due;

use crate::bench::{Bench, points};

const NOW: &str = "2026-11-25T09:00";

fn one(every: &str) -> Bench {
    Bench::new(&format!(
        "[[job]]\nid = \"threading\"\nname = \"Threading\"\n[[job]]\nid = \"back-gear\"\nname = \"Back gear\"\n\
         [[point]]\nid = \"1\"\nname = \"Quill\"\nmethod = \"oil hole\"\ndose = \"3 drops\"\nsign = \"oil sinks\"\nevery = {every}\n"
    ))
}

#[track_caller]
fn is_due(bench: &Bench, hours: f64) -> bool {
    bench.left(NOW, hours, None) == ["1"]
}

#[test]
fn a_point_never_logged_is_due() {
    assert!(is_due(&one("\"1 year\""), 1.0));
}

#[test]
fn a_point_without_an_interval_is_never_due_and_says_so() {
    let bench = one("[]");
    assert!(!is_due(&bench, 1.0));
    assert!(
        bench.round(NOW, 1.0, None).assumed.iter().any(|a| matches!(a, advice::working::Assumption::NoInterval(_)))
    );
}

#[test]
fn hours_since_and_hours_planned_must_exceed_the_interval() {
    let mut bench = one("\"4 h\"");
    bench.dosed("1", "2026-11-24T08:00");
    assert!(!is_due(&bench, 4.0), "four hours planned do not exceed four");
    assert!(is_due(&bench, 4.5));
    let mut bench = one("\"8 h\"");
    bench.dosed("1", "2026-11-23T08:00").ran("2026-11-23T12:00", 3.0, None).ran("2026-11-24T12:00", 2.0, None);
    assert!(!is_due(&bench, 3.0));
    assert!(is_due(&bench, 3.25));
}

#[test]
fn oil_given_before_a_long_job_is_given_once_a_round() {
    let mut bench = one("\"4 h\"");
    bench.dosed("1", "2026-11-25T08:00");
    assert!(!is_due(&bench, 9.0), "what was oiled in this session is not called for again before the start");
    bench.ran("2026-11-25T08:30", 0.5, None);
    assert!(is_due(&bench, 9.0), "a run ends the session");
}

#[test]
fn hours_before_the_oil_do_not_count() {
    let mut bench = one("\"4 h\"");
    bench.ran("2026-11-24T12:00", 9.0, None).dosed("1", "2026-11-24T13:00");
    assert!(!is_due(&bench, 3.0));
}

#[test]
fn a_use_is_a_run_and_today_s_counts() {
    let mut bench = one("\"1 use\"");
    bench.dosed("1", "2026-11-25T08:30");
    assert!(!is_due(&bench, 3.0), "oiled this morning and not yet used");
    bench.ran("2026-11-25T08:55", 0.4, None);
    assert!(is_due(&bench, 3.0), "used since");
    let mut bench = one("\"3 uses\"");
    bench.dosed("1", "2026-11-20T08:00").ran("2026-11-20T12:00", 1.0, None).ran("2026-11-21T12:00", 1.0, None);
    assert!(!is_due(&bench, 1.0), "today's is the third");
    bench.ran("2026-11-22T12:00", 1.0, None);
    assert!(is_due(&bench, 1.0));
}

#[test]
fn a_run_that_nobody_logged_is_counted_from_the_next_day() {
    let mut bench = one("\"1 use\"");
    bench.dosed("1", "2026-11-24T16:00");
    let round = bench.round(NOW, 3.0, None);
    assert!(matches!(points(round.value()).next().map(|p| p.due.as_slice()), Some([Due::EarlierDay { .. }])));
}

#[test]
fn a_week_is_seven_days_on_the_shop_s_calendar() {
    let mut bench = one("\"1 week\"");
    bench.dosed("1", "2026-11-18T17:00");
    assert!(is_due(&bench, 1.0), "the same weekday, though not the same hour");
    bench.dosed("1", "2026-11-19T07:00");
    assert!(!is_due(&bench, 1.0));
}

#[test]
fn months_go_by_the_calendar() {
    let mut bench = one("\"6 months\"");
    bench.dosed("1", "2026-05-25T12:00");
    assert!(is_due(&bench, 1.0));
    bench.dosed("1", "2026-05-26T12:00");
    assert!(!is_due(&bench, 1.0));
}

#[test]
fn whichever_comes_first() {
    let mut bench = one("[\"1 year\", \"4 h\"]");
    bench.dosed("1", "2026-11-24T08:00").ran("2026-11-24T12:00", 3.5, None);
    assert!(is_due(&bench, 1.0));
}

#[test]
fn a_job_wakes_its_points_and_only_its_runs_wear_them() {
    let mut bench = one("\"1 use\"\njob = \"threading\"");
    assert!(bench.left(NOW, 2.0, None).is_empty(), "asleep without its job");
    assert_eq!(bench.round(NOW, 2.0, None).value().asleep, 1);
    assert!(bench.left(NOW, 2.0, Some("back-gear")).is_empty());
    assert_eq!(bench.left(NOW, 2.0, Some("threading")), ["1"]);
    bench.dosed("1", "2026-11-25T07:00").ran("2026-11-25T08:00", 1.0, Some("back-gear"));
    assert!(bench.left(NOW, 2.0, Some("threading")).is_empty(), "another job does not use it");
    bench.ran("2026-11-25T08:30", 0.5, None);
    assert_eq!(bench.left(NOW, 2.0, Some("threading")), ["1"], "a run of which nobody said what was done may have");
}

#[test]
fn an_option_hides_the_points_of_other_examples() {
    let option = "[[option]]\nid = \"feed\"\nquestion = \"?\"\nchoices = [\"hand\", \"power\"]\nhere = \"hand\"\n";
    let point = |id: &str, choice: &str| {
        format!(
            "[[point]]\nid = \"{id}\"\nname = \"n\"\nmethod = \"cup\"\nevery = \"1 use\"\nwhen = {{ feed = \"{choice}\" }}\n"
        )
    };
    let chart = format!("{option}{}{}", point("1", "hand"), point("2", "power"));
    assert_eq!(Bench::new(&chart).left(NOW, 1.0, None), ["1"]);
    let open = chart.replace("here = \"hand\"\n", "");
    assert_eq!(Bench::new(&open).left(NOW, 1.0, None), ["1", "2"], "not settled: both");
}

#[test]
fn an_open_finding_shortens_the_interval_until_it_is_settled() {
    let finding = "[[finding]]\nid = \"F1\"\nkind = \"missing\"\nof = [\"1\"]\ninterval = \"1 day\"\n";
    let point = "[[point]]\nid = \"1\"\nname = \"n\"\nmethod = \"cup\"\nevery = \"1 month\"\n";
    let mut open = Bench::new(&format!("{point}{finding}"));
    open.dosed("1", "2026-11-24T12:00");
    assert!(is_due(&open, 1.0));
    let mut settled = Bench::new(&format!("{point}{finding}settled = \"new cap fitted\"\n"));
    settled.dosed("1", "2026-11-24T12:00");
    assert!(!is_due(&settled, 1.0));
}

#[test]
fn a_hole_of_unknown_purpose_is_never_in_the_round_until_it_is_settled() {
    let point = "[[point]]\nid = \"1\"\nname = \"n\"\nmethod = \"oil hole\"\nevery = \"1 use\"\n";
    let finding = "[[finding]]\nid = \"F1\"\nkind = \"hole\"\nof = [\"1\"]\n";
    let open = Bench::new(&format!("{point}{finding}"));
    assert!(open.left(NOW, 1.0, None).is_empty());
    assert!(
        open.round(NOW, 1.0, None).assumed.iter().any(|a| matches!(a, advice::working::Assumption::UnknownHole(_)))
    );
    assert!(is_due(&Bench::new(&format!("{point}{finding}settled = \"traced to the quill\"\n")), 1.0));
}

#[test]
fn a_look_is_made_when_its_sign_was_seen_and_not_by_oil() {
    let mut bench = Bench::new(
        "[[point]]\nid = \"1\"\nname = \"Sight glass\"\nmethod = \"circulating pump\"\nsetup = [\"running\"]\nsign = \"a stream\"\nevery = \"1 use\"\n",
    );
    bench.dosed("1", "2026-11-25T08:00");
    assert!(is_due(&bench, 1.0));
    let mark = bench.mark("2026-11-25T08:10");
    bench.history("1").sign_seen = Some(mark);
    assert!(!is_due(&bench, 1.0));
}

#[test]
fn oil_given_leaves_the_sign_unseen() {
    let mut bench = one("\"1 use\"");
    bench.dosed("1", "2026-11-25T08:30");
    let round = bench.round(NOW, 3.0, None);
    let point = points(round.value()).next().expect("done points stay on the page");
    assert!(point.is_done());
    assert!(point.progress.sign_seen.is_none());
}

#[test]
fn a_point_that_could_not_be_reached_stays_due_with_its_reason() {
    let mut bench = one("\"1 use\"");
    let mark = bench.mark("2026-11-25T08:40");
    bench.history("1").not_reached = Some((mark, "cover stuck".to_owned()));
    let round = bench.round(NOW, 3.0, None);
    let point = points(round.value()).next().expect("still due");
    assert!(!point.is_done());
    assert_eq!(point.progress.not_reached.as_ref().map(|(_, reason)| reason.as_str()), Some("cover stuck"));
}
