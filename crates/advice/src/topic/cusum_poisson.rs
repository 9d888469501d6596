//! How long a chart of cumulative sums of counts runs before it signals.

use tribology::Error;
use tribology::series::{Sense, poisson_run_length};

use super::given::{Given, Refused};
use super::{Calculated, Item, Topic, Value};
use crate::words;

pub(super) const TOPIC: Topic = Topic {
    name: "cusum-poisson",
    title: "Chart of sums of counts",
    about: "How many intervals a chart of cumulative sums of counts takes on average to signal: up for a leak, down for a starved or \
            blocked feed. It signals when the sum reaches the limit.",
    words: None,
    options: &[
        Topic::once("k", "reference value: counts in an interval between the usual and the feared", "5.5"),
        Topic::once("h", "decision limit", "8"),
        Topic::once("rate", "mean count in an interval", "4"),
        Topic::flag("down", "watch for a fall, in place of a rise"),
    ],
    examples: &["cusum-poisson --k 5.5 --h 8 --rate 4", "cusum-poisson --k 4 --h 6 --rate 6 --down"],
    answer,
};

fn answer(given: &Given<'_>) -> Result<Calculated, Refused> {
    let mut found = Calculated::default();
    let (k, h, rate) = (given.must_number("k")?, given.must_number("h")?, given.must_number("rate")?);
    let sense = if given.has("down") { Sense::Down } else { Sense::Up };
    let run = found.take(poisson_run_length(k, h, rate, sense).map_err(|error| refused(error, k))?);
    found.push(Item::new("arl", "Intervals until it signals, on average", Value::Number(run)));
    found.assume("the chart begins at zero and signals when the sum reaches the limit, not only when it passes it");
    if sense == Sense::Down {
        found.assume("a chart that watches a low rate for a fall is slow: it learns only from what does not happen");
    }
    Ok(found)
}

/// The refusal, with a way out where `k` has too many decimals for an exact answer.
fn refused(error: Error, k: f64) -> Refused {
    let too_fine = matches!(error, Error::OutOfRange { name: "number of steps to the decision limit", .. });
    let says = words::no_answer(&error);
    if too_fine { Refused::new(format!("{says}; round --k, such as to {k:.1}")) } else { Refused::new(says) }
}
