//! `GET` and `POST /log/reservoirs`: what was filled, read and drained.

use shop::logbook::Body;

use crate::ask::all;
use crate::bench::{Bench, form, led, words};

#[tokio::test]
async fn a_fill_a_level_and_a_draining_are_written_down() {
    let bench = Bench::new().await;
    let machine = bench.page("/machines/drill").await;
    let to = all(&machine, "a[href^='/log/reservoirs']")[0].attr("href").expect("a link has an address").to_owned();
    let fill = form(&bench.page(&to).await, "Write it down", "");
    assert_eq!(led(&bench.press(&fill, &[("amount", "60 mL")]).await), "/log?machine=drill&kind=filled");
    let page = bench.pass(1).page(&format!("{to}&kind=level")).await;
    led(&bench.press(&form(&page, "Write it down", ""), &[("text", "middle of the glass")]).await);
    let page = bench.pass(1).page(&format!("{to}&kind=drained")).await;
    led(&bench.press(&form(&page, "Write it down", ""), &[]).await);
    let bodies: Vec<Body> = bench.entries().await.into_iter().map(|entry| entry.said.body).collect();
    let [Body::Filled { oil: Some(oil), amount: Some(amount) }, Body::Level { reading }, Body::Drained { note: None }] =
        &bodies[..]
    else {
        panic!("{bodies:?}");
    };
    // The oil that the chart states is offered, so that nobody looks for it with oily fingers.
    assert_eq!((oil.as_str(), amount.as_str(), reading.as_str()), ("drum-68", "60 mL", "middle of the glass"));
}

#[tokio::test]
async fn an_empty_reading_and_a_strange_reservoir_are_refused() {
    let bench = Bench::new().await;
    let page = bench.page("/log/reservoirs?machine=drill&kind=level").await;
    let answer = bench.press(&form(&page, "Write it down", ""), &[("text", " ")]).await;
    assert_eq!(answer.status, 422);
    assert!(words(&answer.page(), ".field-fault")[0].contains("middle of the glass"));
    assert_eq!(bench.get("/log/reservoirs?machine=drill&reservoir=well").await.status, 404);
    assert_eq!(bench.get("/log/reservoirs?machine=shaper").await.status, 404, "it has none");
    assert!(bench.entries().await.is_empty());
}
