//! Why the way of oiling does not move an oil in the cold, in words.

use tribology::quantity::{Kind, Quantity, Temperature, Units, said_si, usual_unit};

use crate::need::ColdFeed;

/// Why the way of oiling does not move an oil at a temperature; nothing where it does.
#[must_use]
pub fn cold_feed(feed: ColdFeed, method: &str, units: Units) -> Option<String> {
    let degrees = |at: Temperature| said_si(at.si(), usual_unit(Kind::Temperature, units, at.si()), 2);
    match feed {
        ColdFeed::Moves => None,
        ColdFeed::Slow => Some(format!("the {method} moves it slowly by then")),
        ColdFeed::Fails { above, .. } => Some(match above {
            Some(above) => format!(
                "the {method} does not move it below about {}: warm it, or take one grade thinner for the cold",
                degrees(above)
            ),
            None => format!("the {method} does not move it"),
        }),
    }
}
