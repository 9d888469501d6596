//! Why a point is due, in a few words.

use tribology::quantity::Time;

use crate::round::Due;

/// Why a point is due: `every 4 h: 3 h since the last oil, 3 h planned`.
#[must_use]
pub fn due(due: &Due) -> String {
    match due {
        Due::NeverLogged => "never logged yet".to_owned(),
        Due::Uses { since: 0, every: 1 } => "wanted before every use".to_owned(),
        Due::Uses { since: 1, every: 1 } => "used once since the last oil".to_owned(),
        Due::Uses { since, every: 1 } => format!("used {since} times since the last oil"),
        Due::Uses { since, every } => format!("every {every} uses: used {since} times since the last oil"),
        Due::EarlierDay { oiled } => {
            format!("wanted before every use: last oiled on {}", oiled.strftime("%-d %B %Y"))
        }
        Due::Running { since, planned, every } => {
            format!("every {}: {} since the last oil, {} planned", hours(*every), hours(*since), hours(*planned))
        }
        Due::Calendar { last, every } => format!("every {every}: last on {}", last.strftime("%-d %B %Y")),
    }
}

/// All the reasons behind one another.
#[must_use]
pub fn due_because(reasons: &[Due]) -> String {
    reasons.iter().map(due).collect::<Vec<_>>().join("; ")
}

/// `3 h`, `2.5 h`.
#[must_use]
pub fn hours(time: Time) -> String {
    let tenths = (time.hours() * 10.0).round() / 10.0;
    format!("{tenths} h")
}
