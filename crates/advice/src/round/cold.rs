//! Ways of oiling that will not deliver in a cold shop, with what to do: the limits of each way held against the oil that serves the point.

use shop::chart::Method;
use shop::id::Id;
use shop::shelf::Shelf;
use shop::snapshot::MachineSnapshot;
use tribology::Step;
use tribology::feed::Feed;
use tribology::oil::{USUAL_INDEX, ViscosityLine};
use tribology::quantity::{KinematicViscosity, Temperature};

use super::Chosen;
use super::serving::serving;
use super::tour::counted;
use crate::need::{ColdFeed, cold_feed, cold_feed_of, feed};
use crate::working::{Assumption, Reasoned};

/// What an oil of which nobody says how thick it is is taken for, mm²/s at 40 °C: the usual oil of slow machines (common practice).
const USUAL_GRADE: f64 = 68.0;

/// A way of oiling that will not deliver.
#[derive(Clone, Debug, PartialEq)]
pub struct Cold {
    /// The point.
    pub id: Id,
    /// What it is called.
    pub name: String,
    /// How oil should get there.
    pub method: Method,
    /// The oil from the shelf.
    pub oil: Option<Chosen>,
    /// Why it will not.
    pub why: WhyCold,
}

/// Why oil does not come in the cold.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum WhyCold {
    /// The oil is too thick for this way of oiling below so many degrees; nothing where no warmth of a shop would help.
    TooThick {
        /// The limit.
        below: Option<Temperature>,
    },
    /// The oil does not even pour.
    NotPouring {
        /// The coldest at which it does.
        pours: Temperature,
    },
}

/// The points of a machine whose way of oiling will not deliver at a temperature of the shop.
#[must_use]
pub fn cold(machine: &MachineSnapshot, shelf: &Shelf, temperature: Temperature) -> Reasoned<Vec<Cold>> {
    let mut found = Vec::new();
    let mut steps: Vec<Step> = Vec::new();
    let mut unknown = Vec::new();
    for point in machine.chart.points_here() {
        let chosen = serving(&machine.chart, point, shelf).oil;
        let oil = chosen.as_ref().and_then(|oil| shelf.oil(&oil.id));
        let pours = oil.and_then(|oil| oil.pour_point.as_ref()).map(|typed| typed.value);
        let why = match (pours.filter(|pours| temperature <= *pours), feed(&machine.chart, point)) {
            (Some(pours), _) => Some(WhyCold::NotPouring { pours }),
            (None, None) => None,
            (None, Some(feed)) => {
                let known = oil.and_then(|oil| cold_feed(feed, oil, temperature));
                // A can of which nobody says what is in it is no reason to warn.
                if known.is_none() && feed == Feed::Can {
                    continue;
                }
                let answer = known.or_else(|| {
                    unknown.push(point.id.clone());
                    let usual = ViscosityLine::with_index(KinematicViscosity::from_mm2_s(USUAL_GRADE), USUAL_INDEX);
                    Some(cold_feed_of(feed, usual.ok()?.value, temperature))
                });
                answer.and_then(|answer| {
                    steps.extend(answer.steps);
                    match answer.value {
                        ColdFeed::Fails { above } => Some(WhyCold::TooThick { below: above }),
                        ColdFeed::Moves | ColdFeed::Slow => None,
                    }
                })
            }
        };
        let (id, name, method) = (point.id.clone(), point.name.clone(), point.method);
        found.extend(why.map(|why| Cold { id, name, method, oil: chosen, why }));
    }
    found.sort_by_key(|cold| counted(&cold.id));
    let mut reasoned = Reasoned::new(found);
    steps.dedup();
    reasoned.answer.steps = steps;
    reasoned.assumed.push(Assumption::ColdByLimits);
    if !unknown.is_empty() {
        reasoned.assumed.push(Assumption::BodyUnknown(unknown));
    }
    reasoned
}
