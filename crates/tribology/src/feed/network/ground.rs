//! Which nodes hang together, and whether anything settles their heads. A part without tank, outlet, lip or relief valve has no answer.

use super::balance::{Balance, Edge};
use super::{End, Fault, Network};

/// What is fed and drawn may miss balance by this part of the largest of them, for rounding.
const ROUNDING: f64 = 1e-12;

/// For each node the first node of the part that it belongs to, where the edges that `joins` picks hold parts together.
///
/// Cost: nearly one step an edge.
pub(super) fn parts(balance: &Balance, joins: impl Fn(usize, &Edge) -> bool) -> Vec<usize> {
    let mut above: Vec<usize> = (0..balance.size()).collect();
    fn top(above: &mut [usize], mut node: usize) -> usize {
        while above[node] != node {
            above[node] = above[above[node]];
            node = above[node];
        }
        node
    }
    for (place, edge) in balance.edges.iter().enumerate() {
        if joins(place, edge) {
            let (a, b) = (top(&mut above, edge.from), top(&mut above, edge.to));
            above[a.max(b)] = a.min(b);
        }
    }
    (0..above.len()).map(|node| top(&mut above, node)).collect()
}

/// Refuses parts without an end, parts that blocked tubes shut off though they are fed or drawn from, and parts that only let out but
/// are drawn from.
pub(super) fn check(network: &Network, balance: &Balance) -> Result<(), Fault> {
    let name = |node: usize| network.nodes[node].name.clone();
    // A blocked tube is still a tube: what it would settle were it clean is no mistake of the drawing.
    let tubes = network.tubes.len();
    let drawn = parts(balance, |place, edge| place < tubes || edge.conductance > 0.0);
    let has_end = |parts: &[usize], fits: &dyn Fn(End) -> bool| {
        let mut has = vec![false; parts.len()];
        parts.iter().zip(&balance.ends).filter(|(_, end)| fits(**end)).for_each(|(part, _)| has[*part] = true);
        has
    };
    let settled = has_end(&drawn, &|end| end != End::Closed);
    if let Some(node) = drawn.iter().position(|part| !settled[*part]) {
        return Err(Fault::NoEnd { node: name(node) });
    }
    let open = parts(balance, |_, edge| edge.conductance > 0.0);
    let (settled, fixed) = (has_end(&open, &|end| end != End::Closed), has_end(&open, &|end| end.fixed().is_some()));
    for (first, (net, extreme)) in fed(balance, &open) {
        if !settled[first] {
            if net != 0.0 {
                return Err(Fault::ShutOff { node: name(extreme) });
            }
        } else if !fixed[first] && net < 0.0 {
            return Err(Fault::Drained { node: name(extreme) });
        }
    }
    Ok(())
}

/// What each part is fed on the whole, rounding taken for nothing, and its node that is fed or drawn from most; by first nodes.
pub(super) fn fed(balance: &Balance, parts: &[usize]) -> Vec<(usize, (f64, usize))> {
    let fed = balance.fed();
    let mut sums: Vec<(f64, f64, usize)> = (0..parts.len()).map(|node| (0.0, 0.0, node)).collect();
    for (node, part) in parts.iter().enumerate() {
        let (sum, most, extreme) = &mut sums[*part];
        *sum += fed[node];
        if fed[node].abs() > *most {
            (*most, *extreme) = (fed[node].abs(), node);
        }
    }
    let of_part = |first: usize| {
        let (sum, most, extreme) = sums[first];
        (first, (if sum.abs() <= ROUNDING * most { 0.0 } else { sum }, extreme))
    };
    (0..parts.len()).filter(|node| parts[*node] == *node).map(of_part).collect()
}
