//! `GET /log/csv`: every entry of the choice once, in a form that a spreadsheet reads and takes for no formula.

use crate::bench::{Bench, form, led};

async fn rows(bench: &Bench, query: &str) -> Vec<csv::StringRecord> {
    let answer = bench.get(&format!("/log/csv{query}")).await;
    assert_eq!(answer.header("content-type"), "text/csv; charset=utf-8");
    assert!(answer.header("content-disposition").contains("log.csv"));
    let mut reader = csv::Reader::from_reader(answer.bytes());
    reader.records().map(|row| row.expect("RFC 4180")).collect()
}

#[tokio::test]
async fn it_holds_what_was_chosen_and_no_formula() {
    let bench = Bench::new().await;
    led(&bench.press(&form(&bench.page("/").await, "The left side is oiled", ""), &[]).await);
    let reason = [("point", "4"), ("reason", "=HYPERLINK(\"x\"), \"quoted\"")];
    led(&bench.press(&form(&bench.pass(1).page("/").await, "Not reached", ""), &reason).await);
    let all = rows(&bench, "?machine=drill").await;
    assert_eq!(all.len(), bench.entries().await.len());
    let (at, place, what) = (&all[0][1], &all[0][4], &all[0][6]);
    assert_eq!((at, place), ("2026-11-25T09:01:00+01:00", "4"));
    assert_eq!(what, "Not reached: =HYPERLINK(\"x\"), \"quoted\"");
    assert_eq!(rows(&bench, "?machine=drill&kind=not+reached").await.len(), 1);
    assert_eq!(rows(&bench, "?machine=drill&to_day=2026-11-24").await.len(), 0);
    assert_eq!(rows(&bench, "?machine=drill&from_day=2026-11-25").await.len(), all.len());
    assert_eq!(bench.get("/log/csv?machine=dril").await.status, 404);
}

#[tokio::test]
async fn a_note_that_looks_like_a_formula_is_guarded() {
    let bench = Bench::new().await;
    let page = bench.page("/log/reservoirs?machine=drill&kind=note").await;
    led(&bench.press(&form(&page, "Write it down", ""), &[("text", "=1+1")]).await);
    assert_eq!(&rows(&bench, "?machine=drill").await[0][6], "'=1+1");
}

#[tokio::test]
async fn it_is_as_long_as_the_log() {
    let bench = Bench::new().await;
    for _ in 0..40 {
        led(&bench.press(&form(&bench.pass(60).page("/?machine=shaper").await, "Log the run", ""), &[]).await);
    }
    assert_eq!(rows(&bench, "?machine=shaper").await.len(), 40, "the page shows thirty");
}
