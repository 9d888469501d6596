//! `GET /shelf`: the oils, the greases and the cans of the shop, and which points ask for each.

pub(crate) mod blend;
pub(crate) mod can;
pub(crate) mod form;
mod oil;
pub(crate) mod plan;

pub(crate) use oil::show as show_oil;

use advice::label::{Property, stated};
use advice::round::serving;
use advice::stock::{Stock, stock};
use advice::topic::TOPICS;
use advice::words;
use axum::extract::State;
use maud::{Markup, Render, html};
use shop::chart::Point;
use shop::fault::nearest;
use shop::id::Id;
use shop::shelf::{Can, Family, Oil, Shelf, Stated};
use shop::snapshot::{MachineSnapshot, ShopSnapshot};

use tribology::quantity::Units;

use crate::parts::{Cell, Column, Empty, Facts, Link, Page, Section, Style, Table, TitleBlock};
use crate::phrase::capital;
use crate::shop_state::Shop;
use crate::{Error, address, calc};

/// The page of the shelf.
struct ShelfPage {
    oils: Vec<OilCard>,
    greases: usize,
    cans: Option<Table>,
    can_count: usize,
}

/// What is known of one oil.
struct OilCard {
    id: Id,
    name: String,
    facts: Facts,
}

/// `GET /shelf`
pub(crate) async fn show(State(shop): State<Shop>) -> Result<Markup, Error> {
    let units = shop.store.settings().await?.units;
    let now = shop.clock.now();
    let snapshot = shop.store.snapshot(now).await?;
    let movements = shop.store.movements(now).await?;
    let shelf = &snapshot.shelf;
    let page = ShelfPage {
        oils: shelf.oils.iter().map(|oil| card(&snapshot, oil, &stock(oil, shelf, &movements), units)).collect(),
        greases: shelf.oils.iter().filter(|oil| oil.family == Family::Grease).count(),
        cans: cans(&snapshot),
        can_count: shelf.cans.len(),
    };
    Ok(page.page().render())
}

impl ShelfPage {
    fn page(self) -> Page {
        let oils = words::count(self.oils.len() - self.greases, "oil");
        let kinds = if self.greases == 0 { oils } else { format!("{oils}, {}", words::count(self.greases, "grease")) };
        Page {
            title: "Shelf".into(),
            section: Some(Section::Shelf),
            today: Section::Today.path().into(),
            block: TitleBlock::new([("Shelf", kinds), ("Cans and guns", self.can_count.to_string())]),
            body: html! {
                h1 { "Shelf" }
                @if self.oils.is_empty() {
                    (Empty { says: "Nothing is on the shelf yet. Take in its file: oilwright shelf import FILE".into(), first: None })
                }
                div.two {
                    @for oil in self.oils {
                        section.stack { h2 { a href=(address::oil(&oil.id)) { (oil.name) } } (oil.facts) }
                    }
                }
                div.row { (Link::new(form::NEW, "Write down a new oil or grease").as_box()) (Link::new(plan::ADDRESS, "Fewest oils").as_box()) (Link::new("/shelf/blend", "Mix two oils").as_box()) }
                h2 id=(can::CANS) { "Cans and guns" }
                @if let Some(cans) = self.cans { (cans) }
                (Link::new(can::address(None), "Write down a new can or gun"))
                h2 { "Work it out" }
                ul {
                    @for topic in TOPICS { li { a href=(calc::address(topic.name)) { (topic.title) } } }
                }
            },
        }
    }
}

/// The oil of this id.
///
/// # Errors
/// [`Error::Unknown`] with the nearest id when there is none.
pub(crate) fn named<'s>(shelf: &'s Shelf, asked: &str) -> Result<&'s Oil, Error> {
    shelf.oils.iter().find(|oil| oil.id.as_str() == asked).ok_or_else(|| {
        let near = nearest(asked, shelf.oils.iter().map(|oil| oil.id.as_str())).and_then(|id| Id::new(id).ok());
        let near = near.and_then(|id| shelf.oil(&id)).map(|oil| (address::oil(&oil.id), oil.name.clone()));
        Error::Unknown { what: "oil", asked: asked.to_owned(), near }
    })
}

fn card(snapshot: &ShopSnapshot, oil: &Oil, stock: &Stock, units: Units) -> OilCard {
    let cans: Vec<String> = snapshot.shelf.cans_with(&oil.id).map(Can::called).collect();
    let cans: Vec<&str> = cans.iter().map(String::as_str).collect();
    let sums = words::stock_sums(stock, units);
    let left = html! {
        (capital(&words::stock_left(stock, units)))
        @if !sums.is_empty() { br; small.quiet { (sums) } }
    };
    let packs: Vec<&str> = oil.packs.iter().map(|pack| pack.text.as_str()).collect();
    let (yes, no, unsaid) = properties(oil);
    OilCard {
        id: oil.id.clone(),
        name: oil.name.clone(),
        facts: Facts::new()
            .say("Sort", Some(capital(&oil.family.to_string())))
            .say("Class on the label", oil.symbol.clone())
            .say("Thickness at 40\u{a0}°C", oil.v40.as_ref().map(|v40| v40.text.clone()))
            .say("Thickness at 100\u{a0}°C", oil.v100.as_ref().map(|v100| v100.text.clone()))
            .say("Viscosity index", oil.index.map(|index| index.to_string()))
            .say("Soap", oil.grease.thickener.as_deref().map(capital))
            .say("Stiffness (NLGI)", oil.grease.nlgi.clone())
            .say("Its oil at 40\u{a0}°C", oil.grease.base_v40.as_ref().map(|v40| v40.text.clone()))
            .say("Holds", yes)
            .say("Is free of", no)
            .say("Not stated", unsaid)
            .say("Copper strip", oil.copper_strip.clone())
            .say("Left", Some(left))
            .say("Sold in", (!packs.is_empty()).then(|| packs.join("; ")))
            .say("In", (!cans.is_empty()).then(|| capital(&words::join(&cans))))
            .say("For", asked_by(snapshot, &oil.id))
            .say("Note", oil.note.clone()),
    }
}

/// What the label or the sheet says to be in it, not in it, and what it says nothing of.
fn properties(oil: &Oil) -> (Option<String>, Option<String>, Option<String>) {
    let said = |which: Stated| {
        let names = Property::ALL.into_iter().filter_map(|property| {
            let known = stated(oil, property);
            let name = words::property(property);
            (known.stated == which).then(|| match known.by {
                Some(class) => format!("{name} (by the class {})", class.words[0]),
                None => name.to_owned(),
            })
        });
        let names: Vec<String> = names.collect();
        let names: Vec<&str> = names.iter().map(String::as_str).collect();
        (!names.is_empty()).then(|| capital(&words::join(&names)))
    };
    (said(Stated::Yes), said(Stated::No), said(Stated::NotStated))
}

/// The points for which the round takes this oil, machine by machine.
fn asked_by(snapshot: &ShopSnapshot, oil: &Id) -> Option<Markup> {
    let line = |machine: &MachineSnapshot| {
        let takes = |point: &&Point| {
            serving(&machine.chart, point, &snapshot.shelf).oil.is_some_and(|chosen| chosen.id == *oil)
        };
        let points: Vec<&Id> = machine.chart.points_here().filter(takes).map(|point| &point.id).collect();
        (!points.is_empty()).then(|| {
            html! {
                p {
                    a href=(address::machine(&machine.id)) { (machine.chart.machine.name) } ": "
                    @for (at, id) in points.iter().enumerate() {
                        @if at > 0 { ", " }
                        a href=(address::point(&machine.id, id)) { (id) }
                    }
                }
            }
        })
    };
    let lines: Vec<Markup> = snapshot.machines.iter().filter_map(line).collect();
    (!lines.is_empty()).then(|| html! { @for line in lines { (line) } })
}

fn cans(snapshot: &ShopSnapshot) -> Option<Table> {
    let shelf = &snapshot.shelf;
    let rows: Vec<Vec<Cell>> = shelf
        .cans
        .iter()
        .map(|can| {
            let oil = can.oil.as_ref().and_then(|id| shelf.oil(id));
            vec![
                capital(&can.called()).into(),
                oil.map_or_else(|| "nothing yet".to_owned(), |oil| oil.name.clone()).into(),
                can.stroke.as_ref().map_or_else(|| "not measured".to_owned(), |stroke| stroke.text.clone()).into(),
                can.note.clone().unwrap_or_default().into(),
                Cell::Part(Link::new(can::address(Some(&can.id)), "Mend or measure again").about(&can.called())),
            ]
        })
        .collect();
    (!rows.is_empty()).then(|| Table {
        caption: "One stroke, measured: count the strokes that fill 10 mL".into(),
        columns: ["Can or gun", "Holds", "One stroke", "Note"]
            .map(|heading| Column::Words(heading.into()))
            .into_iter()
            .chain([Column::Acts("Wrong?".into())])
            .collect(),
        rows,
        style: Style::Wide,
    })
}
