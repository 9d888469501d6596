//! A snapshot at T sees only what was recorded by T, however much came later.

use ::shop::logbook::NewEntry;
use ::shop::snapshot::MachineSnapshot;
use store::Error;

use crate::shop::{CHART, Shop, dosed, id, minute, point, ran, withdrawn};

async fn machine(shop: &Shop, at: i64) -> MachineSnapshot {
    let snapshot = shop.store.snapshot_of(&[id("m")], minute(at)).await.expect("a whole file");
    assert_eq!(snapshot.moment.instant, minute(at));
    snapshot.machine(&id("m")).cloned().expect("the machine of the test")
}

fn entry_of(machine: &MachineSnapshot, at_point: &str) -> Option<i64> {
    machine.history(&id(at_point)).dosed.map(|mark| mark.entry.0)
}

#[tokio::test]
async fn an_entry_recorded_late_was_not_known_before() {
    let shop = Shop::with(&["m"]).await;
    shop.record(dosed(10, "a", "1")).await;
    // It happened at minute 20 and was written down at minute 60.
    shop.record(NewEntry { recorded: minute(60), ..dosed(20, "b", "1") }).await;
    assert_eq!(entry_of(&machine(&shop, 9).await, "1"), None);
    assert_eq!(entry_of(&machine(&shop, 10).await, "1"), Some(1));
    assert_eq!(entry_of(&machine(&shop, 59).await, "1"), Some(1));
    assert_eq!(entry_of(&machine(&shop, 60).await, "1"), Some(2));
}

#[tokio::test]
async fn a_withdrawal_counts_from_when_it_was_recorded() {
    let shop = Shop::with(&["m"]).await;
    shop.record(dosed(5, "a", "1")).await;
    let second = shop.record(dosed(10, "b", "1")).await;
    shop.record(withdrawn(40, "c", second, point("m", "1"))).await;
    assert_eq!(entry_of(&machine(&shop, 39).await, "1"), Some(2));
    assert_eq!(entry_of(&machine(&shop, 40).await, "1"), Some(1));
}

#[tokio::test]
async fn the_chart_then_in_force_is_the_one_that_is_seen() {
    let shop = Shop::with(&["m"]).await;
    let renamed = CHART.replace("Clapper pin", "Clapper box pin");
    assert_eq!(shop.store.add_chart(&id("m"), &renamed, minute(30), "keeper").await, Ok(2));
    shop.record(dosed(50, "late", "1")).await;
    let name = |machine: &MachineSnapshot| machine.chart.point(&id("2")).map(|point| point.name.clone());
    let (before, after) = (machine(&shop, 29).await, machine(&shop, 30).await);
    assert_eq!((before.revision, name(&before).as_deref()), (1, Some("Clapper pin")));
    assert_eq!((after.revision, name(&after).as_deref()), (2, Some("Clapper box pin")));
}

#[tokio::test]
async fn a_machine_is_not_there_before_its_chart() {
    let shop = Shop::with(&["m"]).await;
    shop.store.add_chart(&id("n"), CHART, minute(30), "keeper").await.expect("a chart without faults");
    let at = async |minutes| shop.store.snapshot(minute(minutes)).await.expect("a whole file").machines.len();
    assert_eq!((at(-1).await, at(29).await, at(30).await), (0, 1, 2));
    let early = shop.store.snapshot_of(&[id("m"), id("n")], minute(29)).await;
    assert!(matches!(early, Err(Error::NotFound(says)) if says.contains("\"n\"")));
    let none = shop.store.snapshot_of(&[], minute(30)).await.expect("a whole file");
    assert_eq!(none.machines.len(), 0);
}

#[tokio::test]
async fn runs_reach_back_to_the_oldest_last_dosing() {
    let shop = Shop::with(&["m"]).await;
    let hours = |machine: &MachineSnapshot| machine.runs.iter().map(|run| run.happened).collect::<Vec<_>>();
    shop.store.record(&[ran(5, "r/0"), ran(15, "r/1"), ran(25, "r/2")]).await.expect("entries that can be kept");
    assert_eq!(hours(&machine(&shop, 30).await), [], "nothing was ever dosed, so all is due anyway");
    shop.record(dosed(20, "d/0", "1")).await;
    assert_eq!(hours(&machine(&shop, 30).await), [minute(25)]);
    shop.record(dosed(10, "d/1", "2")).await;
    assert_eq!(hours(&machine(&shop, 30).await), [minute(15), minute(25)]);
    // Point 3 is not on this example, so its dosing does not reach further back.
    shop.record(dosed(1, "d/2", "3")).await;
    assert_eq!(hours(&machine(&shop, 30).await), [minute(15), minute(25)]);
    let run = shop.record(ran(28, "r/3")).await;
    shop.record(withdrawn(29, "w", run, ran(28, "").subject)).await;
    assert_eq!(hours(&machine(&shop, 28).await), [minute(15), minute(25), minute(28)]);
    assert_eq!(hours(&machine(&shop, 29).await), [minute(15), minute(25)]);
}
