//! The projection follows the logbook; a withdrawal brings back what was before.

use ::shop::logbook::{BatchKey, Body, NewEntry};
use ::shop::snapshot::{PointHistory, ShopSnapshot};

use crate::shop::{Shop, dosed, entry, id, minute, point, withdrawn};

fn history(snapshot: &ShopSnapshot, at_point: &str) -> PointHistory {
    snapshot.machine(&id("m")).expect("the machine of the test").history(&id(at_point))
}

#[tokio::test]
async fn the_last_of_each_kind_is_kept_apart() {
    let shop = Shop::with(&["m"]).await;
    let not_reached = Body::NotReached { reason: "cover".into() };
    let acts = [
        dosed(10, "a", "1"),
        entry(11, "b", point("m", "1"), Body::SignSeen { note: None }),
        entry(12, "c", point("m", "1"), Body::SignMissing { note: None }),
        entry(13, "d", point("m", "1"), not_reached),
        // Recorded last, happened first.
        NewEntry { recorded: minute(20), ..dosed(5, "e", "1") },
    ];
    let ids = shop.store.record(&acts).await.expect("entries that can be kept");
    let snapshot = shop.store.snapshot(minute(30)).await.expect("a whole file");
    let PointHistory { dosed, sign_seen, sign_missing, not_reached } = history(&snapshot, "1");
    let marks = [dosed, sign_seen, sign_missing].map(|mark| mark.expect("each was recorded"));
    let (mark, reason) = not_reached.expect("it was recorded");
    assert_eq!(marks.map(|mark| mark.entry), ids[..3]);
    assert_eq!((mark.entry, reason.as_str()), (ids[3], "cover"));
    assert_eq!((mark.by.as_str(), mark.key.as_str(), mark.happened), ("helper", "d", minute(13)));
    assert_eq!(history(&snapshot, "2"), PointHistory::default());
}

#[tokio::test]
async fn undoing_a_batch_brings_back_what_was_before() {
    let shop = Shop::with(&["m"]).await;
    shop.store.record(&[dosed(10, "a/0", "1"), dosed(11, "a/1", "2")]).await.expect("entries that can be kept");
    let before = shop.store.snapshot(minute(15)).await.expect("a whole file").machines;
    shop.store.record(&[dosed(20, "b/0", "1"), dosed(21, "b/1", "2")]).await.expect("entries that can be kept");
    assert_ne!(shop.store.snapshot(minute(25)).await.expect("a whole file").machines, before);
    let batch = shop.store.batch(&BatchKey::new("b").expect("a key")).await.expect("a whole file");
    let undo: Vec<NewEntry> = batch
        .iter()
        .enumerate()
        .map(|(n, done)| withdrawn(30, &format!("undo-b/{n}"), done.id, done.said.subject.clone()))
        .collect();
    assert_eq!(undo.len(), 2);
    shop.store.record(&undo).await.expect("entries that can be kept");
    assert_eq!(shop.store.snapshot(minute(35)).await.expect("a whole file").machines, before);
    assert_eq!(shop.store.verify_due().await, Ok(vec![]));
}

#[tokio::test]
async fn a_correction_replaces_even_when_it_happened_earlier() {
    let shop = Shop::with(&["m"]).await;
    let wrong = shop.record(dosed(20, "a", "1")).await;
    let right = shop.record(NewEntry { supersedes: Some(wrong), recorded: minute(25), ..dosed(12, "b", "1") }).await;
    let snapshot = shop.store.snapshot(minute(30)).await.expect("a whole file");
    assert_eq!(history(&snapshot, "1").dosed.map(|mark| mark.entry), Some(right));
    // A correction may move the act to another point.
    let moved = NewEntry { supersedes: Some(right), recorded: minute(26), ..dosed(12, "c", "2") };
    let moved = shop.record(moved).await;
    let snapshot = shop.store.snapshot(minute(30)).await.expect("a whole file");
    assert_eq!(history(&snapshot, "1"), PointHistory::default());
    assert_eq!(history(&snapshot, "2").dosed.map(|mark| mark.entry), Some(moved));
    assert_eq!(shop.store.verify_due().await, Ok(vec![]));
}

#[tokio::test]
async fn a_projection_that_was_tampered_with_is_found_out() {
    let shop = Shop::with(&["m"]).await;
    let acts = [dosed(10, "a", "1"), dosed(20, "b", "1"), dosed(20, "c", "2")];
    shop.store.record(&acts).await.expect("entries that can be kept");
    shop.tamper("UPDATE due SET entry = 1 WHERE point = '1'").await.expect("SQL");
    shop.tamper("DELETE FROM due WHERE point = '2'").await.expect("SQL");
    let says = shop.store.verify_due().await.expect("a whole file");
    assert_eq!(says.len(), 2, "{says:?}");
    assert!(
        says[0].contains("point \"1\"") && says[0].contains("entry 1 ") && says[0].contains("entry 2 "),
        "{says:?}"
    );
    assert!(says[1].contains("point \"2\"") && says[1].contains("kept as none"), "{says:?}");
}
