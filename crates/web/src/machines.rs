//! `GET /machines`: the machines of the shop, with how much each wants today.

pub(crate) mod audit;
mod element;
pub(crate) mod findings;
mod ids;
mod inside;
pub(crate) mod machine;
pub(crate) mod options;
pub(crate) mod pictures;
pub(crate) mod point;
mod question;
pub(crate) mod reservoir;
mod revision;
mod sent;
pub(crate) mod sides;
mod wrong;

use advice::round::Plan;
use advice::{round, words};
use axum::extract::State;
use maud::{Markup, Render, html};

use crate::parts::{Cell, Column, Empty, Link, Page, Section, Style, Table, TitleBlock};
use crate::shop_state::Shop;
use crate::{Error, address};

/// The list of machines.
struct Machines {
    shop: String,
    rows: Vec<Row>,
}

/// One machine in the list.
struct Row {
    to: String,
    name: String,
    kind: String,
    built: String,
    points: usize,
    due: usize,
    round: String,
    findings: usize,
}

/// `GET /machines`
pub(crate) async fn show(State(shop): State<Shop>) -> Result<Markup, Error> {
    let settings = shop.store.settings().await?;
    let snapshot = shop.store.snapshot(shop.clock.now()).await?;
    let plan = Plan { job: None, hours: settings.hours };
    let rows = snapshot.machines.iter().map(|machine| {
        let chart = &machine.chart;
        let round = round(machine, &snapshot.shelf, &snapshot.moment, &plan);
        Row {
            to: address::machine(&machine.id),
            name: chart.machine.name.clone(),
            kind: chart.machine.kind.clone().unwrap_or_default(),
            built: chart.machine.built.clone().unwrap_or_default(),
            points: chart.points_here().count(),
            due: round.value().left(),
            round: address::with_query("/", &[("machine", machine.id.as_str())]),
            findings: chart.findings.iter().filter(|finding| finding.settled.is_none()).count(),
        }
    });
    Ok(Machines { shop: settings.name, rows: rows.collect() }.page().render())
}

impl Machines {
    fn page(self) -> Page {
        let count = self.rows.len().to_string();
        let figures = |heading: &str| Column::Figures(heading.to_owned());
        let words = |heading: &str| Column::Words(heading.to_owned());
        let rows = self.rows.into_iter().map(|row| {
            vec![
                Cell::Part(html! { a href=(row.to) { (row.name) } }),
                row.kind.into(),
                row.built.into(),
                row.points.to_string().into(),
                row.findings.to_string().into(),
                Cell::Part(html! { a.button-line href=(row.round) { (due(row.due)) } }),
            ]
        });
        let rows: Vec<Vec<Cell>> = rows.collect();
        Page {
            title: "Machines".into(),
            section: Some(Section::Machines),
            today: Section::Today.path().into(),
            block: TitleBlock::new([("Shop", self.shop), ("Machines", count)]),
            body: html! {
                h1 { "Machines" }
                @if rows.is_empty() {
                    (Empty {
                        says: "No machine is in this shop yet. Take in its oiling chart first: oilwright chart import FILE".into(),
                        first: None,
                    })
                } @else {
                    (Table {
                        caption: "For ordinary work of the shop's usual hours".into(),
                        columns: vec![
                            words("Machine"), words("Kind"), words("Built"), figures("Oiling points"),
                            figures("To settle"), words("Oiling round"),
                        ],
                        rows,
                        style: Style::Wide,
                    })
                    (Link::new("/findings", "All that is to settle in the shop"))
                }
                div { (Link::new("/settings", "What holds for the whole shop: measures, hours, temperatures")) }
            },
        }
    }
}

fn due(due: usize) -> String {
    if due == 0 { "nothing due".to_owned() } else { format!("{} due", words::count(due, "point")) }
}
