//! What an entry of the logbook says, in a few words.

use shop::logbook::Body;

use super::due::hours;

/// What an entry says: `oiled: 2 strokes, way-68`.
#[must_use]
pub fn entry(body: &Body) -> String {
    match body {
        Body::Dosed { oil, amount, .. } => with("oiled", &[amount.as_deref(), oil.as_ref().map(shop::id::Id::as_str)]),
        Body::SignSeen { note } => with("sign seen", &[note.as_deref()]),
        Body::SignMissing { note } => with("sign looked for and missing", &[note.as_deref()]),
        Body::NotReached { reason } => format!("could not be reached: {reason}"),
        Body::Ran { hours: time, job } => {
            with(&format!("ran {}", hours(*time)), &[job.as_ref().map(shop::id::Id::as_str)])
        }
        Body::Level { reading } => format!("level read: {reading}"),
        Body::Filled { oil, amount } => with("filled", &[amount.as_deref(), oil.as_ref().map(shop::id::Id::as_str)]),
        Body::Drained { note } => with("drained", &[note.as_deref()]),
        Body::Opening { amount } => format!("in stock when the shelf was taken in: {amount}"),
        Body::Counted { amount } => format!("counted on the shelf: {amount}"),
        Body::Bought { amount, price } => with("bought", &[Some(amount), price.as_deref()]),
        Body::Used { amount, note } => with("used", &[Some(amount), note.as_deref()]),
        Body::ThrownAway { amount, note } => with("thrown away", &[Some(amount), note.as_deref()]),
        Body::Note { text } => text.clone(),
        Body::Withdrawn => "withdrew an earlier entry".to_owned(),
    }
}

fn with(what: &str, more: &[Option<&str>]) -> String {
    let said: Vec<&str> = more.iter().flatten().copied().collect();
    if said.is_empty() { what.to_owned() } else { format!("{what}: {}", said.join(", ")) }
}
