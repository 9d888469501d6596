//! `GET /machines/{machine}/reservoirs/{reservoir}`, and what a point says of what is in its reservoir.

use crate::ask::all;
use crate::bench::{Bench, form, led, words};

const BOX: &str = "/machines/drill/reservoirs/gear-box";

/// Writes down of the gear box what was done at it.
async fn done(bench: &Bench, kind: &str, typed: &[(&str, &str)]) {
    let page = bench.page(&format!("/log/reservoirs?machine=drill&reservoir=gear-box&kind={kind}")).await;
    led(&bench.press(&form(&page, "Write it down", ""), typed).await);
    bench.pass(1);
}

#[tokio::test]
async fn all_that_is_known_stands_on_the_page() {
    let bench = Bench::new().await;
    let page = bench.page(BOX).await;
    let text = words(&page, "main").remove(0);
    for said in [
        "Gear box Nobody has written down yet what is in it. Take a sample",
        "Drains and is refilled 0.4 L",
        "Right level The middle of the glass",
        "Oil as charted circulating 68",
        "let it cool below 50 °C",
        // What the point feeds, and what the oil lines from the box feed.
        "Reverse gears Gear mesh Head",
        "Quill way Slideway Head Drip line",
        "Nothing was ever written down of it.",
    ] {
        assert!(text.contains(said), "{said}: {text}");
    }
    let judged = words(&page, "#oils ~ ul.judged li .verdict");
    assert_eq!(judged.len(), 3, "every oil of the shelf: {judged:?}");
    let machine = bench.page("/machines/drill").await;
    assert!(all(&machine, &format!("a[href='{BOX}']")).len() == 1, "the machine's page leads here");
    let point = bench.page("/machines/drill/points/4").await;
    assert!(all(&point, &format!("a[href='{BOX}']")).len() == 1, "and the page of its point");
}

#[tokio::test]
async fn what_is_written_down_of_it_becomes_what_is_in_it() {
    let bench = Bench::new().await;
    done(&bench, "drained", &[("text", "black")]).await;
    let text = words(&bench.page(BOX).await, "main").remove(0);
    assert!(text.contains("Nothing is in it: it was drained on 25 November 2026"), "{text}");
    done(&bench, "filled", &[("oil", "grease-2"), ("amount", "0.4 L")]).await;
    let page = bench.page(BOX).await;
    let text = words(&page, "main").remove(0);
    assert!(text.contains("In it is Lithium grease 2, the tub, since 25 November 2026."), "{text}");
    // Grease in oil's place is the strongest rule of all (R11).
    assert!(words(&page, ".note")[0].starts_with("Do not run the machine"), "{text}");
    let history = words(&page, "#history ~ .table tbody tr");
    assert_eq!(history.len(), 2);
    assert!(history[0].contains("Filled: 0.4 L, Lithium grease 2, the tub"), "{history:?}");
    let point = words(&bench.page("/machines/drill/points/4").await, "main").remove(0);
    assert!(point.contains("What is in it In it is Lithium grease 2"), "{point}");
}

#[tokio::test]
async fn a_point_is_silent_about_what_is_in_when_all_is_well() {
    let bench = Bench::new().await;
    done(&bench, "drained", &[]).await;
    done(&bench, "filled", &[("oil", "way-68"), ("amount", "0.4 L")]).await;
    let page = bench.page(BOX).await;
    let text = words(&page, "main").remove(0);
    assert!(text.contains("In it is Way oil 68, the tin, since 25 November 2026. It serves."), "{text}");
    assert!(text.contains("Way oil and circulating oil have not the same additives"), "before it is topped up: {text}");
    let point = words(&bench.page("/machines/drill/points/4").await, "main").remove(0);
    assert!(!point.contains("What is in it"), "{point}");
}

#[tokio::test]
async fn a_reservoir_that_is_not_here_is_not_found_and_the_nearest_is_offered() {
    let bench = Bench::new().await;
    let answer = bench.get("/machines/drill/reservoirs/gear-bax").await;
    assert_eq!(answer.status, 404);
    assert_eq!(all(&answer.page(), "main a")[0].attr("href"), Some(BOX));
    assert_eq!(bench.get("/machines/shaper/reservoirs/gear-box").await.status, 404);
}
