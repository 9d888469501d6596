//! What serves a point from the shelf: the oil nearest to what the chart states, the can that holds it, and the dose by that can.

use shop::chart::{Chart, Method, Point};
use shop::shelf::{Asked, Can, Shelf};

use super::act::{Act, act};
use super::dose::{DoseSaid, dose_said};
use super::{Chosen, State};

/// What serves a point.
#[derive(Clone, Debug, PartialEq)]
pub struct Serving {
    /// The oil that the chart states, as it is written there; for a point that fills a reservoir, the reservoir's.
    pub asked: Option<String>,
    /// The nearest of that sort on the shelf.
    pub oil: Option<Chosen>,
    /// The can that holds it.
    pub can: Option<Chosen>,
    /// How much.
    pub dose: DoseSaid,
}

/// What serves a point from the shelf. Whether the oil suits is not judged here.
#[must_use]
pub fn serving(chart: &Chart, point: &Point, shelf: &Shelf) -> Serving {
    let what = act(point);
    if what == Act::Look && point.state == State::Running {
        return Serving { asked: None, oil: None, can: None, dose: DoseSaid::default() };
    }
    let of_reservoir = || chart.reservoir(point.reservoir.as_ref()?)?.oil.clone();
    let asked = point.oil.clone().or_else(of_reservoir);
    let oil = asked.as_deref().and_then(Asked::read).and_then(|asked| shelf.nearest(&asked));
    // The knob of a one-shot moves oil that its tank holds already; no can is taken to it.
    let by_can = point.method != Method::OneShot || point.reservoir.is_some();
    let can: Option<&Can> = oil.filter(|_| by_can).and_then(|oil| shelf.cans_with(&oil.id).next());
    Serving {
        oil: oil.map(|oil| Chosen { id: oil.id.clone(), name: oil.name.clone() }),
        can: can.map(|can| Chosen { id: can.id.clone(), name: can.called() }),
        dose: dose_said(point, what, can),
        asked,
    }
}
