//! The pattern page: every part in every state, for whoever builds or mends a page.
//!
//! A state that is not here is not tested; a style that nothing here uses fails the tests. All figures are invented.

use axum::Router;
use axum::extract::Query;
use axum::routing::get;
use draw::{Across, Axis, Band, Curve, Ground, Mark, Place, Plot};
use maud::{Markup, PreEscaped, Render, html};
use serde::Deserialize;

use crate::parts::{
    Action, Balloon, Empty, Facts, Field, Figure, Filter, Fold, Link, Note, Page, PointRow, Press, Quote, Receipt,
    Section, Side, Stand, Steps, TitleBlock, Verdict,
};
use crate::{Error, FormKey, assets};

mod forms;
mod tables;

pub(crate) fn routes() -> Router {
    Router::new().route("/pattern", get(show).post(answer))
}

/// Which of the four places the foot marks; the tests look at each.
#[derive(Deserialize)]
struct Shown {
    section: Option<usize>,
}

async fn show(Query(shown): Query<Shown>) -> Result<Markup, Error> {
    let section = Section::ALL.get(shown.section.unwrap_or(0)).copied();
    Ok(page(section, &FormKey::fresh()?).render())
}

/// The buttons of this page come back to it and write nothing down.
async fn answer() -> Result<Markup, Error> {
    Ok(page(None, &FormKey::fresh()?).render())
}

/// One key serves the whole sheet because nothing is written down; a page of the shop gives each form its own.
fn page(section: Option<Section>, key: &FormKey) -> Page {
    Page {
        title: "Pattern sheet".into(),
        section,
        today: Section::Today.path().to_owned(),
        block: TitleBlock::new([
            ("Machine", "20-inch crank shaper"),
            ("Today's job", "Long stroke"),
            ("Running hours", "3"),
        ])
        .and_link("By", Link::new("#sheet", "The miller")),
        body: html! {
            (Fold::shut("Another machine, job or hours", html! { p { "Which?" } }))
            (Receipt { says: "Point 3 oiled at 9:12.".into(), undo: Some(act(key, "Undo", "point 3")) })
            h1 { "Before you start" }
            p.quiet { "Three points at one place, about 2 minutes. One can: the short one." }
            (Note {
                caution: "The rail pump box has used nothing in 20 running hours.".into(),
                rest: "The cross-rail way may be running dry.".into(),
                more: Some(Link::new("#working", "See why")),
            })
            div.two {
                div.stack { (first_wipe()) (left_side(key)) (slow_start(key)) }
                div.stack { (finished(key)) (pressed(key)) }
            }
            h2 #working { "Which oil?" }
            div.two {
                div.stack { (tables::oils()) (tables::workings()) }
                div.stack { ul.judged { li { (Verdict::Suits) " An oil" } li { (Verdict::Never) " Another" } } (side(key)) (drawing()) (plot()) (Note { caution: "Never put a finger to a moving chain.".into(), ..Note::default() }) }
            }
            (tables::points())
            h2 { "Forms" }
            div.two {
                (forms::faulty(key))
                (forms::fresh(key))
            }
            (Filter {
                to: "/pattern".into(),
                hidden: Vec::new(),
                fields: vec![Field { name: "section".into(), label: "Place in the foot".into(), ..Field::default() }],
                words: "Show it".into(),
            })
            h2 { "What is known of one thing" }
            div.two {
                (Facts::new().say("How oiled", Some("ball oiler")).say("How much", Some("2 strokes")).say("Note", None::<&str>))
                (Quote { words: "SLIDE OIL DAILY".into(), stands: "on the plate".into() })
            }
            h2 { "Nothing here yet" }
            div.two {
                (Empty {
                    says: "No machine is charted yet. Begin with its plate and a walk around it.".into(),
                    first: Some(Press::Link(Link::new("#sheet", "Chart a machine"))),
                })
                (Empty { says: "Nothing is due today.".into(), first: None })
            }
            h2 { "Title blocks" }
            (TitleBlock::new([("Sheet", "One cell alone")]))
            (TitleBlock::new([("Oil", "Hydraulic 46, the drum by the door"), ("Left", "14 L")]))
        },
    }
}

fn first_wipe() -> Steps {
    Steps {
        heading: "First wipe".into(),
        says: "Chips under fresh oil lap the ways.".into(),
        lines: vec![("Left side:".into(), "ram way left".into()), (String::new(), "table ways".into())],
    }
}

fn left_side(key: &FormKey) -> Stand {
    Stand {
        id: "left".into(),
        name: "Left side".into(),
        spoken: None,
        count: "4 points".into(),
        setup: "Machine stopped, ram wound fully back. Short can: way oil 68.".into(),
        points: vec![
            PointRow {
                number: Balloon("3".into()),
                name: "Ram way, rear left".into(),
                done: Some("Oiled at 9:12".into()),
                sign: "wet line along the way after ten strokes".into(),
                next: Some(act(key, "Seen", "point 3, ram way, rear left")),
                ..PointRow::default()
            },
            PointRow {
                number: Balloon("4".into()),
                name: "Ram way, front left".into(),
                to: Some("#left".into()),
                dose: "2 strokes".into(),
                small: "ball oiler".into(),
                sign: "wet line along the way".into(),
                next: Some(act(key, "Oiled", "point 4, ram way, front left")),
                ..PointRow::default()
            },
            PointRow {
                number: Balloon("12a".into()),
                name: "Rocker foot pivot".into(),
                first: "slide wound fully left".into(),
                cautions: vec!["Turn it by hand with the switch locked off.".into()],
                dose: "4 drops".into(),
                can: "long spout".into(),
                small: "oil hole behind the hand-wheel, 9 h since the last".into(),
                sign: "oil sinks within a minute".into(),
                next: Some(act(key, "Oiled", "point 12a, rocker foot pivot")),
                ..PointRow::default()
            },
            PointRow {
                number: Balloon("14".into()),
                name: "Feed pawl".into(),
                dose: "1 drop".into(),
                next: Some(act(key, "Oiled", "point 14, feed pawl")),
                ..PointRow::default()
            },
        ],
        whole: Some(act(key, "The left side is oiled", "4 points")),
        fold: Some(Fold::shut("Could not reach one", html! { p { "Which, and why?" } })),
        under: vec![Press::Action(act(key, "Undo", "the left side"))],
    }
}

fn slow_start(key: &FormKey) -> Stand {
    Stand {
        id: "start".into(),
        name: "Then start it slowly".into(),
        count: "1 sign".into(),
        setup: "Guards on, sleeves tight, hands clear of the ram.".into(),
        points: vec![PointRow {
            number: Balloon("20".into()),
            name: "Sight glass, rail pump".into(),
            sign: "a pulse at every stroke, the first within 8 strokes".into(),
            next: Some(act(key, "Seen", "point 20, sight glass")),
            other: Some(act(key, "Not seen", "point 20, sight glass")),
            ..PointRow::default()
        }],
        ..Stand::default()
    }
}

fn finished(key: &FormKey) -> Stand {
    Stand {
        id: "front".into(),
        name: "Front".into(),
        count: "done".into(),
        points: vec![
            PointRow {
                number: Balloon("15".into()),
                name: "Cross-rail screw, both ends".into(),
                done: Some("Oiled and seen at 9:15".into()),
                ..PointRow::default()
            },
            PointRow {
                number: Balloon("16".into()),
                name: "Table elevating nut".into(),
                done: Some("Not reached: the vice is in the way".into()),
                ..PointRow::default()
            },
        ],
        under: vec![Press::Action(act(key, "Undo", "the front"))],
        ..Stand::default()
    }
}

/// Everything that can be pressed, by itself.
fn pressed(key: &FormKey) -> Markup {
    html! {
        div.row {
            (act(key, "Finish the round", "11 points").as_main())
            (act(key, "Add a reading", "rail pump box"))
            (Link::new("#sheet", "Open the chart").as_box())
            (Link::new("#sheet", "All rounds"))
            (act(key, "Take this back", "the last entry").as_line())
            (Press::Action(act(key, "Put off", "until tomorrow")))
            (Balloon("7".into()))
        }
    }
}

fn plot() -> Figure {
    let curve = |name: &str, height: f64| Curve {
        name: name.to_owned(),
        points: vec![(0.0, height), (50.0, height / 4.0), (100.0, height / 10.0)],
    };
    let plot = Plot {
        title: "A plot with two curves".into(),
        description: "Both fall from left to right.".into(),
        across: Axis::even("°C", [0.0, 100.0], 5),
        up: Axis::logarithmic("mm²/s", [1.0, 1000.0]),
        bands: vec![Band { name: "wanted".into(), ends: [30.0, 80.0] }],
        marks: vec![
            Mark { name: "cold 8 °C".into(), at: Across::At(8.0) },
            Mark { name: "usual 17 °C".into(), at: Across::At(17.0) },
        ],
        curves: vec![curve("thick oil", 900.0), curve("thin oil", 90.0)],
    };
    Figure {
        drawing: PreEscaped(plot.svg("pattern-plot")),
        caption: "The table beside it has the same figures.".into(),
    }
}

fn side(key: &FormKey) -> Markup {
    let place = |number: &str, at| Place { number: number.into(), name: "A cup".into(), to: "#sheet".into(), at };
    let drawing = draw::Side {
        title: "A machine seen from the left".into(),
        size: [300.0, 150.0],
        ground: Ground::Lines {
            attributes: " viewBox=\"0 0 300 150\" fill=\"white\" stroke=\"currentColor\"".into(),
            inside: "<rect x=\"60\" y=\"30\" width=\"180\" height=\"110\" fill=\"white\"/><circle cx=\"120\" cy=\"90\" r=\"30\"/>".into(),
        },
        places: vec![place("1", [0.4, 0.6]), place("12", [0.42, 0.5]), place("B10", [0.8, 0.2])],
        radius: 60.0,
    };
    html! {
        nav.side-links aria-label="Sides" {
            a.button href="#sheet" aria-current="true" { "Left side" }
            a.button href="#sheet" { "Rear" }
        }
        form.side-window method="post" action="/pattern" {
            (key)
            input.side-press type="image" name="at" src=(assets::ICON.href()) width="96" height="96" alt="Press where it is";
        }
        (Side { id: "side".into(), name: "A machine seen from the left".into(), drawing: PreEscaped(drawing.svg("side-drawing")) })
    }
}

fn drawing() -> Figure {
    Figure {
        drawing: html! {
            svg viewBox="0 0 320 150" role="img" aria-labelledby="drawing-title" fill="none" stroke="currentColor" {
                title #drawing-title { "A wick cup over a journal" }
                circle cx="160" cy="100" r="36" stroke-width="1.5" {}
                path d="M112 132V64H208V132" stroke-width="1.5" {}
                path d="M146 64V24H174V64M160 64V34" stroke-width="1.5" {}
                path d="M174 40H236" {}
                circle cx="252" cy="40" r="16" stroke-width="1.5" {}
                text x="252" y="46" text-anchor="middle" font-family="Lettering Narrow" font-size="18" fill="currentColor" stroke="none" { "9" }
            }
        },
        caption: "The wick lifts oil over the rim; capped, it stops.".into(),
    }
}

/// Something that unfolds, in both states, used by the tables.
fn folds(body: Markup) -> Markup {
    html! {
        (Fold::open("How this was worked out", body))
        (Fold::shut("What was assumed", html! { p { "A clearance of 0.09 mm, by common practice; it moves the answer little." } }))
    }
}

fn act(key: &FormKey, words: &str, about: &str) -> Action {
    Action {
        hidden: vec![("stand".into(), "left".into())],
        about: Some(about.into()),
        ..Action::new("/pattern", key.clone(), words)
    }
}
