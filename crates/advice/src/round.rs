//! The oiling round: the points due before today's job, in the order in which a person walks: what is wiped first, points on the
//! stopped machine, points for which a cover is opened or a slide moved, and what is looked at while it runs. Start at [`round()`];
//! [`within()`] chooses for a short morning.

mod act;
mod after;
mod assumed;
mod bound;
mod candidates;
mod caution;
mod choose;
mod cold;
mod compose;
mod dose;
mod due;
mod later;
mod minutes;
mod pace;
mod phase;
mod reach;
pub mod route;
mod serving;
mod setup;
mod share;
mod tour;
mod unsuited;
mod weight;

pub use act::{Act, act};
pub use after::{AfterAct, AfterAt, AfterKind, after_use};
pub use caution::Caution;
pub use cold::{Cold, WhyCold, cold};
pub use dose::{DoseSaid, dose_said};
pub use due::{Due, due, session_start};
pub use later::Later;
pub use pace::Pace;
pub use phase::Phase;
pub use serving::{Serving, serving};
pub use setup::{Reading, SetUp};
pub use share::shared;
pub use unsuited::{Cans, KeptApart, Unsuited, cans};
pub use weight::Weight;

use shop::chart::{Method, Point, State};
use shop::id::Id;
use shop::shelf::Shelf;
use shop::snapshot::{MachineSnapshot, Mark, Moment};
use tribology::Step;
use tribology::quantity::Time;

use crate::working::{Assumption, Reasoned};
use candidates::Candidates;
use tour::{Ground, Task, Wanted};

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
    /// What is wiped before any more oil is given, and from where.
    pub wipe: Vec<WipeAt>,
    /// Where to stand, in walking order, with what is to be done there.
    pub stands: Vec<AtStand>,
    /// The covers that are put back before the machine runs.
    pub covers: Vec<String>,
    /// How long it takes, in whole minutes.
    pub minutes: u32,
    /// What comes due again in the middle of the job.
    pub later: Vec<Later>,
    /// The time there is, in minutes; nothing when the whole round is asked for.
    pub within: Option<u32>,
    /// What is due and does not fit into that time, what matters most first.
    pub left_undone: Vec<LeftUndone>,
    /// How many points sleep because only other jobs need them.
    pub asleep: usize,
}

/// What is wiped from one stand.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct WipeAt {
    /// The stand's id; nothing where the chart does not say it.
    pub stand: Option<Id>,
    /// What it is called.
    pub name: String,
    /// What is wiped.
    pub what: Vec<String>,
}

/// A point that is due and for which there is no time.
#[derive(Clone, Debug, PartialEq)]
pub struct LeftUndone {
    /// Its id.
    pub id: Id,
    /// What it is called.
    pub name: String,
    /// Why it is due.
    pub due: Vec<Due>,
    /// How much it matters.
    pub weight: u32,
}

/// What is to be done from one stand in one phase.
#[derive(Clone, Debug, PartialEq)]
pub struct AtStand {
    /// The stand's id; nothing where the chart does not say it.
    pub stand: Option<Id>,
    /// What it is called.
    pub name: String,
    /// The phase.
    pub phase: Phase,
    /// What the machine is doing meanwhile.
    pub state: State,
    /// What was set at an earlier stand and is needed here as it stands.
    pub still: Vec<String>,
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
    /// What must hold to reach it, besides stopped or running.
    pub moves: Vec<String>,
    /// What is done first, and not yet done for a point before it.
    pub first: Vec<SetUp>,
    /// What to take care of.
    pub cautions: Vec<Caution>,
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
/// only another job needs sleep. The order is that of [`route::shortest`]: exact up to [`route::EXACT`] stops in a phase.
#[must_use]
pub fn round(machine: &MachineSnapshot, shelf: &Shelf, moment: &Moment, plan: &Plan) -> Reasoned<Round> {
    Asked { machine, shelf, moment, plan, minutes: None }.answer()
}

/// The round of a machine for which there are only so many minutes: the points that matter most of those that fit, with covers,
/// slides, wiping, cans and walking counted, and what that leaves undone.
///
/// Chosen exactly, by branch and bound over points gathered by stand, setting and can, unless the working says that nobody has
/// proven it: then some ten million sums would not have been enough. What was done already in this round stays in
/// it, and its time counts.
#[must_use]
pub fn within(machine: &MachineSnapshot, shelf: &Shelf, moment: &Moment, plan: &Plan, minutes: u32) -> Reasoned<Round> {
    Asked { machine, shelf, moment, plan, minutes: Some(minutes) }.answer()
}

/// What a round is asked for.
struct Asked<'a> {
    machine: &'a MachineSnapshot,
    shelf: &'a Shelf,
    moment: &'a Moment,
    plan: &'a Plan,
    minutes: Option<u32>,
}

impl Asked<'_> {
    fn answer(&self) -> Reasoned<Round> {
        let Self { machine, moment, plan, .. } = *self;
        let chart = &machine.chart;
        let Candidates { charted, points, mut steps, assumed, asleep } = Candidates::of(self);
        let wanted = charted.iter().zip(&points).map(|(point, entry)| Wanted {
            point,
            act: entry.act,
            can: entry.can.as_ref().or(entry.oil.as_ref()).map(|chosen| &chosen.id),
        });
        let (ground, tasks) = tour::lay_out(chart, &wanted.collect::<Vec<_>>());
        let pace = Pace::of(machine);
        let all: Vec<usize> = (0..tasks.len()).collect();
        let (chosen, left_undone, choice) = match self.minutes {
            None => (all, Vec::new(), None),
            Some(minutes) => {
                let budget = minutes::budget(minutes, pace.as_ref());
                let (chosen, left, is_proven) = self.chosen(&charted, &points, &ground, &tasks, budget, &mut steps);
                (chosen, left, Some(Assumption::Chosen { is_proven }))
            }
        };
        let tour = ground.tour(&tasks, &chosen);
        let stands = compose::stands(chart, &ground, &tasks, &tour, &points);
        let open: Vec<usize> = chosen.iter().copied().filter(|task| !points[*task].is_done()).collect();
        let open = ground.tour(&tasks, &open);
        let minutes = minutes::minutes(&open.seconds, pace.as_ref());
        steps.extend(minutes.steps);
        let ids: Vec<Id> = chosen.iter().map(|task| tasks[*task].id.clone()).collect();
        let round = Round {
            machine: machine.id.clone(),
            name: chart.machine.name.clone(),
            at: moment.clone(),
            plan: plan.clone(),
            wipe: compose::wipes(chart, &ground, &open),
            covers: compose::open_covers(&stands),
            stands,
            minutes: minutes.whole,
            later: later::later(machine, moment, plan, minutes.whole, &ids),
            within: self.minutes,
            left_undone,
            asleep,
        };
        let mut reasoned = Reasoned::new(round);
        reasoned.answer.steps = steps;
        reasoned.assumed = assumed.told(machine, plan, &ground.setups, pace);
        reasoned.assumed.push(Assumption::Order { is_proven: tour.is_proven });
        reasoned.assumed.extend(choice);
        reasoned
    }

    /// The tasks that are chosen for the time there is, what that leaves undone, and whether nothing better is possible.
    fn chosen(
        &self,
        charted: &[&Point],
        points: &[RoundPoint],
        ground: &Ground,
        tasks: &[Task],
        budget: u32,
        steps: &mut Vec<Step>,
    ) -> (Vec<usize>, Vec<LeftUndone>, bool) {
        let weigh = |(point, entry): (&&Point, &RoundPoint)| {
            weight::weight(self.machine, point, entry.act, &entry.due, self.moment, self.plan)
        };
        let weights: Vec<Weight> = charted.iter().zip(points).map(weigh).collect();
        let totals: Vec<u32> = weights.iter().map(|weight| weight.total).collect();
        let (done, open): (Vec<usize>, Vec<usize>) = (0..tasks.len()).partition(|task| points[*task].is_done());
        let chosen = choose::choose(ground, tasks, &totals, &done, &open, budget);
        let mut left: Vec<usize> = open.into_iter().filter(|task| !chosen.tasks.contains(task)).collect();
        left.sort_by_key(|task| (std::cmp::Reverse(totals[*task]), *task));
        let left_undone = left.iter().map(|task| LeftUndone {
            id: points[*task].id.clone(),
            name: points[*task].name.clone(),
            due: points[*task].due.clone(),
            weight: totals[*task],
        });
        let left_undone = left_undone.collect();
        steps.extend(weights.into_iter().map(|weight| weight.step));
        (chosen.tasks, left_undone, chosen.is_proven)
    }
}
