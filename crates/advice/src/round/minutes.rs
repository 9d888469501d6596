//! How long a round takes, by what its order costs and by the shop's own pace where the log tells one.

use tribology::{Standing, Step, Symbol};

use super::pace::Pace;
use super::tour::Seconds;

pub(super) struct Minutes {
    pub(super) whole: u32,
    pub(super) steps: Vec<Step>,
}

/// The time for what is not yet done.
pub(super) fn minutes(seconds: &Seconds, pace: Option<&Pace>) -> Minutes {
    let symbol = |symbol, seconds: u32| Symbol { symbol, si: f64::from(seconds), unit: "s" };
    let total = seconds.total();
    let mut steps = vec![Step {
        name: "Time for the round, by rule of thumb",
        formula: "acts + walk + cans + setting + wiping",
        symbols: vec![
            symbol("acts", seconds.acts),
            symbol("walk", seconds.walk),
            symbol("cans", seconds.cans),
            symbol("setting", seconds.sets),
            symbol("wiping", seconds.wipes),
        ],
        result: symbol("time", total),
        source: "common-practice",
        standing: Standing::CommonPractice,
    }];
    let time = pace.map_or(f64::from(total), |pace| pace.scaled(total));
    if let Some(pace) = pace {
        steps.push(pace.step());
    }
    Minutes { whole: (time / 60.0).ceil() as u32, steps }
}

/// Seconds by the rule of thumb that fit into so many minutes at the shop's own pace.
pub(super) fn budget(minutes: u32, pace: Option<&Pace>) -> u32 {
    let seconds = u64::from(minutes) * 60;
    let scaled = pace.map_or(seconds, |pace| seconds * u64::from(pace.expected) / u64::from(pace.taken.max(1)));
    u32::try_from(scaled).unwrap_or(u32::MAX)
}
