//! `POST /log/withdrawals`: taken back is not gone.

use shop::logbook::Kind;

use crate::ask::all;
use crate::bench::{Bench, find, form, led, words};

#[tokio::test]
async fn one_entry_is_taken_back_in_the_log_and_shown_struck_when_asked() {
    let bench = Bench::new().await;
    led(&bench.press(&form(&bench.page("/").await, "The left side is oiled", ""), &[]).await);
    let page = bench.pass(1).page("/log?machine=drill").await;
    let answer = bench.press(&form(&page, "Take it back", "Oiled: 3 drops"), &[]).await;
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
    let (first, second) = (bench.page("/log?machine=drill").await, bench.page("/log?machine=drill").await);
    led(&bench.press(&form(&first, "Take it back", "Oiled"), &[]).await);
    led(&bench.press(&form(&second, "Take it back", "Oiled"), &[]).await);
    let log = bench.whole_log().await;
    assert_eq!(log.iter().filter(|entry| entry.said.body.kind() == Kind::Withdrawn).count(), 1);
}

#[tokio::test]
async fn what_is_not_there_cannot_be_taken_back() {
    let bench = Bench::new().await;
    led(&bench.press(&form(&bench.page("/").await, "Oiled", "point 1,"), &[]).await);
    let asked = form(&bench.page("/log?machine=drill").await, "Take it back", "Oiled");
    assert_eq!(bench.press(&asked, &[("entry", "4711")]).await.status, 404);
    assert_eq!(bench.press(&asked, &[("entry", "one")]).await.status, 400);
    assert_eq!(bench.entries().await.len(), 1);
}
