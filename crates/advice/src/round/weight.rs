//! How much a point matters when there is not time for all: what starves first, and what it would cost.

use shop::amount::{Clock, Interval};
use shop::chart::{Chart, Method, Point};
use shop::snapshot::{MachineSnapshot, Moment};
use tribology::{Standing, Step, Symbol};

use super::act::Act;
use super::due::{Due, is_of_job};
use super::{Plan, reach};

/// Whole numbers, so that sums are exact: our own judgement of common practice, without a source.
mod points {
    /// Oil is due.
    pub(super) const GIVE: u32 = 20;
    /// A level is due.
    pub(super) const TOP_UP: u32 = 15;
    /// A look is due.
    pub(super) const LOOK: u32 = 10;
    /// A pair that cannot be bought again.
    pub(super) const IRREPLACEABLE: u32 = 40;
    /// Today's job is what needs it.
    pub(super) const JOB: u32 = 30;
    /// It holds no oil in store: dry within hours.
    pub(super) const NO_STORE: u32 = 25;
    /// Nothing else oils one of its pairs.
    pub(super) const ONLY_WAY: u32 = 15;
    /// Each whole interval that it is late.
    pub(super) const LATE: u32 = 10;
    /// More intervals late than this count as this many.
    pub(super) const LATEST: u32 = 5;
}

/// The weight of a point, with what it is made of.
#[derive(Clone, Debug, PartialEq)]
pub struct Weight {
    /// The sum.
    pub total: u32,
    /// What it is made of.
    pub step: Step,
}

/// The weight of a point that is due for these reasons.
pub(super) fn weight(
    machine: &MachineSnapshot,
    point: &Point,
    act: Act,
    due: &[Due],
    moment: &Moment,
    plan: &Plan,
) -> Weight {
    let chart = &machine.chart;
    let pairs = reach::pairs(chart, point);
    let base = match act {
        Act::Give => points::GIVE,
        Act::TopUp => points::TOP_UP,
        Act::Look => points::LOOK,
    };
    let is_alone = |pair: &&shop::chart::Pair| {
        let reaches = |other: &&Point| reach::pairs(chart, other).iter().any(|reached| reached.id == pair.id);
        chart.points_here().filter(reaches).all(|other| other.id == point.id)
    };
    let late = due.iter().map(|due| intervals_late(due, moment)).max().unwrap_or(0).min(points::LATEST);
    let parts = [
        ("due", base),
        ("cannot be bought again", if pairs.iter().any(|pair| pair.irreplaceable) { points::IRREPLACEABLE } else { 0 }),
        ("today's job", if is_of_job(machine, point, plan) { points::JOB } else { 0 }),
        ("no store of oil", if act == Act::Give && !has_store(chart, point) { points::NO_STORE } else { 0 }),
        ("only way of oiling", if act != Act::Look && pairs.iter().any(is_alone) { points::ONLY_WAY } else { 0 }),
        ("intervals late", late * points::LATE),
    ];
    let total = parts.iter().map(|(_, part)| part).sum();
    let symbol = |(symbol, part): &(&'static str, u32)| Symbol { symbol, si: f64::from(*part), unit: "" };
    let step = Step {
        name: "How much a point matters",
        formula: "sum",
        symbols: parts.iter().filter(|(_, part)| *part > 0).map(symbol).collect(),
        result: Symbol { symbol: "weight", si: f64::from(total), unit: "" },
        source: "common-practice",
        standing: Standing::CommonPractice,
    };
    Weight { total, step }
}

/// Whether oil stays in store for hours at the point (common practice, no source).
fn has_store(chart: &Chart, point: &Point) -> bool {
    let by_method = match point.method {
        Method::OilHole | Method::BallOiler | Method::Brush | Method::OneShot | Method::Nipple => false,
        Method::Cup
        | Method::GreaseCup
        | Method::Drip
        | Method::Wick
        | Method::Felt
        | Method::Bottle
        | Method::Ring
        | Method::Splash
        | Method::Bath
        | Method::Tray
        | Method::TotalLossPump
        | Method::CirculatingPump => true,
    };
    by_method || point.reservoir.as_ref().and_then(|id| chart.reservoir(id)).is_some()
}

/// How many whole intervals a point is past the moment at which it first was due.
fn intervals_late(due: &Due, moment: &Moment) -> u32 {
    match due {
        // What was never logged, or was used by a run that nobody logged, is taken as one interval late.
        Due::NeverLogged | Due::EarlierDay { .. } => 1,
        Due::Uses { since, every } => since / every,
        Due::Running { since, every, .. } => (since.hours() / every.hours()).floor() as u32,
        Due::Calendar { last, every } => {
            let days = f64::from(moment.day().since(*last).map_or(0, |span| span.get_days()));
            let length = match Interval::read(every).map(|interval| interval.clock) {
                Ok(Clock::Days(days)) => f64::from(days),
                Ok(Clock::Months(months)) => f64::from(months) * 365.25 / 12.0,
                _ => return 0,
            };
            ((days / length).floor() as u32).saturating_sub(1)
        }
    }
}
