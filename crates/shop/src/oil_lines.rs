//! A file of oil lines by themselves, for working out what runs where: nodes, tubes and pumps with one oil, but no machine. The lines of
//! a machine stand in its chart. Names are unique among nodes, among tubes and among pumps, so a tube may be called as a node is.

use std::cell::RefCell;

use tribology::feed::network::{End, Network, Node, Pump, STANDARD_GRAVITY, Slip, Tube, Way};
use tribology::quantity::{Acceleration, Kind, KinematicViscosity, Length, Typed, VolumeFlow};

use crate::fault::nearest;
use crate::reading::{Element, Key, Read, Table, Takes, read_plain};

/// The root table of a file of oil lines.
pub static ROOT: Element = Element {
    name: "network",
    says: "Oil lines by themselves, with one oil",
    keys: &[
        Key::must("viscosity", Takes::Quantity(Kind::KinematicViscosity), "of the oil, at its temperature"),
        Key::may("gravity", Takes::Number, "the free fall in m/s², 9.80665 when left out"),
        Key::may("node", Takes::Tables(&NODE), "where tubes begin, meet and end"),
        Key::may("tube", Takes::Tables(&TUBE), "what joins them"),
        Key::may("pump", Takes::Tables(&PUMP), "what drives the oil, besides heads"),
    ],
};

static NODE: Element = Element {
    name: "node",
    says: "Where tubes begin, meet or end; at most one of head, outlet, lip and relief",
    keys: &[
        Key::must("id", Takes::Text, "its name among the nodes"),
        Key::may("head", Takes::Quantity(Kind::Length), "of a tank whose level stays, in metres of the oil"),
        Key::may("outlet", Takes::Quantity(Kind::Length), "the height of an open end: oil leaves, no air comes in"),
        Key::may("lip", Takes::Quantity(Kind::Length), "the height at which a standpipe runs over"),
        Key::may("relief", Takes::Quantity(Kind::Length), "the head at which a relief valve lets off"),
        Key::may(
            "draw",
            Takes::Quantity(Kind::VolumeFlow),
            "what is drawn whatever the head; below zero what is fed in",
        ),
    ],
};

static TUBE: Element = Element {
    name: "tube",
    says: "A round tube between two nodes",
    keys: &[
        Key::must("id", Takes::Text, "its name among the tubes"),
        Key::must("from", Takes::Text, "the node where it begins"),
        Key::must("to", Takes::Text, "the node where it ends"),
        Key::must("length", Takes::Quantity(Kind::Length), "its length"),
        Key::must("bore", Takes::Quantity(Kind::Length), "its inner diameter"),
        Key::may("passes", Takes::Number, "what is left of its flow: 1 clean, 0.3 narrowed, 0 blocked"),
        Key::may("one_way", Takes::YesNo, "whether a check valve lets oil run only from where it begins"),
    ],
};

static PUMP: Element = Element {
    name: "pump",
    says: "A pump that gives a fixed flow less its slip",
    keys: &[
        Key::must("id", Takes::Text, "its name among the pumps"),
        Key::must("from", Takes::Text, "the node that it draws from"),
        Key::must("to", Takes::Text, "the node that it feeds"),
        Key::must("flow", Takes::Quantity(Kind::VolumeFlow), "what it gives against no head"),
        Key::may("slip", Takes::Quantity(Kind::VolumeFlow), "what slips back through it, measured at slip_at"),
        Key::may("slip_at", Takes::Quantity(Kind::Length), "the head at which its slip was measured"),
    ],
};

/// Reads a file of oil lines: every fault of meaning at once, or the first fault of syntax.
#[must_use]
pub fn read(text: &str) -> Read<Network> {
    read_plain(text, &ROOT, |table| {
        let viscosity = table.positive::<KinematicViscosity>("viscosity");
        let gravity = gravity(table);
        let (nodes, tubes, pumps) = (Names::default(), Names::default(), Names::default());
        let read = |table: &Table<'_>| node(table, &nodes);
        let all_nodes = table.children("node", read);
        let read = |table: &Table<'_>| tube(table, &tubes, &nodes);
        let all_tubes = table.children("tube", read);
        let read = |table: &Table<'_>| pump(table, &pumps, &nodes);
        let all_pumps = table.children("pump", read);
        Some(Network { viscosity: viscosity?.value, gravity, nodes: all_nodes, tubes: all_tubes, pumps: all_pumps })
    })
}

fn gravity(table: &Table<'_>) -> Acceleration {
    let Some(m_s2) = table.number("gravity") else { return STANDARD_GRAVITY };
    if m_s2 <= 0.0 {
        table.fault("gravity", "is not above zero; write it in m/s², such as 9.80665, or leave it out");
    }
    Acceleration::from_m_s2(m_s2)
}

/// The names of one kind, as they were read.
#[derive(Default)]
struct Names(RefCell<Vec<String>>);

impl Names {
    /// The table's own name, which no other of its kind may bear.
    fn own(&self, table: &Table<'_>) -> Option<String> {
        let name = table.name()?.to_string();
        if self.0.borrow().contains(&name) {
            let kind = table.kind();
            table.fault("id", &format!("is \"{name}\", as another {kind} has it; give each {kind} its own"));
        }
        self.0.borrow_mut().push(name.clone());
        Some(name)
    }

    /// The name under a key, which must be one of these.
    fn one(&self, table: &Table<'_>, key: &'static str) -> Option<String> {
        let name = table.text(key)?;
        let names = self.0.borrow();
        if names.contains(&name) {
            return Some(name);
        }
        let hint = match nearest(&name, names.iter().map(String::as_str)) {
            Some(near) => format!("did you mean \"{near}\"?"),
            None => "begin one with a line [[node]]".to_owned(),
        };
        table.fault(key, &format!("is \"{name}\", which is no node of this file; {hint}"));
        None
    }

    /// The two nodes that something joins.
    fn both(&self, table: &Table<'_>) -> Option<(String, String)> {
        let (from, to) = (self.one(table, "from"), self.one(table, "to"));
        if from.is_some() && from == to {
            table.fault("to", "ends where it begins; join two different nodes");
        }
        Some((from?, to?))
    }
}

/// An end at a height.
type Made = fn(Length) -> End;

fn node(table: &Table<'_>, names: &Names) -> Option<Node> {
    let name = names.own(table);
    let ends: [(&str, Made); 4] =
        [("head", End::Head), ("outlet", End::Outlet), ("lip", End::Standpipe), ("relief", End::Relief)];
    let mut end = End::Closed;
    for (key, make) in ends {
        let Some(height) = table.quantity::<Length>(key) else { continue };
        if end != End::Closed {
            table.fault(key, "stands beside another end; a node has one of head, outlet, lip and relief");
        }
        end = make(height.value);
    }
    let draw = table.quantity::<VolumeFlow>("draw").map_or(VolumeFlow::from_m3_s(0.0), |draw| draw.value);
    Some(Node::new(name?, end).with_draw(draw))
}

fn tube(table: &Table<'_>, names: &Names, nodes: &Names) -> Option<Tube> {
    let name = names.own(table);
    let ends = nodes.both(table);
    let (length, bore) = (table.positive::<Length>("length"), table.positive::<Length>("bore"));
    let passes = table.number("passes").unwrap_or(1.0);
    if !(0.0..=1.0).contains(&passes) {
        table.fault("passes", "is not from 0 (blocked) to 1 (clean)");
    }
    let way = if table.yes_no("one_way") == Some(true) { Way::Forward } else { Way::Both };
    let (from, to) = ends?;
    Some(Tube { name: name?, from, to, length: length?.value, bore: bore?.value, passes, way })
}

fn pump(table: &Table<'_>, names: &Names, nodes: &Names) -> Option<Pump> {
    let name = names.own(table);
    let ends = nodes.both(table);
    let flow = table.positive::<VolumeFlow>("flow");
    let (slip, at): (Option<Typed<VolumeFlow>>, Option<Typed<Length>>) =
        (table.positive("slip"), table.positive("slip_at"));
    if slip.is_some() != at.is_some() {
        table.fault("flow", "stands with half a slip; a slip has both a flow (slip) and a head (slip_at)");
    }
    let slip = slip.zip(at).map(|(flow, at)| Slip { flow: flow.value, at: at.value });
    let (from, to) = ends?;
    Some(Pump { name: name?, from, to, flow: flow?.value, slip })
}
