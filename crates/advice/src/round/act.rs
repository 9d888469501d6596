//! What is to be done at a point: give oil, look at a level and top it up, or only look.

use shop::chart::{Point, State};

/// What is to be done at a point.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Act {
    /// Give oil.
    Give,
    /// Look at the level and top it up to its mark.
    TopUp,
    /// Look for the sign and give nothing.
    Look,
}

/// What a point asks for: a look where the machine runs meanwhile, a dose where one is charted, a level where the point fills a
/// reservoir; and where nothing of that is charted, oil.
#[must_use]
pub fn act(point: &Point) -> Act {
    if point.tops_up().is_some() {
        return Act::TopUp;
    }
    match (point.state, &point.dose) {
        (State::Running, None) => Act::Look,
        (_, Some(_)) => Act::Give,
        // A stopped look, such as a glass that is read before the start, names what shows and states no oil of its own.
        (State::Stopped, None) if point.oil.is_none() && point.feeds.is_empty() && point.sign.is_some() => Act::Look,
        (State::Stopped, None) => Act::Give,
    }
}
