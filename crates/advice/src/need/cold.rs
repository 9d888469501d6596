//! Whether the way of oiling still moves an oil at a temperature, apart from whether the pair wants it.

use shop::chart::{Method, Point};
use shop::shelf::Oil;
use tribology::feed::{Feed, limit};
use tribology::quantity::{KinematicViscosity, Temperature};

use crate::oil_line::oil_line;

/// How a way of oiling does in the cold.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum ColdFeed {
    /// It moves the oil.
    Moves,
    /// It moves it slowly.
    Slow,
    /// It does not.
    Fails {
        /// How thick the oil is by then.
        viscosity: KinematicViscosity,
        /// The thickest that it moves.
        most: KinematicViscosity,
        /// From which temperature on it does.
        above: Option<Temperature>,
    },
}

/// The way of oiling of a point, as far as a cold oil asks; nothing for grease and brushes.
#[must_use]
pub fn feed(method: Method) -> Option<Feed> {
    Some(match method {
        Method::OilHole | Method::BallOiler | Method::Cup | Method::Nipple => Feed::Can,
        Method::Wick | Method::Felt | Method::Bottle => Feed::Wick,
        Method::Drip => Feed::Drip,
        Method::Ring | Method::Splash | Method::Bath | Method::Tray => Feed::Splash,
        Method::OneShot | Method::TotalLossPump | Method::CirculatingPump => Feed::PumpStart,
        Method::GreaseCup | Method::Brush => return None,
    })
}

/// How a point's way of oiling moves an oil at a temperature; nothing for grease, for brushes, and for an oil of unknown body.
#[must_use]
pub fn cold_feed(point: &Point, oil: &Oil, at: Temperature) -> Option<ColdFeed> {
    let feed = feed(point.method)?;
    let line = oil_line(oil)?.line;
    let (viscosity, limit) = (line.at(at), limit(feed));
    Some(if viscosity > limit.most {
        let above = line.temperature(limit.most).ok().map(|above| above.value);
        ColdFeed::Fails { viscosity, most: limit.most, above }
    } else if viscosity > limit.easy {
        ColdFeed::Slow
    } else {
        ColdFeed::Moves
    })
}
