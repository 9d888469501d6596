//! Oil lines: where they start, what drives them, their nodes and their tubes.

use tribology::quantity::{Area, Kind, Length, Rotation, Typed};

use crate::choice;
use crate::choice::Choice as _;
use crate::id::Id;
use crate::reading::{Element, Key, Sort, Table, Takes};

use super::evidence::{self, Evidence};
use super::when::When;

choice! {
    /// What a node of the oil lines is.
    NodeKind {
        /// It drives the oil.
        Pump = "pump",
        /// It cleans the oil.
        Strainer = "strainer",
        /// Tubes meet.
        Junction = "junction",
        /// A unit that shares the oil of a one-shot.
        Meter = "meter",
        /// A small hole that sets the flow.
        Orifice = "orifice",
        /// A lip that the oil runs over.
        Standpipe = "standpipe",
        /// The oil leaves the lines.
        Outlet = "outlet",
    }
}

/// Oil lines from one reservoir.
#[derive(Clone, Debug, PartialEq)]
pub struct Circuit {
    /// Its id.
    pub id: Id,
    /// What it is called.
    pub name: String,
    /// The reservoir that it draws from.
    pub from: Option<Id>,
    /// What drives it: ram, hand, motor, head.
    pub driven_by: Option<String>,
    /// Its nodes.
    pub nodes: Vec<Node>,
    /// Its tubes.
    pub tubes: Vec<Tube>,
    /// Anything worth saying.
    pub note: Option<String>,
    /// The examples that have it.
    pub when: When,
    /// How its statements are known.
    pub evidence: Vec<Evidence>,
}

/// A node of the oil lines.
#[derive(Clone, Debug, PartialEq)]
pub struct Node {
    /// Its id.
    pub id: Id,
    /// What it is.
    pub kind: NodeKind,
    /// What it is called, when the id does not say it.
    pub name: Option<String>,
    /// Its height above the reservoir's level.
    pub height: Option<Typed<Length>>,
    /// The bore of an orifice, a standpipe or an outlet.
    pub bore: Option<Typed<Length>>,
    /// The length of an orifice or a narrow passage.
    pub length: Option<Typed<Length>>,
    /// The open area of a strainer, wires included.
    pub area: Option<Typed<Area>>,
    /// The plunger's diameter.
    pub plunger: Option<Typed<Length>>,
    /// The plunger's stroke.
    pub stroke: Option<Typed<Length>>,
    /// How often the pump strokes or turns.
    pub rate: Option<Typed<Rotation>>,
    /// Openings of the strainer to the inch.
    pub mesh: Option<f64>,
    /// The strainer's wire.
    pub wire: Option<Typed<Length>>,
    /// The size stamped on a meter unit.
    pub size: Option<String>,
    /// The pairs that it feeds.
    pub feeds: Vec<Id>,
    /// What shows that oil got there.
    pub sign: Option<String>,
    /// How the sign was on this machine when all was well.
    pub baseline: Option<String>,
    /// Anything worth saying.
    pub note: Option<String>,
}

/// A tube between two nodes.
#[derive(Clone, Debug, PartialEq)]
pub struct Tube {
    /// Its id.
    pub id: Id,
    /// The node where it begins.
    pub from: Id,
    /// The node where it ends.
    pub to: Id,
    /// Its length.
    pub length: Option<Typed<Length>>,
    /// Its inner diameter.
    pub bore: Option<Typed<Length>>,
    /// Anything worth saying.
    pub note: Option<String>,
}

pub(super) static KEYS: Element = Element {
    name: "circuit",
    says: "Oil lines from one reservoir",
    keys: &[
        super::ID,
        Key::must("name", Takes::Text, "what it is called"),
        Key::may("from", Takes::Link(&[Sort::Reservoir]), "the reservoir that it draws from"),
        Key::may("driven_by", Takes::Text, "what drives it: ram, hand, motor, head"),
        Key::may("node", Takes::Tables(&NODE_KEYS), "its nodes"),
        Key::may("tube", Takes::Tables(&TUBE_KEYS), "its tubes"),
        super::NOTE,
        super::WHEN,
        super::EVIDENCE,
    ],
};

static NODE_KEYS: Element = Element {
    name: "node",
    says: "A node of the oil lines",
    keys: &[
        super::ID,
        Key::must("kind", Takes::Choice(NodeKind::words), "what it is"),
        Key::may("name", Takes::Text, "what it is called, when the id does not say it"),
        Key::may("height", Takes::Quantity(Kind::Length), "its height above the reservoir's level"),
        Key::may("bore", Takes::Quantity(Kind::Length), "of an orifice, a standpipe or an outlet"),
        Key::may("length", Takes::Quantity(Kind::Length), "of an orifice or a narrow passage"),
        Key::may("area", Takes::Quantity(Kind::Area), "of a strainer, wires included"),
        Key::may("plunger", Takes::Quantity(Kind::Length), "the plunger's diameter"),
        Key::may("stroke", Takes::Quantity(Kind::Length), "the plunger's stroke"),
        Key::may("rate", Takes::Quantity(Kind::Rotation), "how often the pump strokes or turns"),
        Key::may("mesh", Takes::Number, "openings of the strainer to the inch"),
        Key::may("wire", Takes::Quantity(Kind::Length), "the strainer's wire"),
        Key::may("size", Takes::Text, "the size stamped on a meter unit"),
        Key::may("feeds", Takes::Links(&[Sort::Pair]), "the pairs that it feeds"),
        Key::may("sign", Takes::Text, "what shows that oil got there"),
        Key::may("baseline", Takes::Text, "how the sign was on this machine when all was well"),
        super::NOTE,
    ],
};

static TUBE_KEYS: Element = Element {
    name: "tube",
    says: "A tube between two nodes",
    keys: &[
        super::ID,
        Key::must("from", Takes::Link(&[Sort::Node]), "the node where it begins"),
        Key::must("to", Takes::Link(&[Sort::Node]), "the node where it ends"),
        Key::may("length", Takes::Quantity(Kind::Length), "its length"),
        Key::may("bore", Takes::Quantity(Kind::Length), "its inner diameter"),
        super::NOTE,
    ],
};

pub(super) fn read(table: &Table<'_>) -> Option<Circuit> {
    let id = table.id(Sort::Circuit);
    let name = table.text("name");
    let circuit = Circuit {
        from: table.link("from"),
        driven_by: table.text("driven_by"),
        nodes: table.children("node", read_node),
        tubes: table.children("tube", read_tube),
        note: table.text("note"),
        when: table.when(),
        evidence: evidence::read_all(table, &KEYS),
        id: id?,
        name: name?,
    };
    Some(circuit)
}

fn read_node(table: &Table<'_>) -> Option<Node> {
    let id = table.id(Sort::Node);
    let kind = table.choice("kind");
    let node = Node {
        name: table.text("name"),
        height: table.quantity("height"),
        bore: table.positive("bore"),
        length: table.positive("length"),
        area: table.positive("area"),
        plunger: table.positive("plunger"),
        stroke: table.positive("stroke"),
        rate: table.positive("rate"),
        mesh: table.number("mesh"),
        wire: table.positive("wire"),
        size: table.text("size"),
        feeds: table.links("feeds"),
        sign: table.text("sign"),
        baseline: table.text("baseline"),
        note: table.text("note"),
        id: id?,
        kind: kind?,
    };
    Some(node)
}

fn read_tube(table: &Table<'_>) -> Option<Tube> {
    let id = table.id(Sort::Tube);
    let from = table.link("from");
    let to = table.link("to");
    if from.is_some() && from == to {
        table.fault("to", "ends where it begins; a tube joins two different nodes");
    }
    let (length, bore, note) = (table.positive("length"), table.positive("bore"), table.text("note"));
    Some(Tube { id: id?, from: from?, to: to?, length, bore, note })
}
