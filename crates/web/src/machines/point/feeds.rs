//! The moving pairs that a point feeds, straight or through oil lines.

use shop::chart::{Chart, Pair, Point};

use crate::parts::{Cell, Column, Style, Table};
use crate::phrase::{called, capital};

/// The table; nothing where it is not known.
pub(super) fn table(chart: &Chart, point: &Point) -> Option<Table> {
    let straight = point.feeds.iter().filter_map(|id| chart.pair(id)).map(|pair| row(chart, pair, ""));
    let circuits = point.feeds.iter().chain(&point.circuit).filter_map(|id| chart.circuit(id));
    let mut seen = Vec::new();
    let mut rows: Vec<Vec<Cell>> = straight.collect();
    for circuit in circuits {
        if seen.contains(&&circuit.id) {
            continue;
        }
        seen.push(&circuit.id);
        let fed = circuit.nodes.iter().flat_map(|node| &node.feeds).filter_map(|id| chart.pair(id));
        rows.extend(fed.map(|pair| row(chart, pair, &circuit.name)));
    }
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
