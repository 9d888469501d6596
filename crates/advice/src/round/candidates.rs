//! The points that a round is made of, each with its dose, its reasons and how far it is done, before they are put in order.

use shop::chart::{Chart, FindingKind, Point};
use shop::id::Id;
use shop::snapshot::{MachineSnapshot, Mark};
use tribology::Step;

use super::assumed::Assumed;
use super::caution::cautions;
use super::due::is_awake;
use super::tour::counted;
use super::{Asked, Progress, RoundPoint, Serving, act, due, serving, session_start};

/// The points of a round before they are put in order.
pub(super) struct Candidates<'a> {
    pub(super) charted: Vec<&'a Point>,
    pub(super) points: Vec<RoundPoint>,
    pub(super) steps: Vec<Step>,
    pub(super) assumed: Assumed,
    pub(super) asleep: usize,
}

impl<'a> Candidates<'a> {
    /// The points that are due or were done in this round, in the order of their ids.
    pub(super) fn of(asked: &Asked<'a>) -> Self {
        let Asked { machine, shelf, moment, plan, .. } = *asked;
        let chart = &machine.chart;
        let start = session_start(machine, moment);
        let mut found =
            Self { charted: Vec::new(), points: Vec::new(), steps: Vec::new(), assumed: Assumed::default(), asleep: 0 };
        let mut here: Vec<&Point> = chart.points_here().collect();
        here.sort_by_key(|point| counted(&point.id));
        for point in here {
            if is_unknown_hole(chart, &point.id) {
                found.assumed.holes.push(point.id.clone());
                continue;
            }
            let history = machine.history(&point.id);
            let progress = Progress::since(start, &history);
            if !is_awake(machine, point, plan) {
                found.asleep += 1;
                if progress == Progress::default() {
                    continue;
                }
            }
            let what = act(point);
            let mut reasons = due(machine, point, what, moment, plan);
            found.steps.append(&mut reasons.steps);
            if point.every.is_empty() {
                found.assumed.no_interval.push(point.id.clone());
            }
            if reasons.due.is_empty() && progress == Progress::default() {
                continue;
            }
            let serving = serving(chart, point, shelf);
            found.assumed.serves(point, what, &serving);
            let Serving { oil, can, dose, .. } = serving;
            found.steps.extend(dose.step);
            if point.stand.is_none() {
                found.assumed.no_stand.push(point.id.clone());
            }
            found.charted.push(point);
            found.points.push(RoundPoint {
                id: point.id.clone(),
                name: point.name.clone(),
                method: point.method,
                act: what,
                place: point.place.clone(),
                moves: point.moves.clone(),
                first: Vec::new(),
                cautions: cautions(machine, point, what, moment),
                oil,
                can,
                dose: dose.said,
                sign: sign_of(machine, point),
                baseline: point.baseline.clone(),
                due: reasons.due,
                progress,
            });
        }
        found
    }
}

/// Whether nobody knows what a point feeds: an open finding calls it a hole of unknown purpose. Nothing is put into such a hole by
/// rote, for it may lead to a clutch, a switch or nowhere.
fn is_unknown_hole(chart: &Chart, point: &Id) -> bool {
    let open = chart.findings.iter().filter(|finding| finding.settled.is_none() && finding.kind == FindingKind::Hole);
    open.into_iter().any(|finding| finding.of.contains(point))
}

/// The sign to look for: the point's own, or the level mark of the reservoir that is filled here.
fn sign_of(machine: &MachineSnapshot, point: &Point) -> Option<String> {
    let level = || {
        let reservoir = machine.chart.reservoir(point.reservoir.as_ref()?)?;
        reservoir.level.as_ref().map(|level| format!("level at {level}"))
    };
    point.sign.clone().or_else(level)
}

impl Progress {
    fn since(start: jiff::Timestamp, history: &shop::snapshot::PointHistory) -> Self {
        let fresh = |mark: &Option<Mark>| mark.clone().filter(|mark| mark.happened >= start);
        Self {
            dosed: fresh(&history.dosed),
            sign_seen: fresh(&history.sign_seen),
            sign_missing: fresh(&history.sign_missing),
            not_reached: history.not_reached.clone().filter(|(mark, _)| mark.happened >= start),
        }
    }
}
