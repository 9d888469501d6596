//! The points of a machine, a table for each part of it.

use advice::round::{Act, act};
use advice::words;
use shop::chart::Point;

use crate::address;
use crate::machines::element::assembly_anchor;
use crate::parts::{Balloon, Cell, Column, Style, Table};
use crate::phrase::capital;
use crate::shop_state::{View, when};

/// A part of the machine with its points.
pub(super) struct Part {
    pub(super) anchor: Option<String>,
    pub(super) name: String,
    pub(super) points: Table,
}

/// Each assembly that has points here, and last those that belong to none.
pub(super) fn parts(view: &View) -> Vec<Part> {
    let chart = &view.machine.chart;
    let named = chart.assemblies.iter().map(|assembly| (Some(&assembly.id), assembly.name.as_str()));
    let all = named.chain([(None, "Elsewhere on the machine")]);
    let parts = all.map(|(id, name)| {
        let points = chart.points_here().filter(|point| point.assembly.as_ref() == id);
        let points = table(points.map(|point| row(view, point)).collect());
        Part { anchor: id.map(assembly_anchor), name: name.to_owned(), points }
    });
    parts.filter(|part| !part.points.rows.is_empty()).collect()
}

fn table(rows: Vec<Vec<Cell>>) -> Table {
    let headings = ["Point", "How oiled", "Oil", "How much", "How often", "Last done"];
    Table {
        caption: words::count(rows.len(), "point"),
        columns: headings.map(|heading| Column::Words(heading.into())).into(),
        rows,
        style: Style::Wide,
    }
}

fn row(view: &View, point: &Point) -> Vec<Cell> {
    let chart = &view.machine.chart;
    let reservoir = point.reservoir.as_ref().and_then(|id| chart.reservoir(id));
    let oil = point.oil.clone().or_else(|| reservoir?.oil.clone());
    let history = view.machine.history(&point.id);
    // What is done at a look is looking; anywhere else a sign that was seen is no oil given.
    let last = match act(point) {
        Act::Look => [history.sign_seen, history.sign_missing].into_iter().flatten().max_by_key(|mark| mark.entry),
        Act::Give | Act::TopUp => history.dosed,
    };
    vec![
        Cell::Part(Balloon(point.id.to_string()).named(&point.name, &address::point(&view.machine.id, &point.id))),
        capital(&point.method.to_string()).into(),
        oil.unwrap_or_default().into(),
        point.dose.as_ref().map_or_else(String::new, |dose| dose.typed.clone()).into(),
        point.every.iter().map(|every| every.typed.as_str()).collect::<Vec<_>>().join(" or ").into(),
        last.map_or_else(|| "not yet".to_owned(), |mark| when(&view.moment, mark.happened)).into(),
    ]
}
