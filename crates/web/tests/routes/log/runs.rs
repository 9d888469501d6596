//! `POST /log/runs`.

use shop::logbook::Body;

use crate::ask::all;
use crate::bench::{Bench, find, form, led, words};

#[tokio::test]
async fn a_run_ends_the_session_and_the_next_round_counts_from_it() {
    let bench = Bench::new().await;
    led(&bench.press(&form(&bench.page("/?machine=shaper").await, "Oiled", "point 1,"), &[]).await);
    let page = bench.pass(120).page("/?machine=shaper&hours=2").await;
    let answer = bench.press(&form(&page, "Log the run", ""), &[("hours", "90 min")]).await;
    assert_eq!(led(&answer), "/?machine=shaper&hours=2");
    let Body::Ran { hours, job } = &bench.entries().await[1].said.body else { panic!("a run") };
    assert!((hours.hours() - 1.5).abs() < 1e-9 && job.is_none());
    let page = bench.pass(1).page("/?machine=shaper").await;
    assert!(find(&page, "Oiled", "point 1,").is_some(), "used once since the last oil");
}

#[tokio::test]
async fn the_job_goes_with_the_run() {
    let bench = Bench::new().await;
    let page = bench.page("/?machine=drill&job=tapping").await;
    let answer = bench.press(&form(&page, "Log the run", ""), &[]).await;
    assert_eq!(led(&answer), "/?machine=drill&job=tapping");
    let Body::Ran { job, .. } = &bench.entries().await[0].said.body else { panic!("a run") };
    assert_eq!(job.as_ref().map(|job| job.as_str()), Some("tapping"));
}

#[tokio::test]
async fn hours_that_are_none_come_back_as_they_were_typed_and_nothing_is_written() {
    let bench = Bench::new().await;
    let asked = form(&bench.page("/?machine=drill&job=tapping").await, "Log the run", "");
    for hours in ["two", "", "0", "-3", "25", "3 L", "1,000"] {
        let answer = bench.press(&asked, &[("hours", hours)]).await;
        assert_eq!(answer.status, 422, "{hours}");
        let page = answer.page();
        assert_eq!(all(&page, "#ran-hours[aria-invalid=true]")[0].attr("value"), Some(hours));
        assert_eq!(words(&page, "#ran-hours-fault").len(), 1, "{hours}");
        assert_eq!(all(&page, "#ran-job option[selected]")[0].attr("value"), Some("tapping"), "{hours}");
    }
    let answer = bench.press(&asked, &[("hours", "3"), ("job", "threading")]).await;
    assert_eq!(words(&answer.page(), "#ran-job-fault").len(), 1);
    assert!(bench.entries().await.is_empty());
    // The form that came back can be mended and sent.
    led(&bench.press(&form(&answer.page(), "Log the run", ""), &[("job", "")]).await);
    assert_eq!(bench.entries().await.len(), 1);
}

#[tokio::test]
async fn a_machine_that_is_not_there_runs_not() {
    let bench = Bench::new().await;
    let asked = form(&bench.page("/").await, "Log the run", "");
    for machine in ["lathe", ""] {
        assert_eq!(bench.press(&asked, &[("machine", machine)]).await.status, 404, "{machine}");
    }
    assert!(bench.entries().await.is_empty());
}
