//! `GET /machines/{id}/points/{point}/edit`, and `POST` to the point.

use crate::ask::all;
use crate::bench::{Bench, Pressed, comments, form, led, words};

const EDIT: &str = "/machines/drill/points/1/edit";

async fn asked(bench: &Bench) -> Pressed {
    form(&bench.page(EDIT).await, "Keep this", "")
}

#[tokio::test]
async fn what_is_changed_is_changed_and_nothing_else() {
    let mut bench = Bench::new().await;
    bench.is_known_by("hand=Anna");
    let (number, before) = bench.drill().await;
    let typed = [("dose", "3 strokes"), ("every", "1 use\r\n2 h\r\n"), ("note", "Wipe the cap first.")];
    assert_eq!(led(&bench.press(&asked(&bench).await, &typed).await), "/machines/drill/points/1");
    let (next, after) = bench.drill().await;
    assert_eq!(next, number + 1);
    assert_eq!(comments(&after), comments(&before), "every comment stays");
    let expected = before.replacen("dose     = \"1.6 mL\"", "dose     = \"3 strokes\"", 1).replacen(
        "every    = [\"1 use\", \"4 h\"]",
        "every    = [\"1 use\", \"2 h\"]",
        1,
    );
    let new_line = "note     = \"Wipe the cap first.\"\n";
    assert_eq!(after.replacen(new_line, "", 1), expected);
    assert!(after.contains(new_line));
}

#[tokio::test]
async fn a_form_sent_as_it_came_and_a_second_press_write_nothing() {
    let bench = Bench::new().await;
    let before = bench.drill().await;
    let first = asked(&bench).await;
    led(&bench.press(&first, &[]).await);
    assert_eq!(bench.drill().await, before);
    led(&bench.press(&first, &[("oil", "way 68")]).await);
    let once = bench.drill().await;
    led(&bench.press(&first, &[("oil", "way 68")]).await);
    assert_eq!(bench.drill().await, once, "the chart says so already");
}

#[tokio::test]
async fn an_emptied_field_takes_the_key_out() {
    let bench = Bench::new().await;
    let (_, before) = bench.drill().await;
    led(&bench.press(&asked(&bench).await, &[("where", "  ")]).await);
    let (_, after) = bench.drill().await;
    assert_eq!(after, before.replacen("where    = \"hole under the brass cap\"\n", "", 1));
}

#[tokio::test]
async fn a_wrong_answer_is_told_beside_its_field_and_nothing_is_written() {
    let bench = Bench::new().await;
    let before = bench.drill().await;
    let typed = [("dose", "2"), ("every", "1 use\nnow and then"), ("note", "typed in vain?"), ("name", "")];
    let answer = bench.press(&asked(&bench).await, &[("name", "")]).await;
    assert_eq!(answer.status, 422);
    assert_eq!(words(&answer.page(), "#name-fault").len(), 1);
    let answer = bench.press(&asked(&bench).await, &typed[..3]).await;
    assert_eq!(answer.status, 422);
    let page = answer.page();
    assert_eq!(words(&page, ".field-fault").len(), 2, "{:?}", words(&page, ".field-fault"));
    assert!(words(&page, "#dose-fault")[0].starts_with("This is \"2\""), "{:?}", words(&page, "#dose-fault"));
    assert_eq!(words(&page, "#every-fault").len(), 1);
    assert_eq!(words(&page, "#note"), ["typed in vain?"], "what was typed is kept");
    assert_eq!(all(&page, "#dose")[0].attr("value"), Some("2"));
    assert_eq!(bench.drill().await, before);

    led(&bench.press(&form(&page, "Keep this", ""), &[("dose", "2 strokes"), ("every", "1 use")]).await);
    assert!(bench.drill().await.1.contains("typed in vain?"), "the mended form is the same form");
}

#[tokio::test]
async fn a_form_made_from_an_older_chart_writes_nothing_and_undoes_nothing() {
    let bench = Bench::new().await;
    let old = asked(&bench).await;
    bench.drill_is_changed("hole under the brass cap", "hole behind the brass cap").await;
    let before = bench.drill().await;
    let answer = bench.press(&old, &[("dose", "3 strokes")]).await;
    assert_eq!(answer.status, 409);
    let page = answer.page();
    assert_eq!(words(&page, ".form-mend > p").len(), 1);
    assert_eq!(all(&page, "#dose")[0].attr("value"), Some("3 strokes"), "what was typed is kept");
    // Nobody touched this field here, so it takes what the other wrote and tells what it was.
    assert_eq!(words(&page, "#where"), ["hole behind the brass cap"]);
    assert!(words(&page, "#where-fault")[0].contains("It said \"hole under the brass cap\""));
    assert_eq!(words(&page, ".field-fault").len(), 1, "of what nobody else changed, nothing is said");
    assert_eq!(bench.drill().await, before, "nothing is written");

    led(&bench.press(&form(&page, "Keep this", ""), &[]).await);
    let (_, after) = bench.drill().await;
    assert!(after.contains("3 strokes") && after.contains("hole behind the brass cap"), "both are kept");
}

#[tokio::test]
async fn where_two_wrote_into_one_field_both_are_shown() {
    let bench = Bench::new().await;
    let old = asked(&bench).await;
    bench.drill_is_changed("hole under the brass cap", "hole behind the brass cap").await;
    let answer = bench.press(&old, &[("where", "hole beside the brass cap")]).await;
    assert_eq!(answer.status, 409);
    let page = answer.page();
    assert_eq!(words(&page, "#where"), ["hole beside the brass cap"]);
    assert!(words(&page, "#where-fault")[0].starts_with("The chart now says \"hole behind the brass cap\"."));
    led(&bench.press(&form(&page, "Keep this", ""), &[]).await);
    assert!(bench.drill().await.1.contains("hole beside the brass cap"));
}

#[tokio::test]
async fn the_machine_stands_still_unless_the_chart_says_otherwise() {
    let bench = Bench::new().await;
    let first = asked(&bench).await;
    led(&bench.press(&first, &[("setup", "belt guard off\r\nlamp lit")]).await);
    assert!(bench.drill().await.1.contains("setup    = [\"stopped\", \"belt guard off\", \"lamp lit\"]"));
    let asked = asked(&bench).await;
    let answer = bench.press(&asked, &[("setup", "running\nstopped")]).await;
    assert_eq!(answer.status, 422);
    assert_eq!(words(&answer.page(), "#setup-fault").len(), 1);
}

#[tokio::test]
async fn a_point_that_is_not_here_cannot_be_mended() {
    let bench = Bench::new().await;
    assert_eq!(bench.get("/machines/drill/points/8/edit").await.status, 404);
    let mut lost = asked(&bench).await;
    lost.to = "/machines/drill/points/99".into();
    assert_eq!(bench.press(&lost, &[]).await.status, 404);
}
