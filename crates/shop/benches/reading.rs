//! How long a chart takes to read, to audit and to edit: the crank shaper of the demo, and a machine of 140 points made from it.

#![allow(missing_docs)]

use divan::{Bencher, black_box};
use shop::audit::audit;
use shop::chart::Chart;
use shop::document::{Document, Edit, Target, Value};

fn main() {
    divan::main();
}

const DEMO: &str = include_str!("../../../demo/crank-shaper.toml");

/// The demo's chart with points added until it has so many, each like the ones that people write.
fn chart_of(points: usize) -> String {
    let mut text = DEMO.to_owned();
    let have = Chart::read(DEMO).value.expect("the demo's chart is right").points.len();
    for number in have..points {
        text.push_str(&format!(
            "\n[[point]]\nid = \"x{number}\"\nassembly = \"column\"\nname = \"Point {number}\"\nmethod = \"oil hole\"\nstand = \"left\"\n\
             where = \"behind the cover\"\nsetup = [\"stopped\", \"cover off\"]\ndose = \"3 drops\"\nevery = [\"1 use\", \"4 h\"]\n\
             sign = \"oil sinks within a minute\"\noil = \"way 68\"\n\
             \n[[point.evidence]]\nof = [\"where\", \"feeds\"]\nhow = \"traced\"\ndate = \"2026-03-14\"\nnote = \"came out at the way\"\n"
        ));
    }
    text
}

#[divan::bench(args = [36, 140])]
fn read(bencher: Bencher<'_, '_>, points: usize) {
    let text = chart_of(points);
    assert!(Chart::read(&text).value.is_some_and(|chart| chart.points.len() == points));
    bencher.bench(|| Chart::read(black_box(&text)));
}

#[divan::bench(args = [36, 140])]
fn audit_only(bencher: Bencher<'_, '_>, points: usize) {
    let chart = Chart::read(&chart_of(points)).value.expect("the chart is right");
    bencher.bench(|| audit(black_box(&chart)));
}

#[divan::bench(args = [36, 140])]
fn edit(bencher: Bencher<'_, '_>, points: usize) {
    let document = Document::read(chart_of(points)).expect("the chart is right");
    let of = Target::Element(document.chart().points[5].id.clone());
    let edit = Edit::Set { of, key: "dose".to_owned(), to: Value::Text("4 drops".to_owned()) };
    bencher.bench(|| document.edited(black_box(std::slice::from_ref(&edit))));
}

/// The TOML library alone on the same text, to see what our own reading adds.
#[divan::bench(args = [36, 140])]
fn syntax_alone(bencher: Bencher<'_, '_>, points: usize) {
    let text = chart_of(points);
    bencher.bench(|| toml_edit::Document::parse(black_box(text.as_str())).is_ok());
}

/// One quantity, of which a chart has hundreds.
#[divan::bench]
fn quantity(bencher: Bencher<'_, '_>) {
    bencher.bench(|| tribology::quantity::typed::<tribology::quantity::Length>(black_box("1 3/8 in")).is_ok());
}
