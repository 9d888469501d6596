//! `POST /log/obstacles`.

use shop::logbook::Body;

use crate::ask::all;
use crate::bench::{Bench, form, led, words};

#[tokio::test]
async fn the_reason_stands_beside_the_point_and_the_point_stays_due() {
    let bench = Bench::new().await;
    let before = words(&bench.page("/").await, "main > h1 + p");
    let page = bench.page("/").await;
    let typed = [("point", "4"), ("reason", " the bench is in the way ")];
    assert_eq!(led(&bench.press(&form(&page, "Not reached", ""), &typed).await), "/?machine=drill#stand-rear");
    let entries = bench.entries().await;
    assert_eq!(entries[0].said.body, Body::NotReached { reason: "the bench is in the way".into() });
    let page = bench.page("/").await;
    let row = words(&page, "#stand-rear .point-row").remove(0);
    assert!(row.contains("Not reached at 9:00: the bench is in the way") && row.contains("Topped up"), "{row}");
    assert_eq!(words(&page, "main > h1 + p"), before, "as much is left as before");
    assert!(all(&page, "#stand-rear .button-whole input[value='4,5'], #stand-rear input[value='4,5']").len() == 1);
}

#[tokio::test]
async fn without_a_reason_or_with_a_strange_point_nothing_is_written() {
    let bench = Bench::new().await;
    let asked = form(&bench.page("/?machine=drill&job=tapping").await, "Not reached", "");
    let answer = bench.press(&asked, &[("point", "5"), ("reason", "  ")]).await;
    assert_eq!(answer.status, 422);
    let page = answer.page();
    assert_eq!(all(&page, "select[name=point] option[selected]")[0].attr("value"), Some("5"));
    assert_eq!(words(&page, "#obstacle-reason-fault").len(), 1);

    let answer = bench.press(&asked, &[("point", "99"), ("reason", "rust")]).await;
    assert_eq!(answer.status, 422);
    let page = answer.page();
    assert_eq!(words(&page, "#obstacle-point-fault").len(), 1);
    assert_eq!(all(&page, "input[name=reason]")[0].attr("value"), Some("rust"));
    assert!(bench.entries().await.is_empty());

    // The mended form is the same form: it leads back to the stand, with the choice.
    let mended = form(&page, "Not reached", "");
    let led = led(&bench.press(&mended, &[("point", "5")]).await);
    assert_eq!(led, "/?machine=drill&job=tapping#stand-rear");
    assert_eq!(bench.entries().await.len(), 1);
}
