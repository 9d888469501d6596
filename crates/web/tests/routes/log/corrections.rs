//! `GET` and `POST /log/corrections`: the right entry counts, the wrong one stays in sight.

use shop::logbook::Body;

use crate::ask::all;
use crate::bench::{Bench, find, form, led, words};

const LOG: &str = "/log?machine=drill";

/// The page that puts right the newest entry of the log.
async fn asks(bench: &Bench, about: &str) -> scraper::Html {
    let page = bench.page(LOG).await;
    let links = all(&page, &format!("a[aria-label^='Put right'][aria-label*='{about}']"));
    bench.page(links[0].attr("href").expect("a link has an address")).await
}

#[tokio::test]
async fn a_run_that_was_typed_wrong_is_put_right() {
    let bench = Bench::new().await;
    led(&bench.press(&form(&bench.page("/").await, "Log the run", ""), &[("hours", "13 h")]).await);
    let page = asks(bench.pass(10), "Ran").await;
    let right = [("hours", "3 h"), ("job", "tapping"), ("day", "2026-11-24"), ("clock", "16:05")];
    assert_eq!(led(&bench.press(&form(&page, "Put it right", ""), &right).await), LOG);
    let entries = bench.entries().await;
    let [entry] = &entries[..] else { panic!("one entry counts, not {}", entries.len()) };
    assert!(
        matches!(&entry.said.body, Body::Ran { hours, job: Some(job) } if hours.hours() == 3.0 && job.as_str() == "tapping")
    );
    // 16:05 in Berlin in November is 15:05 in UTC.
    assert_eq!(entry.said.happened.to_string(), "2026-11-24T15:05:00Z");
    assert_eq!(words(&bench.page(LOG).await, ".table tbody tr").len(), 1);
    let struck = words(&bench.page("/log?machine=drill&withdrawn=yes").await, ".table tbody tr");
    assert_eq!(struck.len(), 2);
    assert!(struck[0].contains("Ran 13 h") && struck[0].ends_with("put right"), "{}", struck[0]);
}

#[tokio::test]
async fn the_same_form_sent_twice_counts_once_and_an_old_one_is_answered() {
    let bench = Bench::new().await;
    led(&bench.press(&form(&bench.page("/").await, "Oiled", "point 1,"), &[]).await);
    let right = form(&asks(&bench, "Oiled").await, "Put it right", "");
    let other = form(&asks(&bench, "Oiled").await, "Put it right", "");
    led(&bench.press(&right, &[("amount", "5 drops")]).await);
    led(&bench.press(&right, &[("amount", "5 drops")]).await);
    assert_eq!(bench.whole_log().await.len(), 2);
    // Somebody else had the page open: the entry counts no more already.
    assert_eq!(bench.press(&other, &[("amount", "9 drops")]).await.status, 400);
    assert_eq!(bench.whole_log().await.len(), 2);
}

#[tokio::test]
async fn what_cannot_be_right_is_said_beside_its_question() {
    let bench = Bench::new().await;
    led(&bench.press(&form(&bench.page("/").await, "Log the run", ""), &[("hours", "2 h")]).await);
    let page = asks(&bench, "Ran").await;
    let sent = form(&page, "Put it right", "");
    for (name, typed, says) in [
        ("hours", "many", "does not begin with a number"),
        ("job", "knitting", "Choose one from the list"),
        ("day", "soon", "This is no day"),
        ("clock", "25:99", "no time of day"),
        ("day", "2026-11-26", "still to come"),
    ] {
        let answer = bench.press(&sent, &[(name, typed)]).await;
        assert_eq!(answer.status, 422, "{name} {typed}");
        let faults = words(&answer.page(), ".field-fault");
        assert!(faults.len() == 1 && faults[0].contains(says), "{name} {typed}: {faults:?}");
    }
    assert_eq!(bench.whole_log().await.len(), 1);
}

#[tokio::test]
async fn what_never_happened_can_still_be_taken_back() {
    let bench = Bench::new().await;
    led(&bench.press(&form(&bench.page("/").await, "Oiled", "point 1,"), &[]).await);
    let page = asks(&bench, "Oiled").await;
    let link = all(&page, "a[href^='/log/withdrawals']")[0].attr("href").expect("a link has an address").to_owned();
    led(&bench.press(&form(&bench.page(&link).await, "Take it back", ""), &[]).await);
    assert!(bench.entries().await.iter().all(|entry| entry.said.body == Body::Withdrawn));
    let gone = bench.page(&link.replace("withdrawals", "corrections")).await;
    assert!(find(&gone, "Put it right", "").is_none());
}
