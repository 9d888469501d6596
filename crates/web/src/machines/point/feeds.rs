//! The moving pairs that a point feeds, straight or through oil lines.

use shop::chart::{Chart, Pair, Point};
use shop::id::Id;

use crate::parts::{Cell, Column, Style, Table};
use crate::phrase::{called, capital};

/// The table; nothing where it is not known.
pub(crate) fn table(chart: &Chart, point: &Point) -> Option<Table> {
    let circuits = point.feeds.iter().chain(&point.circuit).filter_map(|id| chart.circuit(id));
    let through = circuits.flat_map(|circuit| circuit.nodes.iter().map(move |node| (node, circuit.name.as_str())));
    let through = through.flat_map(|(node, name)| node.feeds.iter().map(move |id| (id, name)));
    let mut fed: Vec<(&Id, &str)> = Vec::new();
    // What the oil lines feed is named with them, and not once more because the point says it too.
    for (id, name) in through.chain(point.feeds.iter().map(|id| (id, ""))) {
        if fed.iter().all(|(known, _)| *known != id) {
            fed.push((id, name));
        }
    }
    let rows = fed.into_iter().filter_map(|(id, name)| Some(row(chart, chart.pair(id)?, name)));
    let rows: Vec<Vec<Cell>> = rows.collect();
    (!rows.is_empty()).then(|| Table {
        caption: "Moving pairs".into(),
        columns: ["Moving pair", "Kind", "Part", "Through"].map(|heading| Column::Words(heading.into())).into(),
        rows,
        style: Style::Wide,
    })
}

fn row(chart: &Chart, pair: &Pair, through: &str) -> Vec<Cell> {
    let assembly = pair.assembly.as_ref().and_then(|id| chart.assembly(id));
    let name = called(pair.name.as_ref(), &pair.id);
    vec![
        if pair.irreplaceable { Cell::Note(name, "cannot be bought again".into()) } else { Cell::Text(name) },
        capital(&pair.kind.to_string()).into(),
        assembly.map_or_else(String::new, |assembly| assembly.name.clone()).into(),
        through.into(),
    ]
}
