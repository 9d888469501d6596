//! What an answer rests on besides its sums: the assumptions that were made for lack of a statement. The sentences for them are
//! in [`crate::words`].

use shop::id::Id;
use tribology::quantity::Time;
use tribology::{Answer, Step, Warning};

use crate::round::{Pace, SetUp};

/// An answer of the reasoning: the value, its sums, and what was assumed.
#[derive(Clone, Debug, PartialEq)]
pub struct Reasoned<T> {
    /// The value with its warnings and its sums.
    pub answer: Answer<T>,
    /// What was assumed.
    pub assumed: Vec<Assumption>,
}

/// Something that was assumed because nobody has said it.
#[derive(Clone, Debug, PartialEq)]
pub enum Assumption {
    /// The machine will run so long.
    HoursPlanned(Time),
    /// The time that the round takes, from rule-of-thumb times for each act.
    MinutesByRuleOfThumb,
    /// That time, by the shop's own pace.
    OwnPace(Pace),
    /// What gives up in the cold, by the limit of each way of oiling.
    ColdByLimits,
    /// Nobody says how thick the oil of these points is, so that it is taken for a grade 68.
    BodyUnknown(Vec<Id>),
    /// How the words about setting the machine were read.
    SetupsRead(Vec<SetUp>),
    /// How the order was found.
    Order {
        /// Whether no order is shorter.
        is_proven: bool,
    },
    /// How the points for a short time were chosen.
    Chosen {
        /// Whether no choice matters more.
        is_proven: bool,
    },
    /// The oil is the nearest on the shelf to what the chart states.
    OilByChart {
        /// What the chart states.
        asked: String,
        /// The oil on the shelf, by what stands on its can; nothing when the shelf has none of that family.
        oil: Option<String>,
        /// The points that it is for.
        points: Vec<Id>,
    },
    /// The chart states no oil for these points.
    OilNotCharted(Vec<Id>),
    /// The chart does not say where to stand for these points.
    StandNotCharted(Vec<Id>),
    /// These points have no interval, so that the round cannot know when they are due.
    NoInterval(Vec<Id>),
    /// Nobody knows what these points feed, so that the round leaves them out until it is settled.
    UnknownHole(Vec<Id>),
    /// How this example is built is not settled, so that the points of every choice are in the round.
    OptionNotSettled(Id),
    /// Doses given in drops hold so much oil each.
    DropSize,
    /// What a verdict counts for and how much a point weighs in a plan of the shelf are numbers of our own.
    HarmByOwnNumbers,
    /// So many points of which nobody knows what they feed are planned among the others and ask for no oil of their own.
    UnknownFollowsTheShelf(usize),
    /// So many points are only looked at, and get nothing.
    OnlyLookedAt(usize),
    /// Oils that are not on the shelf are taken to be what is typical of their class.
    TypicalOfItsClass,
    /// What is bought is for a year of so many uses, each so long.
    YearOf {
        /// How often each machine is used.
        uses: u32,
        /// How long each time.
        hours: Time,
    },
    /// What nobody has charted of baths, doses and strokes is taken by rule of thumb.
    UseByRuleOfThumb,
    /// So many points are not counted in what is bought, because nobody says how much they take.
    NotCounted(usize),
}

impl<T> Reasoned<T> {
    /// An answer with nothing in it yet but its value.
    pub fn new(value: T) -> Self {
        Self { answer: Answer { value, warnings: Vec::new(), steps: Vec::new() }, assumed: Vec::new() }
    }

    /// The value.
    pub fn value(&self) -> &T {
        &self.answer.value
    }

    /// The sums, first step first.
    pub fn steps(&self) -> &[Step] {
        &self.answer.steps
    }

    /// What to be wary of.
    pub fn warnings(&self) -> &[Warning] {
        &self.answer.warnings
    }
}
