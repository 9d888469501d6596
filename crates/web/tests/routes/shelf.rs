//! `GET /shelf`.

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
