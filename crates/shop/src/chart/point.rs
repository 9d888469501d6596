//! An oiling point: a place where a person puts oil in or looks for it.

use crate::amount::{Dose, Interval};
use crate::choice;
use crate::choice::Choice as _;
use crate::id::Id;
use crate::reading::{Element, Key, Sort, Table, Takes};

use super::evidence::{self, Evidence};
use super::when::When;

choice! {
    /// How oil gets there.
    Method {
        /// A plain hole.
        OilHole = "oil hole",
        /// A sprung ball in a button.
        BallOiler = "ball oiler",
        /// An open or lidded cup.
        Cup = "cup",
        /// A screw-down grease cup.
        GreaseCup = "grease cup",
        /// A pressure nipple, for grease or for oil.
        Nipple = "nipple",
        /// A needle valve that drips.
        Drip = "drip",
        /// Strands that lift oil over a lip.
        Wick = "wick",
        /// A felt.
        Felt = "felt",
        /// An inverted bottle.
        Bottle = "bottle",
        /// A loose ring on the shaft.
        Ring = "ring",
        /// A part that dips and throws.
        Splash = "splash",
        /// A bath.
        Bath = "bath",
        /// A tray with holes or pipes.
        Tray = "tray",
        /// A hand plunger that shares oil through meter units.
        OneShot = "one-shot with meter units" | "one-shot",
        /// A pump whose oil does not return.
        TotalLossPump = "total-loss pump",
        /// A pump whose oil returns.
        CirculatingPump = "circulating pump",
        /// A brush.
        Brush = "brush",
    }
}

choice! {
    /// What the machine must be doing while a person is at the point.
    State {
        /// Stopped.
        Stopped = "stopped",
        /// Running, for a look from outside the guards.
        Running = "running",
    }
}

/// A place where a person puts oil in or looks for it.
#[derive(Clone, Debug, PartialEq)]
pub struct Point {
    /// Its id, the number in the balloon.
    pub id: Id,
    /// The assembly that it belongs to.
    pub assembly: Option<Id>,
    /// What it is called.
    pub name: String,
    /// How oil gets there.
    pub method: Method,
    /// The reservoir that is filled or looked at here.
    pub reservoir: Option<Id>,
    /// The oil lines that start here.
    pub circuit: Option<Id>,
    /// The pairs and circuits that it feeds.
    pub feeds: Vec<Id>,
    /// Where a person stands.
    pub stand: Option<Id>,
    /// How to find it.
    pub place: Option<String>,
    /// The picture that shows it.
    pub picture: Option<Id>,
    /// Where on the picture, as fractions of its width and height.
    pub at: Option<[f64; 2]>,
    /// What the machine must be doing.
    pub state: State,
    /// What else must hold to reach it: slide wound left, cover off.
    pub moves: Vec<String>,
    /// The jobs that wake it; empty for a point that every job needs.
    pub job: Vec<Id>,
    /// How much each time.
    pub dose: Option<Dose>,
    /// How often, whichever comes first.
    pub every: Vec<Interval>,
    /// The oil that the chart states for it, in open-standard words.
    pub oil: Option<String>,
    /// What shows that oil got there.
    pub sign: Option<String>,
    /// How the sign was on this machine when all was well.
    pub baseline: Option<String>,
    /// The plate's words, kept as they are.
    pub plate: Option<String>,
    /// Anything worth saying.
    pub note: Option<String>,
    /// The examples that have it.
    pub when: When,
    /// How its statements are known.
    pub evidence: Vec<Evidence>,
}

impl Point {
    /// The reservoir whose level is looked at and topped up here, on a machine that stands still.
    #[must_use]
    pub fn tops_up(&self) -> Option<&Id> {
        self.reservoir.as_ref().filter(|_| self.state == State::Stopped && self.dose.is_none())
    }

    /// Whether it is made for grease: a grease cup, or a nipple of which nobody says that oil goes in.
    #[must_use]
    pub fn takes_grease(&self) -> bool {
        match self.method {
            Method::GreaseCup => true,
            Method::Nipple => self.oil.as_deref().is_none_or(|oil| oil.starts_with("grease")),
            _ => false,
        }
    }
}

pub(super) static KEYS: Element = Element {
    name: "point",
    says: "A place where a person puts oil in or looks for it",
    keys: &[
        super::ID,
        super::ASSEMBLY,
        Key::must("name", Takes::Text, "what it is called"),
        Key::must("method", Takes::Choice(Method::words), "how oil gets there"),
        Key::may("reservoir", Takes::Link(&[Sort::Reservoir]), "the reservoir that is filled or looked at here"),
        Key::may("circuit", Takes::Link(&[Sort::Circuit]), "the oil lines that start here"),
        Key::may("feeds", Takes::Links(&[Sort::Pair, Sort::Circuit]), "the pairs and circuits that it feeds"),
        Key::may("stand", Takes::Link(&[Sort::Stand]), "where a person stands"),
        Key::may("where", Takes::Text, "how to find it"),
        Key::may("picture", Takes::Link(&[Sort::Picture]), "the picture that shows it"),
        Key::may("at", Takes::TwoNumbers, "where on the picture, as fractions of its width and height"),
        Key::may("setup", Takes::Texts, "what must hold to reach it: stopped or running, a slide moved, a cover off"),
        Key::may("job", Takes::Links(&[Sort::Job]), "the jobs that wake it"),
        Key::may("dose", Takes::Dose, "how much each time"),
        Key::may("every", Takes::Intervals, "how often, whichever comes first"),
        Key::may("oil", Takes::Text, "the oil that the chart states, in open-standard words: way 68, circulating 46"),
        Key::may("sign", Takes::Text, "what shows that oil got there"),
        Key::may("baseline", Takes::Text, "how the sign was on this machine when all was well"),
        Key::may("plate", Takes::Text, "the plate's words, kept as they are"),
        super::NOTE,
        super::WHEN,
        super::EVIDENCE,
    ],
};

pub(super) fn read(table: &Table<'_>) -> Option<Point> {
    let id = table.id(Sort::Point);
    let name = table.text("name");
    let method = table.choice("method");
    let setup = table.texts("setup");
    let said = |state: State| setup.iter().any(|text| State::from_word(text.trim()) == Some(state));
    if said(State::Stopped) && said(State::Running) {
        table.fault("setup", "says both \"stopped\" and \"running\"; write the one in which a person is at the point");
    }
    let at = table.two_numbers("at");
    if at.is_some_and(|at| at.iter().any(|part| !(0.0..=1.0).contains(part))) {
        table.fault("at", "lies outside the picture; both numbers are fractions from 0 to 1, such as [0.4, 0.7]");
    }
    let point = Point {
        assembly: table.link("assembly"),
        reservoir: table.link("reservoir"),
        circuit: table.link("circuit"),
        feeds: table.links("feeds"),
        stand: table.link("stand"),
        place: table.text("where"),
        picture: table.link("picture"),
        at,
        // A point is oiled on a machine that stands still unless its chart says otherwise: the safe side.
        state: if said(State::Running) { State::Running } else { State::Stopped },
        moves: setup.iter().filter(|text| State::from_word(text.trim()).is_none()).cloned().collect(),
        job: table.links("job"),
        dose: table.dose("dose"),
        every: table.intervals("every"),
        oil: table.text("oil"),
        sign: table.text("sign"),
        baseline: table.text("baseline"),
        plate: table.text("plate"),
        note: table.text("note"),
        when: table.when(),
        evidence: evidence::read_all(table, &KEYS),
        id: id?,
        name: name?,
        method: method?,
    };
    Some(point)
}
