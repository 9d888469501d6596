//! `GET` and `POST /machines/{id}/findings`, and `POST …/{finding}/settlement`.

use crate::ask::all;
use crate::bench::{Bench, Pressed, comments, find, form, led, words};

const FINDINGS: &str = "/machines/drill/findings";
/// Minutes of two days.
const TWO_DAYS: i64 = 2 * 24 * 60;

async fn new(bench: &Bench) -> Pressed {
    form(&bench.page(FINDINGS).await, "Write it down", "")
}

async fn settle(bench: &Bench, finding: &str) -> Pressed {
    let page = bench.page(FINDINGS).await;
    let to = format!("{FINDINGS}/{finding}/settlement");
    let button = all(&page, &format!("form[action='{to}'] button"));
    let word: String = button[0].text().collect();
    let one = scraper::Html::parse_fragment(&all(&page, &format!("form[action='{to}']"))[0].html());
    find(&one, &word, "").expect("the form has this button")
}

async fn mend(bench: &Bench, finding: &str) -> Pressed {
    let page = bench.page(FINDINGS).await;
    let one = scraper::Html::parse_fragment(&all(&page, &format!("form[action='{FINDINGS}/{finding}']"))[0].html());
    find(&one, "Keep this", "").expect("the form has this button")
}

/// Whether today's round has point 5, the table screw, which wants oil once a month.
async fn calls_for_the_screw(bench: &Bench) -> bool {
    find(&bench.page("/?machine=drill").await, "Oiled", "point 5,").is_some()
}

#[tokio::test]
async fn open_ones_come_first_and_settled_ones_are_folded() {
    let page = Bench::new().await.page(FINDINGS).await;
    let open = words(&page, "#finding-F1").remove(0);
    for said in ["F1 Missing", "Found The brass cap is lost.", "Thread 1/8 in BSP", "Meanwhile A cork."] {
        assert!(open.contains(said), "{said}: {open}");
    }
    assert_eq!(all(&page, "#finding-F1 .facts a")[0].attr("href"), Some("/machines/drill/points/1"));
    assert_eq!(words(&page, "main > .fold #finding-F2 h3"), ["F2 Open question: point 5 Table screw"]);
}

#[tokio::test]
async fn a_new_finding_stands_at_the_end_of_the_chart_and_comments_stay() {
    let bench = Bench::new().await;
    let (number, before) = bench.drill().await;
    let typed = [
        ("kind", "blocked"),
        ("of", "3"),
        ("note", "Takes no oil."),
        ("size", "3 mm bore"),
        ("meanwhile", "A brush."),
        ("interval", "1 use\r\n4 h"),
    ];
    let asked = new(&bench).await;
    assert_eq!(led(&bench.press(&asked, &typed).await), format!("{FINDINGS}#finding-F3"));
    let (next, after) = bench.drill().await;
    assert_eq!(next, number + 1);
    assert!(after.starts_with(&before), "what was there stays as it was");
    assert_eq!(comments(&after), comments(&before));
    led(&bench.press(&asked, &typed).await);
    assert_eq!(bench.drill().await.0, next, "a second press of the same button writes nothing");
    let told = words(&bench.page(FINDINGS).await, "#finding-F3").remove(0);
    let said = "1 use or 4 h, whichever comes first Until then the round also calls this often for point 3 Quill";
    assert!(told.contains(said), "{told}");
}

#[tokio::test]
async fn an_interval_holds_until_the_finding_is_settled() {
    let bench = Bench::new().await;
    led(&bench.press(&form(&bench.page("/?machine=drill").await, "Oiled", "point 5,"), &[]).await);
    bench.pass(TWO_DAYS);
    assert!(!calls_for_the_screw(&bench).await, "once a month is enough");
    let typed = [("kind", "damage"), ("of", "5"), ("note", "The nut is worn."), ("interval", "1 day")];
    led(&bench.press(&new(&bench).await, &typed).await);
    assert!(calls_for_the_screw(&bench).await, "once a day until it is settled");
    let settled = [("settled", "New nut fitted.")];
    led(&bench.press(&settle(&bench, "F3").await, &settled).await);
    assert!(!calls_for_the_screw(&bench).await, "once a month again");
    // Emptied again, it is open again.
    led(&bench.press(&settle(&bench, "F3").await, &[("settled", "")]).await);
    assert!(calls_for_the_screw(&bench).await);
}

#[tokio::test]
async fn a_hole_of_unknown_use_leaves_the_round_and_says_the_caution() {
    let bench = Bench::new().await;
    assert!(calls_for_the_screw(&bench).await);
    let typed = [("kind", "hole"), ("of", "5"), ("note", "A wire stops."), ("interval", "1 day")];
    led(&bench.press(&new(&bench).await, &typed).await);
    assert!(!calls_for_the_screw(&bench).await);
    let told = words(&bench.page(FINDINGS).await, "#finding-F3").remove(0);
    for said in ["Do not pump oil into a hole", "never in the round until it is settled", "does not call for it"] {
        assert!(told.contains(said), "{said}: {told}");
    }
}

#[tokio::test]
async fn what_is_wrong_is_told_beside_its_field_and_nothing_is_written() {
    let bench = Bench::new().await;
    let before = bench.drill().await;
    let answer = bench.press(&new(&bench).await, &[("thread", "M10 x 1")]).await;
    assert_eq!(answer.status, 422);
    let page = answer.page();
    assert_eq!(words(&page, "#new-kind-fault").len() + words(&page, "#new-note-fault").len(), 2);
    assert_eq!(all(&page, "#new-thread")[0].attr("value"), Some("M10 x 1"), "what was typed is kept");
    let typed = [("kind", "leak"), ("note", "Drips."), ("interval", "often"), ("of", "99")];
    let answer = bench.press(&form(&page, "Write it down", ""), &typed).await;
    assert_eq!(answer.status, 422);
    let page = answer.page();
    assert_eq!(words(&page, "#new-interval-fault").len() + words(&page, "#new-of-fault").len(), 2);
    let answer = bench.press(&settle(&bench, "F1").await, &[("settled", " ")]).await;
    assert_eq!(answer.status, 422);
    assert_eq!(words(&answer.page(), "#settle-F1-settled-fault").len(), 1);
    assert_eq!(bench.drill().await, before);
}

#[tokio::test]
async fn forms_made_from_an_older_chart_write_nothing_and_keep_what_was_typed() {
    let bench = Bench::new().await;
    let (fresh, settlement) = (new(&bench).await, settle(&bench, "F1").await);
    bench.drill_is_changed("Bench drill", "Old bench drill").await;
    let before = bench.drill().await;
    let answer = bench.press(&fresh, &[("kind", "leak"), ("note", "Drips at the collar.")]).await;
    assert_eq!(answer.status, 409);
    let page = answer.page();
    assert_eq!(words(&page, "#new-note"), ["Drips at the collar."]);
    let answer = bench.press(&settlement, &[("settled", "New cap.")]).await;
    assert_eq!(answer.status, 409);
    assert_eq!(words(&answer.page(), "#settle-F1-settled"), ["New cap."]);
    assert_eq!(bench.drill().await, before);
    led(&bench.press(&form(&page, "Write it down", ""), &[]).await);
    assert!(bench.drill().await.1.contains("Drips at the collar."));
}

#[tokio::test]
async fn the_page_of_a_point_leads_to_the_form_about_it() {
    let page = Bench::new().await.page(&format!("{FINDINGS}?about=3")).await;
    assert_eq!(all(&page, "#new-of option[selected]")[0].attr("value"), Some("3"));
    assert_eq!(all(&page, "details[open] #new-of").len(), 1);
}

#[tokio::test]
async fn what_a_finding_is_about_is_mended_and_the_rest_of_the_chart_stays() {
    let bench = Bench::new().await;
    let (number, before) = bench.drill().await;
    let asked = mend(&bench, "F1").await;
    led(&bench.press(&asked, &[]).await);
    assert_eq!(bench.drill().await, (number, before.clone()), "what nobody touched is not written anew");
    let to = led(&bench.press(&asked, &[("of", "2"), ("of-2", "gear-box"), ("thread", "1/4 in BSP")]).await);
    assert_eq!(to, format!("{FINDINGS}#finding-F1"));
    let (next, after) = bench.drill().await;
    assert_eq!(next, number + 1);
    assert_eq!(comments(&after), comments(&before));
    let links = bench.page(FINDINGS).await;
    let about: Vec<_> = all(&links, "#finding-F1 .facts a").iter().filter_map(|a| a.attr("href")).collect();
    assert_eq!(about, ["/machines/drill/points/2", "/machines/drill/reservoirs/gear-box"]);
    assert!(words(&links, "#finding-F1 .facts").remove(0).contains("1/4 in BSP"));
    // Two things and an empty place for a third; what is chosen twice stands once, and nothing at all is the machine as a whole.
    led(&bench.press(&mend(&bench, "F1").await, &[("of", ""), ("of-2", "3"), ("of-3", "3")]).await);
    let page = bench.page(FINDINGS).await;
    assert_eq!(words(&page, "#finding-F1 .facts a"), ["point 3 Quill"]);
    led(&bench.press(&mend(&bench, "F1").await, &[("of", "")]).await);
    let page = bench.page(FINDINGS).await;
    assert!(all(&page, "#finding-F1 .facts a").is_empty());
}

#[tokio::test]
async fn a_mended_finding_that_is_wrong_or_late_comes_back_as_it_was_typed() {
    let bench = Bench::new().await;
    let before = bench.drill().await;
    let answer = bench.press(&mend(&bench, "F1").await, &[("note", " "), ("of-2", "5")]).await;
    assert_eq!(answer.status, 422);
    let page = answer.page();
    assert_eq!(words(&page, "#mend-F1-note-fault").len(), 1);
    assert_eq!(all(&page, "details[open] #mend-F1-of-2 option[selected]")[0].attr("value"), Some("5"));
    let late = mend(&bench, "F2").await;
    assert_eq!(bench.drill().await, before);
    bench.drill_is_changed("Bench drill", "Old bench drill").await;
    let answer = bench.press(&late, &[("thread", "M8")]).await;
    assert_eq!(answer.status, 409);
    assert_eq!(all(&answer.page(), "#mend-F2-thread")[0].attr("value"), Some("M8"));
    let mut lost = late;
    lost.to = format!("{FINDINGS}/F9");
    assert_eq!(bench.press(&lost, &[]).await.status, 404);
}

#[tokio::test]
async fn a_finding_that_is_not_there_cannot_be_settled() {
    let bench = Bench::new().await;
    let mut lost = settle(&bench, "F1").await;
    lost.to = format!("{FINDINGS}/F9/settlement");
    assert_eq!(bench.press(&lost, &[("settled", "Gone.")]).await.status, 404);
}
