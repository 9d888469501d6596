//! `GET` and `POST /machines/{id}/options`.

use crate::ask::all;
use crate::bench::{Bench, comments, form, led, words};

const OPTIONS: &str = "/machines/drill/options";

#[tokio::test]
async fn each_answer_says_which_points_come_or_go() {
    let page = Bench::new().await.page(OPTIONS).await;
    let choices = words(&page, "#option-quill-feed label");
    assert_eq!(
        choices,
        [
            "Hand So the chart has it now.",
            "Worm Come: 8 Worm of the feed.",
            "Not settled yet Come: 8 Worm of the feed.",
        ]
    );
    assert_eq!(all(&page, "#option-belt input[checked]")[0].attr("value"), Some(""), "not settled yet");
}

#[tokio::test]
async fn an_answer_is_written_and_its_points_come() {
    let bench = Bench::new().await;
    assert_eq!(bench.get("/machines/drill/points/8").await.status, 404);
    let (number, before) = bench.drill().await;
    let asked = form(&bench.page(OPTIONS).await, "Keep these answers", "");
    led(&bench.press(&asked, &[("option-quill-feed", "worm")]).await);
    let (next, after) = bench.drill().await;
    assert_eq!(next, number + 1);
    assert_eq!(after, before.replacen("here     = \"hand\"", "here     = \"worm\"", 1));
    assert_eq!(comments(&after), comments(&before));
    bench.page("/machines/drill/points/8").await;
}

#[tokio::test]
async fn an_answer_that_is_no_choice_and_one_to_an_older_chart_write_nothing() {
    let bench = Bench::new().await;
    let asked = form(&bench.page(OPTIONS).await, "Keep these answers", "");
    let before = bench.drill().await;
    let answer = bench.press(&asked, &[("option-belt", "perhaps")]).await;
    assert_eq!(answer.status, 422);
    assert_eq!(words(&answer.page(), "#option-belt-fault").len(), 1);
    assert_eq!(bench.drill().await, before);

    bench.drill_is_changed("Bench drill", "Old bench drill").await;
    let before = bench.drill().await;
    let answer = bench.press(&asked, &[("option-belt", "no")]).await;
    assert_eq!(answer.status, 409);
    let page = answer.page();
    assert_eq!(all(&page, "#option-belt input[checked]")[0].attr("value"), Some("no"), "what was chosen is kept");
    assert_eq!(bench.drill().await, before);
    led(&bench.press(&form(&page, "Keep these answers", ""), &[]).await);
    assert!(bench.drill().await.1.contains("here     = \"no\""));
}
