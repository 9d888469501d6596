//! The oiling round: the points due before today's job, gathered by the stand from which they are reached, those on the stopped
//! machine before those that are looked at while it runs. Start at [`round()`]. The shortest walk, the choice of points for a
//! short morning and the list after use are left out here.

mod act;
mod dose;
mod due;
mod gather;
mod minutes;
mod serving;

pub use act::{Act, act};
pub use dose::{DoseSaid, dose_said};
pub use due::{Due, due, session_start};
pub use serving::{Serving, serving};

use std::collections::BTreeMap;

use shop::chart::{Chart, FindingKind, Method, Point, State};
use shop::id::Id;
use shop::shelf::Shelf;
use shop::snapshot::{MachineSnapshot, Mark, Moment};
use tribology::quantity::Time;

use crate::working::{Assumption, Reasoned};

/// What is planned for today.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    /// The kind of work; nothing for ordinary work that wakes no sleeping point.
    pub job: Option<Id>,
    /// How long the machine will run.
    pub hours: Time,
}

/// The round of one machine.
#[derive(Clone, Debug, PartialEq)]
pub struct Round {
    /// The machine's id in the shop.
    pub machine: Id,
    /// What its keepers call it.
    pub name: String,
    /// The moment for which it holds.
    pub at: Moment,
    /// What is planned.
    pub plan: Plan,
    /// Where to stand, in walking order, with what is to be done there.
    pub stands: Vec<AtStand>,
    /// How long it takes, in whole minutes.
    pub minutes: u32,
    /// How many points sleep because only other jobs need them.
    pub asleep: usize,
}

/// What is to be done from one stand in one state of the machine.
#[derive(Clone, Debug, PartialEq)]
pub struct AtStand {
    /// The stand's id; nothing where the chart does not say it.
    pub stand: Option<Id>,
    /// What it is called.
    pub name: String,
    /// What the machine is doing meanwhile.
    pub state: State,
    /// The points, those that need the same slide or cover moved together.
    pub points: Vec<RoundPoint>,
}

/// A point in the round.
#[derive(Clone, Debug, PartialEq)]
pub struct RoundPoint {
    /// Its id, the number in the balloon.
    pub id: Id,
    /// What it is called.
    pub name: String,
    /// How oil gets there.
    pub method: Method,
    /// What is to be done.
    pub act: Act,
    /// How to find it.
    pub place: Option<String>,
    /// What must be moved to reach it.
    pub moves: Vec<String>,
    /// The oil, from the shelf.
    pub oil: Option<Chosen>,
    /// The can that holds that oil.
    pub can: Option<Chosen>,
    /// How much, in the can's strokes or in drops.
    pub dose: Option<String>,
    /// What shows that oil got there.
    pub sign: Option<String>,
    /// How the sign was on this machine when all was well.
    pub baseline: Option<String>,
    /// Why it is due; empty for a point that was done in this round without being due.
    pub due: Vec<Due>,
    /// What has been done about it in this round.
    pub progress: Progress,
}

/// Something chosen from the shelf.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Chosen {
    /// Its id.
    pub id: Id,
    /// What stands on it.
    pub name: String,
}

/// What has been done about a point in this round. Oil given and sign seen are told apart: neither implies the other.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Progress {
    /// Oil was given.
    pub dosed: Option<Mark>,
    /// The sign was seen.
    pub sign_seen: Option<Mark>,
    /// The sign was looked for and missing.
    pub sign_missing: Option<Mark>,
    /// It could not be reached, and why.
    pub not_reached: Option<(Mark, String)>,
}

impl RoundPoint {
    /// Whether what the round asks has been done: oil given, or for a look the sign seen.
    #[must_use]
    pub fn is_done(&self) -> bool {
        match self.act {
            Act::Look => self.progress.sign_seen.is_some() || self.progress.sign_missing.is_some(),
            Act::Give | Act::TopUp => self.progress.dosed.is_some(),
        }
    }
}

impl Round {
    /// How many points are still to be done.
    #[must_use]
    pub fn left(&self) -> usize {
        self.stands.iter().flat_map(|at| &at.points).filter(|point| !point.is_done()).count()
    }

    /// The cans that the points still to be done need, each once, in the order of the round.
    #[must_use]
    pub fn cans(&self) -> Vec<&Chosen> {
        let mut cans: Vec<&Chosen> = Vec::new();
        for can in self.stands.iter().flat_map(|at| &at.points).filter(|p| !p.is_done()).filter_map(|p| p.can.as_ref())
        {
            if !cans.contains(&can) {
                cans.push(can);
            }
        }
        cans
    }
}

/// The round of a machine at a moment.
///
/// A point is in it when one of its intervals says so, or when something was done about it since the round began. Points that
/// only another job needs sleep.
#[must_use]
pub fn round(machine: &MachineSnapshot, shelf: &Shelf, moment: &Moment, plan: &Plan) -> Reasoned<Round> {
    let chart = &machine.chart;
    let start = session_start(machine, moment);
    let mut steps = Vec::new();
    let mut assumed = Assumed::default();
    let mut asleep = 0;
    let mut points: Vec<(&Point, RoundPoint)> = Vec::new();
    for point in chart.points_here() {
        if is_unknown_hole(chart, &point.id) {
            assumed.holes.push(point.id.clone());
            continue;
        }
        let history = machine.history(&point.id);
        let progress = Progress::since(start, &history);
        if !due::is_awake(machine, point, plan) {
            asleep += 1;
            if progress == Progress::default() {
                continue;
            }
        }
        let what = act(point);
        let mut reasons = due(machine, point, what, moment, plan);
        steps.append(&mut reasons.steps);
        if point.every.is_empty() {
            assumed.no_interval.push(point.id.clone());
        }
        if reasons.due.is_empty() && progress == Progress::default() {
            continue;
        }
        let serving = serving(chart, point, shelf);
        assumed.serves(point, what, &serving);
        let Serving { oil, can, dose, .. } = serving;
        steps.extend(dose.step);
        if point.stand.is_none() {
            assumed.no_stand.push(point.id.clone());
        }
        points.push((
            point,
            RoundPoint {
                id: point.id.clone(),
                name: point.name.clone(),
                method: point.method,
                act: what,
                place: point.place.clone(),
                moves: point.moves.clone(),
                oil,
                can,
                dose: dose.said,
                sign: sign_of(machine, point),
                baseline: point.baseline.clone(),
                due: reasons.due,
                progress,
            },
        ));
    }
    let stands = gather::by_stand(chart, points);
    let minutes = minutes::minutes(&stands);
    steps.push(minutes.step);
    let round = Round {
        machine: machine.id.clone(),
        name: chart.machine.name.clone(),
        at: moment.clone(),
        plan: plan.clone(),
        stands,
        minutes: minutes.whole,
        asleep,
    };
    let mut reasoned = Reasoned::new(round);
    reasoned.answer.steps = steps;
    reasoned.assumed = assumed.told(machine, plan);
    reasoned
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

/// What was assumed, gathered while the points are gone through.
#[derive(Default)]
struct Assumed {
    oils: BTreeMap<(String, Option<String>), Vec<Id>>,
    no_oil: Vec<Id>,
    no_stand: Vec<Id>,
    no_interval: Vec<Id>,
    holes: Vec<Id>,
    drops: bool,
}

impl Assumed {
    /// Notes what a point's oil and dose rest on.
    fn serves(&mut self, point: &Point, what: Act, serving: &Serving) {
        self.drops |= serving.dose.counted_in_drops;
        match &serving.asked {
            Some(asked) => {
                let oil = serving.oil.as_ref().map(|oil| oil.name.clone());
                self.oils.entry((asked.clone(), oil)).or_default().push(point.id.clone());
            }
            None if what != Act::Look => self.no_oil.push(point.id.clone()),
            None => {}
        }
    }

    fn told(self, machine: &MachineSnapshot, plan: &Plan) -> Vec<Assumption> {
        let mut told = vec![Assumption::HoursPlanned(plan.hours)];
        let open = machine.chart.options.iter().filter(|option| option.here.is_none());
        told.extend(open.map(|option| Assumption::OptionNotSettled(option.id.clone())));
        told.extend(self.oils.into_iter().map(|((asked, oil), points)| Assumption::OilByChart { asked, oil, points }));
        let lists = [
            (self.no_oil, Assumption::OilNotCharted as fn(Vec<Id>) -> Assumption),
            (self.no_stand, Assumption::StandNotCharted),
            (self.no_interval, Assumption::NoInterval),
            (self.holes, Assumption::UnknownHole),
        ];
        told.extend(lists.into_iter().filter(|(ids, _)| !ids.is_empty()).map(|(ids, of)| of(ids)));
        if self.drops {
            told.push(Assumption::DropSize);
        }
        told.push(Assumption::MinutesByRuleOfThumb);
        told
    }
}
