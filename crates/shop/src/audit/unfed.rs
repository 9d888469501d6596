//! Pairs that nothing feeds. Splash, oil lines and reservoirs count as feeding; a friction clutch may have to stay dry.

use std::collections::BTreeSet;

use crate::chart::{Chart, PairKind};
use crate::id::Id;

use super::{Remark, Rule, called};

pub(super) fn remarks(chart: &Chart) -> Vec<Remark> {
    let fed = fed(chart);
    let mut unfed: Vec<_> = chart
        .pairs
        .iter()
        .filter(|pair| chart.applies(&pair.when) && !fed.contains(&pair.id) && pair.kind != PairKind::FrictionClutch)
        .collect();
    unfed.sort_by_key(|pair| !pair.irreplaceable);
    unfed
        .into_iter()
        .map(|pair| {
            let hard = if pair.irreplaceable { ", and it cannot be bought again" } else { "" };
            Remark {
                rule: Rule::Unfed,
                of: vec![pair.id.clone()],
                says: format!("nothing feeds the {} \"{}\"{hard}", pair.kind, called(pair.name.as_deref(), &pair.id)),
                next: "find the hole, cup or splash that reaches it and chart that it feeds this pair; if there is none, write a finding"
                    .to_owned(),
            }
        })
        .collect()
}

/// The pairs that something feeds.
fn fed(chart: &Chart) -> BTreeSet<&Id> {
    let mut fed: BTreeSet<&Id> = chart.points_here().flat_map(|point| &point.feeds).collect();
    let reservoirs = chart.reservoirs.iter().filter(|reservoir| chart.applies(&reservoir.when));
    fed.extend(reservoirs.flat_map(|reservoir| &reservoir.feeds));
    let started =
        |circuit: &Id| chart.points_here().any(|p| p.circuit.as_ref() == Some(circuit) || p.feeds.contains(circuit));
    for circuit in chart.circuits.iter().filter(|circuit| chart.applies(&circuit.when)) {
        if circuit.from.is_some() || started(&circuit.id) {
            fed.extend(circuit.nodes.iter().flat_map(|node| &node.feeds));
        }
    }
    fed
}
