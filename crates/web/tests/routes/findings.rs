//! `GET /findings`: what is to settle in the whole shop.

use crate::ask::all;
use crate::bench::{Bench, words};

#[tokio::test]
async fn each_machine_has_its_own_and_each_leads_to_where_it_is_settled() {
    let page = Bench::new().await.page("/findings").await;
    assert_eq!(words(&page, "h2"), ["Bench drill", "Hand shaper"]);
    let open = words(&page, "#drill-finding-F1").remove(0);
    assert!(open.contains("The brass cap is lost.") && open.contains("A cork."), "{open}");
    assert_eq!(words(&page, ".fold #drill-finding-F2 h3"), ["F2 Open question: point 5 Table screw"]);
    let to = "/machines/drill/findings#finding-F1";
    assert_eq!(all(&page, &format!("#drill-finding-F1 > a[href='{to}']")).len(), 1);
    assert!(words(&page, "main > p").contains(&"Nothing is open here.".to_owned()), "the shaper has none");
    assert_eq!(words(&page, ".title-block dd"), ["Test shop", "1", "1"]);
}

#[tokio::test]
async fn an_empty_shop_says_so() {
    let page = Bench::empty().await.page("/findings").await;
    assert_eq!(words(&page, ".empty").len(), 1);
}
