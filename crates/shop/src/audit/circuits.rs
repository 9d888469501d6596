//! Oil lines with a dead end: a node from which no outlet can be reached, or an outlet that no oil reaches.

use std::collections::BTreeSet;

use crate::chart::{Chart, Circuit, Node, NodeKind};
use crate::id::Id;

use super::{Remark, Rule};

pub(super) fn remarks(chart: &Chart) -> Vec<Remark> {
    chart.circuits.iter().filter(|circuit| chart.applies(&circuit.when)).flat_map(of_circuit).collect()
}

fn of_circuit(circuit: &Circuit) -> Vec<Remark> {
    let remark = |node: &Node, says: String, next: &str| Remark {
        rule: Rule::DeadEnd,
        of: vec![circuit.id.clone(), node.id.clone()],
        says,
        next: next.to_owned(),
    };
    // Oil gives out where a pair is fed, whatever the node is called.
    let gives = |node: &&Node| node.kind == NodeKind::Outlet || !node.feeds.is_empty();
    let sources: Vec<&Id> =
        match circuit.nodes.iter().filter(|node| node.kind == NodeKind::Pump).map(|n| &n.id).collect::<Vec<_>>() {
            pumps if !pumps.is_empty() => upstream(circuit, &pumps),
            _ => circuit
                .nodes
                .iter()
                .map(|n| &n.id)
                .filter(|id| circuit.tubes.iter().all(|tube| tube.to != **id))
                .collect(),
        };
    let reached = spread(&sources, |id| circuit.tubes.iter().filter(|t| t.from == *id).map(|t| &t.to).collect());
    let outlets: Vec<&Id> = circuit.nodes.iter().filter(gives).map(|node| &node.id).collect();
    let leads = spread(&outlets, |id| circuit.tubes.iter().filter(|t| t.to == *id).map(|t| &t.from).collect());
    let mut remarks = Vec::new();
    for node in &circuit.nodes {
        let (name, lines) = (&node.id, &circuit.name);
        if !leads.contains(&node.id) {
            let says = format!("in \"{lines}\" no tube leads on from the {} \"{name}\" to an outlet", node.kind);
            remarks.push(remark(node, says, "trace the line on from there, or write a finding that it is stopped up"));
        } else if !reached.contains(&node.id) {
            let says = format!("in \"{lines}\" no oil reaches the {} \"{name}\"", node.kind);
            remarks.push(remark(node, says, "chart the tube that brings oil to it"));
        } else if node.kind == NodeKind::Outlet && node.feeds.is_empty() {
            let says = format!("in \"{lines}\" the outlet \"{name}\" feeds nothing");
            remarks.push(remark(node, says, "name the pair that it wets in its `feeds`"));
        }
    }
    remarks
}

/// The pumps and what stands in front of them, such as a suction strainer.
fn upstream<'c>(circuit: &'c Circuit, pumps: &[&'c Id]) -> Vec<&'c Id> {
    spread(pumps, |id| circuit.tubes.iter().filter(|tube| tube.to == *id).map(|tube| &tube.from).collect())
        .into_iter()
        .collect()
}

/// All that can be reached from these, step by step.
fn spread<'c>(from: &[&'c Id], next: impl Fn(&Id) -> Vec<&'c Id>) -> BTreeSet<&'c Id> {
    let mut reached: BTreeSet<&Id> = from.iter().copied().collect();
    let mut open: Vec<&Id> = from.to_vec();
    while let Some(id) = open.pop() {
        for one in next(id) {
            if reached.insert(one) {
                open.push(one);
            }
        }
    }
    reached
}
