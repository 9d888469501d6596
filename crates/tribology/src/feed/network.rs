//! Steady laminar flow through tubes that branch and meet: how much runs where, and how high the oil stands. Start at [`Network`] and
//! [`Network::solve`]. Nodes have ends (a tank, an outlet, a lip, a relief valve), tubes may be narrowed, blocked or one-way, pumps give a
//! fixed flow less their slip. Heads are metres of the oil itself. Fast flow, long columns on the move and air are left out.

mod balance;
mod fault;
mod ground;
mod matrix;
mod node;
mod solve;
mod solved;
mod tube;

pub use fault::Fault;
pub use node::{End, Node};
pub use solved::Solved;
pub use tube::{Pump, Slip, Tube, Way};

use crate::Answer;
use crate::quantity::{Acceleration, KinematicViscosity};

/// The free fall at which heads are usually reckoned, exact.
///
/// Source: `nist-sp-811`, appendix B.8.
pub const STANDARD_GRAVITY: Acceleration = Acceleration::from_m_s2(9.806_65);

/// Tubes and pumps between nodes, full of one oil of one temperature.
#[derive(Clone, Debug, PartialEq)]
pub struct Network {
    /// Of the oil, at its temperature.
    pub viscosity: KinematicViscosity,
    /// The free fall that turns heads into pressures; usually [`STANDARD_GRAVITY`].
    pub gravity: Acceleration,
    /// Where tubes begin, meet and end.
    pub nodes: Vec<Node>,
    /// What joins them.
    pub tubes: Vec<Tube>,
    /// What drives the oil, besides heads.
    pub pumps: Vec<Pump>,
}

impl Network {
    /// A network of nodes and tubes alone, in standard gravity.
    ///
    /// - `viscosity`: of the oil.
    /// - `nodes`, `tubes`: as they lie.
    /// - returns: the network; [`Network::solve`] finds what is wrong with it.
    #[must_use]
    pub fn new(viscosity: KinematicViscosity, nodes: Vec<Node>, tubes: Vec<Tube>) -> Self {
        Self { viscosity, gravity: STANDARD_GRAVITY, nodes, tubes, pumps: Vec::new() }
    }

    /// The flow in every tube and the head at every node.
    ///
    /// `Σ C (h − h′) = q` at every node, with `C = g π d⁴ / (128 ν L)`; at an outlet, a lip or a relief valve `h ≤ z`, `q ≥ 0` and
    /// `(z − h) q = 0`. The matrix is symmetric, its pivots positive and all else in it at most zero, so the heads are one and only,
    /// and opening or shutting all that does not fit goes one way and ends, at most one sparse Cholesky factorization for each end.
    /// One-way tubes between free nodes lose that one way; there, when the count of misfits no longer falls, single ones are turned
    /// in a fixed order, which ends too. Heads are kept in two parts and refined, so that flows keep their figures where a wide
    /// tube hardly has a fall.
    ///
    /// - returns: flows, heads, what leaves, the worst imbalance as a part of the largest flow, and the factorizations that it took;
    ///   the answer warns when a tube runs too fast for laminar flow.
    ///
    /// # Range
    /// Laminar flow, Reynolds numbers up to 2000; tubes long against 0.06 Re bores; no loss where they meet.
    ///
    /// # Errors
    /// A [`Fault`] that names the node or tube: sizes that cannot be, names that are unknown or stand twice, nodes without any tank,
    /// outlet or lip to settle their head, more drawn than is fed; or an imbalance above a part in a thousand million.
    ///
    /// # Source
    /// `hagen-poiseuille`, `hintermueller-ito-kunisch-2002`, `portugal-judice-vicente-1994`
    ///
    /// # Example
    /// ```
    /// use tribology::feed::network::{End, Network, Node, Tube};
    /// use tribology::quantity::{KinematicViscosity, Length};
    /// let nodes = vec![
    ///     Node::new("tank", End::Head(Length::from_m(0.5))),
    ///     Node::new("joint", End::Closed),
    ///     Node::new("drip", End::Head(Length::from_m(0.0))),
    /// ];
    /// let tubes = vec![
    ///     Tube::new("wide", "tank", "joint", Length::from_m(0.8), Length::from_mm(4.0)),
    ///     Tube::new("narrow", "joint", "drip", Length::from_m(0.4), Length::from_mm(3.0)),
    /// ];
    /// let found = Network::new(KinematicViscosity::from_mm2_s(68.0), nodes, tubes).solve();
    /// assert!(found.is_ok_and(|found| (found.value.flows[0].ml_min() - 13.1693).abs() < 1e-4));
    /// ```
    pub fn solve(&self) -> Result<Answer<Solved>, Fault> {
        solve::solve(self)
    }
}
