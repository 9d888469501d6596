//! Laws of networks that need no table: what comes in goes out, causes add up, and what is blocked carries nothing; on networks drawn at
//! random, and held against a plain dense solution and, where something opens and shuts, against every choice tried.

use proptest::prelude::*;
use tribology::feed::network::{End, Fault, Network, Node, Pump, Slip, Solved, Tube, Way};
use tribology::quantity::{KinematicViscosity, Length, VolumeFlow};

/// How near two ways to the same number must come, as a part of the largest.
const NEAR: f64 = 1e-9;

fn m(number: f64) -> Length {
    Length::from_m(number)
}

fn ml_min(number: f64) -> VolumeFlow {
    VolumeFlow::from_ml_min(number)
}

fn tube(name: &str, from: &str, to: &str, length: f64, bore_mm: f64) -> Tube {
    Tube::new(name, from, to, m(length), Length::from_mm(bore_mm))
}

fn solved(network: &Network) -> Solved {
    let solved = network.solve().unwrap_or_else(|fault| panic!("{fault:?}")).value;
    assert!(solved.residual <= 1e-9, "{solved:?}");
    solved
}

fn flows(network: &Network) -> Vec<f64> {
    solved(network).flows.iter().map(|flow| flow.m3_s()).collect()
}

fn largest(flows: &[f64]) -> f64 {
    flows.iter().fold(0.0, |most, flow| most.max(flow.abs()))
}

#[track_caller]
fn same(found: &[f64], wanted: &[f64]) {
    // Where nothing runs the dense solution still shows its rounding: a nanolitre in thirty years.
    let allowed = NEAR * largest(found).max(largest(wanted)).max(1e-12);
    for (place, (found, wanted)) in found.iter().zip(wanted).enumerate() {
        assert!((found - wanted).abs() <= allowed, "{place}: {found}, not {wanted}");
    }
}

/// A tree of two to forty nodes with a few more tubes; the first node is a tank, some others too.
fn networks() -> impl Strategy<Value = Network> {
    let sizes = || (0.05..3.0f64, 1.0..8.0f64);
    let node = (any::<prop::sample::Index>(), sizes(), prop::option::weighted(0.2, -1.0..3.0f64), -20.0..20.0f64);
    let more = (any::<prop::sample::Index>(), any::<prop::sample::Index>(), sizes());
    let parts = (prop::collection::vec(node, 1..40), prop::collection::vec(more, 0..15), -1.0..3.0f64, 5.0..900.0f64);
    parts.prop_map(|(others, more, head, mm2_s)| {
        let mut nodes = vec![Node::new("0", End::Head(m(head)))];
        let mut tubes = Vec::new();
        for (place, (above, (length, bore), head, draw)) in others.into_iter().enumerate() {
            let name = (place + 1).to_string();
            let end = head.map_or(End::Closed, |head| End::Head(m(head)));
            nodes.push(Node::new(&name, end).with_draw(ml_min(draw)));
            tubes.push(tube(&format!("t{name}"), &above.index(place + 1).to_string(), &name, length, bore));
        }
        for (place, (from, to, (length, bore))) in more.into_iter().enumerate() {
            let (from, to) = (from.index(nodes.len()), to.index(nodes.len()));
            if from != to {
                tubes.push(tube(&format!("m{place}"), &from.to_string(), &to.to_string(), length, bore));
            }
        }
        Network::new(KinematicViscosity::from_mm2_s(mm2_s), nodes, tubes)
    })
}

/// The same networks without any draw.
fn undrawn() -> impl Strategy<Value = Network> {
    networks().prop_map(|mut network| {
        network.nodes.iter_mut().for_each(|node| node.draw = ml_min(0.0));
        network
    })
}

/// Heads and draws of one network on the tubes of another.
fn with_causes(network: &Network, cause: impl Fn(usize, &Node) -> (f64, f64)) -> Network {
    let mut other = network.clone();
    for (place, node) in other.nodes.iter_mut().enumerate() {
        let (head, draw) = cause(place, node);
        node.draw = VolumeFlow::from_m3_s(draw);
        if let End::Head(_) = node.end {
            node.end = End::Head(m(head));
        }
    }
    other
}

fn head_of(node: &Node) -> f64 {
    if let End::Head(head) = node.end { head.m() } else { 0.0 }
}

/// `g π d⁴ / (128 ν L)`, written out again.
fn conductance(network: &Network, tube: &Tube) -> f64 {
    let d = tube.bore.m();
    tube.passes * network.gravity.m_s2() * std::f64::consts::PI * d * d * d * d
        / (128.0 * network.viscosity.m2_s() * tube.length.m())
}

fn place(network: &Network, name: &str) -> usize {
    network.nodes.iter().position(|node| node.name == name).expect("a node")
}

/// The heads by a dense matrix and elimination with pivots; `pinned` gives the heads that are settled, `open` the tubes that pass.
fn dense(network: &Network, pinned: &[Option<f64>], open: &[bool]) -> Option<Vec<f64>> {
    let size = network.nodes.len();
    let mut rows: Vec<Vec<f64>> = vec![vec![0.0; size + 1]; size];
    for (tube, open) in network.tubes.iter().zip(open) {
        let (from, to) = (place(network, &tube.from), place(network, &tube.to));
        let passes = if *open { conductance(network, tube) } else { 0.0 };
        for (here, there) in [(from, to), (to, from)] {
            rows[here][here] += passes;
            rows[here][there] -= passes;
        }
    }
    for (place, node) in network.nodes.iter().enumerate() {
        rows[place][size] = -node.draw.m3_s();
        if let Some(head) = pinned[place] {
            rows[place].fill(0.0);
            rows[place][place] = 1.0;
            rows[place][size] = head;
        }
    }
    for column in 0..size {
        let pivot = (column..size).max_by(|a, b| rows[*a][column].abs().total_cmp(&rows[*b][column].abs()))?;
        rows.swap(column, pivot);
        let from = rows[column].clone();
        if from[column].abs() < 1e-30 {
            return None;
        }
        for row in rows.iter_mut().skip(column + 1) {
            let times = row[column] / from[column];
            row.iter_mut().zip(&from).for_each(|(to, from)| *to -= times * from);
        }
    }
    let mut heads = vec![0.0; size];
    for row in (0..size).rev() {
        let known: f64 = (row + 1..size).map(|column| rows[row][column] * heads[column]).sum();
        heads[row] = (rows[row][size] - known) / rows[row][row];
    }
    Some(heads)
}

fn pinned(network: &Network) -> Vec<Option<f64>> {
    network.nodes.iter().map(|node| if let End::Head(head) = node.end { Some(head.m()) } else { None }).collect()
}

fn flows_of(network: &Network, heads: &[f64]) -> Vec<f64> {
    let flow = |tube: &Tube| {
        conductance(network, tube) * (heads[place(network, &tube.from)] - heads[place(network, &tube.to)])
    };
    network.tubes.iter().map(flow).collect()
}

/// What comes to each node less what goes, its draw taken off.
fn left_over(network: &Network, flows: &[f64]) -> Vec<f64> {
    let mut left: Vec<f64> = network.nodes.iter().map(|node| -node.draw.m3_s()).collect();
    for (tube, flow) in network.tubes.iter().zip(flows) {
        left[place(network, &tube.from)] -= flow;
        left[place(network, &tube.to)] += flow;
    }
    left
}

proptest! {
    #[test]
    fn what_comes_in_goes_out(network in networks()) {
        let flows = flows(&network);
        let draws: Vec<f64> = network.nodes.iter().map(|node| node.draw.m3_s()).collect();
        let allowed = NEAR * largest(&flows).max(largest(&draws));
        for (node, left) in network.nodes.iter().zip(left_over(&network, &flows)) {
            prop_assert!(node.end != End::Closed || left.abs() <= allowed, "{}: {left}", node.name);
        }
        let leaves: f64 = solved(&network).leaves.iter().map(|flow| flow.m3_s()).sum();
        prop_assert!((leaves + draws.iter().sum::<f64>()).abs() <= 50.0 * allowed, "{leaves}");
    }

    #[test]
    fn a_dense_solution_is_the_same(network in networks()) {
        let heads = dense(&network, &pinned(&network), &vec![true; network.tubes.len()]).expect("a tank settles it");
        same(&flows(&network), &flows_of(&network, &heads));
        let solved: Vec<f64> = solved(&network).heads.iter().map(|head| head.expect("all are joined").m()).collect();
        same(&solved, &heads);
    }

    #[test]
    fn causes_add_up(network in networks(), seed in prop::collection::vec((-2.0..2.0f64, -1e-7..1e-7f64), 40)) {
        let one = with_causes(&network, |_, node| (head_of(node), node.draw.m3_s()));
        let other = with_causes(&network, |place, _| seed[place]);
        let both = with_causes(&network, |place, node| (head_of(node) + seed[place].0, node.draw.m3_s() + seed[place].1));
        let (one, other, both) = (flows(&one), flows(&other), flows(&both));
        let allowed = NEAR * largest(&one).max(largest(&other));
        for ((one, other), both) in one.iter().zip(&other).zip(&both) {
            prop_assert!((one + other - both).abs() <= allowed, "{one} + {other} is {both}");
        }
    }

    /// A draw here lowers the head there as much as the same draw there lowers it here.
    #[test]
    fn here_and_there_may_be_swapped(network in networks(), a in any::<prop::sample::Index>(), b in any::<prop::sample::Index>()) {
        let free: Vec<usize> = (0..network.nodes.len()).filter(|node| network.nodes[*node].end == End::Closed).collect();
        if free.is_empty() {
            return Ok(());
        }
        let (a, b) = (free[a.index(free.len())], free[b.index(free.len())]);
        let lowered = |at: usize, seen: usize| {
            let drawn = with_causes(&network, |place, _| (0.0, if place == at { 1e-7 } else { 0.0 }));
            solved(&drawn).heads[seen].expect("all are joined").m()
        };
        let (there, here) = (lowered(a, b), lowered(b, a));
        prop_assert!((there - here).abs() <= NEAR * there.abs(), "{there} {here}");
        prop_assert!(there <= 0.0);
    }

    #[test]
    fn flow_falls_as_viscosity_grows(network in undrawn(), times in 1.01..50.0f64) {
        let mut thick = network.clone();
        thick.viscosity = network.viscosity * times;
        let thick: Vec<f64> = flows(&thick).iter().map(|flow| flow * times).collect();
        same(&thick, &flows(&network));
    }

    #[test]
    fn a_blocked_tube_carries_nothing_and_might_as_well_not_be_there(network in undrawn(), at in any::<prop::sample::Index>()) {
        let at = at.index(network.tubes.len());
        let mut blocked = network.clone();
        blocked.tubes[at].passes = 0.0;
        let found = flows(&blocked);
        prop_assert_eq!(found[at], 0.0);
        let mut without = network.clone();
        without.tubes.remove(at);
        match without.solve() {
            Ok(without) => {
                let without: Vec<f64> = without.value.flows.iter().map(|flow| flow.m3_s()).collect();
                let others: Vec<f64> = (0..found.len()).filter(|tube| *tube != at).map(|tube| found[tube]).collect();
                same(&others, &without);
            }
            // Without the tube nothing settles what hung on it; with the blocked tube its head is told as unknown.
            Err(Fault::NoEnd { node }) => {
                prop_assert!(solved(&blocked).heads[place(&network, &node)].is_none());
            }
            Err(fault) => prop_assert!(false, "{fault:?}"),
        }
    }

    /// Branches of one main: the narrowed one gives less, each of its sisters more, the main less.
    #[test]
    fn a_narrowed_tube_gives_its_flow_to_its_sisters(
        branches in prop::collection::vec((0.1..2.0f64, 1.5..5.0f64), 2..8),
        at in any::<prop::sample::Index>(),
        passes in 0.0..0.99f64,
    ) {
        let mut nodes = vec![Node::new("tank", End::Head(m(1.0))), Node::new("joint", End::Closed)];
        let mut tubes = vec![tube("main", "tank", "joint", 1.0, 5.0)];
        for (place, (length, bore)) in branches.iter().enumerate() {
            nodes.push(Node::new(place.to_string(), End::Outlet(m(0.0))));
            tubes.push(tube(&format!("b{place}"), "joint", &place.to_string(), *length, *bore));
        }
        let mut network = Network::new(KinematicViscosity::from_mm2_s(100.0), nodes, tubes);
        let clean = flows(&network);
        let at = 1 + at.index(branches.len());
        network.tubes[at].passes = passes;
        let narrowed = flows(&network);
        for place in 0..clean.len() {
            let gains = place != at && place != 0;
            prop_assert_eq!(narrowed[place] > clean[place], gains, "{}: {} to {}", place, clean[place], narrowed[place]);
        }
    }
}

/// Small networks with ends that only let out and one-way tubes: every choice of open and shut can be tried.
fn gated() -> impl Strategy<Value = Network> {
    let node =
        (any::<prop::sample::Index>(), 0.1..2.0f64, 1.0..5.0f64, 0..7u8, -1.0..2.0f64, any::<bool>(), -15.0..8.0f64);
    let more = (any::<prop::sample::Index>(), any::<prop::sample::Index>(), 0.1..2.0f64, 1.0..5.0f64, 0..3u8);
    let parts = (prop::collection::vec(node, 2..8), prop::collection::vec(more, 0..4), -1.0..2.0f64);
    parts.prop_map(|(others, more, head)| {
        let mut nodes = vec![Node::new("0", End::Head(m(head)))];
        let mut tubes = Vec::new();
        for (place, (above, length, bore, kind, height, forward, draw)) in others.into_iter().enumerate() {
            let name = (place + 1).to_string();
            let end = match kind {
                0 => End::Outlet(m(height)),
                1 => End::Standpipe(m(height)),
                2 => End::Relief(m(height)),
                3 => End::Head(m(height)),
                _ => End::Closed,
            };
            let (from, to) = (above.index(place + 1).to_string(), name.clone());
            let (from, to) = if forward { (from, to) } else { (to, from) };
            let mut joins = tube(&format!("t{name}"), &from, &to, length, bore);
            // A node that is drawn from or fed must hang on a tube that passes both ways.
            let way = if kind == 4 { Way::Forward } else { Way::Both };
            joins.way = way;
            let draw = if way == Way::Forward { 0.0 } else { draw };
            nodes.push(Node::new(name, end).with_draw(ml_min(draw)));
            tubes.push(joins);
        }
        for (place, (from, to, length, bore, way)) in more.into_iter().enumerate() {
            let (from, to) = (from.index(nodes.len()), to.index(nodes.len()));
            if from != to {
                let mut joins = tube(&format!("m{place}"), &from.to_string(), &to.to_string(), length, bore);
                joins.way = if way == 0 { Way::Both } else { Way::Forward };
                tubes.push(joins);
            }
        }
        Network::new(KinematicViscosity::from_mm2_s(68.0), nodes, tubes)
    })
}

fn ceiling(end: End) -> Option<f64> {
    match end {
        End::Outlet(at) | End::Standpipe(at) | End::Relief(at) => Some(at.m()),
        _ => None,
    }
}

/// The flows of the choice that fits, found by trying every one; none where no choice has a dense solution.
fn by_trying(network: &Network) -> Option<Vec<f64>> {
    let ends: Vec<usize> =
        (0..network.nodes.len()).filter(|node| ceiling(network.nodes[*node].end).is_some()).collect();
    let ways: Vec<usize> = (0..network.tubes.len()).filter(|at| network.tubes[*at].way == Way::Forward).collect();
    for choice in 0..1_u32 << (ends.len() + ways.len()) {
        let (mut pins, mut open) = (pinned(network), vec![true; network.tubes.len()]);
        for (bit, node) in ends.iter().enumerate() {
            if choice >> bit & 1 == 1 {
                pins[*node] = ceiling(network.nodes[*node].end);
            }
        }
        for (bit, tube) in ways.iter().enumerate() {
            open[*tube] = choice >> (ends.len() + bit) & 1 == 1;
        }
        let Some(heads) = dense(network, &pins, &open) else { continue };
        let mut flows = flows_of(network, &heads);
        let falls = flows.clone();
        flows.iter_mut().zip(&open).for_each(|(flow, open)| *flow = if *open { *flow } else { 0.0 });
        let allowed = NEAR * largest(&flows).max(1e-12);
        let left = left_over(network, &flows);
        // What hangs on nothing has no solution, whatever elimination made of it.
        if (0..left.len()).any(|node| pins[node].is_none() && left[node].abs() > allowed) {
            continue;
        }
        let ends_fit = ends.iter().all(|node| match pins[*node] {
            Some(_) => left[*node] >= -allowed,
            None => ceiling(network.nodes[*node].end).is_some_and(|ceiling| heads[*node] <= ceiling + NEAR),
        });
        let ways_fit =
            ways.iter().all(|tube| if open[*tube] { flows[*tube] >= -allowed } else { falls[*tube] <= allowed });
        if ends_fit && ways_fit {
            return Some(flows);
        }
    }
    None
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 400, ..ProptestConfig::default() })]

    #[test]
    fn what_is_open_is_what_fits_of_all_choices(network in gated()) {
        match network.solve() {
            Ok(answer) => {
                let found: Vec<f64> = answer.value.flows.iter().map(|flow| flow.m3_s()).collect();
                let scale = largest(&found);
                for (node, (head, leaves)) in network.nodes.iter().zip(answer.value.heads.iter().zip(&answer.value.leaves)) {
                    if let Some(ceiling) = ceiling(node.end) {
                        let below = head.map_or(1.0, |head| ceiling - head.m());
                        prop_assert!(below >= -NEAR && leaves.m3_s() >= -NEAR * scale, "{}", node.name);
                        prop_assert!(below <= NEAR || leaves.m3_s() == 0.0, "{} lets out below its height", node.name);
                    }
                }
                for (tube, flow) in network.tubes.iter().zip(&found) {
                    prop_assert!(tube.way == Way::Both || *flow >= -NEAR * scale, "{} runs backward", tube.name);
                }
                if let Some(tried) = by_trying(&network) {
                    let allowed = 1e-7 * scale.max(1e-12);
                    for (found, tried) in found.iter().zip(&tried) {
                        prop_assert!((found - tried).abs() <= allowed, "{found}, not {tried}");
                    }
                }
            }
            Err(Fault::ShutOff { .. } | Fault::Drained { .. }) => prop_assert!(by_trying(&network).is_none()),
            Err(fault) => prop_assert!(false, "{fault:?}"),
        }
    }

    /// Without one-way tubes what lets out is only ever shut: one solution for each end, one more, and the last.
    #[test]
    fn ends_are_shut_one_way_only(network in gated()) {
        let mut network = network;
        network.tubes.iter_mut().for_each(|tube| tube.way = Way::Both);
        let ends = network.nodes.iter().filter(|node| ceiling(node.end).is_some()).count();
        prop_assert!(solved(&network).iterations as usize <= ends + 2);
    }
}

/// A pump of 30 mL/min that loses 2 mL/min at a metre, into a tube that ends dead: it stalls at 15 m, by hand.
#[test]
fn a_pump_against_a_dead_end_stalls_on_its_slip() {
    let nodes =
        vec![Node::new("sump", End::Head(m(0.0))), Node::new("line", End::Closed), Node::new("plug", End::Closed)];
    let mut network =
        Network::new(KinematicViscosity::from_mm2_s(68.0), nodes, vec![tube("a", "line", "plug", 1.0, 4.0)]);
    let slip = Some(Slip { flow: ml_min(2.0), at: m(1.0) });
    let pump = Pump { name: "p".into(), from: "sump".into(), to: "line".into(), flow: ml_min(30.0), slip };
    network.pumps.push(pump);
    let found = solved(&network);
    assert!((found.heads[2].expect("the pump settles it").m() - 15.0).abs() < 1e-9, "{found:?}");
    assert!(found.pumped[0].ml_min().abs() < 1e-9 && found.flows[0].ml_min().abs() < 1e-9, "{found:?}");
    // A relief valve at 5 m lets off what does not slip: 30 − 2·5 = 20 mL/min.
    network.nodes[1].end = End::Relief(m(5.0));
    let found = solved(&network);
    assert!((found.leaves[1].ml_min() - 20.0).abs() < 1e-9, "{found:?}");
    assert!((found.heads[2].expect("it stands").m() - 5.0).abs() < 1e-12);
    // Without slip and relief there is no answer.
    network.nodes[1].end = End::Closed;
    network.pumps[0].slip = None;
    assert_eq!(network.solve(), Err(Fault::NoEnd { node: "line".into() }));
}

/// Two outlets at different heights on one feed: below the upper one nothing comes out of it, and no air is drawn in.
#[test]
fn the_upper_outlet_runs_dry_first() {
    let nodes = vec![
        Node::new("feed", End::Closed).with_draw(ml_min(-5.0)),
        Node::new("low", End::Outlet(m(0.0))),
        Node::new("high", End::Outlet(m(2.0))),
    ];
    let tubes = vec![tube("a", "feed", "low", 1.0, 4.0), tube("b", "feed", "high", 1.0, 4.0)];
    let mut network = Network::new(KinematicViscosity::from_mm2_s(68.0), nodes, tubes);
    let found = solved(&network);
    assert!((found.flows[0].ml_min() - 5.0).abs() < 1e-9 && found.flows[1].ml_min() == 0.0, "{found:?}");
    assert!(found.heads[2] < Some(m(2.0)));
    network.nodes[0].draw = ml_min(5.0);
    assert_eq!(network.solve(), Err(Fault::Drained { node: "feed".into() }));
}

#[test]
fn a_one_way_tube_holds_against_a_fall_and_passes_with_it() {
    let nodes = vec![Node::new("a", End::Head(m(1.0))), Node::new("x", End::Closed), Node::new("b", End::Head(m(0.0)))];
    let mut tubes = vec![tube("1", "a", "x", 0.5, 4.0), tube("2", "x", "b", 0.5, 4.0)];
    tubes[0].way = Way::Forward;
    let mut network = Network::new(KinematicViscosity::from_mm2_s(68.0), nodes, tubes);
    let forward = flows(&network);
    network.tubes[0].way = Way::Both;
    same(&forward, &flows(&network));
    network.tubes[0] = Tube { way: Way::Forward, ..tube("1", "x", "a", 0.5, 4.0) };
    let held = solved(&network);
    assert_eq!(held.flows.iter().map(|flow| flow.m3_s()).collect::<Vec<_>>(), [0.0, 0.0]);
    assert!(held.heads[1].is_some_and(|head| head.m().abs() < 1e-12), "it stands as high as what it still hangs on");
    // Shut at both sides nothing settles it; fed there it has no way out.
    network.tubes[1] = Tube { way: Way::Forward, ..tube("2", "b", "x", 0.5, 4.0) };
    network.tubes[0] = Tube { way: Way::Forward, ..tube("1", "a", "x", 0.5, 4.0) };
    network.nodes[0].end = End::Head(m(0.0));
    assert_eq!(solved(&network).flows[0].m3_s(), 0.0);
    network.nodes[1].draw = ml_min(-3.0);
    assert_eq!(network.solve(), Err(Fault::ShutOff { node: "x".into() }));
}

/// A wide main with a fall of a few parts in a million million keeps its flow's figures.
#[test]
fn a_wide_tube_with_hardly_a_fall_keeps_its_figures() {
    let nodes = vec![Node::new("tank", End::Head(m(1.0))), Node::new("far", End::Closed).with_draw(ml_min(0.01))];
    let tubes = vec![tube("wide", "tank", "far", 0.05, 60.0), tube("sister", "tank", "far", 0.05, 58.0)];
    let network = Network::new(KinematicViscosity::from_mm2_s(32.0), nodes, tubes);
    let found = solved(&network);
    assert!(found.residual < 1e-12, "{found:?}");
    let sum: f64 = found.flows.iter().map(|flow| flow.ml_min()).sum();
    assert!((sum / 0.01 - 1.0).abs() < 1e-12, "{sum}");
}

#[test]
fn what_cannot_be_is_refused_by_name() {
    let base = || {
        let nodes = ["tank", "joint", "drip"].map(|name| Node::new(name, End::Closed)).to_vec();
        let tubes = vec![tube("a", "tank", "joint", 0.5, 4.0), tube("b", "joint", "drip", 0.5, 4.0)];
        let mut network = Network::new(KinematicViscosity::from_mm2_s(68.0), nodes, tubes);
        network.nodes[0].end = End::Head(m(1.0));
        network
    };
    let refused = |change: &dyn Fn(&mut Network)| {
        let mut network = base();
        change(&mut network);
        network.solve().expect_err("it cannot be")
    };
    // A loop that hangs on nothing.
    let alone = refused(&|network| {
        for name in ["p", "q", "r"] {
            network.nodes.push(Node::new(name, End::Closed));
        }
        for (name, from, to) in [("pq", "p", "q"), ("qr", "q", "r"), ("rp", "r", "p")] {
            network.tubes.push(tube(name, from, to, 1.0, 4.0));
        }
    });
    assert_eq!(alone, Fault::NoEnd { node: "p".into() });
    let named = |fault: Fault, of: &str, name: &str, what: &str| {
        let Fault::Size { of: found, name: bears, error } = fault else { panic!("{fault:?}") };
        let tribology::Error::OutOfRange { name: size, .. } = error else { panic!("{error:?}") };
        assert_eq!((found, bears.as_str(), size), (of, name, what));
    };
    named(refused(&|network| network.tubes[1].bore = Length::from_mm(0.0)), "tube", "b", "bore");
    named(refused(&|network| network.tubes[0].length = m(0.0)), "tube", "a", "length");
    named(refused(&|network| network.tubes[0].length = m(f64::NAN)), "tube", "a", "length");
    named(refused(&|network| network.tubes[0].passes = 1.5), "tube", "a", "part that passes");
    named(refused(&|network| network.nodes[0].end = End::Head(m(f64::INFINITY))), "node", "tank", "head");
    named(refused(&|network| network.nodes[2].draw = ml_min(f64::NAN)), "node", "drip", "draw");
    named(refused(&|network| network.viscosity = KinematicViscosity::from_mm2_s(0.0)), "network", "", "viscosity");
    assert_eq!(
        refused(&|network| network.tubes[1].to = "nowhere".into()),
        Fault::UnknownNode { of: "tube", name: "b".into(), node: "nowhere".into() }
    );
    assert_eq!(
        refused(&|network| network.nodes[2].name = "tank".into()),
        Fault::Twice { of: "node", name: "tank".into() }
    );
    assert_eq!(refused(&|network| network.tubes[1].name = "a".into()), Fault::Twice { of: "tube", name: "a".into() });
    assert_eq!(
        refused(&|network| network.tubes[1].to = "joint".into()),
        Fault::ToItself { of: "tube", name: "b".into() }
    );
    let shut = refused(&|network| {
        network.tubes[1].passes = 0.0;
        network.nodes[2].draw = ml_min(3.0);
    });
    assert_eq!(shut, Fault::ShutOff { node: "drip".into() });
    let empty = Network::new(KinematicViscosity::from_mm2_s(68.0), vec![], vec![]);
    assert!(empty.solve().is_ok_and(|found| found.value.flows.is_empty()), "nothing is nothing");
}

/// Fast flow is still answered, with a warning.
#[test]
fn flow_that_is_not_laminar_is_warned_of() {
    let nodes = vec![Node::new("tank", End::Head(m(5.0))), Node::new("out", End::Outlet(m(0.0)))];
    let mut network =
        Network::new(KinematicViscosity::from_mm2_s(5.0), nodes, vec![tube("a", "tank", "out", 0.2, 12.0)]);
    assert_eq!(network.solve().expect("it runs").warnings.len(), 1);
    network.viscosity = KinematicViscosity::from_mm2_s(500.0);
    assert!(network.solve().expect("it runs").warnings.is_empty());
}
