//! Charts are kept as their text, one revision a change, and never with faults.

use sha2::{Digest as _, Sha256};
use store::{Error, MachineRow, Store};

use crate::shop::{CHART, Shop, id, minute};

#[tokio::test]
async fn each_change_is_a_revision_and_no_change_is_none() {
    let shop = Shop::empty().await;
    let changed = CHART.replace("Ram way", "Ram way, left");
    let add = async |text: &str, at: i64| shop.store.add_chart(&id("m"), text, minute(at), "keeper").await;
    assert_eq!(add(CHART, 1).await, Ok(1));
    assert_eq!(add(CHART, 2).await, Ok(1));
    assert_eq!(add(&changed, 3).await, Ok(2));
    // Going back is a change too.
    assert_eq!(add(CHART, 4).await, Ok(3));
    let chart = async |at| shop.store.chart(&id("m"), minute(at)).await;
    assert_eq!(chart(2).await, Ok((1, CHART.to_owned())));
    assert_eq!(chart(3).await, Ok((2, changed)));
    assert_eq!(chart(9).await, Ok((3, CHART.to_owned())));
    assert!(matches!(chart(0).await, Err(Error::NotFound(_))));
    assert!(matches!(shop.store.chart(&id("n"), minute(9)).await, Err(Error::NotFound(_))));
}

#[tokio::test]
async fn a_change_made_from_an_older_revision_writes_nothing() {
    let shop = Shop::with(&["m"]).await;
    let texts = ["left", "right"].map(|side| CHART.replace("Ram way", &format!("Ram way, {side}")));
    let change = async |store: &Store, text: &str, from: i64| {
        store.change_chart(&id("m"), text, from, minute(1), "keeper").await
    };
    // Two programs, each with a change of its own made from the same revision.
    let other = Store::open(shop.address()).await.expect("two may have it open");
    let (one, two) = tokio::join!(change(&shop.store, &texts[0], 1), change(&other, &texts[1], 1));
    let (kept, refused) = if one.is_ok() { (0, two) } else { (1, one) };
    let says = refused.expect_err("only one can be next").to_string();
    assert!(
        says.contains("revision 1,") && says.contains("newest is 2;") && says.contains("nothing was written"),
        "{says}"
    );
    assert_eq!(shop.store.chart(&id("m"), minute(9)).await, Ok((2, texts[kept].clone())));
    assert_eq!(change(&shop.store, &texts[kept], 1).await, Ok(2), "the same once more is no conflict");
    assert_eq!(change(&shop.store, &texts[1 - kept], 2).await, Ok(3));
    assert!(matches!(change(&shop.store, CHART, 9).await, Err(Error::Conflict(_))), "there is no such revision yet");
    let stray = shop.store.change_chart(&id("n"), CHART, 1, minute(1), "keeper").await;
    assert!(matches!(stray, Err(Error::NotFound(_))), "{stray:?}");
    assert_eq!(shop.store.verify().await, Ok(vec![]));
}

#[tokio::test]
async fn a_chart_with_faults_is_refused_with_all_of_them() {
    let shop = Shop::empty().await;
    let text = CHART.replace("\"oil hole\"", "\"oil whole\"");
    let Err(Error::Faulty(faults)) = shop.store.add_chart(&id("m"), &text, minute(1), "keeper").await else {
        panic!("a chart with faults was taken");
    };
    assert_eq!(faults.len(), 2, "{faults:?}");
    let says = Error::Faulty(faults).to_string();
    assert!(says.contains("2 faults") && says.contains("oil whole"), "{says}");
    assert_eq!(shop.store.machines().await, Ok(vec![]));
}

#[tokio::test]
async fn machines_are_listed_as_their_newest_charts_say() {
    let shop = Shop::with(&["shaper", "mill"]).await;
    let built = CHART.replace("here = \"oil holes\"", "here = \"plunger pump\"").replace("20-inch", "24-inch");
    shop.store.add_chart(&id("mill"), &built, minute(5), "keeper").await.expect("a chart without faults");
    let row = |machine: &str, name: &str, points, revision| MachineRow {
        id: id(machine),
        name: name.to_owned(),
        kind: Some("shaper".to_owned()),
        points,
        revision,
    };
    let rows = vec![row("mill", "24-inch crank shaper", 3, 2), row("shaper", "20-inch crank shaper", 2, 1)];
    assert_eq!(shop.store.machines().await, Ok(rows));
}

#[tokio::test]
async fn the_fingerprint_is_the_one_that_others_would_take() {
    let shop = Shop::with(&["m"]).await;
    let print: String = Sha256::digest(CHART).iter().map(|byte| format!("{byte:02x}")).collect();
    let sql = format!("CREATE TABLE found AS SELECT 1 AS one FROM chart_revision WHERE sha256 = '{print}'");
    shop.tamper(&sql).await.expect("SQL");
    assert_eq!(shop.tamper("UPDATE found SET one = 2").await, Ok(1));
}

#[tokio::test]
async fn a_stored_chart_that_cannot_be_read_is_said_to_be_damaged() {
    let shop = Shop::with(&["m"]).await;
    let sql = "INSERT INTO chart_revision SELECT machine, 2, name, kind, points, sha256, recorded, said_by, 'x = ' \
               FROM chart_revision";
    shop.tamper(sql).await.expect("SQL");
    let error = shop.store.snapshot(minute(9)).await.expect_err("half a chart misleads");
    assert!(matches!(&error, Error::Corrupt { what, .. } if what.contains("revision 2") && what.contains("\"m\"")));
}
