//! Which sorts of oil are made for which kind of pair: a table of trade practice, family by family. A sort that is not in a row does for a
//! while, as any clean mineral oil of about the right body does.

use shop::chart::{Method, PairKind};
use shop::shelf::Family::{
    self, Circulating, Compounded, Gear, Grease, Hydraulic, Spindle, Straight, Transmission, Way,
};

use super::place::{self, Place};
use crate::verdict::Verdict;

/// A row: the sorts that suit and those that serve.
struct Row {
    suits: &'static [Family],
    serves: &'static [Family],
    says: &'static str,
}

const PLAIN: Row = Row {
    suits: &[Straight, Circulating, Hydraulic, Spindle],
    serves: &[Way, Gear, Compounded, Transmission],
    says: "plain bearings want clean circulating, hydraulic or straight oil",
};
const ROLLING: Row = Row {
    suits: &[Straight, Circulating, Hydraulic, Spindle],
    serves: &[Transmission, Gear, Way],
    says: "rolling bearings in oil want circulating, hydraulic or spindle oil",
};
const CLOSED_GEARS: Row = Row {
    suits: &[Straight, Circulating, Hydraulic, Gear],
    serves: &[Transmission, Way, Compounded, Spindle],
    says: "closed gears want circulating, hydraulic or gear oil",
};
const OPEN_GEARS: Row = Row {
    suits: &[Way, Gear, Compounded],
    serves: &[Straight, Circulating, Grease],
    says: "open gears want oil that clings",
};
const LOADED_WORM: Row = Row {
    suits: &[Compounded],
    serves: &[Straight, Circulating, Gear],
    says: "bronze worm wheels want compounded oil without active sulphur",
};
const LIGHT_WORM: Row = Row {
    suits: &[Compounded, Straight, Circulating],
    serves: &[Way, Hydraulic, Gear],
    says: "light worms do with the oil of the box",
};
const WAYS: Row = Row {
    suits: &[Way],
    serves: &[Gear, Compounded],
    says: "slow ways stick and slip, run dry and rust under anything but way oil",
};
const QUICK_SLIDES: Row = Row {
    suits: &[Way, Circulating, Straight],
    serves: &[Hydraulic, Gear, Compounded],
    says: "quick slides want way or circulating oil",
};
const FELT: Row = Row {
    suits: &[Circulating, Straight],
    serves: &[Hydraulic, Spindle, Way],
    says: "a felt wants clean oil that does not string",
};
const HAND_BEARING: Row = Row {
    suits: &[Straight, Circulating, Hydraulic, Spindle, Way],
    serves: &[Gear, Compounded, Transmission],
    says: "slow plain bearings oiled by hand do with any clean oil of the right body",
};
const SCREW: Row = Row {
    suits: &[Way],
    serves: &[Straight, Circulating, Hydraulic, Gear, Compounded, Transmission],
    says: "screws and nuts want oil that clings and does not stick",
};
const COLLAR: Row = Row {
    suits: &[Straight, Circulating, Hydraulic, Way],
    serves: &[Gear, Compounded, Transmission, Spindle],
    says: "collars and forks do with the oil of the box",
};
const CLUTCH: Row = Row {
    suits: &[Straight, Circulating, Hydraulic],
    serves: &[Spindle],
    says: "wet friction clutches want circulating or hydraulic oil without friction modifier",
};
const CHAIN: Row = Row {
    suits: &[Straight, Circulating, Way, Gear],
    serves: &[Hydraulic, Compounded, Transmission],
    says: "chains want oil that creeps in and clings",
};
const CLOSE_SPINDLE: Row = Row {
    suits: &[Spindle],
    serves: &[Hydraulic, Circulating],
    says: "close, fast spindles want spindle oil of class F",
};

const GREASED: &str = "the point is made for grease";

/// The sorts that suit a pair, the most usual first; nothing where nobody knows what the point feeds, or where it takes grease.
#[must_use]
pub fn wanted(place: &Place<'_>) -> Option<&'static [Family]> {
    if place.takes_grease() {
        return None;
    }
    rows(place)?.into_iter().flatten().map(|row| row.suits).next()
}

/// What sort of oil a pair wants, in a sentence without its full stop; nothing where nobody knows what the point feeds.
#[must_use]
pub fn wants(place: &Place<'_>) -> Option<&'static str> {
    place.pair?;
    if place.takes_grease() {
        return Some(GREASED);
    }
    rows(place)?.into_iter().flatten().map(|row| row.says).next()
}

/// How far the sort of an oil does for a pair, and why no further.
pub fn sort(place: &Place<'_>, family: Family) -> Option<(Verdict, &'static str)> {
    place.pair?;
    if place.takes_grease() {
        return Some((if family == Grease { Verdict::Suits } else { Verdict::Stopgap }, GREASED));
    }
    // Between slow and quick both ways of looking at it count, and the kinder one is said.
    let rows = rows(place)?;
    rows.into_iter().flatten().map(|row| (row.verdict(family), row.says)).max_by_key(|(verdict, _)| *verdict)
}

impl Row {
    fn verdict(&self, family: Family) -> Verdict {
        if self.suits.contains(&family) {
            Verdict::Suits
        } else if self.serves.contains(&family) {
            Verdict::Serves
        } else {
            // Grease is ruled on by itself.
            Verdict::Stopgap
        }
    }
}

/// The rows of a pair: one, or two where it is neither slow nor quick.
fn rows(place: &Place<'_>) -> Option<[Option<Row>; 2]> {
    let row = |pace| row(place, pace);
    Some(match place.quick() {
        0.0 => [Some(row(Pace::Slow)?), None],
        1.0 => [Some(row(Pace::Quick)?), None],
        _ => [row(Pace::Slow), row(Pace::Quick)],
    })
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Pace {
    Slow,
    Quick,
}

/// The row of a pair at a pace.
fn row(place: &Place<'_>, pace: Pace) -> Option<Row> {
    let pair = place.pair?;
    Some(match pair.kind {
        _ if place.is_close_and_fast || place.is_with_close_spindle => CLOSE_SPINDLE,
        PairKind::Journal if place.way == place::Way::Hand && pace == Pace::Slow => HAND_BEARING,
        PairKind::Journal => PLAIN,
        PairKind::RollingBearing => ROLLING,
        PairKind::GearMesh if place.is_open() => OPEN_GEARS,
        PairKind::GearMesh => CLOSED_GEARS,
        PairKind::Worm if place.hot == place::Known::Yes => LOADED_WORM,
        PairKind::Worm => LIGHT_WORM,
        PairKind::Slideway if place.point.method == Method::Felt => FELT,
        PairKind::Slideway if pace == Pace::Quick => QUICK_SLIDES,
        PairKind::Slideway => WAYS,
        PairKind::ScrewAndNut => SCREW,
        PairKind::SlidingCollar | PairKind::Cam => COLLAR,
        PairKind::FrictionClutch => CLUTCH,
        PairKind::Chain => CHAIN,
    })
}
