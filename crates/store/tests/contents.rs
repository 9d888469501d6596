//! What is in a reservoir or a greased point, held against walking the whole logbook from its beginning.

use std::collections::BTreeMap;

use ::shop::contents::{Contents, Fill};
use ::shop::id::Id;
use ::shop::logbook::{Body, Entry, EntryId, NewEntry, Subject};
use ::shop::snapshot::MachineSnapshot;
use jiff::Timestamp;
use proptest::prelude::*;
use proptest::sample::Index;
use store::{Superseded, Wanted};

use crate::shop::{Shop, entry, id, minute, point, withdrawn};

/// A box that is topped up at point 1, given doses at point 2 and looked at while running at point 3; a greased point 4; an oil hole 5.
const CHART: &str = r#"chart = 1
[machine]
name = "Drill"
[[reservoir]]
id = "box"
kind = "box"
[[reservoir]]
id = "sump"
kind = "sump"
[[point]]
id = "1"
name = "Box"
method = "bath"
reservoir = "box"
[[point]]
id = "2"
name = "Cup"
method = "cup"
reservoir = "box"
dose = "2 drops"
[[point]]
id = "3"
name = "Glass"
method = "bath"
reservoir = "box"
setup = ["running"]
[[point]]
id = "4"
name = "Grease cup"
method = "grease cup"
[[point]]
id = "5"
name = "Hole"
method = "oil hole"
"#;

async fn shop_with(machines: &[&str]) -> Shop {
    let shop = Shop::empty().await;
    for machine in machines {
        shop.store.add_chart(&id(machine), CHART, minute(0), "keeper").await.expect("a chart without faults");
    }
    shop
}

fn reservoir(of: &str) -> Subject {
    Subject::Reservoir(id("m"), id(of))
}

fn filled(oil: &str, amount: &str) -> Body {
    Body::Filled { oil: Some(id(oil)), amount: Some(amount.to_owned()) }
}

fn dosed(oil: Option<&str>) -> Body {
    Body::Dosed { oil: oil.map(id), can: oil.map(|_| id("can")), amount: None }
}

async fn machine(shop: &Shop, at: i64) -> MachineSnapshot {
    let snapshot = shop.store.snapshot(minute(at)).await.expect("a whole file");
    let only = shop.store.snapshot_of(&[id("m")], minute(at)).await.expect("a whole file");
    assert_eq!(snapshot.machine(&id("m")), only.machine(&id("m")), "one machine is as it is among all");
    only.machines.into_iter().next().expect("the machine of the test")
}

fn oils(contents: &Contents) -> Vec<(Option<&str>, usize)> {
    contents.fills.iter().map(|fill| (fill.oil.as_ref().map(Id::as_str), fill.times)).collect()
}

#[tokio::test]
async fn a_fill_after_a_draining_starts_anew_and_one_without_tops_up() {
    let shop = shop_with(&["m", "other"]).await;
    let fill = |at, key: &str, oil| entry(at, key, reservoir("box"), filled(oil, "1 L"));
    assert_eq!(machine(&shop, 1).await.contents, BTreeMap::new());
    shop.record(fill(10, "a", "old")).await;
    shop.record(fill(20, "b", "way-68")).await;
    shop.record(fill(30, "c", "way-68")).await;
    let first = machine(&shop, 40).await.contents(&id("box"));
    assert_eq!((first.drained, oils(&first)), (None, vec![(Some("old"), 1), (Some("way-68"), 2)]));
    assert_eq!((first.fills[1].first, first.fills[1].last), (minute(20), minute(30)));
    shop.record(entry(50, "d", reservoir("box"), Body::Drained { note: None })).await;
    let drained = machine(&shop, 55).await.contents(&id("box"));
    assert_eq!((drained.drained, drained.fills.len()), (Some(minute(50)), 0));
    // In the same minute, written down after the draining: it counts as after it.
    shop.record(fill(50, "e", "drum-68")).await;
    assert_eq!(oils(&machine(&shop, 60).await.contents(&id("box"))), [(Some("drum-68"), 1)]);
    // The other reservoir and the other machine know nothing of it.
    assert_eq!(machine(&shop, 60).await.contents(&id("sump")), Contents::default());
    let all = shop.store.snapshot(minute(60)).await.expect("a whole file");
    assert_eq!(all.machine(&id("other")).map(|machine| machine.contents.len()), Some(0));
}

#[tokio::test]
async fn topping_up_at_the_point_of_a_reservoir_fills_it_and_a_dose_or_a_look_does_not() {
    let shop = shop_with(&["m"]).await;
    for (number, (of, body)) in [
        ("1", dosed(Some("way-68"))),
        ("1", dosed(None)),
        ("2", dosed(Some("drum-68"))),
        ("3", dosed(Some("drum-68"))),
        ("4", dosed(Some("grease"))),
        ("5", dosed(Some("drum-68"))),
    ]
    .into_iter()
    .enumerate()
    {
        shop.record(entry(10 + number as i64, &format!("k/{number}"), point("m", of), body)).await;
    }
    let contents = machine(&shop, 30).await.contents;
    assert_eq!(contents.keys().map(Id::as_str).collect::<Vec<_>>(), ["4", "box"]);
    assert_eq!(oils(&contents[&id("box")]), [(Some("way-68"), 1)], "what says neither oil nor amount was a look");
    assert_eq!(oils(&contents[&id("4")]), [(Some("grease"), 1)]);
    shop.record(entry(40, "d", reservoir("box"), Body::Drained { note: None })).await;
    assert_eq!(machine(&shop, 40).await.contents(&id("box")).fills, []);
}

#[tokio::test]
async fn only_what_was_recorded_by_then_and_is_not_superseded_counts() {
    let shop = shop_with(&["m"]).await;
    let late = NewEntry { recorded: minute(60), ..entry(10, "a", reservoir("box"), filled("old", "1 L")) };
    shop.record(late).await;
    let drain = shop.record(entry(20, "b", reservoir("box"), Body::Drained { note: None })).await;
    let wrong = shop.record(entry(30, "c", reservoir("box"), filled("axle-90", "1 L"))).await;
    let right = NewEntry {
        supersedes: Some(wrong),
        recorded: minute(35),
        ..entry(30, "d", reservoir("box"), filled("way-68", "1 L"))
    };
    shop.record(right).await;
    shop.record(withdrawn(70, "e", drain, reservoir("box"))).await;
    let at = async |minutes| {
        let contents = machine(&shop, minutes).await.contents(&id("box"));
        let oils: Vec<String> = contents.fills.iter().filter_map(|fill| fill.oil.as_ref()).map(Id::to_string).collect();
        (contents.drained, oils)
    };
    assert_eq!(at(19).await, (None, vec![]));
    assert_eq!(at(30).await, (Some(minute(20)), vec!["axle-90".to_owned()]));
    assert_eq!(at(60).await, (Some(minute(20)), vec!["way-68".to_owned()]));
    // The draining never was: what went in before it is in still.
    assert_eq!(at(70).await, (None, vec!["old".to_owned(), "way-68".to_owned()]));
}

/// The contents as somebody works them out who reads the log from its beginning: by time, each draining empties.
fn walked(entries: &[Entry], at: Timestamp) -> BTreeMap<Id, Contents> {
    let is_known = |entry: &Entry| entry.said.recorded <= at;
    let is_out = |entry: &Entry| entries.iter().any(|other| is_known(other) && other.said.supersedes == Some(entry.id));
    let mut living: Vec<&Entry> = entries.iter().filter(|entry| is_known(entry) && !is_out(entry)).collect();
    living.sort_by_key(|entry| (entry.said.happened, entry.id));
    let mut all: BTreeMap<Id, Contents> = BTreeMap::new();
    for entry in living {
        let of = match &entry.said.subject {
            Subject::Reservoir(_, of) => of.clone(),
            Subject::Point(_, at) if at.as_str() == "1" => id("box"),
            Subject::Point(_, at) if at.as_str() == "4" => at.clone(),
            _ => continue,
        };
        let (oil, amount, can) = match &entry.said.body {
            Body::Drained { .. } => {
                all.insert(of, Contents { drained: Some(entry.said.happened), fills: Vec::new() });
                continue;
            }
            Body::Dosed { oil: None, amount: None, .. } => continue,
            Body::Dosed { oil, can, amount } => (oil.clone(), amount.clone(), can.clone()),
            Body::Filled { oil, amount } => (oil.clone(), amount.clone(), None),
            _ => continue,
        };
        let fills = &mut all.entry(of).or_default().fills;
        let when = entry.said.happened;
        match fills.iter_mut().find(|fill| (&fill.oil, &fill.amount, &fill.can) == (&oil, &amount, &can)) {
            Some(fill) => (fill.times, fill.last) = (fill.times + 1, when),
            None => fills.push(Fill { oil, amount, can, times: 1, first: when, last: when }),
        }
    }
    all
}

/// Something that a person writes down; `back` is how many minutes after it happened.
#[derive(Clone, Debug)]
enum Deed {
    Fill { of: usize, oil: usize, back: i64 },
    Drain { of: usize, back: i64 },
    Dose { at_point: usize, oil: usize, back: i64 },
    Take { which: Index },
    Mend { which: Index, oil: usize, back: i64 },
}

fn deed() -> impl Strategy<Value = Deed> {
    let back = || (0..8_i64).prop_map(|tens| tens * 10);
    prop_oneof![
        4 => (0..2_usize, 0..3_usize, back()).prop_map(|(of, oil, back)| Deed::Fill { of, oil, back }),
        2 => (0..2_usize, back()).prop_map(|(of, back)| Deed::Drain { of, back }),
        4 => (0..5_usize, 0..3_usize, back()).prop_map(|(at_point, oil, back)| Deed::Dose { at_point, oil, back }),
        1 => any::<Index>().prop_map(|which| Deed::Take { which }),
        1 => (any::<Index>(), 0..3_usize, back()).prop_map(|(which, oil, back)| Deed::Mend { which, oil, back }),
    ]
}

const OILS: [Option<&str>; 3] = [Some("way-68"), Some("drum-68"), None];

async fn holds(deeds: Vec<Deed>) {
    let shop = shop_with(&["m"]).await;
    let mut kept: Vec<NewEntry> = Vec::new();
    let mut out: Vec<usize> = Vec::new();
    for (number, deed) in deeds.iter().enumerate() {
        let (now, key) = ((number as i64 + 1) * 10, format!("law/{number}"));
        let said = |back: i64, subject: Subject, body: Body| NewEntry {
            happened: minute(now - back),
            ..entry(now, &key, subject, body)
        };
        let put_in = |oil: usize| Body::Filled { oil: OILS[oil].map(id), amount: None };
        let living: Vec<usize> = (0..kept.len()).filter(|at| !out.contains(at)).collect();
        let said = match deed {
            Deed::Fill { of, oil, back } => said(*back, reservoir(["box", "sump"][*of]), put_in(*oil)),
            Deed::Drain { of, back } => said(*back, reservoir(["box", "sump"][*of]), Body::Drained { note: None }),
            Deed::Dose { at_point, oil, back } => {
                said(*back, point("m", &(at_point + 1).to_string()), dosed(OILS[*oil]))
            }
            Deed::Take { .. } | Deed::Mend { .. } if living.is_empty() => continue,
            Deed::Take { which } | Deed::Mend { which, .. } => {
                let at = living[which.index(living.len())];
                out.push(at);
                let (subject, target) = (kept[at].subject.clone(), Some(EntryId(at as i64 + 1)));
                match deed {
                    Deed::Mend { oil, back, .. } if kept[at].subject.point().is_none() => {
                        NewEntry { supersedes: target, ..said(*back, subject, put_in(*oil)) }
                    }
                    _ => NewEntry { supersedes: target, ..said(0, subject, Body::Withdrawn) },
                }
            }
        };
        shop.record(said.clone()).await;
        kept.push(said);
    }
    let all = Wanted { most: usize::MAX, superseded: Superseded::Shown, ..Wanted::default() };
    let all = shop.store.entries(&all).await.expect("a question that can be answered");
    for step in 0..=deeds.len() as i64 + 1 {
        let seen = machine(&shop, step * 10).await.contents;
        let mut seen: BTreeMap<Id, Contents> = seen.into_iter().collect();
        let mut told = walked(&all, minute(step * 10));
        // What began in the same minute has no order that matters.
        for contents in seen.values_mut().chain(told.values_mut()) {
            contents.fills.sort_by(|a, b| (&a.oil, &a.amount, &a.can).cmp(&(&b.oil, &b.amount, &b.can)));
        }
        assert_eq!(seen, told, "at minute {}", step * 10);
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 24, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn the_contents_are_what_walking_the_logbook_says(deeds in prop::collection::vec(deed(), 1..24)) {
        let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build().expect("a runtime");
        runtime.block_on(holds(deeds));
    }
}
