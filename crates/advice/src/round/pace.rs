//! How long each act of a round takes: rule-of-thumb times, bettered by the shop's own last round where the log tells how long
//! its acts took.

use shop::chart::Point;
use shop::snapshot::{MachineSnapshot, Mark};
use tribology::{Standing, Step, Symbol};

use super::act::{Act, act};
use super::setup::{Reading, SetUp};

/// Seconds for one act each, all of them our own guess at common practice, without a source.
pub(super) mod seconds {
    /// To give oil at a point.
    pub(crate) const GIVE: u32 = 20;
    /// To read a level and top it up.
    pub(crate) const TOP_UP: u32 = 60;
    /// To look for a sign.
    pub(crate) const LOOK: u32 = 10;
    /// To come to rest at a stand and find the first point.
    pub(crate) const ARRIVE: u32 = 10;
    /// To set one can down and take another.
    pub(crate) const CHANGE: u32 = 5;
    /// To take a cover or guard off and put it on again.
    pub(crate) const COVER: u32 = 45;
    /// To wind a slide, turn a shaft or slacken a clamp.
    pub(crate) const SLIDE: u32 = 30;
    /// To take a plug out and put it in again.
    pub(crate) const PLUG: u32 = 15;
    /// To lock the switch off.
    pub(crate) const LOCK: u32 = 15;
    /// To wipe one way or screw.
    pub(crate) const WIPE: u32 = 20;
    /// To walk a metre.
    pub(crate) const METRE: f64 = 1.0;
}

/// Seconds for a point's own act.
pub(super) fn of_act(act: Act) -> u32 {
    match act {
        Act::Give => seconds::GIVE,
        Act::TopUp => seconds::TOP_UP,
        Act::Look => seconds::LOOK,
    }
}

/// Seconds to set the machine.
pub(super) fn of_setup(reading: Reading) -> u32 {
    match reading {
        Reading::Lock => seconds::LOCK,
        Reading::Wait | Reading::Keep | Reading::Wipe => 0,
        Reading::Plug => seconds::PLUG,
        Reading::Cover => seconds::COVER,
        Reading::Slide | Reading::Other => seconds::SLIDE,
    }
}

/// How the shop's own pace compares with the rule of thumb.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pace {
    /// Seconds between the acts of the last round, as the log has them.
    pub taken: u32,
    /// Seconds that the rule of thumb gives for the same.
    pub expected: u32,
    /// How many points that was.
    pub points: usize,
}

/// Between two acts of one round lies at least this and at most that; what is quicker was written down afterwards, what is slower
/// was interrupted (own choice).
const BETWEEN: std::ops::RangeInclusive<i64> = 15..=900;
/// Fewer points or gaps than these say nothing of a pace (own choice).
const FEWEST_POINTS: usize = 6;
const FEWEST_GAPS: usize = 3;

impl Pace {
    /// The pace of the last acts at each point, taken from the times between the presses that wrote them down. Nothing where the
    /// log has too few.
    #[must_use]
    pub fn of(machine: &MachineSnapshot) -> Option<Self> {
        let chart = &machine.chart;
        let mut marks: Vec<(&Mark, &Point, u32)> = Vec::new();
        for point in chart.points_here() {
            let Some(mark) = machine.points.get(&point.id).and_then(|history| history.dosed.as_ref()) else { continue };
            let sets: u32 = point.moves.iter().map(|text| of_setup(SetUp::read(text).reading)).sum();
            // What is set once for several points is shared out among them, about two to each.
            marks.push((mark, point, of_act(act(point)) + sets / 2));
        }
        marks.sort_by_key(|(mark, ..)| (mark.happened, mark.entry));
        // What was written down at one instant is one press.
        let presses: Vec<&[(&Mark, &Point, u32)]> =
            marks.chunk_by(|(a, ..), (b, ..)| a.happened == b.happened).collect();
        let mut pace = Self { taken: 0, expected: 0, points: 0 };
        let mut gaps = 0;
        for (before, press) in presses.iter().zip(presses.iter().skip(1)) {
            let ((last, from, _), (mark, to, _)) = (before[before.len() - 1], press[0]);
            let gap = mark.happened.duration_since(last.happened).as_secs();
            if BETWEEN.contains(&gap) {
                pace.taken += u32::try_from(gap).expect("it is within the range");
                pace.expected += press.iter().map(|(.., seconds)| seconds).sum::<u32>();
                pace.expected += if from.stand == to.stand { 0 } else { seconds::ARRIVE };
                pace.points += press.len();
                gaps += 1;
            }
        }
        (gaps >= FEWEST_GAPS && pace.points >= FEWEST_POINTS).then_some(pace)
    }

    /// Seconds by the rule of thumb, at this pace.
    #[must_use]
    pub fn scaled(&self, seconds: u32) -> f64 {
        f64::from(seconds) * f64::from(self.taken) / f64::from(self.expected)
    }

    pub(super) fn step(&self) -> Step {
        Step {
            name: "The shop's own pace, from the times between the acts of its last round",
            formula: "taken / by rule of thumb",
            symbols: vec![
                Symbol { symbol: "taken", si: f64::from(self.taken), unit: "s" },
                Symbol { symbol: "by rule of thumb", si: f64::from(self.expected), unit: "s" },
            ],
            result: Symbol { symbol: "pace", si: self.scaled(1), unit: "" },
            source: "own-calculation",
            standing: Standing::OwnCalculation,
        }
    }
}
