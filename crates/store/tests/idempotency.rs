//! The same key recorded twice is kept once: a form sent twice, a button pressed twice, two programs at once.

use store::{Store, Superseded, Wanted};

use crate::shop::{Shop, dosed, point, withdrawn};

async fn count(store: &Store) -> usize {
    let shown = Wanted { superseded: Superseded::Shown, ..Wanted::default() };
    store.entries(&shown).await.expect("a question that can be answered").len()
}

#[tokio::test]
async fn a_key_is_kept_once() {
    let shop = Shop::with(&["m"]).await;
    let act = [dosed(1, "k/0", "1"), dosed(1, "k/1", "2")];
    let ids = shop.store.record(&act).await.expect("entries that can be kept");
    assert_eq!(shop.store.record(&act).await, Ok(ids.clone()));
    // Half of it again, with something new and something twice.
    let mixed = [dosed(9, "k/1", "1"), dosed(2, "new", "1"), dosed(3, "new", "2")];
    let again = shop.store.record(&mixed).await.expect("entries that can be kept");
    assert_eq!(again[0], ids[1]);
    assert_eq!(again[1], again[2]);
    assert_eq!(count(&shop.store).await, 3);
    assert_eq!(shop.entry(ids[1]).await.said, act[1], "what was there stays");
    assert_eq!(shop.entry(again[1]).await.said, mixed[1], "the first of two counts");
}

#[tokio::test]
async fn a_withdrawal_sent_twice_is_no_conflict() {
    let shop = Shop::with(&["m"]).await;
    let first = shop.record(dosed(1, "a", "1")).await;
    let undo = withdrawn(2, "undo", first, point("m", "1"));
    let once = shop.record(undo.clone()).await;
    assert_eq!(shop.record(undo).await, once);
    assert_eq!(count(&shop.store).await, 2);
}

#[tokio::test]
async fn two_programs_with_one_key_keep_one_entry() {
    let shop = Shop::with(&["m"]).await;
    let other = Store::open(shop.address()).await.expect("two may have it open");
    let act = [dosed(1, "k/0", "1")];
    let (here, there) = tokio::join!(shop.store.record(&act), other.record(&act));
    assert_eq!(here, there);
    assert!(here.is_ok());
    assert_eq!(count(&shop.store).await, 1);
}
