//! How long the round takes, by rule-of-thumb times for each act.

use tribology::{Standing, Step, Symbol};

use super::AtStand;
use super::act::Act;

/// Seconds for an act: our own guess at common practice, no source; the shop's history will better it.
const GIVE: f64 = 20.0;
const TOP_UP: f64 = 60.0;
const LOOK: f64 = 10.0;
/// Seconds to walk to a stand and set the can down.
const STAND: f64 = 15.0;
/// Seconds to move a slide or take a cover off.
const MOVE: f64 = 45.0;

pub(super) struct Minutes {
    pub(super) whole: u32,
    pub(super) step: Step,
}

/// The time for all that is not yet done.
pub(super) fn minutes(stands: &[AtStand]) -> Minutes {
    let mut acts = 0.0;
    let mut stops = 0.0;
    let mut moves = 0.0;
    for at in stands {
        let left: Vec<_> = at.points.iter().filter(|point| !point.is_done()).collect();
        if left.is_empty() {
            continue;
        }
        stops += STAND;
        let mut seen: Vec<&String> = Vec::new();
        for point in left {
            acts += match point.act {
                Act::Give => GIVE,
                Act::TopUp => TOP_UP,
                Act::Look => LOOK,
            };
            for one in &point.moves {
                if !seen.contains(&one) {
                    seen.push(one);
                    moves += MOVE;
                }
            }
        }
    }
    let total: f64 = acts + stops + moves;
    let step = Step {
        name: "Time for the round",
        formula: "acts + stands + moves",
        symbols: vec![
            Symbol { symbol: "acts", si: acts, unit: "s" },
            Symbol { symbol: "stands", si: stops, unit: "s" },
            Symbol { symbol: "moves", si: moves, unit: "s" },
        ],
        result: Symbol { symbol: "time", si: total, unit: "s" },
        source: "common-practice",
        standing: Standing::CommonPractice,
    };
    Minutes { whole: (total / 60.0).ceil() as u32, step }
}
