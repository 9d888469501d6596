//! A stand: where a person stands at the machine. Every chart has front, right, rear and left without writing them.

use tribology::quantity::{Kind, Length, Unit};

use crate::id::Id;
use crate::reading::{Element, Key, Log, Sort, Table, Takes};

/// A place to stand, on the floor beside the machine.
#[derive(Clone, Debug, PartialEq)]
pub struct Stand {
    /// Its id.
    pub id: Id,
    /// What it is called: left side, front, up the ladder.
    pub name: String,
    /// To the right of the machine's middle, seen from its front.
    pub x: Length,
    /// Away from its front.
    pub y: Length,
}

pub(super) static KEYS: Element = Element {
    name: "stand",
    says: "Where a person stands; front, right, rear and left are there without being written",
    keys: &[
        super::ID,
        Key::must("name", Takes::Text, "what it is called"),
        Key::may("x", Takes::Metres, "metres to the right of the machine's middle, seen from the front"),
        Key::may("y", Takes::Metres, "metres from the machine's middle toward its front"),
    ],
};

/// The stands that every chart has, in walking order: a metre from the middle on each side.
const BUILT_IN: [(&str, &str, f64, f64); 4] = [
    ("front", "Front", 0.0, 1.0),
    ("right", "Right side", 1.0, 0.0),
    ("rear", "Rear", 0.0, -1.0),
    ("left", "Left side", -1.0, 0.0),
];

pub(super) fn read(table: &Table<'_>) -> Option<Stand> {
    let metre = Unit::find(Kind::Length, "m").expect("the table of units holds the metre");
    let id = table.id(Sort::Stand);
    let name = table.text("name");
    let usual = id.as_ref().and_then(|id| BUILT_IN.iter().find(|(built_in, ..)| *built_in == id.as_str()));
    let at = |key, usual: Option<f64>| {
        table.quantity_in::<Length>(key, metre).map_or(Length::from_m(usual.unwrap_or(0.0)), |typed| typed.value)
    };
    let x = at("x", usual.map(|u| u.2));
    let y = at("y", usual.map(|u| u.3));
    Some(Stand { id: id?, name: name?, x, y })
}

/// Makes the ids of the stands that every chart has known to the links.
pub(super) fn built_in(log: &Log) {
    for (id, ..) in BUILT_IN {
        log.built_in(&Id::new(id).expect("the built-in names are ids"), Sort::Stand);
    }
}

/// The chart's own stands, and those of the built-in ones that it does not name itself, first the written ones.
pub(super) fn with_built_in(mut stands: Vec<Stand>) -> Vec<Stand> {
    for (id, name, x, y) in BUILT_IN {
        let id = Id::new(id).expect("the built-in names are ids");
        if stands.iter().all(|stand| stand.id != id) {
            stands.push(Stand { id, name: name.to_owned(), x: Length::from_m(x), y: Length::from_m(y) });
        }
    }
    stands
}
