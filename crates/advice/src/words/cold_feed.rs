//! Why the way of oiling does not move an oil in the cold, in words.

use shop::chart::Method;
use tribology::quantity::{Kind, Quantity, Temperature, Units, said_si, usual_unit};

use super::cold::by_can;
use crate::need::ColdFeed;

/// Why the way of oiling does not move an oil at a temperature; nothing where it does.
#[must_use]
pub fn cold_feed(feed: ColdFeed, method: Method, units: Units) -> Option<String> {
    let degrees = |at: Temperature| said_si(at.si(), usual_unit(Kind::Temperature, units, at.si()), 2);
    let what = if by_can(method) { "can".to_owned() } else { method.to_string() };
    match feed {
        ColdFeed::Moves => None,
        ColdFeed::Slow => Some(format!("the {what} gives it slowly by then")),
        ColdFeed::Fails { above } => Some(match above {
            Some(above) => {
                let at = degrees(above);
                format!("the {what} does not give it below about {at}: warm it, or take one grade thinner for the cold")
            }
            None => format!("the {what} does not give it"),
        }),
    }
}
