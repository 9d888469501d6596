//! `GET /machines/{id}`: the oiling chart of one machine, as this example is built.

mod assemblies;
mod built;
mod findings;
mod lines;
mod reservoirs;

pub(crate) use findings::{Finding, told as findings_told};

use axum::extract::{Path, State};
use maud::{Markup, Render, html};

use crate::parts::{Facts, Fold, Link, Page, Section, Table, TitleBlock};
use crate::shop_state::{Shop, View};
use crate::{Error, address};

/// The page of a machine.
struct Machine {
    name: String,
    today: String,
    points: String,
    facts: Facts,
    assemblies: Vec<(String, Table)>,
    reservoirs: Option<Table>,
    lines: Vec<lines::Lines>,
    built: Option<Table>,
    open: Vec<Finding>,
    settled: Vec<Finding>,
    log: String,
}

/// `GET /machines/{machine}`
pub(crate) async fn show(State(shop): State<Shop>, Path(id): Path<String>) -> Result<Markup, Error> {
    let view = shop.view(&id).await?;
    Ok(Machine::of(&view).page().render())
}

impl Machine {
    fn of(view: &View) -> Self {
        let chart = &view.machine.chart;
        let about = &chart.machine;
        let id = view.machine.id.as_str();
        let (open, settled) = findings::sorted(chart);
        Self {
            name: about.name.clone(),
            today: address::with_query("/", &[("machine", id)]),
            points: chart.points_here().count().to_string(),
            facts: Facts::new()
                .say("Kind", about.kind.clone())
                .say("Size", about.size.clone())
                .say("Built", about.built.clone())
                .say("Note", about.note.clone()),
            assemblies: assemblies::tables(view),
            reservoirs: reservoirs::table(chart),
            lines: lines::all(chart),
            built: built::table(chart),
            open,
            settled,
            log: address::with_query("/log", &[("machine", id)]),
        }
    }

    fn page(self) -> Page {
        let block = TitleBlock::new([("Machine", self.name.clone()), ("Oiling points", self.points)]);
        let block = if self.open.is_empty() {
            block.and("To settle", "nothing")
        } else {
            block.and_link("To settle", Link::new("#to-settle", self.open.len().to_string()))
        };
        Page {
            title: self.name.clone(),
            section: Some(Section::Machines),
            today: self.today.clone(),
            block,
            body: html! {
                h1 { "Oiling chart" }
                (self.facts)
                div.row { (Link::new(self.today, "Today's round").as_box()) (Link::new(self.log, "Its log").as_box()) }
                h2 { "Oiling points" }
                @for (name, table) in self.assemblies { h3 { (name) } (table) }
                @if let Some(reservoirs) = self.reservoirs { h2 { "Sumps, cups, tanks and boxes" } (reservoirs) }
                @if !self.lines.is_empty() { h2 { "Oil lines" } @for one in self.lines { (one) } }
                @if let Some(built) = self.built { h2 { "How yours is built" } (built) }
                @if !self.open.is_empty() { h2 #to-settle { "To settle" } (findings_told(&self.open)) }
                @if !self.settled.is_empty() { (Fold::shut("Settled", findings_told(&self.settled))) }
            },
        }
    }
}
