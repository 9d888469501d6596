//! What a network does: flows, heads, and how well they are known.

use crate::quantity::{Length, VolumeFlow};

/// The flows and heads of a network, each list in the order of the network's own.
#[derive(Clone, Debug, PartialEq)]
pub struct Solved {
    /// The flow in each tube, above zero from where it begins to where it ends.
    pub flows: Vec<VolumeFlow>,
    /// What each pump gives, its slip taken off.
    pub pumped: Vec<VolumeFlow>,
    /// The head at each node; none where blocked and one-way tubes shut it off from all that would settle it, and nothing runs.
    pub heads: Vec<Option<Length>>,
    /// What leaves the network at each node's end; below zero what a tank gives. Zero at closed ends; what is drawn is not in it.
    pub leaves: Vec<VolumeFlow>,
    /// The worst imbalance at a node as a part of the largest flow; at most 1e-9.
    pub residual: f64,
    /// Factorizations made to find what is open, and one more.
    pub iterations: u32,
}
