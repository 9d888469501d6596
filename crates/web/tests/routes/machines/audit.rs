//! `GET /machines/{id}/audit`.

use shop::audit::{FIRST, audit};
use shop::chart::Chart;

use crate::ask::all;
use crate::bench::{Bench, words};

#[tokio::test]
async fn the_first_remarks_are_in_sight_and_the_rest_in_a_fold() {
    let bench = Bench::new().await;
    let chart = Chart::read(&bench.drill().await.1).value.expect("the fixture's chart is right");
    let remarks = audit(&chart);
    assert!(remarks.len() > FIRST, "the fixture has enough to remark on");
    let page = bench.page("/machines/drill/audit").await;
    assert_eq!(all(&page, "main > ol > li").len(), FIRST);
    assert_eq!(all(&page, ".fold ol > li").len(), remarks.len() - FIRST);
    let told = words(&page, "main > ol > li");
    for (told, remark) in told.iter().zip(&remarks) {
        assert!(told.to_lowercase().contains(&remark.says.to_lowercase()), "{told}");
        assert!(told.contains(&format!("Next: {}.", remark.next)), "{told}");
    }
    let machine = bench.page("/machines/drill").await;
    let link = all(&machine, "a[href='/machines/drill/audit']");
    let says: String = link[0].text().collect();
    assert_eq!(says, format!("What is doubtful about this chart: {} remarks", remarks.len()));
}

#[tokio::test]
async fn a_remark_leads_to_the_points_that_it_is_about() {
    let page = Bench::new().await.page("/machines/drill/audit").await;
    assert!(!all(&page, "li a[href='/machines/drill/points/5']").is_empty(), "point 5 feeds nothing");
    assert!(!all(&page, "li a[href='/machines/drill/options#option-belt']").is_empty(), "the belt is not settled");
}
