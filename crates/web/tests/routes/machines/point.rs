//! `GET /machines/{id}/points/{point}`, and the acts on it.

mod edit;
mod evidence;
mod fresh;
mod removal;

use shop::logbook::{Body, Kind};

use crate::ask::all;
use crate::bench::{Bench, find, form, led, words};

const POINT: &str = "/machines/drill/points/1";

#[tokio::test]
async fn all_that_is_known_stands_on_the_page() {
    let page = Bench::new().await.page(POINT).await;
    let text = words(&page, "main").remove(0);
    for said in [
        "1 Upper bearing",
        "How much 2 strokes As charted 1.6 mL",
        "How often 1 use or 4 h, whichever comes first",
        "Oil as charted circulating 68",
        "Stand here Left side",
        "Where Hole under the brass cap",
        "First Belt guard off",
        "When all was well sank in 40 s at 16 °C",
        "Upper spindle bearing Journal Head",
        "F1 Missing",
        "Nothing was ever written down of this point.",
    ] {
        assert!(text.contains(said), "{said}: {text}");
    }
}

#[tokio::test]
async fn the_plate_is_kept_letter_for_letter() {
    let page = Bench::new().await.page(POINT).await;
    let plate: String = all(&page, "blockquote")[0].text().collect();
    assert_eq!(plate, "SPINDLE OIL  DAILY", "two spaces, as the chart has them");
}

#[tokio::test]
async fn what_is_known_in_two_ways_stands_side_by_side() {
    let page = Bench::new().await.page(POINT).await;
    let rows = words(&page, "#evidence ~ .table:not(.table-wide) tbody tr");
    assert_eq!(rows[0], "What it feeds Traced , 14 March 2026 Wire touched the bush");
    assert_eq!(rows[2], "Which oil On the plate Spindle oil Told The last owner used the drum by the door");
}

#[tokio::test]
async fn a_point_feeds_through_its_oil_lines() {
    let page = Bench::new().await.page("/machines/drill/points/6").await;
    assert_eq!(words(&page, ".table tbody tr")[0], "Quill way Slideway Head Drip line");
}

#[tokio::test]
async fn each_act_is_an_entry_of_its_own_and_comes_back_to_the_page() {
    let bench = Bench::new().await;
    let asked = format!("{POINT}?job=tapping");
    let page = bench.page(&asked).await;
    let back = format!("{POINT}?job=tapping#history");
    assert_eq!(led(&bench.press(&form(&page, "Oiled", ""), &[]).await), back);
    assert_eq!(led(&bench.press(&form(&page, "Seen", ""), &[]).await), back);
    assert_eq!(led(&bench.press(&form(&page, "Not seen", ""), &[("note", "dry to the touch")]).await), back);
    assert_eq!(led(&bench.press(&form(&page, "Not reached", ""), &[("reason", "guard stuck")]).await), back);
    let entries = bench.entries().await;
    let kinds: Vec<Kind> = entries.iter().map(|entry| entry.said.body.kind()).collect();
    assert_eq!(kinds, [Kind::Dosed, Kind::SignSeen, Kind::SignMissing, Kind::NotReached]);
    assert_eq!(entries[2].said.body, Body::SignMissing { note: Some("dry to the touch".into()) });

    let page = bench.page(&asked).await;
    let history = words(&page, "#history ~ .table tbody tr");
    assert_eq!(history[0], "Today, 9:00 Not reached: guard stuck not said Put right");
    assert_eq!(history[3], "Today, 9:00 Oiled: 2 strokes, long spout; Circulating 68, the drum not said Put right");
}

#[tokio::test]
async fn oil_can_be_given_again_here_though_the_round_has_it() {
    let bench = Bench::new().await;
    led(&bench.press(&form(&bench.page(POINT).await, "Oiled", ""), &[]).await);
    led(&bench.press(&form(&bench.page(POINT).await, "Oiled", ""), &[]).await);
    assert_eq!(bench.entries().await.len(), 2, "two presses of two forms");
}

#[tokio::test]
async fn a_look_offers_no_oil() {
    let page = Bench::new().await.page("/machines/drill/points/6").await;
    assert!(find(&page, "Oiled", "").is_none());
    assert!(find(&page, "Seen", "").is_some());
}

const BEARING: &str = "name     = \"Upper spindle bearing\"\nkind     = \"journal\"\n";

#[tokio::test]
async fn the_film_of_a_bearing_stands_over_its_speeds_as_a_plot_and_as_a_table() {
    let bench = Bench::new().await;
    let known = format!(
        "{BEARING}diameter = \"50 mm\"\nlength = \"50 mm\"\nspeeds = [\"12 rpm\", \"400 rpm\"]\nload = \"20 kN\"\n\
         roughness = [\"0.8 um\", \"0.4 um\"]\n"
    );
    bench.drill_is_changed(BEARING, &known).await;
    let page = bench.page(POINT).await;
    let text = words(&page, "main").remove(0);
    for said in [
        "Upper spindle bearing: film and warmth over its speeds",
        "given all the oil it wants: boundary at 12 rpm, mixed from about",
        "Oiled as it is here it has less by design, and lives: no oil is judged by this.",
        "Worth measuring: the clearance on the diameter first: it moves full film from",
        "Clearance on the diameter 0.05 mm; 0.038 mm to 0.075 mm are met (common practice).",
        "How its top speed was worked out",
        "How thick the best oils are from cold to warm",
    ] {
        assert!(text.contains(said), "{said}: {text}");
    }
    let plots = all(&page, "svg.plot");
    assert_eq!(plots.len(), 2, "one of its warmth, one of the body of oils");
    let names: Vec<String> = all(&page, "svg.plot .plot-label, svg.plot .plot-mark-name")
        .iter()
        .map(|name| name.text().collect::<String>())
        .collect();
    for name in ["cold", "usual", "warm", "boundary", "mixed", "full film", "wanted"] {
        assert!(names.iter().any(|found| found == name), "{name}: {names:?}");
    }
    let rows = words(&page, "tbody tr");
    let slow = rows.iter().find(|row| row.starts_with("12 rpm ")).expect("a row for each speed");
    assert!(slow.contains(" boundary, 18 °C"), "{slow}");
    assert!(!text.contains("too tight"), "nobody measured its clearance");
}

#[tokio::test]
async fn a_spindle_too_tight_for_its_oil_is_a_caution() {
    let bench = Bench::new().await;
    let tight =
        format!("{BEARING}diameter = \"60 mm\"\nspeeds = [\"3000 rpm\"]\nclearance = \"0.02 mm\"\nload = \"400 N\"\n");
    bench.drill_is_changed(BEARING, &tight).await;
    let cautions = |page: &scraper::Html| words(page, ".note").join(" ");
    let by_hand = cautions(&bench.page(POINT).await);
    assert!(!by_hand.contains("too tight"), "it is oiled by hand: {by_hand}");
    let hole = "name     = \"Upper bearing\"\nmethod   = \"oil hole\"";
    bench.drill_is_changed(hole, &hole.replace("oil hole", "bath")).await;
    let in_a_bath = cautions(&bench.page(POINT).await);
    for said in ["Upper spindle bearing is too tight for Circulating 68", "3000 rpm", "70 °C", "Take a thinner oil"] {
        assert!(in_a_bath.contains(said), "{said}: {in_a_bath}");
    }
}

#[tokio::test]
async fn a_point_that_is_not_here_is_not_found() {
    let bench = Bench::new().await;
    // Point 8 is on the chart, but only for machines that are built otherwise.
    for asked in ["99", "8", "1a"] {
        let answer = bench.get(&format!("/machines/drill/points/{asked}")).await;
        assert_eq!(answer.status, 404, "{asked}");
        assert_eq!(words(&answer.page(), "h1"), [format!("There is no oiling point \"{asked}\" here.")]);
    }
    let near = bench.get("/machines/drill/points/1a").await;
    assert_eq!(all(&near.page(), "main a")[0].attr("href"), Some("/machines/drill/points/1"));
}
