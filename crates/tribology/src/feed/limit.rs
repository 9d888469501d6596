//! Between which viscosities each way of feeding works. No standard was found for cans, wicks and drips: these are common practice and
//! memory, and ranges without a cliff: between `easy` and `most` it works worse and worse.

use crate::Standing;
use crate::quantity::{KinematicViscosity, TemperatureDifference};

/// A way by which oil is fed. Bottles, trays and brushes have none here: no figure was found for them.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Feed {
    /// Out of a hand can, into holes, cups and ball oilers.
    Can,
    /// Lifted by a wick.
    Wick,
    /// Lifted by a felt that touches the journal.
    Felt,
    /// Dripping by its weight.
    Drip,
    /// Carried up by a loose ring or chain.
    Ring,
    /// Thrown by what dips into it.
    Splash,
    /// By a plunger pump that a hand, a cam or the ram drives.
    Plunger,
    /// Through the meter units of a one-shot system.
    MeterUnit,
    /// Through the strainer and the suction line of a pump that runs.
    Suction,
    /// By a gear pump, for the short time of a cold start.
    PumpStart,
    /// By a pump that runs.
    Pump,
}

/// Every way, in the order of the thickest oil that it takes.
pub const FEEDS: [Feed; 11] = [
    Feed::Wick,
    Feed::Felt,
    Feed::Drip,
    Feed::Ring,
    Feed::Plunger,
    Feed::MeterUnit,
    Feed::Suction,
    Feed::Pump,
    Feed::Can,
    Feed::PumpStart,
    Feed::Splash,
];

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
/// Old machine tools with lubricating oils; within about a third either way. No figure was found for rings, plungers and meter units. The
/// trade says that they fail below about 10 °C, and the usual oil is ISO VG 68 of index 95: its viscosity there is `most`, that in a
/// room of 20 °C, where nobody complains, `easy`. A felt is taken for a wick, and a suction line for the pump that it feeds, whose limit
/// is that of cavitation.
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
        Feed::Wick | Feed::Felt => of(None, 150.0, 300.0, Standing::FromMemory),
        Feed::Drip => of(Some(20.0), 150.0, 300.0, Standing::FromMemory),
        Feed::Ring | Feed::Plunger | Feed::MeterUnit => of(None, 220.0, 450.0, Standing::OwnCalculation),
        Feed::Splash => of(None, 2000.0, 5000.0, Standing::FromMemory),
        Feed::PumpStart => of(None, 1000.0, 1600.0, Standing::CommonPractice),
        Feed::Suction => of(None, 60.0, 500.0, Standing::CommonPractice),
        Feed::Pump => of(Some(12.0), 60.0, 500.0, Standing::CommonPractice),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::oil::{USUAL_INDEX, ViscosityLine};
    use crate::quantity::Temperature;

    /// The rule of the trade that the doc names, worked out.
    #[test]
    fn rings_plungers_and_meter_units_fail_with_the_usual_oil_below_ten_degrees() {
        let usual = ViscosityLine::with_index(KinematicViscosity::from_mm2_s(68.0), USUAL_INDEX).expect("an oil").value;
        let at = |celsius| usual.at(Temperature::from_celsius(celsius)).mm2_s();
        for feed in [Feed::Ring, Feed::Plunger, Feed::MeterUnit] {
            let limit = limit(feed);
            assert!((limit.most.mm2_s() / at(10.0) - 1.0).abs() < 0.05, "{feed:?}: {}", at(10.0));
            assert!((limit.easy.mm2_s() / at(20.0) - 1.0).abs() < 0.05, "{feed:?}: {}", at(20.0));
        }
    }

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
