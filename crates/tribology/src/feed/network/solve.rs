//! The search for what is open, and the solution for what is.
//!
//! Every end that only lets out and every one-way tube is open or shut. For a choice of these the heads follow from one linear
//! system; what then does not fit (an open end that draws in, a shut tube with a fall) is turned. A shut one-way tube is first given a
//! trace of its flow, so that no node is ever without a head; the last solutions are without it.

use super::balance::{Balance, Heads};
use super::ground;
use super::matrix::Matrix;
use super::{End, Fault, Network, Solved, Way};
use crate::Answer;
use crate::quantity::{Length, VolumeFlow};
use crate::working::{Standing, Step, Symbol};

/// What a shut one-way tube passes while it is searched for what is open, as a part of what it would pass open. Small against any
/// flow that matters, large against rounding.
const TRACE: f64 = 1e-10;
/// What may look open or shut either way, as a part of the largest flow or head.
const SAME: f64 = 1e-13;
/// A flow that is nothing but rounding, as a part of what the widest tube would pass under the highest head: heads in two parts have
/// some thirty figures.
const NOTHING: f64 = 1e-28;
/// The imbalance that an answer may have, as a part of the largest flow.
const BALANCED: f64 = 1e-9;
/// Turns without fewer misfits before single ones are turned in order.
const PATIENCE: usize = 10;
/// The largest Reynolds number for which flow is taken as laminar.
///
/// Source: `hagen-poiseuille`.
const LAMINAR: f64 = 2000.0;

pub(super) fn solve(network: &Network) -> Result<Answer<Solved>, Fault> {
    let balance = Balance::of(network)?;
    ground::check(network, &balance)?;
    let mut search = Search::new(&balance);
    let heads = search.run(TRACE).and_then(|_| search.run(0.0));
    let (heads, unsettled) = match heads {
        Ok(heads) => heads,
        Err(Stuck::ShutOff(node)) => return Err(Fault::ShutOff { node: network.nodes[node].name.clone() }),
        Err(Stuck::Endless) => {
            let (node, iterations) = (network.nodes[0].name.clone(), search.iterations);
            return Err(Fault::NotSolved { node, residual: f64::INFINITY, iterations });
        }
    };
    let mut flows = search.flows(&heads, 0.0);
    let nothing = search.nothing();
    flows.iter_mut().filter(|flow| flow.abs() <= nothing).for_each(|flow| *flow = 0.0);
    let (residual, worst) = search.residual(&flows);
    let iterations = search.iterations;
    if residual.is_nan() || residual > BALANCED {
        return Err(Fault::NotSolved { node: network.nodes[worst].name.clone(), residual, iterations });
    }
    let leaves = search.leaves(&flows);
    let m3_s = |flows: &[f64]| flows.iter().copied().map(VolumeFlow::from_m3_s).collect();
    let (in_tubes, pumped) = flows.split_at(network.tubes.len());
    let head = |node: usize| (!unsettled[node]).then(|| Length::from_m(heads.at(node)));
    let reynolds = network.tubes.iter().zip(in_tubes).map(|(tube, flow)| tube.reynolds(network, *flow));
    let fastest = reynolds.fold(0.0, f64::max);
    let solved = Solved {
        flows: m3_s(in_tubes),
        pumped: m3_s(pumped),
        heads: (0..balance.size()).map(head).collect(),
        leaves: m3_s(&leaves),
        residual,
        iterations,
    };
    let step = step(network, &solved, fastest);
    Ok(Answer::of(solved, step).vouched_within("Reynolds number in the fastest tube", fastest, 0.0, LAMINAR))
}

fn step(network: &Network, solved: &Solved, fastest: f64) -> Step {
    let symbol = |symbol, si, unit| Symbol { symbol, si, unit };
    let largest = solved.flows.iter().fold(0.0, |most: f64, flow| most.max(flow.m3_s().abs()));
    Step {
        name: "Flows and heads of the network",
        formula: "sum of g π d⁴ (h − h') / (128 ν L) = draw at every node",
        symbols: vec![
            symbol("ν", network.viscosity.m2_s(), "m²/s"),
            symbol("g", network.gravity.m_s2(), "m/s²"),
            symbol("nodes", network.nodes.len() as f64, ""),
            symbol("tubes", network.tubes.len() as f64, ""),
            symbol("largest Re", fastest, ""),
        ],
        result: symbol("largest flow", largest, "m³/s"),
        source: "hagen-poiseuille",
        standing: Standing::Handbook,
    }
}

/// Why the search gave up.
enum Stuck {
    /// A part that is shut off is fed or drawn from, most at this node.
    ShutOff(usize),
    /// No choice was found that fits, or the numbers left their range.
    Endless,
}

/// Something that is open or shut.
#[derive(Clone, Copy)]
enum Gate {
    End(usize),
    Edge(usize),
}

struct Search<'b> {
    balance: &'b Balance,
    matrix: Matrix,
    /// For each node whether its end, if it only lets out, is open.
    open_ends: Vec<bool>,
    /// For each edge whether it is open; always, but for one-way tubes.
    open_edges: Vec<bool>,
    /// The head of each node at the last solution.
    last: Vec<f64>,
    iterations: u32,
}

impl<'b> Search<'b> {
    /// All open: then what lets out can only be shut, and heads can only fall.
    fn new(balance: &'b Balance) -> Self {
        Self {
            balance,
            matrix: Matrix::default(),
            open_ends: balance.ends.iter().map(|end| end.ceiling().is_some()).collect(),
            open_edges: vec![true; balance.edges.len()],
            last: vec![0.0; balance.size()],
            iterations: 0,
        }
    }

    /// Turns what does not fit until all fits. Gives the heads, and for each node whether nothing settles its head.
    fn run(&mut self, trace: f64) -> Result<(Heads, Vec<bool>), Stuck> {
        let gates = self.balance.ends.iter().filter(|end| end.ceiling().is_some()).count()
            + self.balance.edges.iter().filter(|edge| edge.way == Way::Forward).count();
        let may_cycle = self.balance.edges.iter().any(|edge| edge.way == Way::Forward);
        let (mut fewest, mut patience) = (usize::MAX, PATIENCE);
        for _ in 0..200 + 4 * gates {
            let (pins, unsettled) = self.pins(trace)?;
            let heads = self.heads(trace, &pins).ok_or(Stuck::Endless)?;
            self.iterations += 1;
            let misfits = self.misfits(&heads, trace);
            if misfits.is_empty() {
                return Ok((heads, unsettled));
            }
            if misfits.len() < fewest {
                (fewest, patience) = (misfits.len(), PATIENCE);
            } else {
                patience = patience.saturating_sub(1);
            }
            let one_by_one = may_cycle && patience == 0;
            let turned = if one_by_one { &misfits[misfits.len() - 1..] } else { &misfits[..] };
            for gate in turned {
                match *gate {
                    Gate::End(node) => self.open_ends[node] = !self.open_ends[node],
                    Gate::Edge(edge) => self.open_edges[edge] = !self.open_edges[edge],
                }
            }
        }
        Err(Stuck::Endless)
    }

    /// The heads that are settled from outside. Without the trace, parts behind shut tubes keep the head that it gave them.
    fn pins(&self, trace: f64) -> Result<(Vec<Option<f64>>, Vec<bool>), Stuck> {
        let balance = self.balance;
        let mut pins: Vec<Option<f64>> = (0..balance.size())
            .map(|node| match balance.ends[node] {
                End::Head(head) => Some(head.m()),
                end => end.ceiling().filter(|_| self.open_ends[node]),
            })
            .collect();
        let parts =
            ground::parts(balance, |place, edge| edge.conductance > 0.0 && (trace > 0.0 || self.open_edges[place]));
        let mut settled = vec![false; parts.len()];
        parts.iter().zip(&pins).filter(|(_, pin)| pin.is_some()).for_each(|(part, _)| settled[*part] = true);
        for (first, (net, extreme)) in ground::fed(balance, &parts) {
            if !settled[first] {
                if net != 0.0 {
                    return Err(Stuck::ShutOff(extreme));
                }
                pins[first] = Some(self.last[first]);
            }
        }
        let unsettled = parts.iter().map(|part| !settled[*part]).collect();
        Ok((pins, unsettled))
    }

    fn conductance(&self, edge: usize, trace: f64) -> f64 {
        let whole = self.balance.edges[edge].conductance;
        if self.open_edges[edge] { whole } else { trace * whole }
    }

    fn flows(&self, heads: &Heads, trace: f64) -> Vec<f64> {
        let edges = self.balance.edges.iter().enumerate();
        edges.map(|(place, edge)| edge.source + self.conductance(place, trace) * heads.fall(edge)).collect()
    }

    /// Solves for the heads that are not pinned, then twice for what rounding left of the imbalance.
    fn heads(&mut self, trace: f64, pins: &[Option<f64>]) -> Option<Heads> {
        let balance = self.balance;
        let free = |node: usize| pins[node].is_none();
        let mut entries = Vec::with_capacity(balance.size() + 3 * balance.edges.len());
        // A pinned node keeps its place in the pattern, tied to nothing.
        entries.extend((0..balance.size()).map(|node| (node, node, if free(node) { 0.0 } else { 1.0 })));
        for (place, edge) in balance.edges.iter().enumerate() {
            let conductance = self.conductance(place, trace);
            let (high, low) = (edge.from.max(edge.to), edge.from.min(edge.to));
            let at = |here: bool| if here { conductance } else { 0.0 };
            entries.push((edge.from, edge.from, at(free(edge.from))));
            entries.push((edge.to, edge.to, at(free(edge.to))));
            entries.push((high, low, -at(free(edge.from) && free(edge.to))));
        }
        self.matrix.factor(balance.size(), &entries)?;
        let whole = pins.iter().map(|pin| pin.unwrap_or(0.0)).collect();
        let mut heads = Heads { whole, rest: vec![0.0; balance.size()] };
        for round in 0..3 {
            let mut surplus = balance.surplus(&self.flows(&heads, trace));
            (0..surplus.len()).filter(|node| !free(*node)).for_each(|node| surplus[node] = 0.0);
            let change = self.matrix.solve(&surplus)?;
            let part = if round == 0 { &mut heads.whole } else { &mut heads.rest };
            part.iter_mut().zip(&change).for_each(|(part, change)| *part += change);
        }
        self.last = (0..balance.size()).map(|node| heads.at(node)).collect();
        self.last.iter().all(|head| head.is_finite()).then_some(heads)
    }

    /// What is open and should be shut, and the other way round.
    fn misfits(&self, heads: &Heads, trace: f64) -> Vec<Gate> {
        let balance = self.balance;
        let flows = self.flows(heads, trace);
        let surplus = balance.surplus(&flows);
        let (flow, head) = (self.nothing().max(SAME * self.largest(&flows)), SAME * self.highest());
        let ends = (0..balance.size()).filter_map(|node| {
            let ceiling = balance.ends[node].ceiling()?;
            let wrong = if self.open_ends[node] { surplus[node] < -flow } else { heads.at(node) > ceiling + head };
            wrong.then_some(Gate::End(node))
        });
        let edges = balance.edges.iter().enumerate().filter_map(|(place, edge)| {
            let wrong = if self.open_edges[place] { flows[place] < -flow } else { heads.fall(edge) > head };
            (edge.way == Way::Forward && wrong).then_some(Gate::Edge(place))
        });
        ends.chain(edges).collect()
    }

    fn largest(&self, flows: &[f64]) -> f64 {
        let all = flows.iter().chain(&self.balance.draws);
        all.fold(0.0, |most, flow| most.max(flow.abs()))
    }

    fn highest(&self) -> f64 {
        self.last.iter().fold(0.0, |most, head| most.max(head.abs()))
    }

    /// A flow that is nothing but rounding.
    fn nothing(&self) -> f64 {
        let widest = self.balance.edges.iter().fold(0.0, |most: f64, edge| most.max(edge.conductance));
        NOTHING * widest * self.highest()
    }

    /// What leaves at each end.
    fn leaves(&self, flows: &[f64]) -> Vec<f64> {
        let surplus = self.balance.surplus(flows);
        let lets = |node: usize| self.balance.ends[node].fixed().is_some() || self.open_ends[node];
        (0..surplus.len()).map(|node| if lets(node) { surplus[node] } else { 0.0 }).collect()
    }

    /// The worst imbalance, or flow the wrong way, as a part of the largest flow; and where.
    fn residual(&self, flows: &[f64]) -> (f64, usize) {
        let balance = self.balance;
        let surplus = balance.surplus(flows);
        let at_node = |node: usize| match balance.ends[node] {
            End::Head(_) => 0.0,
            _ if self.open_ends[node] => (-surplus[node]).max(0.0),
            _ => surplus[node].abs(),
        };
        let nodes = (0..surplus.len()).map(|node| (at_node(node), node));
        let backward = balance.edges.iter().zip(flows).filter(|(edge, _)| edge.way == Way::Forward);
        let edges = backward.map(|(edge, flow)| ((-flow).max(0.0), edge.from));
        let (worst, at) = nodes.chain(edges).fold((0.0, 0), |worst, one| if one.0 <= worst.0 { worst } else { one });
        // Where nothing runs, rounding is held against what would be seen of it.
        let largest = self.largest(flows).max(self.nothing() / BALANCED);
        (if worst == 0.0 { 0.0 } else { worst / largest }, at)
    }
}
