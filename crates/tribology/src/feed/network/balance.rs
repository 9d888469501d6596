//! The sums of flows at the nodes, in plain numbers: SI units, nodes by their places in the list.

use std::collections::BTreeMap;

use super::{End, Fault, Network, Way};
use crate::Error;
use crate::quantity::{Acceleration, KinematicViscosity};

/// The network as numbers.
pub(super) struct Balance {
    /// Tubes, then pumps, each in its own order.
    pub(super) edges: Vec<Edge>,
    /// What is drawn at each node.
    pub(super) draws: Vec<f64>,
    /// What settles the head of each node.
    pub(super) ends: Vec<End>,
}

/// Something between two nodes that passes `source + conductance × fall`.
pub(super) struct Edge {
    pub(super) from: usize,
    pub(super) to: usize,
    pub(super) conductance: f64,
    pub(super) source: f64,
    pub(super) way: Way,
}

/// Heads in two parts, the second so small that differences keep figures which one part would lose.
pub(super) struct Heads {
    pub(super) whole: Vec<f64>,
    pub(super) rest: Vec<f64>,
}

impl Heads {
    pub(super) fn at(&self, node: usize) -> f64 {
        self.whole[node] + self.rest[node]
    }

    pub(super) fn fall(&self, edge: &Edge) -> f64 {
        (self.whole[edge.from] - self.whole[edge.to]) + (self.rest[edge.from] - self.rest[edge.to])
    }
}

impl Balance {
    /// Checks names and sizes on the way.
    pub(super) fn of(network: &Network) -> Result<Self, Fault> {
        let size = |error| Fault::Size { of: "network", name: String::new(), error };
        Error::quantity_positive::<KinematicViscosity>("viscosity", network.viscosity).map_err(size)?;
        Error::quantity_positive::<Acceleration>("gravity", network.gravity).map_err(size)?;
        let places = places("node", network.nodes.iter().map(|node| node.name.as_str()))?;
        places_of_others(network)?;
        let join = |of, name: &str, from: &str, to: &str| {
            let place = |node: &str| {
                let unknown = || Fault::UnknownNode { of, name: name.to_owned(), node: node.to_owned() };
                places.get(node).copied().ok_or_else(unknown)
            };
            let ends = (place(from)?, place(to)?);
            if ends.0 == ends.1 { Err(Fault::ToItself { of, name: name.to_owned() }) } else { Ok(ends) }
        };
        let mut edges = Vec::with_capacity(network.tubes.len() + network.pumps.len());
        for tube in &network.tubes {
            let (from, to) = join("tube", &tube.name, &tube.from, &tube.to)?;
            edges.push(Edge { from, to, conductance: tube.conductance(network)?, source: 0.0, way: tube.way });
        }
        for pump in &network.pumps {
            let (from, to) = join("pump", &pump.name, &pump.from, &pump.to)?;
            let conductance = pump.slip_for_a_metre()?;
            edges.push(Edge { from, to, conductance, source: pump.flow.m3_s(), way: Way::Both });
        }
        network.nodes.iter().try_for_each(super::Node::check)?;
        let draws = network.nodes.iter().map(|node| node.draw.m3_s()).collect();
        Ok(Self { edges, draws, ends: network.nodes.iter().map(|node| node.end).collect() })
    }

    pub(super) fn size(&self) -> usize {
        self.draws.len()
    }

    /// What each node has left over, from the flows along the edges.
    pub(super) fn surplus(&self, flows: &[f64]) -> Vec<f64> {
        let mut surplus: Vec<f64> = self.draws.iter().map(|draw| -draw).collect();
        for (edge, flow) in self.edges.iter().zip(flows) {
            surplus[edge.from] -= flow;
            surplus[edge.to] += flow;
        }
        surplus
    }

    /// What is fed to each node whatever the heads: by pumps, less what is drawn.
    pub(super) fn fed(&self) -> Vec<f64> {
        let sources: Vec<f64> = self.edges.iter().map(|edge| edge.source).collect();
        self.surplus(&sources)
    }
}

/// Tubes and pumps bear names of their own.
fn places_of_others(network: &Network) -> Result<(), Fault> {
    places("tube", network.tubes.iter().map(|tube| tube.name.as_str()))?;
    places("pump", network.pumps.iter().map(|pump| pump.name.as_str()))?;
    Ok(())
}

/// The place of each name in its list.
fn places<'n>(of: &'static str, names: impl Iterator<Item = &'n str>) -> Result<BTreeMap<&'n str, usize>, Fault> {
    let mut places = BTreeMap::new();
    for (place, name) in names.enumerate() {
        if places.insert(name, place).is_some() {
            return Err(Fault::Twice { of, name: name.to_owned() });
        }
    }
    Ok(places)
}
