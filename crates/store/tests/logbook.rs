//! Entries come back as they were said, newest first, and nobody changes one.

use ::shop::logbook::{BatchKey, Body, EntryId, Kind, NewEntry, Subject};
use jiff::{SignedDuration, Timestamp};
use store::{About, Error, Superseded, Wanted};
use tribology::quantity::Time;

use crate::shop::{ENGINE, Engine, Shop, dosed, entry, id, minute, point, ran, withdrawn};

fn every_body() -> Vec<Body> {
    let some = |text: &str| Some(text.to_owned());
    vec![
        Body::Dosed { oil: Some(id("way-68")), can: Some(id("gun")), amount: some("2 strokes") },
        Body::SignSeen { note: some("wet line") },
        Body::SignMissing { note: None },
        Body::NotReached { reason: "cover \"rusted\" on".into() },
        // No sum of powers of two: the digits must come back all the same.
        Body::Ran { hours: Time::from_seconds(0.1 + 0.2), job: Some(id("threading")) },
        Body::Level { reading: "middle of the glass".into() },
        Body::Filled { oil: None, amount: some("½ pint") },
        Body::Drained { note: some("grey") },
        Body::Opening { amount: "14 L".into() },
        Body::Note { text: "öl\n'; --".into() },
    ]
}

fn every_subject() -> Vec<Subject> {
    vec![
        Subject::Machine(id("m")),
        point("m", "1"),
        Subject::Reservoir(id("m"), id("gear-case")),
        Subject::Oil(id("way-68")),
        Subject::Can(id("gun")),
    ]
}

async fn numbers(shop: &Shop, wanted: Wanted) -> Vec<i64> {
    let entries = shop.store.entries(&wanted).await.expect("a question that can be answered");
    entries.iter().map(|entry| entry.id.0).collect()
}

#[tokio::test]
async fn what_was_said_comes_back() {
    let shop = Shop::with(&["m"]).await;
    let mut said = Vec::new();
    for (n, subject) in every_subject().into_iter().enumerate() {
        for (m, body) in every_body().into_iter().enumerate() {
            said.push(entry((n * 20 + m) as i64, &format!("k/{n}-{m}"), subject.clone(), body));
        }
    }
    let ids = shop.store.record(&said).await.expect("entries that can be kept");
    for (id, said) in ids.iter().zip(&said) {
        let kept = shop.entry(*id).await;
        assert_eq!((&kept.said, kept.superseded_by), (said, None));
    }
}

#[tokio::test]
async fn instants_are_kept_to_the_microsecond() {
    let shop = Shop::with(&["m"]).await;
    let fine: Timestamp = "2026-03-02T09:00:00.123456789Z".parse().expect("an instant as RFC 3339 writes it");
    let kept = shop.record(NewEntry { happened: fine, ..dosed(90, "k", "1") }).await;
    let coarse = fine - SignedDuration::from_nanos(789);
    assert_eq!(shop.entry(kept).await.said.happened, coarse);
}

#[tokio::test]
async fn pages_run_from_the_newest_to_the_oldest() {
    let shop = Shop::with(&["m", "n"]).await;
    // Recorded in another order than they happened; 4 and 5 at once.
    let other = entry(50, "n", point("n", "1"), Body::SignSeen { note: None });
    for said in [dosed(30, "a", "1"), dosed(10, "b", "2"), ran(20, "c"), other, dosed(50, "e", "1")] {
        shop.record(said).await;
    }
    let all = Wanted::default();
    assert_eq!(numbers(&shop, all.clone()).await, [5, 4, 1, 3, 2]);
    assert_eq!(numbers(&shop, Wanted { most: 2, ..all.clone() }).await, [5, 4]);
    let second = Wanted { most: 2, before: Some(EntryId(4)), ..all.clone() };
    assert_eq!(numbers(&shop, second).await, [1, 3]);
    let of = |about| Wanted { about, ..Wanted::default() };
    assert_eq!(numbers(&shop, of(About::Machine(id("m")))).await, [5, 1, 3, 2]);
    assert_eq!(numbers(&shop, of(About::Point(id("m"), id("1")))).await, [5, 1]);
    assert_eq!(numbers(&shop, Wanted { kind: Some(Kind::Ran), ..all.clone() }).await, [3]);
    let between = Wanted { from: Some(minute(20)), to: Some(minute(50)), ..all.clone() };
    assert_eq!(numbers(&shop, between).await, [1, 3]);
    let from_nowhere = shop.store.entries(&Wanted { before: Some(EntryId(77)), ..all }).await;
    assert!(matches!(from_nowhere, Err(Error::NotFound(_))));
    assert!(matches!(shop.store.entry(EntryId(77)).await, Err(Error::NotFound(_))));
}

#[tokio::test]
async fn superseded_entries_are_left_out_or_shown() {
    let shop = Shop::with(&["m"]).await;
    let wrong = shop.record(dosed(10, "a", "1")).await;
    let right = shop.record(NewEntry { supersedes: Some(wrong), ..dosed(12, "b", "1") }).await;
    assert_eq!(shop.entry(wrong).await.superseded_by, Some(right));
    assert_eq!(shop.entry(right).await.said.supersedes, Some(wrong));
    assert_eq!(numbers(&shop, Wanted::default()).await, [right.0]);
    let shown = Wanted { superseded: Superseded::Shown, ..Wanted::default() };
    assert_eq!(numbers(&shop, shown).await, [right.0, wrong.0]);
}

#[tokio::test]
async fn superseding_goes_once_and_a_conflict_writes_nothing() {
    let shop = Shop::with(&["m"]).await;
    let first = shop.record(dosed(10, "a", "1")).await;
    shop.record(withdrawn(11, "b", first, point("m", "1"))).await;
    let twice = withdrawn(12, "c", first, point("m", "1"));
    let nowhere = withdrawn(12, "d", EntryId(99), point("m", "1"));
    // The number that the entry before it in the same act will get is not one that can be superseded.
    let itself = withdrawn(12, "e", EntryId(3), point("m", "1"));
    for bad in [twice, nowhere, itself] {
        let refused = shop.store.record(&[dosed(12, "good", "2"), bad]).await;
        assert!(matches!(&refused, Err(Error::Conflict(_))), "{refused:?}");
        let refused = refused.expect_err("just seen").to_string();
        assert!(refused.contains("nothing was written"), "{refused}");
    }
    let second = shop.record(dosed(13, "f", "2")).await;
    let both = [withdrawn(14, "g", second, point("m", "2")), withdrawn(14, "h", second, point("m", "2"))];
    assert!(matches!(shop.store.record(&both).await, Err(Error::Conflict(_))));
    let shown = Wanted { superseded: Superseded::Shown, ..Wanted::default() };
    assert_eq!(numbers(&shop, shown).await, [3, 2, 1]);
    assert_eq!(shop.store.verify_due().await, Ok(vec![]));
}

#[tokio::test]
async fn a_machine_that_the_shop_does_not_have_is_refused() {
    let shop = Shop::with(&["m"]).await;
    let stray = entry(1, "b", point("nobody", "1"), Body::SignSeen { note: None });
    let refused = shop.store.record(&[dosed(1, "a", "1"), stray]).await;
    assert!(matches!(&refused, Err(Error::NotFound(says)) if says.contains("\"nobody\"")), "{refused:?}");
    assert_eq!(numbers(&shop, Wanted::default()).await, [0; 0]);
}

#[tokio::test]
async fn nobody_changes_what_was_written() {
    let shop = Shop::with(&["m"]).await;
    shop.record(dosed(1, "a", "1")).await;
    let insert = |begins: &str, id: i64, key: &str, ends: &str| {
        format!(
            "{begins} INTO entry (id, happened, recorded, zone, said_by, kind, subject, body, body_version, idempotency_key) \
             VALUES ({id}, 0, 0, 'UTC', 'nobody', 'note', 'oil/o', '{{}}', 1, '{key}') {ends}"
        )
    };
    let mut attempts = vec![
        "UPDATE entry SET said_by = 'nobody'".to_owned(),
        "DELETE FROM entry".to_owned(),
        "UPDATE fingerprint SET sha256 = ''".to_owned(),
        "DELETE FROM fingerprint".to_owned(),
        "UPDATE seal SET sha256 = ''".to_owned(),
        "DELETE FROM seal".to_owned(),
        "UPDATE chart_revision SET text = ''".to_owned(),
        "DELETE FROM chart_revision".to_owned(),
        "UPDATE setting SET name = ''".to_owned(),
        "DELETE FROM setting".to_owned(),
    ];
    match ENGINE {
        Engine::Sqlite => {
            attempts.extend([(1, "z"), (9, "a")].map(|(id, key)| insert("INSERT OR REPLACE", id, key, "")));
        }
        Engine::Postgres => {
            let ends = |on: &str| format!("ON CONFLICT ({on}) DO UPDATE SET said_by = excluded.said_by");
            attempts.push(insert("INSERT", 1, "z", &ends("id")));
            attempts.push(insert("INSERT", 9, "a", &ends("idempotency_key")));
            let tables = ["entry", "fingerprint", "chart_revision", "oil_revision", "can_revision", "setting", "seal"];
            attempts.extend(tables.map(|table| format!("TRUNCATE {table} CASCADE")));
        }
    }
    for attempt in attempts {
        let refused = shop.tamper(&attempt).await.expect_err("a trigger stops it");
        assert!(refused.contains("append-only"), "{attempt}: {refused}");
    }
    assert_eq!(shop.entry(EntryId(1)).await.said, dosed(1, "a", "1"));
}

#[tokio::test]
async fn a_batch_is_found_by_its_key_and_only_its_own() {
    let shop = Shop::with(&["m"]).await;
    let key = BatchKey::new("round-7").expect("a key");
    for said in [
        dosed(1, "round-7/0", "1"),
        dosed(2, "round-7/1", "2"),
        dosed(3, "round-70/0", "1"),
        dosed(4, "round-7", "1"),
        dosed(5, "round-6/0", "1"),
    ] {
        shop.record(said).await;
    }
    let batch = shop.store.batch(&key).await.expect("a whole file");
    let keys: Vec<&str> = batch.iter().map(|entry| entry.said.idempotency_key.as_str()).collect();
    assert_eq!(keys, ["round-7/0", "round-7/1"]);
}

#[tokio::test]
async fn a_body_that_cannot_be_read_is_said_to_be_damaged() {
    let shop = Shop::with(&["m"]).await;
    let sql = "INSERT INTO entry (id, happened, recorded, zone, said_by, kind, subject, machine, body, body_version, \
               idempotency_key) VALUES (1, 0, 0, 'UTC', 'x', 'note', 'machine/m', 'm', '{}', 7, 'k')";
    shop.tamper(sql).await.expect("SQL");
    let error = shop.store.entry(EntryId(1)).await.expect_err("version 7 is not ours");
    assert!(matches!(&error, Error::Corrupt { what, .. } if what.contains("entry 1") && what.contains("version 7")));
}

#[tokio::test]
async fn many_entries_are_one_act() {
    let shop = Shop::with(&["m"]).await;
    let many: Vec<NewEntry> = (0..1_203).map(|n| dosed(n, &format!("bulk/{n}"), "1")).collect();
    let ids = shop.store.record(&many).await.expect("entries that can be kept");
    assert_eq!(ids.len(), 1_203);
    let key = BatchKey::new("bulk").expect("a key");
    assert_eq!(shop.store.batch(&key).await.map(|batch| batch.len()), Ok(1_203));
    assert_eq!(shop.store.record(&many).await, Ok(ids), "and again");
    assert_eq!(shop.store.verify_due().await, Ok(vec![]));
}
