//! What holds after any sequence of recording, correcting, withdrawing and charting.

use std::collections::BTreeMap;

use ::shop::logbook::{Body, Entry, EntryId, Kind, NewEntry, Subject};
use ::shop::snapshot::{MachineSnapshot, ShopSnapshot};
use proptest::prelude::*;
use proptest::sample::Index;
use store::{Error, Superseded, Wanted};

use crate::shop::{CHART, Shop, entry, id, minute, point, ran, withdrawn};

/// One thing that a person does; `back` is how many minutes after it happened it is written down.
#[derive(Clone, Debug)]
enum Deed {
    Act { at_point: usize, kind: usize, back: i64 },
    Run { back: i64 },
    Correct { which: Index, at_point: usize, back: i64 },
    Withdraw { which: Index },
    Chart { other: bool },
}

fn deed() -> impl Strategy<Value = Deed> {
    let back = || 0..200_i64;
    prop_oneof![
        6 => (0..3_usize, 0..4_usize, back()).prop_map(|(at_point, kind, back)| Deed::Act { at_point, kind, back }),
        2 => back().prop_map(|back| Deed::Run { back }),
        2 => (any::<Index>(), 0..3_usize, back())
            .prop_map(|(which, at_point, back)| Deed::Correct { which, at_point, back }),
        2 => any::<Index>().prop_map(|which| Deed::Withdraw { which }),
        1 => any::<bool>().prop_map(|other| Deed::Chart { other }),
    ]
}

fn body(kind: usize) -> Body {
    match kind {
        0 => Body::Dosed { oil: None, can: None, amount: None },
        1 => Body::SignSeen { note: None },
        2 => Body::SignMissing { note: None },
        _ => Body::NotReached { reason: "stuck".into() },
    }
}

const POINTS: [&str; 3] = ["1", "2", "3"];

/// Does a deed at a minute; a correction or withdrawal of what is already superseded must be refused.
async fn done(shop: &Shop, deed: &Deed, number: usize, now: i64, kept: &mut Vec<(NewEntry, bool)>) {
    let late = |back: i64, said: NewEntry| NewEntry { happened: minute(now - back), ..said };
    let key = format!("law/{number}");
    let target = |which: &Index| (!kept.is_empty()).then(|| which.index(kept.len()));
    let (said, target) = match deed {
        Deed::Chart { other } => {
            let text = if *other { CHART.replace("\"oil holes\"\n", "\"plunger pump\"\n") } else { CHART.to_owned() };
            shop.store.add_chart(&id("m"), &text, minute(now), "keeper").await.expect("a chart without faults");
            return;
        }
        Deed::Act { at_point, kind, back } => {
            (late(*back, entry(now, &key, point("m", POINTS[*at_point]), body(*kind))), None)
        }
        Deed::Run { back } => (late(*back, ran(now, &key)), None),
        Deed::Correct { which, at_point, back } => {
            let Some(target) = target(which) else { return };
            let old = &kept[target].0;
            let subject = match &old.subject {
                Subject::Point(..) => point("m", POINTS[*at_point]),
                other => other.clone(),
            };
            let said = late(*back, entry(now, &key, subject, old.body.clone()));
            (NewEntry { supersedes: Some(EntryId(target as i64 + 1)), ..said }, Some(target))
        }
        Deed::Withdraw { which } => {
            let Some(target) = target(which) else { return };
            (withdrawn(now, &key, EntryId(target as i64 + 1), kept[target].0.subject.clone()), Some(target))
        }
    };
    let outcome = shop.store.record(std::slice::from_ref(&said)).await;
    if target.is_some_and(|target| kept[target].1) {
        assert!(matches!(outcome, Err(Error::Conflict(_))), "{outcome:?}");
        return;
    }
    kept.push((said, false));
    assert_eq!(outcome, Ok(vec![EntryId(kept.len() as i64)]));
    if let Some(target) = target {
        kept[target].1 = true;
    }
}

/// The last living acts and the runs, told from all entries in the plainest way.
fn told(entries: &[Entry], machine: &MachineSnapshot) {
    let mut living: Vec<&Entry> = entries.iter().filter(|entry| entry.superseded_by.is_none()).collect();
    living.sort_by_key(|entry| (entry.said.happened, entry.id));
    let mut last: BTreeMap<(String, Kind), EntryId> = BTreeMap::new();
    for entry in &living {
        let kind = entry.said.body.kind();
        if let (Some(point), false) = (entry.said.subject.point(), kind == Kind::Withdrawn) {
            last.insert((point.to_string(), kind), entry.id);
        }
    }
    let mut seen = BTreeMap::new();
    for (point, history) in &machine.points {
        let not_reached = history.not_reached.as_ref().map(|(mark, _)| mark);
        let marks = [
            (Kind::Dosed, history.dosed.as_ref()),
            (Kind::SignSeen, history.sign_seen.as_ref()),
            (Kind::SignMissing, history.sign_missing.as_ref()),
            (Kind::NotReached, not_reached),
        ];
        let marks = marks.into_iter().filter_map(|(kind, mark)| Some(((point.to_string(), kind), mark?.entry)));
        seen.extend(marks);
    }
    assert_eq!(seen, last);
    let here = machine.chart.points_here().filter_map(|point| machine.points.get(&point.id)?.dosed.as_ref());
    let oldest = here.map(|mark| mark.happened).min();
    let ran = living.iter().filter(|entry| entry.said.body.kind() == Kind::Ran);
    let ran = ran.map(|entry| entry.said.happened).filter(|at| oldest.is_some_and(|oldest| *at >= oldest));
    assert_eq!(machine.runs.iter().map(|run| run.happened).collect::<Vec<_>>(), ran.collect::<Vec<_>>());
}

async fn holds(deeds: Vec<Deed>) {
    let shop = Shop::with(&["m"]).await;
    let mut kept = Vec::new();
    let mut seen: Vec<ShopSnapshot> = Vec::new();
    for (number, deed) in deeds.iter().enumerate() {
        let now = (number as i64 + 1) * 10;
        done(&shop, deed, number, now, &mut kept).await;
        assert_eq!(shop.store.verify_due().await, Ok(vec![]), "after {deed:?}");
        seen.push(shop.store.snapshot(minute(now)).await.expect("a whole file"));
    }
    let all = Wanted { most: usize::MAX, superseded: Superseded::Shown, ..Wanted::default() };
    let all = shop.store.entries(&all).await.expect("a question that can be answered");
    assert_eq!(all.len(), kept.len(), "what was refused left nothing behind");
    if let Some(last) = seen.last() {
        told(&all, &last.machines[0]);
    }
    // One more entry, so that no snapshot below can be taken from the projection.
    let end = (deeds.len() as i64 + 1) * 10;
    shop.record(entry(end, "end", Subject::Machine(id("m")), Body::Note { text: "end".into() })).await;
    for snapshot in seen {
        let replayed = shop.store.snapshot(snapshot.moment.instant).await;
        assert_eq!(replayed, Ok(snapshot), "replayed from the logbook");
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 24, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn the_projection_and_the_logbook_agree_at_every_moment(deeds in prop::collection::vec(deed(), 1..24)) {
        let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build().expect("a runtime");
        runtime.block_on(holds(deeds));
    }
}
