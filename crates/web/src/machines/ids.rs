//! Ids that are free: no element of the chart bears them and none ever did.

use shop::chart::Chart;
use shop::id::Id;

/// The number behind the highest that a point bears or bore.
pub(crate) fn next_point(chart: &Chart) -> Id {
    let borne = chart.points.iter().map(|point| &point.id).chain(&chart.retired);
    let highest = borne.filter_map(|id| id.as_str().parse::<u32>().ok()).max().unwrap_or(0);
    free(chart, "", u64::from(highest) + 1)
}

/// The first number that no finding bears or bore, as `F5`.
pub(crate) fn next_finding(chart: &Chart) -> Id {
    free(chart, "F", 1)
}

/// The first number that no picture bears or bore, as `picture-5`.
pub(crate) fn next_picture(chart: &Chart) -> Id {
    free(chart, "picture-", 1)
}

fn free(chart: &Chart, letter: &str, first: u64) -> Id {
    let mut ids = (first..).map(|number| Id::new(&format!("{letter}{number}")).expect("letters and figures are an id"));
    ids.find(|id| !is_used(chart, id)).expect("a chart has an end and the numbers have none")
}

/// Whether an element bears this id, or one bore it once.
pub(crate) fn is_used(chart: &Chart, id: &Id) -> bool {
    let nodes = |one: &shop::chart::Circuit| one.nodes.iter().any(|node| node.id == *id);
    let tubes = |one: &shop::chart::Circuit| one.tubes.iter().any(|tube| tube.id == *id);
    chart.retired.contains(id)
        || chart.points.iter().any(|one| one.id == *id)
        || chart.pairs.iter().any(|one| one.id == *id)
        || chart.reservoirs.iter().any(|one| one.id == *id)
        || chart.assemblies.iter().any(|one| one.id == *id)
        || chart.options.iter().any(|one| one.id == *id)
        || chart.stands.iter().any(|one| one.id == *id)
        || chart.jobs.iter().any(|one| one.id == *id)
        || chart.pictures.iter().any(|one| one.id == *id)
        || chart.findings.iter().any(|one| one.id == *id)
        || chart.circuits.iter().any(|one| one.id == *id || nodes(one) || tubes(one))
}
