//! What was put into a reservoir or a greased point since it was last drained, as the logbook tells it: a digest, each way of filling
//! once with how often. What that makes of its contents is worked out elsewhere.

use jiff::Timestamp;

use crate::id::Id;

/// What was put into a body of oil, or of grease, since it was last drained.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Contents {
    /// When it was last drained; nothing where that was never written down, so that nobody knows what was in it at first.
    pub drained: Option<Timestamp>,
    /// What was put in since, in the order in which each was put in first.
    pub fills: Vec<Fill>,
}

/// One way of filling: the same words, once or many times.
#[derive(Clone, Debug, PartialEq)]
pub struct Fill {
    /// The oil, by its id on the shelf; nothing where nobody said which.
    pub oil: Option<Id>,
    /// How much each time, as it was said.
    pub amount: Option<String>,
    /// The can or gun that gave it.
    pub can: Option<Id>,
    /// How often.
    pub times: usize,
    /// When first.
    pub first: Timestamp,
    /// When last.
    pub last: Timestamp,
}

impl Contents {
    /// Whether nothing was ever written down.
    #[must_use]
    pub fn is_never_entered(&self) -> bool {
        self.drained.is_none() && self.fills.is_empty()
    }
}
