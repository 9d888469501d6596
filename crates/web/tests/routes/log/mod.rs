//! `GET /log`, and the acts that write into it.

mod corrections;
mod csv;
mod obstacles;
mod reservoirs;
mod runs;
mod withdrawals;

use crate::ask::all;
use crate::bench::{Bench, form, led, words};

#[tokio::test]
async fn entries_are_told_in_words_newest_first() {
    let bench = Bench::new().await;
    led(&bench.press(&form(&bench.page("/").await, "Oiled", "point 3,"), &[]).await);
    led(&bench.press(&form(&bench.page("/").await, "Topped up", "point 4,"), &[]).await);
    let page = bench.pass(24 * 60 + 30).page("/").await;
    led(&bench.press(&form(&page, "Log the run", ""), &[("hours", "90 min"), ("job", "tapping")]).await);
    let rows = words(&bench.page("/log?machine=drill").await, ".table tbody tr");
    assert_eq!(
        rows,
        [
            "Today, 9:30 Bench drill Ran 1.5 h: Tapping",
            "Yesterday, 9:00 Bench drill , 4 Gear box Topped up: long spout; Circulating 68, the drum",
            "Yesterday, 9:00 Bench drill , 3 Quill Oiled: 2 strokes, short can; Way oil 68, the tin",
        ]
        .map(|row| format!("{row} not said Put right"))
    );
}

#[tokio::test]
async fn it_can_be_narrowed_to_a_machine_and_a_kind() {
    let bench = Bench::new().await;
    led(&bench.press(&form(&bench.page("/").await, "Oiled", "point 1,"), &[]).await);
    led(&bench.press(&form(&bench.page("/").await, "Seen", "point 1,"), &[]).await);
    led(&bench.press(&form(&bench.page("/?machine=shaper").await, "Oiled", "point 1,"), &[]).await);
    let rows = async |query: &str| words(&bench.page(&format!("/log{query}")).await, ".table tbody tr").len();
    assert_eq!(rows("?machine=drill").await, 2);
    assert_eq!(rows("?kind=dosed").await, 2);
    assert_eq!(rows("?machine=drill&kind=dosed").await, 1);
    assert_eq!(rows("?kind=drained").await, 0);
    // Two oils and a grease whose stock was taken in with the shelf, and the three acts.
    assert_eq!(rows("").await, 6);
    let page = bench.page("/log?machine=drill&kind=dosed").await;
    assert_eq!(words(&page, ".title-block dd"), ["Bench drill", "Oiled"]);
    assert_eq!(all(&page, "details[open] #kind option[selected]")[0].attr("value"), Some("dosed"));
    assert_eq!(bench.get("/log?machine=dril").await.status, 404);
}

#[tokio::test]
async fn a_long_log_is_turned_page_by_page_and_shows_each_entry_once() {
    let bench = Bench::new().await;
    for _ in 0..65 {
        let page = bench.pass(60).page("/?machine=shaper").await;
        led(&bench.press(&form(&page, "Log the run", ""), &[]).await);
    }
    let mut path = "/log?machine=shaper".to_owned();
    let mut seen = Vec::new();
    loop {
        let page = bench.page(&path).await;
        let here = all(&page, "a[aria-label^='Put right']");
        assert!(here.len() <= 30);
        seen.extend(here.iter().map(|link| link.attr("href").unwrap_or("").to_owned()));
        let older = all(&page, "main a.button").into_iter().find(|a| a.text().collect::<String>() == "Older entries");
        match older.and_then(|link| link.attr("href")) {
            Some(to) => path = to.to_owned(),
            None => break,
        }
    }
    let once: std::collections::HashSet<&String> = seen.iter().collect();
    assert_eq!((seen.len(), once.len()), (65, 65));
    assert_eq!(bench.get("/log?before=999999").await.status, 404);
}
