//! Between which viscosities each way of feeding works. No standard was found for cans, wicks and drips: these are common practice and
//! memory, and ranges without a cliff: between `easy` and `most` it works worse and worse.

use crate::Standing;
use crate::quantity::{KinematicViscosity, TemperatureDifference};

/// A way by which oil is fed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Feed {
    /// Out of a hand can.
    Can,
    /// Lifted by a wick.
    Wick,
    /// Dripping by its weight.
    Drip,
    /// Thrown by what dips into it.
    Splash,
    /// By a gear pump, for the short time of a cold start.
    PumpStart,
    /// By a pump that runs.
    Pump,
}

/// Every way, in the order of the thickest oil that it takes.
pub const FEEDS: [Feed; 6] = [Feed::Wick, Feed::Drip, Feed::Pump, Feed::Can, Feed::PumpStart, Feed::Splash];

/// The viscosities between which a way works.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limit {
    /// The thinnest that it works with, when there is such.
    pub least: Option<KinematicViscosity>,
    /// The thickest that it works well with.
    pub easy: KinematicViscosity,
    /// The thickest that it works with at all.
    pub most: KinematicViscosity,
    /// How firmly this stands.
    pub standing: Standing,
}

/// How far the pour point lies below the coldest room, in good practice.
///
/// Source: `common-practice`.
pub const POUR_MARGIN: TemperatureDifference = TemperatureDifference::from_kelvin(10.0);

/// The viscosities between which a way of feeding works.
///
/// - `feed`: the way.
/// - returns: its limits, as kinematic viscosities at the temperature of the oil there.
///
/// # Range
/// Old machine tools with lubricating oils; within about a third either way.
///
/// # Source
/// `common-practice`
///
/// # Example
/// ```
/// use tribology::feed::{Feed, limit};
/// assert!(limit(Feed::Wick).most < limit(Feed::Can).most);
/// ```
#[must_use]
pub fn limit(feed: Feed) -> Limit {
    let mm2_s = KinematicViscosity::from_mm2_s;
    let of = |least: Option<f64>, easy, most, standing| Limit {
        least: least.map(mm2_s),
        easy: mm2_s(easy),
        most: mm2_s(most),
        standing,
    };
    match feed {
        Feed::Can => of(None, 500.0, 1000.0, Standing::FromMemory),
        Feed::Wick => of(None, 150.0, 300.0, Standing::FromMemory),
        Feed::Drip => of(Some(20.0), 150.0, 300.0, Standing::FromMemory),
        Feed::Splash => of(None, 2000.0, 5000.0, Standing::FromMemory),
        Feed::PumpStart => of(None, 1000.0, 1600.0, Standing::CommonPractice),
        Feed::Pump => of(Some(12.0), 60.0, 500.0, Standing::CommonPractice),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn limits_stand_in_order() {
        for feed in FEEDS {
            let limit = limit(feed);
            assert!(limit.least.is_none_or(|least| least < limit.easy) && limit.easy < limit.most, "{feed:?}");
        }
        for pair in FEEDS.windows(2) {
            assert!(limit(pair[0]).most <= limit(pair[1]).most, "{pair:?}");
        }
    }
}
