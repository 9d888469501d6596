//! `GET` and `POST /machines/{id}/points/{point}/evidence`.

use crate::ask::all;
use crate::bench::{Bench, Pressed, comments, form, led, words};

const EVIDENCE: &str = "/machines/drill/points/1/evidence";

async fn asked(bench: &Bench) -> Pressed {
    form(&bench.page(EVIDENCE).await, "Write it down", "")
}

#[tokio::test]
async fn what_is_known_is_added_behind_what_was_known() {
    let bench = Bench::new().await;
    let (number, before) = bench.drill().await;
    let asked = asked(&bench).await;
    let typed = [("of", "oil"), ("how", "seen working"), ("date", "2026-11-24"), ("note", "No tar after a month.")];
    assert_eq!(led(&bench.press(&asked, &typed).await), "/machines/drill/points/1#evidence");
    let (next, after) = bench.drill().await;
    assert_eq!(next, number + 1);
    assert_eq!(comments(&after), comments(&before));
    let block = "\n[[point.evidence]]\nof   = [\"oil\"]\nhow  = \"seen working\"\ndate = \"2026-11-24\"\n\
                 note = \"No tar after a month.\"\n";
    assert_eq!(after.replacen(block, "", 1), before);
    led(&bench.press(&asked, &typed).await);
    assert_eq!(bench.drill().await.0, next, "a second press of the same button writes nothing");
    let page = bench.page("/machines/drill/points/1").await;
    let oil = words(&page, ".table tr").into_iter().find(|row| row.starts_with("Which oil"));
    let oil = oil.expect("the oil has evidence");
    for said in ["On the plate", "Told", "Seen working , 24 November 2026 No tar after a month."] {
        assert!(oil.contains(said), "{said}: {oil}");
    }
}

#[tokio::test]
async fn a_point_of_which_nothing_was_known_has_a_way_to_say_it() {
    let bench = Bench::new().await;
    let page = bench.page("/machines/drill/points/3").await;
    let to = "/machines/drill/points/3/evidence";
    assert_eq!(all(&page, &format!("a[href='{to}']")).len(), 1);
    led(&bench.press(&form(&bench.page(to).await, "Write it down", ""), &[("of", "all"), ("how", "told")]).await);
    assert!(bench.drill().await.1.contains("[[point.evidence]]\nhow = \"told\"\n"), "of all that it says");
}

#[tokio::test]
async fn what_is_wrong_is_told_beside_its_field_and_nothing_is_written() {
    let bench = Bench::new().await;
    let before = bench.drill().await;
    let answer = bench.press(&asked(&bench).await, &[("note", "seen")]).await;
    assert_eq!(answer.status, 422);
    assert_eq!(words(&answer.page(), "#how-fault").len() + words(&answer.page(), "#of-fault").len(), 2);
    let typed = [("how", "told"), ("of", "colour"), ("date", "2026-02-30"), ("note", "seen")];
    let answer = bench.press(&asked(&bench).await, &typed).await;
    assert_eq!(answer.status, 422);
    let page = answer.page();
    assert_eq!(words(&page, "#of-fault").len() + words(&page, "#date-fault").len(), 2);
    assert_eq!(words(&page, "#note"), ["seen"], "what was typed is kept");
    assert_eq!(bench.drill().await, before);
}

#[tokio::test]
async fn a_form_made_from_an_older_chart_writes_nothing_and_keeps_what_was_typed() {
    let bench = Bench::new().await;
    let old = asked(&bench).await;
    bench.drill_is_changed("Bench drill", "Old bench drill").await;
    let before = bench.drill().await;
    let answer = bench.press(&old, &[("of", "dose"), ("how", "guess"), ("note", "like the other drill")]).await;
    assert_eq!(answer.status, 409);
    let page = answer.page();
    assert_eq!(words(&page, "#note"), ["like the other drill"]);
    assert_eq!(bench.drill().await, before);
    led(&bench.press(&form(&page, "Write it down", ""), &[]).await);
    assert!(bench.drill().await.1.contains("like the other drill"));
}
