//! `GET /shelf` and `GET /shelf/{oil}`.

use crate::ask::all;
use crate::bench::{Bench, words};

#[tokio::test]
async fn oils_are_shown_as_typed_and_not_stated_is_not_no() {
    let page = Bench::new().await.page("/shelf").await;
    assert_eq!(words(&page, ".title-block dd"), ["2 oils, 1 grease", "2"]);
    assert_eq!(
        words(&page, "section h2"),
        ["Circulating 68, the drum", "Way oil 68, the tin", "Lithium grease 2, the tub"]
    );
    let drum = &words(&page, "section .facts")[0];
    for said in ["67 mm2/s", "8.6 mm2/s", "ISO-L-CKB", "41 L", "Is free of Detergent and tackifier"] {
        assert!(drum.contains(said), "{said}: {drum}");
    }
    let unsaid =
        "Not stated Active sulphur (extreme pressure), friction modifier, fatty oil and graphite or other powder";
    assert!(drum.contains(unsaid), "{drum}");
    let way = &words(&page, "section .facts")[1];
    assert!(way.contains("Viscosity index 98") && way.contains("Holds Tackifier"), "{way}");
}

#[tokio::test]
async fn it_says_which_points_the_round_takes_each_oil_for() {
    let page = Bench::new().await.page("/shelf").await;
    let facts = words(&page, "section .facts");
    assert!(facts[0].contains("For Bench drill : 1 , 2 , 4 , 7"), "{}", facts[0]);
    assert!(facts[1].contains("Bench drill : 3") && facts[1].contains("Hand shaper : 1"), "{}", facts[1]);
    assert!(!facts[2].contains("For "), "nothing asks for grease");
    assert!(words(&page, ".table tbody tr")[0].contains("Long spout Circulating 68, the drum 0.8 mL"));
}

#[tokio::test]
async fn an_empty_shelf_says_what_to_do_first() {
    let page = Bench::empty().await.page("/shelf").await;
    assert!(words(&page, ".empty")[0].contains("shelf import"));
}

/// The table is of the line through both viscosities of the can; at these two temperatures it gives them back.
#[tokio::test]
async fn an_oil_has_a_page_with_its_chart_and_the_same_as_a_table() {
    let bench = Bench::new().await;
    let link = all(&bench.page("/shelf").await, "section h2 a")[0].attr("href").expect("it leads there").to_owned();
    let page = bench.page(&link).await;
    assert_eq!(words(&page, ".title-block dd")[2], "ISO VG 68");
    assert_eq!(all(&page, "svg.plot[role=img]").len(), 1);
    let rows = words(&page, ".table tbody tr");
    assert!(rows.contains(&"40 °C 67".to_owned()) && rows.contains(&"100 °C 8.6".to_owned()), "{rows:?}");
    assert!(rows.iter().any(|row| row.starts_with("Hand can")), "{rows:?}");
    assert_eq!(bench.get("/shelf/none").await.status, 404);
}
