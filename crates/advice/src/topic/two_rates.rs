//! Whether a rate has changed: a count before held against a count after.

use tribology::quantity::Time;
use tribology::series::{Count, Sense, two_rates};

use super::given::{Given, Refused, count, read};
use super::{Calculated, Item, Topic, Value};

pub(super) const TOPIC: Topic = Topic {
    name: "two-rates",
    title: "Has the rate changed?",
    about: "How often so large a rise or fall between two counts would be seen had nothing changed, and how much likelier the counts are \
            with a change. A rise is how a leak shows, a fall how a starved or blocked feed does.",
    words: None,
    options: &[
        Topic::once("before", "events/time before", "9/90h"),
        Topic::once("after", "events/time after", "2/70h"),
        Topic::once("sense", "up or down: the change that is looked for", "down"),
    ],
    examples: &[
        "two-rates --before 9/90h --after 2/70h --sense down",
        "two-rates --before 4/80h --after 12/100h --sense up",
    ],
    answer,
};

fn answer(given: &Given<'_>) -> Result<Calculated, Refused> {
    let mut found = Calculated::default();
    let counted = |name| seen(name, given.text(name).ok_or_else(|| given.missing(name))?);
    let (before, after) = (counted("before")?, counted("after")?);
    let sense = sense(given.text("sense").ok_or_else(|| given.missing("sense"))?)?;
    let change = found.take(two_rates(before, after, sense)?);
    let label = match sense {
        Sense::Up => "Chance of such a rise without a change",
        Sense::Down => "Chance of such a fall without a change",
    };
    found.push(Item::new("p_value", label, Value::Number(change.p_value)));
    found.push(Item::new("log_glr", "Logarithm of how much likelier with a change", Value::Number(change.log_glr)));
    found.assume("events come singly and do not mind one another");
    found.assume("the moment between before and after was not picked by looking at the counts");
    Ok(found)
}

/// `9/90h`: how many, and in which time.
fn seen(name: &str, text: &str) -> Result<Count, Refused> {
    let Some((events, exposure)) = text.split_once('/') else {
        return Err(Refused::new(format!(
            "--{name} is \"{text}\"; write the events, a solidus and the time, such as 9/90h"
        )));
    };
    Ok(Count {
        events: count(&format!("the events of --{name}"), events)?,
        exposure: read::<Time>(&format!("the time of --{name}"), exposure, Some("h"))?,
    })
}

fn sense(text: &str) -> Result<Sense, Refused> {
    match text.trim().to_lowercase().as_str() {
        "up" => Ok(Sense::Up),
        "down" => Ok(Sense::Down),
        _ => Err(Refused::new(format!("--sense is \"{text}\"; it is up or down"))),
    }
}
