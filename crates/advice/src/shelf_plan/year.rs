//! How much of each lubricant a year takes: what baths are changed, and what goes by hand, drip and pump. Everything that nobody has charted
//! is taken by rule of thumb and told.

use shop::amount::{Clock, DROP, DoseAmount};
use shop::chart::{Behaviour, Chart, Method, Point};
use shop::id::Id;
use shop::shelf::Shelf;
use tribology::quantity::{Time, Volume};

use super::choice::{Choice, PointAt};
use super::sharing::body;
use super::{Asked, ShelfPlan};
use crate::round::{Act, act};

/// How much the machines are used.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Year {
    /// How often each machine is used in a year.
    pub uses: u32,
    /// How long each time.
    pub hours: Time,
}

impl Year {
    /// Two days in a week, three hours each (own choice).
    pub const USUAL: Self = Self { uses: 100, hours: Time::from_hours(3.0) };

    /// The running hours of the year.
    #[must_use]
    pub fn running(&self) -> f64 {
        f64::from(self.uses) * self.hours.hours()
    }

    /// How often a point is due in the year, by the interval that comes most often; at every use where none is charted.
    fn times(&self, point: &Point) -> f64 {
        let of = |clock: Clock| match clock {
            Clock::Uses(uses) => f64::from(self.uses) / f64::from(uses),
            // Once a round, however short the interval is.
            Clock::Running(time) => (self.running() / time.hours()).max(1.0),
            Clock::Days(days) => 365.25 / f64::from(days),
            Clock::Months(months) => 12.0 / f64::from(months),
        };
        point.every.iter().map(|every| of(every.clock)).reduce(f64::max).unwrap_or(f64::from(self.uses))
    }
}

/// What a lubricant is needed for in a year.
#[derive(Clone, Debug, PartialEq)]
pub struct Use {
    /// What fills the baths at their yearly change.
    pub baths: Volume,
    /// What goes by hand, drip and pump.
    pub hand: Volume,
    /// The points of which nobody can say how much they take.
    pub uncounted: Vec<PointAt>,
}

/// By these rules of thumb what nobody has charted is taken (common practice, no source; the last is our own).
pub mod thumb {
    use tribology::quantity::Volume;

    /// How often a bath is changed in a year.
    pub const CHANGES: f64 = 1.0;
    /// What a hole, a ball oiler or a brush gets where no dose is charted: four drops.
    pub const HAND: Volume = Volume::from_ml(4.0 / 30.0);
    /// What a cup, a wick, a felt, a drip or a bottle gets where no dose is charted.
    pub const CUP: Volume = Volume::from_ml(3.0);
    /// A stroke of a can that nobody has measured.
    pub const STROKE: Volume = Volume::from_ml(0.7);
    /// A stroke of a grease gun that nobody has measured.
    pub const GUN: Volume = Volume::from_ml(1.2);
    /// A reservoir that uses its oil is empty after so many running hours, where no dose tells.
    pub const EMPTY_AFTER_HOURS: f64 = 50.0;
}

/// What a year takes of one lubricant of a choice.
#[must_use]
pub fn use_of(asked: &Asked<'_>, plan: &ShelfPlan, choice: &Choice, oil: &Id, year: &Year) -> Use {
    const NONE: Volume = Volume::from_m3(0.0);
    let mut all = Use { baths: NONE, hand: NONE, uncounted: Vec::new() };
    let is_grease = plan.candidate(oil).is_some_and(super::Candidate::is_grease);
    let mut filled: Vec<(&Id, &Id)> = Vec::new();
    for given in choice.given.iter().filter(|given| given.oil == *oil) {
        let machine = asked.machines.iter().find(|machine| machine.id == given.at.machine);
        let Some((machine, point)) = machine.and_then(|one| Some((one, one.chart.point(&given.at.point)?))) else {
            continue;
        };
        let chart = &machine.chart;
        // A hole of unknown purpose gets a few drops, not a filling: that is not worth counting.
        if plan.unknown.contains(&given.at) {
            continue;
        }
        if let Some(reservoir) = point.reservoir.as_ref() {
            if !filled.contains(&(&machine.id, reservoir)) {
                filled.push((&machine.id, reservoir));
                match filling(chart, reservoir, year) {
                    Some(Filling::Bath(volume)) => all.baths = all.baths + volume,
                    Some(Filling::Used(volume)) => all.hand = all.hand + volume,
                    Some(Filling::ByDoses) => {}
                    None => all.uncounted.push(given.at.clone()),
                }
            }
            if point.dose.is_none() {
                continue;
            }
        }
        match dose(point, asked.shelf, oil, is_grease) {
            Some(volume) => all.hand = all.hand + volume * year.times(point),
            None => all.uncounted.push(given.at.clone()),
        }
    }
    all
}

/// What a reservoir takes in a year.
enum Filling {
    Bath(Volume),
    Used(Volume),
    /// What is drawn from it is counted where it is drawn.
    ByDoses,
}

fn filling(chart: &Chart, id: &Id, year: &Year) -> Option<Filling> {
    let reservoir = chart.reservoir(id)?;
    let capacity = || reservoir.capacity.as_ref().map(|capacity| capacity.value);
    if reservoir.behaviour != Some(Behaviour::Uses) {
        return Some(Filling::Bath(capacity()? * thumb::CHANGES));
    }
    let draws = |point: &Point| point.reservoir.is_none() && point.dose.is_some() && body(chart, point) == Some(id);
    if chart.points_here().any(draws) {
        return Some(Filling::ByDoses);
    }
    Some(Filling::Used(capacity()? * (year.running() / thumb::EMPTY_AFTER_HOURS)))
}

/// What one act gives; nothing where nobody can say.
fn dose(point: &Point, shelf: &Shelf, oil: &Id, is_grease: bool) -> Option<Volume> {
    let stroke = || {
        let measured = shelf.cans_with(oil).find_map(|can| can.stroke.as_ref());
        measured.map_or(if is_grease { thumb::GUN } else { thumb::STROKE }, |stroke| stroke.value)
    };
    match (point.dose.as_ref().map(|dose| dose.amount), point.method) {
        (Some(DoseAmount::Volume(volume)), _) => Some(volume),
        (Some(DoseAmount::Drops(drops)), _) => Some(DROP * drops),
        (Some(DoseAmount::Strokes(strokes)), _) => Some(stroke() * strokes),
        // Nobody has measured what a turn of a grease cup gives.
        (Some(DoseAmount::Turns(_)), _) => None,
        (None, _) if is_grease || act(point) == Act::Look => None,
        (None, Method::OilHole | Method::BallOiler | Method::Brush | Method::Nipple) => Some(thumb::HAND),
        (None, Method::Cup | Method::Wick | Method::Felt | Method::Drip | Method::Bottle) => Some(thumb::CUP),
        (None, _) => None,
    }
}
