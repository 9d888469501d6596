//! The bodies of oil of a machine.

use shop::chart::{Behaviour, Chart, Reservoir};

use crate::parts::{Cell, Column, Style, Table};
use crate::phrase::{called, capital};

/// The table; nothing where the machine has none.
pub(super) fn table(chart: &Chart) -> Option<Table> {
    let rows: Vec<Vec<Cell>> = chart.reservoirs.iter().filter(|one| chart.applies(&one.when)).map(row).collect();
    let headings = ["Name", "Kind", "Holds", "Oil", "Its level", "Right level", "Drain"];
    (!rows.is_empty()).then(|| Table {
        caption: "What each holds is what drains and is refilled".into(),
        columns: headings.map(|heading| Column::Words(heading.into())).into(),
        rows,
        style: Style::Wide,
    })
}

fn row(one: &Reservoir) -> Vec<Cell> {
    let capacity = one.capacity.as_ref().map_or_else(|| "not measured".to_owned(), |capacity| capacity.text.clone());
    let dry = one.dry_fill.as_ref().map(|dry| format!("{capacity}; dry {}", dry.text));
    let behaviour = match one.behaviour {
        Some(Behaviour::Holds) => "should stay",
        Some(Behaviour::Uses) => "should fall as the machine runs",
        None => "not known",
    };
    vec![
        called(one.name.as_ref(), &one.id).into(),
        capital(&one.kind.to_string()).into(),
        dry.unwrap_or(capacity).into(),
        one.oil.clone().unwrap_or_default().into(),
        behaviour.into(),
        one.level.clone().unwrap_or_default().into(),
        one.drain.join("; ").into(),
    ]
}
