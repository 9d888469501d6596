//! Reservoirs of which the level, the drain or the vent is not charted. A cup needs neither drain nor vent.

use crate::chart::{Chart, Reservoir, ReservoirKind};

use super::{Remark, Rule, called};

pub(super) fn remarks(chart: &Chart) -> Vec<Remark> {
    chart.reservoirs.iter().filter(|reservoir| chart.applies(&reservoir.when)).filter_map(of_reservoir).collect()
}

fn of_reservoir(reservoir: &Reservoir) -> Option<Remark> {
    let cup = reservoir.kind == ReservoirKind::Cup;
    let lacks: Vec<&str> = [
        (reservoir.level.is_none(), "level"),
        (reservoir.drain.is_empty() && !cup, "drain"),
        (reservoir.vent.is_none() && !cup, "vent"),
    ]
    .into_iter()
    .filter_map(|(lacking, what)| lacking.then_some(what))
    .collect();
    (!lacks.is_empty()).then(|| Remark {
        rule: Rule::Reservoir,
        of: vec![reservoir.id.clone()],
        says: format!("the {} \"{}\" has no {} on the chart", reservoir.kind, called(reservoir.name.as_deref(), &reservoir.id), lacks.join(", no ")),
        next: "look for it and write where it is; a level says in which state to read it, and a blocked vent leaks at the shafts".to_owned(),
    })
}
