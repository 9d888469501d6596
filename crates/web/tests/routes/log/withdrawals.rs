//! `GET` and `POST /log/withdrawals`: it is asked first, and taken back is not gone.

use shop::logbook::Kind;

use crate::ask::all;
use crate::bench::{Bench, Pressed, find, form, led, words};

/// The form that takes back the entry of this page that is about this, after the page that asks.
async fn asked(bench: &Bench, path: &str, about: &str) -> Pressed {
    let page = bench.page(path).await;
    let links = all(&page, &format!("a[aria-label^='Put right'][aria-label*='{about}']"));
    let entry = bench.page(links[0].attr("href").expect("a link has an address")).await;
    let links = all(&entry, "a[href^='/log/withdrawals']");
    let asks = bench.page(links[0].attr("href").expect("a link has an address")).await;
    form(&asks, "Take it back", "")
}

#[tokio::test]
async fn it_is_asked_first_and_nothing_is_taken_back_by_asking() {
    let bench = Bench::new().await;
    led(&bench.press(&form(&bench.page("/").await, "Oiled", "point 1,"), &[]).await);
    let page = bench.page("/log?machine=drill").await;
    assert!(find(&page, "Take it back", "").is_none());
    let path = format!("/log/withdrawals?from=log&machine=drill&entry={}", bench.entries().await[0].id);
    let asks = bench.page(&path).await;
    let told = words(&asks, "main").remove(0);
    assert!(told.contains("Take this back?") && told.contains("1 Upper bearing"), "{told}");
    assert!(!all(&asks, "a[href='/log?machine=drill']").is_empty(), "the way back");
    assert_eq!(bench.whole_log().await.len(), 1);
    led(&bench.press(&form(&asks, "Take it back", ""), &[]).await);
    let again = bench.page(&path).await;
    assert!(find(&again, "Take it back", "").is_none(), "it counts no more already");
}

#[tokio::test]
async fn on_the_page_of_a_point_it_comes_back_there() {
    let bench = Bench::new().await;
    led(&bench.press(&form(&bench.page("/").await, "Oiled", "point 1,"), &[]).await);
    let form = asked(&bench, "/machines/drill/points/1?hours=2", "Oiled").await;
    assert_eq!(led(&bench.press(&form, &[]).await), "/machines/drill/points/1?hours=2#history");
}

#[tokio::test]
async fn one_entry_is_taken_back_in_the_log_and_shown_struck_when_asked() {
    let bench = Bench::new().await;
    led(&bench.press(&form(&bench.page("/").await, "The left side is oiled", ""), &[]).await);
    let answer = bench.press(&asked(bench.pass(1), "/log?machine=drill", "Oiled: 3 drops").await, &[]).await;
    assert_eq!(led(&answer), "/log?machine=drill");
    let page = bench.page("/log?machine=drill").await;
    assert_eq!(all(&page, ".table tbody tr").len(), 2);
    assert!(all(&page, "s").is_empty());
    let page = bench.page("/log?machine=drill&withdrawn=yes").await;
    assert_eq!(all(&page, ".table tbody tr").len(), 3);
    let struck = words(&page, "s");
    assert!(struck.contains(&"Oiled: 3 drops, long spout; Circulating 68, the drum".to_owned()), "{struck:?}");
    let page = bench.page("/log?machine=drill&kind=withdrawn").await;
    let rows = words(&page, ".table tbody tr");
    assert_eq!(
        rows,
        [
            "Today, 9:01 Bench drill , 2 Lower bearing Taken back: oiled: 3 drops, long spout; Circulating 68, the drum not said"
        ]
    );
    assert!(find(&bench.page("/").await, "Oiled", "point 2,").is_some(), "it is due again");
}

#[tokio::test]
async fn an_entry_is_taken_back_once() {
    let bench = Bench::new().await;
    led(&bench.press(&form(&bench.page("/").await, "Oiled", "point 1,"), &[]).await);
    let first = asked(&bench, "/log?machine=drill", "Oiled").await;
    let second = asked(&bench, "/log?machine=drill", "Oiled").await;
    led(&bench.press(&first, &[]).await);
    led(&bench.press(&second, &[]).await);
    let log = bench.whole_log().await;
    assert_eq!(log.iter().filter(|entry| entry.said.body.kind() == Kind::Withdrawn).count(), 1);
}

#[tokio::test]
async fn what_is_not_there_cannot_be_taken_back() {
    let bench = Bench::new().await;
    led(&bench.press(&form(&bench.page("/").await, "Oiled", "point 1,"), &[]).await);
    let asked = asked(&bench, "/log?machine=drill", "Oiled").await;
    assert_eq!(bench.press(&asked, &[("entry", "4711")]).await.status, 404);
    assert_eq!(bench.press(&asked, &[("entry", "one")]).await.status, 400);
    assert_eq!(bench.get("/log/withdrawals?entry=4711").await.status, 404);
    assert_eq!(bench.entries().await.len(), 1);
}
