//! A moving pair: two surfaces that rub or roll, which is what all the oil is for.

use tribology::quantity::{Angle, Area, Force, Kind, Length, Temperature, Torque, Typed};

mod check;

use tribology::contact::{rubbing_speed, stroking_speed};
use tribology::quantity::Velocity;

use crate::amount::Speed;
use crate::choice;
use crate::choice::Choice as _;
use crate::id::Id;
use crate::reading::{Element, Key, Sort, Table, Takes};

use super::evidence::{self, Evidence};
use super::when::When;

choice! {
    /// What kind of pair it is.
    PairKind {
        /// A plain bearing.
        Journal = "journal",
        /// A ball or roller bearing.
        RollingBearing = "rolling bearing" | "rolling",
        /// Two gears.
        GearMesh = "gear mesh" | "gear",
        /// A worm and its wheel.
        Worm = "worm",
        /// A slide on its way.
        Slideway = "slideway",
        /// A screw in its nut.
        ScrewAndNut = "screw and nut",
        /// A collar that slides or a fork in its groove.
        SlidingCollar = "sliding collar or fork" | "sliding collar" | "fork",
        /// A cam and what follows it.
        Cam = "cam",
        /// A clutch that grips by friction.
        FrictionClutch = "friction clutch",
        /// A chain on its wheels.
        Chain = "chain",
    }
}

choice! {
    /// How a slideway lies.
    Orientation {
        /// Level.
        Horizontal = "horizontal",
        /// Upright.
        Vertical = "vertical",
        /// Between the two.
        Inclined = "inclined",
    }
}

/// Two surfaces that rub or roll.
#[derive(Clone, Debug, PartialEq)]
pub struct Pair {
    /// Its id.
    pub id: Id,
    /// The assembly that it belongs to.
    pub assembly: Option<Id>,
    /// What it is called, when the id does not say it.
    pub name: Option<String>,
    /// What kind of pair it is.
    pub kind: PairKind,
    /// For rolling bearings the type: deep groove, taper roller and so on.
    pub kind_type: Option<String>,
    /// Of the journal or screw.
    pub diameter: Option<Typed<Length>>,
    /// Along the journal or the way.
    pub length: Option<Typed<Length>>,
    /// On the diameter.
    pub clearance: Option<Typed<Length>>,
    /// The part of the circle that the bearing wraps.
    pub arc: Option<Typed<Angle>>,
    /// Of a rolling bearing.
    pub bore: Option<Typed<Length>>,
    /// Of a rolling bearing.
    pub outside: Option<Typed<Length>>,
    /// Of a rolling bearing, a gear or a way.
    pub width: Option<Typed<Length>>,
    /// What presses the surfaces together.
    pub load: Option<Typed<Force>>,
    /// What is carried round.
    pub torque: Option<Typed<Torque>>,
    /// All the speeds of the pair.
    pub speeds: Vec<Speed>,
    /// What the two surfaces are made of.
    pub surfaces: Vec<String>,
    /// Root-mean-square roughness of each surface.
    pub roughness: Vec<Typed<Length>>,
    /// How a slideway lies.
    pub orientation: Option<Orientation>,
    /// Of a slideway.
    pub area: Option<Typed<Area>>,
    /// Of a slideway or ram.
    pub stroke: Option<Typed<Length>>,
    /// Measured while working.
    pub temperature: Option<Typed<Temperature>>,
    /// Whether the part cannot be bought again.
    pub irreplaceable: bool,
    /// Anything worth saying.
    pub note: Option<String>,
    /// The examples that have it.
    pub when: When,
    /// How its statements are known.
    pub evidence: Vec<Evidence>,
}

pub(super) static KEYS: Element = Element {
    name: "moving pair",
    says: "Two surfaces that rub or roll",
    keys: &[
        super::ID,
        super::ASSEMBLY,
        Key::may("name", Takes::Text, "what it is called, when the id does not say it"),
        Key::must("kind", Takes::Choice(PairKind::words), "what kind of pair it is"),
        Key::may(
            "type",
            Takes::Text,
            "for rolling bearings: deep groove, angular contact, taper roller, cylindrical roller, thrust ball",
        ),
        Key::may("diameter", Takes::Quantity(Kind::Length), "of the journal or screw"),
        Key::may("length", Takes::Quantity(Kind::Length), "along the journal or the way"),
        Key::may("clearance", Takes::Quantity(Kind::Length), "on the diameter"),
        Key::may("arc", Takes::Quantity(Kind::Angle), "the part of the circle that the bearing wraps"),
        Key::may("bore", Takes::Quantity(Kind::Length), "of a rolling bearing"),
        Key::may("outside", Takes::Quantity(Kind::Length), "of a rolling bearing"),
        Key::may("width", Takes::Quantity(Kind::Length), "of a rolling bearing, a gear or a way"),
        Key::may("load", Takes::Quantity(Kind::Force), "what presses the surfaces together"),
        Key::may("torque", Takes::Quantity(Kind::Torque), "what is carried round"),
        Key::may("speeds", Takes::Speeds, "all the speeds of the pair"),
        Key::may("surfaces", Takes::Texts, "what the two surfaces are made of: steel, cast iron, bronze, white metal"),
        Key::may("roughness", Takes::Quantities(Kind::Length), "root-mean-square roughness of each surface"),
        Key::may("orientation", Takes::Choice(Orientation::words), "how a slideway lies"),
        Key::may("area", Takes::Quantity(Kind::Area), "of a slideway"),
        Key::may("stroke", Takes::Quantity(Kind::Length), "of a slideway or ram"),
        Key::may("temperature", Takes::Quantity(Kind::Temperature), "measured while working"),
        Key::may("irreplaceable", Takes::YesNo, "true when the part cannot be bought again"),
        super::NOTE,
        super::WHEN,
        super::EVIDENCE,
    ],
};

impl Pair {
    /// How fast its surfaces rub at a speed: of a turning pair by its diameter, of a slide by its stroke; nothing where the size is missing.
    #[must_use]
    pub fn rubs(&self, speed: Speed) -> Option<Velocity> {
        let stroke = self.stroke.as_ref().filter(|_| self.kind == PairKind::Slideway).map(|typed| typed.value);
        let diameter = self.diameter.as_ref().or(self.bore.as_ref()).map(|typed| typed.value);
        match (speed, stroke) {
            (Speed::Sliding(velocity), _) => Some(velocity),
            (Speed::Turning(rate), Some(stroke)) => Some(stroking_speed(stroke, rate)),
            (Speed::Turning(turning), None) => diameter.map(|diameter| rubbing_speed(diameter, turning)),
        }
    }

    /// The fastest that its surfaces rub at any of its speeds.
    #[must_use]
    pub fn fastest(&self) -> Option<Velocity> {
        let rubs = self.speeds.iter().filter_map(|speed| self.rubs(*speed));
        rubs.max_by(|a, b| a.m_s().total_cmp(&b.m_s()))
    }
}

pub(super) fn read(table: &Table<'_>) -> Option<Pair> {
    let id = table.id(Sort::Pair);
    let kind: Option<PairKind> = table.choice("kind");
    let pair = Pair {
        assembly: table.link("assembly"),
        name: table.text("name"),
        kind_type: table.text("type"),
        diameter: table.positive("diameter"),
        length: table.positive("length"),
        clearance: table.positive("clearance"),
        arc: table.positive("arc"),
        bore: table.positive("bore"),
        outside: table.positive("outside"),
        width: table.positive("width"),
        load: table.positive("load"),
        torque: table.positive("torque"),
        speeds: table.speeds("speeds"),
        surfaces: table.texts("surfaces"),
        roughness: table.quantities("roughness"),
        orientation: table.choice("orientation"),
        area: table.positive("area"),
        stroke: table.positive("stroke"),
        temperature: table.quantity("temperature"),
        irreplaceable: table.yes_no("irreplaceable").unwrap_or(false),
        note: table.text("note"),
        when: table.when(),
        evidence: evidence::read_all(table, &KEYS),
        id: id?,
        kind: kind?,
    };
    check::check(table, &pair);
    Some(pair)
}
