//! What comes due in the middle of a long job: points whose interval of running hours is shorter than the hours planned.

use std::collections::BTreeMap;

use jiff::SignedDuration;
use jiff::ZonedDateTime;
use shop::id::Id;
use shop::snapshot::{MachineSnapshot, Moment};
use tribology::quantity::Time;

use super::{Plan, due};

/// A stop in the middle of the job.
#[derive(Clone, Debug, PartialEq)]
pub struct Later {
    /// After so many running hours.
    pub after: Time,
    /// By the shop's clock, when the machine starts as soon as the round is over and runs without a break.
    pub clock: ZonedDateTime,
    /// The points, with what they are called.
    pub points: Vec<(Id, String)>,
}

/// The stops in the middle of the job at which these points want oil again, having got it in this round.
pub(super) fn later(
    machine: &MachineSnapshot,
    moment: &Moment,
    plan: &Plan,
    minutes: u32,
    points: &[Id],
) -> Vec<Later> {
    let mut stops: BTreeMap<i64, Vec<(Id, String)>> = BTreeMap::new();
    let planned = whole(plan.hours);
    for point in points.iter().filter_map(|id| machine.chart.point(id)) {
        if !due::is_awake(machine, point, plan) {
            continue;
        }
        let Some(every) = due::shortest_hours(machine, point).map(whole).filter(|every| *every > 0) else { continue };
        // Oil at the last minute of the job helps nobody: the next round gives it.
        for after in (1..).map(|times| times * every).take_while(|after| *after < planned) {
            stops.entry(after).or_default().push((point.id.clone(), point.name.clone()));
        }
    }
    let start = moment.instant + SignedDuration::from_mins(i64::from(minutes));
    let stop = |(after, points): (i64, Vec<(Id, String)>)| Later {
        after: Time::from_seconds(after as f64),
        clock: (start + SignedDuration::from_secs(after)).to_zoned_datetime(moment.zone.clone()),
        points,
    };
    stops.into_iter().map(stop).collect()
}

fn whole(time: Time) -> i64 {
    time.seconds().round() as i64
}
