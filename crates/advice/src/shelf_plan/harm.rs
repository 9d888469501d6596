//! What a verdict counts for, in whole numbers, so that sums are exact. The numbers are our own choice, set so that the shelves which come
//! out are like those that practitioners settle on; no text gives such numbers.

use crate::need::{Known, Need, Place, Way};
use crate::verdict::Verdict;

/// The harm of a verdict at a point of weight one; nothing where the oil may not be given.
#[must_use]
pub fn harm(verdict: Verdict) -> Option<u32> {
    match verdict {
        Verdict::Suits => Some(0),
        Verdict::Serves => Some(1),
        // Ten points that are served a little less well weigh as much as one that gets along for a while.
        Verdict::Stopgap => Some(10),
        Verdict::Never => None,
    }
}

/// The harm that one more can must save to be worth its place: as much as a stopgap at a point of weight one.
pub const CAN: u32 = 10;

/// The harm that a can with active sulphur must save besides when it would do harm at any point: sooner or later it is taken for another, and
/// of two sorts the cleaner is taken where both would do.
pub const RISK: u32 = 20;

/// The harm that an oil must save besides when it is not on the shelf and would have to be bought.
pub const BUY: u32 = 3;

/// Why a point weighs more than another.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// It is a point.
    Point,
    /// What it feeds cannot be bought again.
    Irreplaceable,
    /// Its oil stays for a year: a bath deserves its own grade, what is oiled by hand may follow the shelf.
    Bath,
    /// A close, fast spindle, or a worm that runs hot.
    Delicate,
}

impl Part {
    /// All of them.
    pub const ALL: [Self; 4] = [Self::Point, Self::Irreplaceable, Self::Bath, Self::Delicate];

    /// What it adds to the weight.
    #[must_use]
    pub const fn weight(self) -> u32 {
        match self {
            Self::Point | Self::Bath => 1,
            Self::Irreplaceable | Self::Delicate => 2,
        }
    }

    fn is_of(self, place: &Place<'_>) -> bool {
        match self {
            Self::Point => true,
            Self::Irreplaceable => place.is_irreplaceable,
            Self::Bath => matches!(place.way, Way::Bath | Way::Round) || place.point.reservoir.is_some(),
            Self::Delicate => {
                let is_worm = place.pair.is_some_and(|pair| pair.kind == shop::chart::PairKind::Worm);
                place.is_close_and_fast || is_worm && place.hot == Known::Yes
            }
        }
    }
}

/// How much a point weighs, by what it feeds: the sum of its parts.
#[must_use]
pub fn weight(need: &Need<'_>) -> u32 {
    let has = |part: &Part| need.pairs.iter().any(|(place, _)| part.is_of(place));
    Part::ALL.into_iter().filter(has).map(Part::weight).sum()
}
