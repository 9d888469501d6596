//! The shelf comes back as it was typed; its stock is the opening entry, once.

use ::shop::logbook::{Body, Kind, Subject};
use ::shop::shelf::Shelf;
use store::{Error, Wanted};

use crate::shop::{Shop, id, minute};

/// The shelf of the demo: oils with and without each figure, a grease by weight, cans.
const DEMO: &str = include_str!("../../../demo/shelf.toml");

const TWO: &str = r#"shelf = 1

[[oil]]
id = "way-68"
name = "Way oil 68"
family = "way"
v40 = "68 mm2/s"
v100 = "8.6cSt"
pour_point = "10 °F"
packs = ["5 L", "1 US gal"]
stock = "3.2 L"

[[oil]]
id = "pot"
name = "The grease in the pot"
family = "grease"
thickener = "calcium"
nlgi = "2"
base_v40 = "100 mm2/s"
stock = "1.5 kg"

[[can]]
id = "gun"
oil = "way-68"
stroke = "0.8 mL"
"#;

fn shelf(text: &str) -> Shelf {
    let read = Shelf::read(text);
    read.value.unwrap_or_else(|| panic!("a shelf without faults, not {:?}", read.faults))
}

async fn openings(shop: &Shop) -> Vec<(Subject, Body)> {
    let wanted = Wanted { kind: Some(Kind::Opening), ..Wanted::default() };
    let entries = shop.store.entries(&wanted).await.expect("a question that can be answered");
    entries.into_iter().rev().map(|entry| (entry.said.subject, entry.said.body)).collect()
}

#[tokio::test]
async fn a_shelf_comes_back_as_it_was_typed() {
    for text in [DEMO, TWO] {
        let shop = Shop::empty().await;
        shop.store.add_shelf(&shelf(text), minute(1), "keeper").await.expect("a shelf that can be kept");
        assert_eq!(shop.store.shelf_at(minute(1)).await, Ok(shelf(text)));
        assert_eq!(shop.store.shelf_at(minute(0)).await, Ok(Shelf::default()));
        let snapshot = shop.store.snapshot(minute(2)).await.expect("a whole file");
        assert_eq!(snapshot.shelf, shelf(text));
    }
}

#[tokio::test]
async fn stock_opens_the_book_once() {
    let shop = Shop::empty().await;
    let first = vec![
        (Subject::Oil(id("way-68")), Body::Opening { amount: "3.2 L".into() }),
        (Subject::Oil(id("pot")), Body::Opening { amount: "1.5 kg".into() }),
    ];
    shop.store.add_shelf(&shelf(TWO), minute(1), "keeper").await.expect("a shelf that can be kept");
    assert_eq!(openings(&shop).await, first);
    let fuller = TWO.replace("3.2 L", "9 L");
    shop.store.add_shelf(&shelf(&fuller), minute(2), "keeper").await.expect("a shelf that can be kept");
    assert_eq!(openings(&shop).await, first, "what came later is for the logbook to count");
}

#[tokio::test]
async fn a_changed_oil_is_a_revision_and_an_absent_one_stays() {
    let shop = Shop::empty().await;
    shop.store.add_shelf(&shelf(TWO), minute(1), "keeper").await.expect("a shelf that can be kept");
    shop.store.add_shelf(&shelf(TWO), minute(2), "keeper").await.expect("a shelf that can be kept");
    let renamed = "shelf = 1\n[[oil]]\nid = \"pot\"\nname = \"The blue pot\"\nfamily = \"grease\"\n";
    shop.store.add_shelf(&shelf(renamed), minute(3), "keeper").await.expect("a shelf that can be kept");
    let name = async |at| {
        let shelf = shop.store.shelf_at(minute(at)).await.expect("a whole file");
        assert_eq!((shelf.oils.len(), shelf.cans.len()), (2, 1));
        shelf.oil(&id("pot")).map(|oil| oil.name.clone())
    };
    assert_eq!(name(2).await.as_deref(), Some("The grease in the pot"));
    assert_eq!(name(3).await.as_deref(), Some("The blue pot"));
    shop.tamper("CREATE TABLE seen AS SELECT id FROM oil_revision UNION ALL SELECT id FROM can_revision")
        .await
        .expect("SQL");
    // Two oils and a can at first, then one oil anew.
    assert_eq!(shop.tamper("DELETE FROM seen").await, Ok(4));
}

#[tokio::test]
async fn a_quantity_that_cannot_be_read_is_said_to_be_damaged() {
    let shop = Shop::empty().await;
    shop.store.add_shelf(&shelf(TWO), minute(1), "keeper").await.expect("a shelf that can be kept");
    let sql =
        "INSERT INTO can_revision (id, number, recorded, said_by, place, stroke) VALUES ('gun', 2, 0, 'x', 0, 'some')";
    shop.tamper(sql).await.expect("SQL");
    let error = shop.store.shelf_at(minute(9)).await.expect_err("\"some\" is no volume");
    assert!(matches!(&error, Error::Corrupt { what, .. } if what.contains("stroke") && what.contains("\"some\"")));
}

#[tokio::test]
async fn a_shelf_is_not_changed_behind_our_back() {
    let shop = Shop::empty().await;
    shop.store.add_shelf(&shelf(TWO), minute(1), "keeper").await.expect("a shelf that can be kept");
    for table in ["oil_revision", "can_revision"] {
        for sql in [format!("UPDATE {table} SET name = 'x'"), format!("DELETE FROM {table}")] {
            let refused = shop.tamper(&sql).await.expect_err("a trigger stops it");
            assert!(refused.contains("append-only"), "{refused}");
        }
    }
}
