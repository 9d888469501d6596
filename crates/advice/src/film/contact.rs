//! A bearing that a film can be reckoned for: plain or rolling. One file each; this one hands over.

use shop::amount::Speed;
use shop::chart::{Pair, PairKind};
use tribology::contact::Regime;
use tribology::quantity::{Rotation, Temperature};
use tribology::{Answer, Error};

use super::assumed::{Assumed, End, What};
use super::filling::Filling;
use super::plain::Plain;
use super::rolling::Rolling;
use super::state::State;
use crate::need::Place;

/// What kind of bearing it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// A plain bearing.
    Plain,
    /// A rolling bearing.
    Rolling,
}

/// A bearing with what is charted of it and what had to be assumed.
#[derive(Clone, Debug, PartialEq)]
pub enum Contact {
    /// A plain bearing.
    Plain(Plain),
    /// A rolling bearing.
    Rolling(Rolling),
}

impl Kind {
    /// The film with which one is content: a plain bearing's keeps its surfaces apart, a rolling bearing's is as thick as ISO 281 asks.
    #[must_use]
    pub fn wanted(self) -> Regime {
        match self {
            Self::Plain => Regime::Full,
            Self::Rolling => Regime::Mixed,
        }
    }
}

impl Contact {
    /// The bearing at a place; nothing for other pairs and for grease, and where size or turning speed are unknown.
    #[must_use]
    pub fn of(place: &Place<'_>) -> Option<Self> {
        let pair = place.pair.filter(|_| !place.takes_grease())?;
        let speeds = speeds(pair)?;
        match pair.kind {
            PairKind::Journal => Plain::of(place, pair, speeds).map(Self::Plain),
            PairKind::RollingBearing => Rolling::of(place, pair, speeds).map(Self::Rolling),
            _ => None,
        }
    }

    /// What kind it is.
    #[must_use]
    pub fn kind(&self) -> Kind {
        match self {
            Self::Plain(_) => Kind::Plain,
            Self::Rolling(_) => Kind::Rolling,
        }
    }

    /// Its speeds, slowest first; there is one at least.
    #[must_use]
    pub fn speeds(&self) -> &[Rotation] {
        match self {
            Self::Plain(plain) => &plain.speeds,
            Self::Rolling(rolling) => &rolling.speeds,
        }
    }

    /// Its fastest speed.
    #[must_use]
    pub fn top(&self) -> Rotation {
        self.speeds().last().copied().unwrap_or(Rotation::from_rpm(0.0))
    }

    /// What was taken as usual of it.
    #[must_use]
    pub fn assumed(&self) -> &[Assumed] {
        match self {
            Self::Plain(plain) => &plain.assumed,
            Self::Rolling(rolling) => &rolling.assumed,
        }
    }

    /// How it does at a speed; nothing where friction makes more heat than is given off at any temperature.
    ///
    /// # Errors
    /// Those of the sums, where there is no answer.
    pub fn at(&self, filling: &Filling, speed: Rotation, air: Temperature) -> Result<Option<State>, Error> {
        let found = match self {
            Self::Plain(plain) => plain.at(filling, speed, air),
            Self::Rolling(rolling) => rolling.at(filling, speed, air).map(|answer| answer.value),
        };
        match found {
            Ok(state) => Ok(Some(state)),
            Err(Error::NotBracketed { .. }) => Ok(None),
            Err(other) => Err(other),
        }
    }

    /// The working of its top speed; empty where there is no answer.
    pub(super) fn working(&self, filling: &Filling, air: Temperature) -> Answer<()> {
        let found = match self {
            Self::Plain(plain) => plain.working(filling, self.top(), air),
            Self::Rolling(rolling) => rolling.at(filling, self.top(), air),
        };
        let empty = || Answer { value: (), warnings: Vec::new(), steps: Vec::new() };
        found.map_or_else(|_| empty(), |answer| answer.map(|_| ()))
    }

    /// The same bearing with an end of something that was taken as usual; nothing where that is no part of it.
    pub(super) fn varied(&self, what: &What, end: End) -> Option<Self> {
        match self {
            Self::Plain(plain) => plain.varied(what, end).map(Self::Plain),
            Self::Rolling(rolling) => rolling.varied(what, end).map(Self::Rolling),
        }
    }
}

/// The turning speeds of a pair, slowest first, each once; nothing where there are none.
fn speeds(pair: &Pair) -> Option<Vec<Rotation>> {
    let turning = pair.speeds.iter().filter_map(|speed| match speed {
        Speed::Turning(turning) => Some(*turning),
        Speed::Sliding(_) => None,
    });
    let mut speeds: Vec<Rotation> = turning.collect();
    speeds.sort_by(|a, b| a.per_second().total_cmp(&b.per_second()));
    speeds.dedup();
    (!speeds.is_empty()).then_some(speeds)
}
