//! `GET` and `POST /machines/{id}/points`.

use crate::ask::all;
use crate::bench::{Bench, Pressed, comments, form, led, words};

const NEW: &str = "/machines/drill/points";

async fn asked(bench: &Bench) -> Pressed {
    form(&bench.page(NEW).await, "Write it down", "")
}

#[tokio::test]
async fn a_new_point_stands_behind_the_last_and_is_in_the_round() {
    let bench = Bench::new().await;
    let (number, before) = bench.drill().await;
    let asked = asked(&bench).await;
    let typed = [
        ("assembly", "table"),
        ("feeds", "quill-way"),
        ("name", "Table crank"),
        ("method", "ball oiler"),
        ("stand", "left"),
        ("dose", "2 drops"),
        ("every", "1 use"),
        ("oil", "way 68"),
    ];
    assert_eq!(led(&bench.press(&asked, &typed).await), "/machines/drill/points/9");
    let (next, after) = bench.drill().await;
    assert_eq!(next, number + 1);
    assert_eq!(comments(&after), comments(&before));
    let block = "\n[[point]]\nid       = \"9\"\nassembly = \"table\"\nname     = \"Table crank\"\nmethod   = \"ball oiler\"\n\
                 feeds    = [\"quill-way\"]\nstand    = \"left\"\ndose     = \"2 drops\"\nevery    = [\"1 use\"]\n\
                 oil      = \"way 68\"\n";
    assert_eq!(after.replacen(block, "", 1), before);
    led(&bench.press(&asked, &typed).await);
    assert_eq!(bench.drill().await.0, next, "a second press of the same button writes nothing");
    assert!(words(&bench.page("/?machine=drill").await, ".point-row").iter().any(|row| row.contains("Table crank")));
}

#[tokio::test]
async fn a_number_that_was_used_once_is_never_offered_and_never_taken() {
    let bench = Bench::new().await;
    bench.drill_is_changed("chart = 1\n", "chart = 1\nretired = [\"9\", \"11\"]\n").await;
    let page = bench.page(NEW).await;
    assert_eq!(all(&page, "#id")[0].attr("value"), Some("12"));
    let before = bench.drill().await;
    for (number, why) in
        [("9", "never used again"), ("1", "taken already"), ("table", "taken already"), ("a b", "only letters")]
    {
        let typed = [("id", number), ("name", "Crank"), ("method", "oil hole")];
        let answer = bench.press(&asked(&bench).await, &typed).await;
        assert_eq!(answer.status, 422, "{number}");
        let page = answer.page();
        assert!(words(&page, "#id-fault")[0].contains(why), "{:?}", words(&page, "#id-fault"));
        assert_eq!(all(&page, "#name")[0].attr("value"), Some("Crank"), "what was typed is kept");
    }
    assert_eq!(bench.drill().await, before);
}

#[tokio::test]
async fn what_is_wrong_is_told_beside_its_field_and_nothing_is_written() {
    let bench = Bench::new().await;
    let before = bench.drill().await;
    let answer = bench.press(&asked(&bench).await, &[("dose", "2")]).await;
    assert_eq!(answer.status, 422);
    assert_eq!(words(&answer.page(), "#name-fault").len() + words(&answer.page(), "#method-fault").len(), 2);
    let typed = [("name", "Crank"), ("method", "wick"), ("dose", "2"), ("every", "often"), ("feeds", "nothing")];
    let answer = bench.press(&asked(&bench).await, &typed).await;
    assert_eq!(answer.status, 422);
    let page = answer.page();
    for key in ["dose", "every", "feeds"] {
        assert_eq!(words(&page, &format!("#{key}-fault")).len(), 1, "{key}");
    }
    assert_eq!(bench.drill().await, before);
}

#[tokio::test]
async fn a_form_made_from_an_older_chart_writes_nothing_and_keeps_what_was_typed() {
    let bench = Bench::new().await;
    let old = asked(&bench).await;
    bench.drill_is_changed("Bench drill", "Old bench drill").await;
    let before = bench.drill().await;
    let answer = bench.press(&old, &[("name", "Crank"), ("method", "oil hole")]).await;
    assert_eq!(answer.status, 409);
    let page = answer.page();
    assert_eq!(bench.drill().await, before);
    assert_eq!(words(&page, ".field-fault").len(), 0);
    led(&bench.press(&form(&page, "Write it down", ""), &[]).await);
    assert!(bench.drill().await.1.contains("name   = \"Crank\""));
}

#[tokio::test]
async fn the_caution_about_holes_stands_before_the_form() {
    let page = Bench::new().await.page(NEW).await;
    assert!(words(&page, ".note")[0].contains("Do not pump oil into a hole of unknown use."));
    assert_eq!(all(&page, ".note a")[0].attr("href"), Some("/machines/drill/findings#new"));
}

#[tokio::test]
async fn a_point_called_new_has_a_page_of_its_own() {
    let bench = Bench::new().await;
    let typed = [("id", "new"), ("name", "Table crank"), ("method", "ball oiler")];
    let to = led(&bench.press(&asked(&bench).await, &typed).await);
    assert_eq!(to, "/machines/drill/points/new");
    assert_eq!(words(&bench.page(&to).await, "h1"), ["new Table crank"]);
}
