//! `GET /machines/{id}`: the oiling chart of one machine, as this example is built.

mod assemblies;
mod built;
pub(crate) mod edit;
mod lines;
mod reservoirs;

use advice::words;
use axum::extract::{Path, Query, State};
use maud::{Markup, Render, html};
use serde::Deserialize;
use shop::chart::{Picture, Point};

use super::audit;
use super::element::{LINES, RESERVOIRS};
use super::findings::{Finding, anchor};
use super::point::fresh;
use super::sides;
use crate::parts::{Facts, Link, Page, Section, Side, Table, TitleBlock};
use crate::phrase::called;
use crate::shop_state::{Shop, View};
use crate::{Error, address};

/// The page of a machine.
struct Machine {
    name: String,
    today: String,
    points: String,
    facts: Facts,
    sides: Vec<SideLink>,
    side: Option<Side>,
    assemblies: Vec<assemblies::Part>,
    reservoirs: Option<Table>,
    lines: Vec<lines::Lines>,
    built: Option<Table>,
    options: String,
    /// The headings of what is open, each leading to it.
    open: Vec<Link>,
    findings: String,
    doubtful: Link,
    log: String,
    mend: Link,
    new_point: Link,
    pictures: Link,
}

/// A side of the machine that can be chosen.
struct SideLink {
    to: String,
    name: String,
    is_shown: bool,
}

/// What the page is asked for.
#[derive(Debug, Default, Deserialize)]
pub(crate) struct Asked {
    /// The id of the picture of the side that is shown; the first when none is named or there is none of that name.
    #[serde(default)]
    side: String,
}

/// `GET /machines/{machine}`
pub(crate) async fn show(
    State(shop): State<Shop>,
    Path(id): Path<String>,
    Query(asked): Query<Asked>,
) -> Result<Markup, Error> {
    let view = shop.view(&id).await?;
    let pictures = sides::pictures(&view);
    let chosen = pictures.iter().position(|(picture, _)| picture.id.as_str() == asked.side).unwrap_or(0);
    let side = match pictures.get(chosen) {
        Some((picture, points)) => sides::side(&shop, &view, picture, points).await?,
        None => None,
    };
    Ok(Machine { sides: links(&view, &pictures, chosen), side, ..Machine::of(&view) }.page().render())
}

fn links(view: &View, pictures: &[(&Picture, Vec<&Point>)], chosen: usize) -> Vec<SideLink> {
    let link = |(number, (picture, _)): (usize, &(&Picture, Vec<&Point>))| SideLink {
        to: sides::address(&view.machine.id, &picture.id),
        name: called(picture.caption.as_ref(), &picture.id),
        is_shown: number == chosen,
    };
    pictures.iter().enumerate().map(link).collect()
}

impl Machine {
    fn of(view: &View) -> Self {
        let chart = &view.machine.chart;
        let about = &chart.machine;
        let id = view.machine.id.as_str();
        let findings = address::findings(&view.machine.id);
        let open = chart.findings.iter().filter(|finding| finding.settled.is_none());
        let open = open.map(|finding| {
            let to = format!("{findings}#{}", address::escaped(&anchor(&finding.id)));
            Link::new(to, Finding::of(&view.machine.id, chart, finding).heading)
        });
        Self {
            name: about.name.clone(),
            today: address::with_query("/", &[("machine", id)]),
            points: chart.points_here().count().to_string(),
            facts: Facts::new()
                .say("Kind", about.kind.clone())
                .say("Size", about.size.clone())
                .say("Built", about.built.clone())
                .say("Note", about.note.clone()),
            sides: Vec::new(),
            side: None,
            assemblies: assemblies::parts(view),
            reservoirs: reservoirs::table(&view.machine.id, chart, view.settings.units),
            lines: lines::all(chart),
            built: built::table(chart),
            options: address::options(&view.machine.id),
            open: open.collect(),
            findings,
            doubtful: audit::link(view),
            log: address::with_query("/log", &[("machine", id)]),
            mend: Link::new(edit::address(&view.machine.id), "Mend what is said of the machine"),
            pictures: Link::new(address::pictures(&view.machine.id), words::count(chart.pictures.len(), "picture")),
            new_point: Link::new(fresh::address(&view.machine.id), "Write down a new oiling point"),
        }
    }

    fn page(self) -> Page {
        let block = TitleBlock::new([("Machine", self.name.clone()), ("Oiling points", self.points)]);
        let block = if self.open.is_empty() {
            block.and_link("To settle", Link::new(self.findings.clone(), "nothing"))
        } else {
            block.and_link("To settle", Link::new(self.findings.clone(), self.open.len().to_string()))
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
                div.row { (self.doubtful) (self.mend) (self.pictures) }
                @if !self.sides.is_empty() {
                    h2 id=(sides::ANCHOR) { "Where they are" }
                    nav.side-links aria-label="Sides of the machine" {
                        @for link in &self.sides {
                            a.button href=(link.to) aria-current=[link.is_shown.then_some("true")] { (link.name) }
                        }
                    }
                    @match self.side {
                        Some(side) => (side),
                        None => p.quiet { "The file of this picture has not been taken in. It goes in on the page of the pictures." },
                    }
                }
                h2 { "Oiling points" }
                @for part in self.assemblies { h3 id=[part.anchor] { (part.name) } (part.points) }
                (self.new_point)
                @if let Some(reservoirs) = self.reservoirs { h2 id=(RESERVOIRS) { "Sumps, cups, tanks and boxes" } (reservoirs) }
                @if !self.lines.is_empty() { h2 id=(LINES) { "Oil lines" } @for one in self.lines { (one) } }
                @if let Some(built) = self.built {
                    h2 { "How yours is built" }
                    (built)
                    (Link::new(self.options, "Say how yours is built").as_box())
                }
                h2 { "To settle" }
                @if !self.open.is_empty() { ul { @for one in &self.open { li { (one) } } } }
                (Link::new(self.findings, "What is to settle, and writing down more").as_box())
            },
        }
    }
}
