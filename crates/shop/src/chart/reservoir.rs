//! A reservoir: a body of oil with a level. It *holds*, as a bath does, or it *uses*, feeding something that never returns it.

use tribology::quantity::{Kind, Typed, Volume};

use crate::choice;
use crate::choice::Choice as _;
use crate::id::Id;
use crate::reading::{Element, Key, Sort, Table, Takes};

use super::evidence::{self, Evidence};
use super::when::When;

choice! {
    /// What it is called on the screen.
    ReservoirKind {
        /// The bottom of a housing.
        Sump = "sump",
        /// A cup on a bearing.
        Cup = "cup",
        /// A tank of its own.
        Tank = "tank",
        /// A box of gears or a pump box.
        Box = "box",
    }
}

choice! {
    /// Whether it should keep its level.
    Behaviour {
        /// It keeps its oil: a falling level is a leak.
        Holds = "holds",
        /// It uses its oil by design: a level that stays is a passage that starves.
        Uses = "uses",
    }
}

/// A body of oil with a level.
#[derive(Clone, Debug, PartialEq)]
pub struct Reservoir {
    /// Its id.
    pub id: Id,
    /// The assembly that it belongs to.
    pub assembly: Option<Id>,
    /// What it is called, when the id does not say it.
    pub name: Option<String>,
    /// What it is called on the screen.
    pub kind: ReservoirKind,
    /// What drains and is refilled.
    pub capacity: Option<Typed<Volume>>,
    /// What fills it when it is dry.
    pub dry_fill: Option<Typed<Volume>>,
    /// Whether it should keep its level.
    pub behaviour: Option<Behaviour>,
    /// The oil that the chart states for it, in open-standard words.
    pub oil: Option<String>,
    /// Where the level stands when it is right, and in which state to look.
    pub level: Option<String>,
    /// The lowest level that is still safe.
    pub low: Option<String>,
    /// Where it is filled.
    pub fill: Vec<String>,
    /// Where it is drained, every plug.
    pub drain: Vec<String>,
    /// How air gets in and out.
    pub vent: Option<String>,
    /// What cleans the oil.
    pub strainer: Option<String>,
    /// The pairs that run in it or are splashed from it.
    pub feeds: Vec<Id>,
    /// Reservoirs that share a wall with it.
    pub beside: Vec<Id>,
    /// The plate's words, kept as they are.
    pub plate: Option<String>,
    /// Anything worth saying.
    pub note: Option<String>,
    /// The examples that have it.
    pub when: When,
    /// How its statements are known.
    pub evidence: Vec<Evidence>,
}

pub(super) static KEYS: Element = Element {
    name: "reservoir",
    says: "A body of oil with a level",
    keys: &[
        super::ID,
        super::ASSEMBLY,
        Key::may("name", Takes::Text, "what it is called, when the id does not say it"),
        Key::must("kind", Takes::Choice(ReservoirKind::words), "what it is called on the screen"),
        Key::may("capacity", Takes::Quantity(Kind::Volume), "what drains and is refilled"),
        Key::may("dry_fill", Takes::Quantity(Kind::Volume), "what fills it when it is dry"),
        Key::may("behaviour", Takes::Choice(Behaviour::words), "whether it holds its oil or uses it by design"),
        Key::may("oil", Takes::Text, "the oil that the chart states, in open-standard words: way 68, circulating 46"),
        Key::may("level", Takes::Text, "where the level stands when it is right, and in which state to look"),
        Key::may("low", Takes::Text, "the lowest level that is still safe"),
        Key::may("fill", Takes::Texts, "where it is filled"),
        Key::may("drain", Takes::Texts, "where it is drained, every plug"),
        Key::may("vent", Takes::Text, "how air gets in and out"),
        Key::may("strainer", Takes::Text, "what cleans the oil"),
        Key::may("feeds", Takes::Links(&[Sort::Pair]), "the pairs that run in it or are splashed from it"),
        Key::may("beside", Takes::Mentions(&[Sort::Reservoir]), "reservoirs that share a wall with it"),
        Key::may("plate", Takes::Text, "the plate's words, kept as they are"),
        super::NOTE,
        super::WHEN,
        super::EVIDENCE,
    ],
};

pub(super) fn read(table: &Table<'_>) -> Option<Reservoir> {
    let id = table.id(Sort::Reservoir);
    let kind = table.choice("kind");
    let reservoir = Reservoir {
        assembly: table.link("assembly"),
        name: table.text("name"),
        capacity: table.positive("capacity"),
        dry_fill: table.positive("dry_fill"),
        behaviour: table.choice("behaviour"),
        oil: table.text("oil"),
        level: table.text("level"),
        low: table.text("low"),
        fill: table.texts("fill"),
        drain: table.texts("drain"),
        vent: table.text("vent"),
        strainer: table.text("strainer"),
        feeds: table.links("feeds"),
        beside: table.links("beside"),
        plate: table.text("plate"),
        note: table.text("note"),
        when: table.when(),
        evidence: evidence::read_all(table, &KEYS),
        id: id?,
        kind: kind?,
    };
    if let (Some(capacity), Some(dry)) = (&reservoir.capacity, &reservoir.dry_fill)
        && dry.value < capacity.value
    {
        table.fault("dry_fill", &format!("is \"{}\", less than the \"{}\" that drains; a dry reservoir takes at least as much as it gives back, so look which of the two is mistyped", dry.text, capacity.text));
    }
    Some(reservoir)
}
