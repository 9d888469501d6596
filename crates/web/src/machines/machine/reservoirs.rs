//! The bodies of oil of a machine.

use advice::words;
use maud::Render;
use shop::chart::{Behaviour, Chart, Reservoir};
use shop::id::Id;
use tribology::quantity::Units;

use crate::address;
use crate::log::reservoirs as form;
use crate::parts::{Cell, Column, Link, Style, Table};
use crate::phrase::{called, capital};

/// The table; nothing where the machine has none.
pub(super) fn table(machine: &Id, chart: &Chart, units: Units) -> Option<Table> {
    let rows: Vec<Vec<Cell>> =
        chart.reservoirs.iter().filter(|one| chart.applies(&one.when)).map(|one| row(machine, one, units)).collect();
    let headings = ["Name", "Kind", "Holds", "Oil", "Its level", "Right level", "Drain"];
    let columns = headings.map(|heading| Column::Words(heading.into())).into_iter();
    (!rows.is_empty()).then(|| Table {
        caption: "What each holds is what drains and is refilled".into(),
        columns: columns.chain([Column::Acts("Write down".into())]).collect(),
        rows,
        style: Style::Wide,
    })
}

fn row(machine: &Id, one: &Reservoir, units: Units) -> Vec<Cell> {
    let capacity =
        one.capacity.as_ref().map_or_else(|| "not measured".to_owned(), |capacity| words::typed(capacity, units));
    let dry = one.dry_fill.as_ref().map(|dry| format!("{capacity}; dry {}", words::typed(dry, units)));
    let behaviour = match one.behaviour {
        Some(Behaviour::Holds) => "should stay",
        Some(Behaviour::Uses) => "should fall as the machine runs",
        None => "not known",
    };
    vec![
        Cell::Part(Link::new(address::reservoir(machine, &one.id), called(one.name.as_ref(), &one.id)).render()),
        capital(&one.kind.to_string()).into(),
        dry.unwrap_or(capacity).into(),
        one.oil.clone().unwrap_or_default().into(),
        behaviour.into(),
        one.level.clone().unwrap_or_default().into(),
        one.drain.join("; ").into(),
        Cell::Part(
            Link::new(form::address(machine, &one.id), "Filled, read or drained")
                .about(&called(one.name.as_ref(), &one.id)),
        ),
    ]
}
