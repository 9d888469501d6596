//! `GET /machines`, and the pages below it.

mod audit;
mod findings;
mod machine;
mod options;
mod pictures;
mod point;
mod reservoir;

use crate::bench::{Bench, form, led, words};

#[tokio::test]
async fn each_machine_is_listed_with_what_it_wants() {
    let bench = Bench::new().await;
    let rows = words(&bench.page("/machines").await, ".table tbody tr");
    // Seven points on this example, one of them asleep; one finding of two is settled.
    assert_eq!(rows, ["Bench drill drill about 1935 7 1 6 points due", "Hand shaper shaper 1 0 1 point due"]);
    led(&bench.press(&form(&bench.page("/?machine=shaper").await, "Oiled", "point 1,"), &[]).await);
    let rows = words(&bench.page("/machines").await, ".table tbody tr");
    assert!(rows[1].ends_with("nothing due"), "{}", rows[1]);
}

#[tokio::test]
async fn a_shop_without_machines_says_what_to_do_first() {
    assert!(words(&Bench::empty().await.page("/machines").await, ".empty")[0].contains("chart import"));
}
