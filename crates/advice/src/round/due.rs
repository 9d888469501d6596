//! Whether a point is due. Each of its intervals counts by its own clock, whichever comes first: uses and running hours since the
//! last oil was given, with today's planned ones added, and days on the shop's calendar. A dosing is given for one session, so
//! a point that is due is in the round once.

use jiff::civil::Date;
use jiff::{Timestamp, ToSpan as _};
use shop::amount::{Clock, Interval};
use shop::chart::Point;
use shop::id::Id;
use shop::snapshot::{MachineSnapshot, Mark, Moment, Run};
use tribology::quantity::{Quantity as _, Time};
use tribology::{Standing, Step, Symbol};

use super::Plan;
use super::act::Act;

/// A reason why a point is due.
#[derive(Clone, Debug, PartialEq)]
pub enum Due {
    /// Nothing was ever logged of it.
    NeverLogged,
    /// It wants oil every so many uses.
    Uses {
        /// Uses since the last oil.
        since: u32,
        /// Its interval.
        every: u32,
    },
    /// It was oiled on an earlier day and no run is logged since; one use is counted, for a run that nobody logged starves.
    EarlierDay {
        /// The day on which it was oiled.
        oiled: Date,
    },
    /// It wants oil every so many running hours.
    Running {
        /// Hours since the last oil.
        since: Time,
        /// Hours planned.
        planned: Time,
        /// Its interval.
        every: Time,
    },
    /// It wants oil by the calendar.
    Calendar {
        /// The day of the last oil.
        last: Date,
        /// Its interval, as it was typed.
        every: String,
    },
}

/// The reasons why a point is due, with their sums.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Reasons {
    /// The reasons; empty when it is not due.
    pub due: Vec<Due>,
    /// The sums.
    pub steps: Vec<Step>,
}

impl Reasons {
    /// Adds a reason once: a finding may set the interval that the point has already.
    fn give(&mut self, reason: Due) {
        if !self.due.contains(&reason) {
            self.due.push(reason);
        }
    }
}

/// When the present session began: at the end of the last run, or with the shop's day, whichever is later.
#[must_use]
pub fn session_start(machine: &MachineSnapshot, moment: &Moment) -> Timestamp {
    // Midnight fails only at the ends of time, where the moment itself is as good a start.
    let midnight = moment.clock().start_of_day().map_or(moment.instant, |midnight| midnight.timestamp());
    machine.runs.last().map_or(midnight, |run| run.happened.max(midnight))
}

/// Whether today's job needs a point at all.
pub(super) fn is_awake(machine: &MachineSnapshot, point: &Point, plan: &Plan) -> bool {
    jobs_of(machine, point).is_empty() || is_of_job(machine, point, plan)
}

/// Whether it is today's job that wakes a point.
pub(super) fn is_of_job(machine: &MachineSnapshot, point: &Point, plan: &Plan) -> bool {
    plan.job.as_ref().is_some_and(|job| jobs_of(machine, point).contains(&job))
}

/// Why a point is due at a moment. Empty when nothing says so, and for a point without an interval.
#[must_use]
pub fn due(machine: &MachineSnapshot, point: &Point, act: Act, moment: &Moment, plan: &Plan) -> Reasons {
    let history = machine.history(&point.id);
    // A look is made when its sign was seen or was found missing; anything else when oil was given.
    let last = match act {
        Act::Look => later(history.sign_seen, history.sign_missing),
        Act::Give | Act::TopUp => history.dosed,
    };
    let intervals: Vec<&Interval> = point.every.iter().chain(meanwhile(machine, &point.id)).collect();
    let mut reasons = Reasons::default();
    let Some(last) = last else {
        if !intervals.is_empty() {
            reasons.due.push(Due::NeverLogged);
        }
        return reasons;
    };
    let runs = runs_since(machine, point, last.happened);
    let last_day = moment.day_of(last.happened);
    for interval in intervals {
        match interval.clock {
            Clock::Uses(every) => {
                let since = u32::try_from(runs.len()).unwrap_or(u32::MAX);
                if since.saturating_add(1) > every {
                    reasons.give(Due::Uses { since, every });
                } else if every == 1 && last_day < moment.day() {
                    reasons.give(Due::EarlierDay { oiled: last_day });
                }
            }
            Clock::Running(every) => {
                let since = Time::from_si(runs.iter().map(|run| run.hours.si()).sum());
                let by_then = since.si() + plan.hours.si();
                if by_then > every.si() {
                    reasons.give(Due::Running { since, planned: plan.hours, every });
                    reasons.steps.push(hours_step(since, plan.hours, every, by_then));
                }
            }
            Clock::Days(days) => {
                if last_day.saturating_add(i64::from(days).days()) <= moment.day() {
                    reasons.give(Due::Calendar { last: last_day, every: interval.typed.clone() });
                }
            }
            Clock::Months(months) => {
                if last_day.saturating_add(i64::from(months).months()) <= moment.day() {
                    reasons.give(Due::Calendar { last: last_day, every: interval.typed.clone() });
                }
            }
        }
    }
    reasons
}

/// The shortest of a point's intervals that count running hours.
pub(super) fn shortest_hours(machine: &MachineSnapshot, point: &Point) -> Option<Time> {
    let hours = point.every.iter().chain(meanwhile(machine, &point.id)).filter_map(|interval| match interval.clock {
        Clock::Running(every) => Some(every),
        Clock::Uses(_) | Clock::Days(_) | Clock::Months(_) => None,
    });
    hours.min_by(|a, b| a.si().total_cmp(&b.si()))
}

/// The intervals that open findings about a point set meanwhile.
fn meanwhile<'m>(machine: &'m MachineSnapshot, point: &Id) -> impl Iterator<Item = &'m Interval> {
    let open = machine.chart.findings.iter().filter(|finding| finding.settled.is_none());
    open.filter(move |finding| finding.of.contains(point)).flat_map(|finding| &finding.interval)
}

/// The jobs that wake a point: those it names, and those that name it or its assembly. None for a point that every job needs.
fn jobs_of<'m>(machine: &'m MachineSnapshot, point: &'m Point) -> Vec<&'m Id> {
    let named = machine.chart.jobs.iter().filter(|job| {
        job.wakes.contains(&point.id) || point.assembly.as_ref().is_some_and(|assembly| job.wakes.contains(assembly))
    });
    point.job.iter().chain(named.map(|job| &job.id)).collect()
}

/// Runs after an instant that wear a point: all of them, or for a sleeper those of its jobs and those of which nobody said
/// what was done.
fn runs_since<'m>(machine: &'m MachineSnapshot, point: &'m Point, instant: Timestamp) -> Vec<&'m Run> {
    let jobs = jobs_of(machine, point);
    let wears = |run: &&Run| jobs.is_empty() || run.job.as_ref().is_none_or(|job| jobs.contains(&job));
    machine.runs.iter().filter(|run| run.happened > instant).filter(wears).collect()
}

fn later(a: Option<Mark>, b: Option<Mark>) -> Option<Mark> {
    match (a, b) {
        (Some(a), Some(b)) => Some(if b.happened > a.happened { b } else { a }),
        (a, b) => a.or(b),
    }
}

fn hours_step(since: Time, planned: Time, every: Time, by_then: f64) -> Step {
    Step {
        name: "Running hours by the end of today's work, against the interval",
        formula: "since + planned > every",
        symbols: vec![
            Symbol { symbol: "since", si: since.si(), unit: "s" },
            Symbol { symbol: "planned", si: planned.si(), unit: "s" },
            Symbol { symbol: "every", si: every.si(), unit: "s" },
        ],
        result: Symbol { symbol: "since + planned", si: by_then, unit: "s" },
        source: "own-calculation",
        standing: Standing::OwnCalculation,
    }
}
