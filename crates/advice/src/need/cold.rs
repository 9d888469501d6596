//! Whether the way of oiling still moves an oil at a temperature, apart from whether the pair wants it: in a cold shop the wick, the hand pump
//! and the strainer give up long before the bearing does. The limits are those of [`tribology::feed::limit`].

use shop::chart::{Chart, Method, NodeKind, Point};
use shop::shelf::{Family, Oil};
use tribology::feed::{Feed, limit};
use tribology::oil::{USUAL_INDEX, ViscosityLine};
use tribology::quantity::{KinematicViscosity, Quantity as _, Temperature};
use tribology::{Answer, Step, Symbol};

use super::place::{Way, way};
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
        /// From which temperature on it does.
        above: Option<Temperature>,
    },
}

/// The thickest oils that a way of oiling moves at a temperature, by what they are at 40 °C and for the usual viscosity index.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Movable {
    /// The thickest that it moves well.
    pub easy: KinematicViscosity,
    /// The thickest that it moves at all.
    pub most: KinematicViscosity,
}

/// How a point's oil is fed; nothing for grease, for brushes and trays, of which nobody knows a limit.
#[must_use]
pub fn feed(chart: &Chart, point: &Point) -> Option<Feed> {
    if way(point) == Way::Grease {
        return None;
    }
    Some(match point.method {
        Method::OilHole | Method::BallOiler | Method::Cup | Method::Nipple => Feed::Can,
        Method::Wick => Feed::Wick,
        Method::Felt => Feed::Felt,
        // A pin that rides on the shaft lets fall what a drip does.
        Method::Drip | Method::Bottle => Feed::Drip,
        Method::Ring => Feed::Ring,
        Method::Splash | Method::Bath => Feed::Splash,
        Method::OneShot => Feed::MeterUnit,
        Method::TotalLossPump => Feed::Plunger,
        Method::CirculatingPump if is_strained(chart, point) => Feed::Suction,
        Method::CirculatingPump => Feed::PumpStart,
        Method::Tray | Method::GreaseCup | Method::Brush => return None,
    })
}

fn is_strained(chart: &Chart, point: &Point) -> bool {
    let reservoir = point.reservoir.as_ref().and_then(|id| chart.reservoir(id));
    let mut circuits = point.circuit.iter().chain(&point.feeds).filter_map(|id| chart.circuit(id));
    reservoir.is_some_and(|one| one.strainer.is_some())
        || circuits.any(|circuit| circuit.nodes.iter().any(|node| node.kind == NodeKind::Strainer))
}

/// How a way of oiling moves an oil at a temperature; nothing for a grease and an oil of unknown body.
#[must_use]
pub fn cold_feed(feed: Feed, oil: &Oil, at: Temperature) -> Option<Answer<ColdFeed>> {
    if oil.family == Family::Grease {
        return None;
    }
    Some(cold_feed_of(feed, oil_line(oil)?.line, at))
}

/// How a way of oiling moves an oil of this line at a temperature.
#[must_use]
pub fn cold_feed_of(feed: Feed, line: ViscosityLine, at: Temperature) -> Answer<ColdFeed> {
    let (viscosity, limit) = (line.at(at), limit(feed));
    let above = line.temperature(limit.most).ok().map(|above| above.value);
    let found = if viscosity > limit.most {
        ColdFeed::Fails { above }
    } else if viscosity > limit.easy {
        ColdFeed::Slow
    } else {
        ColdFeed::Moves
    };
    let symbol = |symbol, si, unit| Symbol { symbol, si, unit };
    let step = above.map(|above| Step {
        name: "Coldest at which the way of oiling still moves the oil",
        formula: "log log (ν + 0.7) = A − B log T, solved for the thickest ν that it moves",
        symbols: vec![
            symbol("A", line.a(), ""),
            symbol("B", line.b(), ""),
            symbol("shop", at.si(), "K"),
            symbol("ν in the shop", viscosity.si(), "m²/s"),
            symbol("thickest", limit.most.si(), "m²/s"),
        ],
        result: symbol("limit", above.si(), "K"),
        source: "astm-d341",
        standing: limit.standing,
    });
    Answer { value: found, warnings: Vec::new(), steps: step.into_iter().collect() }
}

/// The thickest oils that a way of oiling moves at a temperature.
///
/// - returns: nothing where a line through the limit would leave the range of the usual index.
#[must_use]
pub fn movable(feed: Feed, at: Temperature) -> Option<Movable> {
    let limit = limit(feed);
    let at_40 = |viscosity| {
        let line = ViscosityLine::through_with_index((at, viscosity), USUAL_INDEX).ok()?.value;
        Some(line.at(Temperature::from_celsius(40.0)))
    };
    Some(Movable { easy: at_40(limit.easy)?, most: at_40(limit.most)? })
}
