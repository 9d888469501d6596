//! `GET /machines/{id}/edit`, and `POST` to the machine.

use crate::ask::all;
use crate::bench::{Bench, Pressed, comments, form, led, words};

async fn asked(bench: &Bench) -> Pressed {
    form(&bench.page("/machines/drill/edit").await, "Keep this", "")
}

#[tokio::test]
async fn what_is_said_of_the_machine_is_changed_and_nothing_else() {
    let bench = Bench::new().await;
    let (number, before) = bench.drill().await;
    let first = asked(&bench).await;
    assert_eq!(led(&bench.press(&first, &[]).await), "/machines/drill");
    assert_eq!(bench.drill().await.0, number, "a form sent as it came writes nothing");
    let typed = [("name", "Pillar drill"), ("size", "13 mm chuck"), ("note", "")];
    led(&bench.press(&first, &typed).await);
    let (next, after) = bench.drill().await;
    assert_eq!(next, number + 1);
    let expected = before.replacen("\"Bench drill\"", "\"Pillar drill\"", 1).replacen(
        "note  = \"Drills the holes for the mill's pegs.\"\n",
        "size  = \"13 mm chuck\"\n",
        1,
    );
    assert_eq!(after, expected);
    assert_eq!(comments(&after), comments(&before));
    led(&bench.press(&first, &typed).await);
    assert_eq!(bench.drill().await.0, next, "a second press of the same button writes nothing");
}

#[tokio::test]
async fn a_machine_keeps_its_name_and_what_was_typed_is_kept() {
    let bench = Bench::new().await;
    let before = bench.drill().await;
    let answer = bench.press(&asked(&bench).await, &[("name", " "), ("built", "1936")]).await;
    assert_eq!(answer.status, 422);
    let page = answer.page();
    assert_eq!(words(&page, "#name-fault").len(), 1);
    assert_eq!(all(&page, "#built")[0].attr("value"), Some("1936"));
    assert_eq!(bench.drill().await, before);
}

#[tokio::test]
async fn a_form_made_from_an_older_chart_writes_nothing() {
    let bench = Bench::new().await;
    let old = asked(&bench).await;
    bench.drill_is_changed("about 1935", "1936").await;
    let before = bench.drill().await;
    let answer = bench.press(&old, &[("size", "13 mm chuck")]).await;
    assert_eq!(answer.status, 409);
    let page = answer.page();
    assert!(words(&page, "#built-fault")[0].contains("about 1935"));
    assert_eq!(all(&page, "#size")[0].attr("value"), Some("13 mm chuck"));
    assert_eq!(bench.drill().await, before);
    led(&bench.press(&form(&page, "Keep this", ""), &[]).await);
    let (_, after) = bench.drill().await;
    assert!(after.contains("built = \"1936\"") && after.contains("13 mm chuck"));
}
