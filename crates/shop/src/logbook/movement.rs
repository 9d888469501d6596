//! Oil that came to the shelf or went from it, as the logbook tells it.

use jiff::Timestamp;

use crate::id::Id;

/// A movement of an oil.
#[derive(Clone, Debug, PartialEq)]
pub struct Movement {
    /// The oil.
    pub oil: Id,
    /// When it happened.
    pub happened: Timestamp,
    /// Which way it went.
    pub way: Way,
    /// How much, as it was said.
    pub amount: Option<String>,
    /// The can or gun that gave it.
    pub can: Option<Id>,
}

/// Which way an oil went.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// It was there when the shelf was taken in.
    Opening,
    /// It was there when somebody counted.
    Counted,
    /// It was bought.
    Bought,
    /// It was given to a point, or filled into a reservoir.
    Given,
    /// It was used for something else.
    Used,
    /// It was thrown away.
    ThrownAway,
}
