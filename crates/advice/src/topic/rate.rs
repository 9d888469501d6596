//! How often something happens, from a count: the rate with its limits.

use tribology::quantity::Time;
use tribology::series::{Prior, event_rate, event_rate_with_prior};

use super::given::{Given, Refused, count, share};
use super::{Calculated, Item, Topic, Value};

pub(super) const TOPIC: Topic = Topic {
    name: "rate",
    title: "Rate of events",
    about: "How often something happens (a reservoir is topped up, a drip is found dry) from how often it was seen in a time, with exact \
            limits; with a prior, what is believed after it was seen.",
    words: None,
    options: &[
        Topic::once("events", "how often it was seen", "3"),
        Topic::once("exposure", "time watched", "120h"),
        Topic::once("confidence", "how surely the limits hold the rate, 95 % when left out", "95%"),
        Topic::once("prior-shape", "believed before: as if so many had been seen", "2"),
        Topic::once("prior-exposure", "in this time", "100h"),
    ],
    examples: &[
        "rate --events 3 --exposure 120h",
        "rate --events 3 --exposure 120h --confidence 90% --prior-shape 2 --prior-exposure 100h",
    ],
    answer,
};

/// The confidence when none is given.
const USUAL: f64 = 0.95;

fn answer(given: &Given<'_>) -> Result<Calculated, Refused> {
    let mut found = Calculated::default();
    let events = count("--events", given.text("events").ok_or_else(|| given.missing("events"))?)?;
    let exposure = given.must::<Time>("exposure", Some("h"))?;
    let confidence = match given.text("confidence") {
        Some(text) => share("--confidence", text)?,
        None => {
            found.assume("limits that hold the true rate 95 times in a hundred");
            USUAL
        }
    };
    let prior = match (given.number("prior-shape")?, given.quantity::<Time>("prior-exposure", Some("h"))?) {
        (None, None) => None,
        (Some(shape), Some(exposure)) => Some(Prior { shape, exposure }),
        (Some(_), None) => return Err(given.missing("prior-exposure")),
        (None, Some(_)) => return Err(given.missing("prior-shape")),
    };
    let limits = found.take(match prior {
        None => event_rate(events, exposure, confidence)?,
        Some(prior) => event_rate_with_prior(events, exposure, prior, confidence)?,
    });
    found.push(Item::quantity("rate_per_h", "Rate", limits.rate, "per h"));
    found.push(Item::quantity("low_per_h", "Lower limit", limits.low, "per h"));
    found.push(Item::quantity("high_per_h", "Upper limit", limits.high, "per h"));
    found.push(Item::new("low_events", "Lower limit, as events in the time watched", Value::Number(limits.low_events)));
    found.push(Item::new(
        "high_events",
        "Upper limit, as events in the time watched",
        Value::Number(limits.high_events),
    ));
    found.assume("events come singly, do not mind one another, and their rate was the same throughout");
    Ok(found)
}
