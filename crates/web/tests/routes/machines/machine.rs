//! `GET /machines/{id}`.

mod edit;

use crate::ask::all;
use crate::bench::{Bench, form, led, words};

#[tokio::test]
async fn the_chart_is_shown_part_by_part() {
    let bench = Bench::new().await;
    led(&bench.press(&form(&bench.page("/?machine=drill").await, "Oiled", "point 2,"), &[]).await);
    let page = bench.page("/machines/drill").await;
    assert_eq!(words(&page, ".title-block dd"), ["Bench drill", "7", "1"]);
    let rows = words(&page, ".table-wide tbody tr");
    assert_eq!(rows[0], "1 Upper bearing Oil hole circulating 68 1.6 mL 1 use or 4 h not yet");
    assert_eq!(rows[1], "2 Lower bearing Ball oiler circulating 68 3 drops 1 use today, 9:00");
    let h3 = words(&page, "h3");
    assert_eq!(h3[..3], ["Head", "Table", "Drip line"], "assemblies, then oil lines");
    let all_text = words(&page, "main").remove(0);
    for said in [
        "Gear box Box 0.4 L circulating 68 should stay the middle of the glass",
        "Quill way",
        "not settled yet",
        "Hand",
    ] {
        assert!(all_text.contains(said), "{said}");
    }
}

#[tokio::test]
async fn open_findings_are_headings_that_lead_to_the_whole() {
    let page = Bench::new().await.page("/machines/drill").await;
    let link = all(&page, "main li a[href*='/findings#']");
    assert_eq!(link.len(), 1, "the settled one is not among them");
    assert_eq!(link[0].text().collect::<String>(), "F1 Missing: point 1 Upper bearing");
    assert_eq!(link[0].attr("href"), Some("/machines/drill/findings#finding-F1"));
}

#[tokio::test]
async fn a_mistyped_machine_is_not_found_and_the_nearest_is_offered() {
    let answer = Bench::new().await.get("/machines/dril").await;
    assert_eq!(answer.status, 404);
    let page = answer.page();
    assert_eq!(words(&page, "h1"), ["There is no machine \"dril\" here."]);
    assert_eq!(all(&page, "main a")[0].attr("href"), Some("/machines/drill"));
    let far = Bench::new().await.get("/machines/steam-hammer").await;
    assert_eq!(all(&far.page(), "main a")[0].attr("href"), Some("/machines"));
}
