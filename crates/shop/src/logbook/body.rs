//! What an entry says.

use tribology::quantity::Time;

use crate::choice;
use crate::id::Id;

/// What an entry says. That oil was given and that its sign was seen are two entries; neither implies the other.
#[derive(Clone, Debug, PartialEq)]
pub enum Body {
    /// Oil was given at a point, or a level was looked at and topped up.
    Dosed {
        /// The oil, by its id on the shelf.
        oil: Option<Id>,
        /// The can, by its id on the shelf.
        can: Option<Id>,
        /// How much, as it was said.
        amount: Option<String>,
    },
    /// The sign at a point was seen.
    SignSeen {
        /// How it looked, when there is more to say.
        note: Option<String>,
    },
    /// The sign at a point was looked for and was not there.
    SignMissing {
        /// How it looked.
        note: Option<String>,
    },
    /// A point that was due could not be reached.
    NotReached {
        /// Why.
        reason: String,
    },
    /// The machine ran.
    Ran {
        /// For how long.
        hours: Time,
        /// At which job, when it was said.
        job: Option<Id>,
    },
    /// A reservoir's level was read.
    Level {
        /// What was read, as it was said.
        reading: String,
    },
    /// A reservoir was filled or topped up.
    Filled {
        /// The oil, by its id on the shelf.
        oil: Option<Id>,
        /// How much, as it was said.
        amount: Option<String>,
    },
    /// A reservoir was drained.
    Drained {
        /// How much came out and how it looked, as it was said.
        note: Option<String>,
    },
    /// What was on the shelf when its file was taken in.
    Opening {
        /// How much, as it was said.
        amount: String,
    },
    /// What was on the shelf when somebody counted.
    Counted {
        /// How much, as it was said.
        amount: String,
    },
    /// More of an oil was bought.
    Bought {
        /// How much, as it was said.
        amount: String,
        /// What it cost, as it was said.
        price: Option<String>,
    },
    /// Some of an oil was used for something that is not on any chart.
    Used {
        /// How much, as it was said.
        amount: String,
        /// For what.
        note: Option<String>,
    },
    /// Some of an oil was thrown away.
    ThrownAway {
        /// How much, as it was said.
        amount: String,
        /// Why.
        note: Option<String>,
    },
    /// Anything worth saying.
    Note {
        /// The words.
        text: String,
    },
    /// The entry that this one supersedes was a mistake and counts no more.
    Withdrawn,
}

choice! {
    /// The kind of an entry, one for each form of [`Body`].
    Kind {
        /// Oil was given.
        Dosed = "dosed",
        /// The sign was seen.
        SignSeen = "sign seen",
        /// The sign was missing.
        SignMissing = "sign missing",
        /// The point was not reached.
        NotReached = "not reached",
        /// The machine ran.
        Ran = "ran",
        /// A level was read.
        Level = "level",
        /// A reservoir was filled.
        Filled = "filled",
        /// A reservoir was drained.
        Drained = "drained",
        /// The opening stock.
        Opening = "opening",
        /// The stock was counted.
        Counted = "counted",
        /// Oil was bought.
        Bought = "bought",
        /// Oil was used.
        Used = "used",
        /// Oil was thrown away.
        ThrownAway = "thrown away",
        /// A note.
        Note = "note",
        /// Another entry was withdrawn.
        Withdrawn = "withdrawn",
    }
}

impl Body {
    /// The kind of this entry.
    #[must_use]
    pub fn kind(&self) -> Kind {
        match self {
            Self::Dosed { .. } => Kind::Dosed,
            Self::SignSeen { .. } => Kind::SignSeen,
            Self::SignMissing { .. } => Kind::SignMissing,
            Self::NotReached { .. } => Kind::NotReached,
            Self::Ran { .. } => Kind::Ran,
            Self::Level { .. } => Kind::Level,
            Self::Filled { .. } => Kind::Filled,
            Self::Drained { .. } => Kind::Drained,
            Self::Opening { .. } => Kind::Opening,
            Self::Counted { .. } => Kind::Counted,
            Self::Bought { .. } => Kind::Bought,
            Self::Used { .. } => Kind::Used,
            Self::ThrownAway { .. } => Kind::ThrownAway,
            Self::Note { .. } => Kind::Note,
            Self::Withdrawn => Kind::Withdrawn,
        }
    }
}
