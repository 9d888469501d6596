//! Networks of tubes held against `reference/contacts-and-circuits.csv`: five cases that an open hydraulic engine solved too.
//!
//! `check` is the only code that touches the crate.

use tribology::feed::network::{End, Network, Node, Tube};
use tribology::quantity::{Acceleration, KinematicViscosity, Length, VolumeFlow};

use super::Row;

/// What stands between a heading and the next semicolon.
fn part<'r>(row: &'r Row, heading: &str) -> &'r str {
    let found = row.inputs.split(';').find_map(|part| part.trim().strip_prefix(heading));
    found.unwrap_or_else(|| panic!("{}: no {heading}", row.id)).trim()
}

/// `T=0.5 O=0`, or `none`.
fn pairs(text: &str) -> Vec<(&str, f64)> {
    let pair = |pair| {
        let (name, number): (&str, &str) = str::split_once(pair, '=').expect("a name, an equals sign and a number");
        (name, number.parse().expect("a number"))
    };
    text.split(' ').filter(|text| *text != "none").map(pair).collect()
}

fn network(row: &Row) -> Network {
    let viscosity: f64 = part(row, "nu=").trim_end_matches(" m2/s").parse().expect("a viscosity");
    let tubes: Vec<Tube> = part(row, "pipes name:from>to:L m:d mm")
        .split(' ')
        .map(|tube| {
            let [name, ends, length, bore] = tube.split(':').collect::<Vec<_>>()[..] else { panic!("{tube}") };
            let (from, to) = ends.split_once('>').expect("a tube joins two nodes");
            let number = |text: &str| -> f64 { text.parse().expect("a size") };
            Tube::new(name, from, to, Length::from_m(number(length)), Length::from_mm(number(bore)))
        })
        .collect();
    let (heads, draws) = (pairs(part(row, "heads m")), pairs(part(row, "drawn m3/s")));
    let of = |list: &[(&str, f64)], name: &str| list.iter().find(|(own, _)| *own == name).map(|(_, number)| *number);
    let mut names: Vec<&str> = tubes.iter().flat_map(|tube| [tube.from.as_str(), tube.to.as_str()]).collect();
    names.sort_unstable();
    names.dedup();
    let node = |name: &&str| {
        let end = of(&heads, name).map_or(End::Closed, |head| End::Head(Length::from_m(head)));
        Node::new(*name, end).with_draw(VolumeFlow::from_m3_s(of(&draws, name).unwrap_or(0.0)))
    };
    let nodes = names.iter().map(node).collect();
    let mut network = Network::new(KinematicViscosity::from_m2_s(viscosity), nodes, tubes);
    network.gravity = Acceleration::from_m_s2(part(row, "g=").parse().expect("a free fall"));
    network
}

#[track_caller]
fn check(row: &Row) {
    let network = network(row);
    let solved = network.solve().unwrap_or_else(|fault| panic!("{}: {fault:?}", row.id)).value;
    assert!(solved.residual <= 1e-9, "{}: {}", row.id, solved.residual);
    let (asked, _) = row.quantity.split_once(',').expect("a quantity names its case");
    let found = match (asked.strip_prefix("flow in "), asked.strip_prefix("head at "), row.unit.as_str()) {
        (Some(tube), None, "mL/min") => {
            solved.flows[network.tubes.iter().position(|one| one.name == tube).expect("a tube")].ml_min()
        }
        (None, Some(node), "m") => {
            let place = network.nodes.iter().position(|one| one.name == node).expect("a node");
            solved.heads[place].expect("it has a head").m()
        }
        _ => panic!("{}: nothing here answers {asked}", row.id),
    };
    let expected: f64 = row.expected.parse().expect("a number");
    // The first of two tolerances is for the form that is solved here.
    let mut tolerance = row.tolerance.split(' ');
    let (how, size) = (tolerance.next(), tolerance.next().and_then(|size| size.parse::<f64>().ok()));
    let allowed = match (how, size) {
        (Some("rel"), Some(size)) => size * expected.abs(),
        (Some("abs"), Some(size)) => size,
        _ => panic!("{}: a tolerance is rel or abs", row.id),
    };
    assert!((found - expected).abs() <= allowed, "{}: {found}, not {expected}", row.id);
}

#[test]
fn networks_agree_with_their_sources() {
    let rows = super::rows("contacts-and-circuits.csv");
    let rows: Vec<_> = rows.iter().filter(|row| row.id.starts_with("d-net-")).collect();
    assert_eq!(rows.len(), 9, "the table has lost rows");
    rows.into_iter().for_each(check);
}
