//! How long a chart of cumulative sums of readings runs before it signals.

use tribology::series::{cusum_run_length, cusum_run_length_two_sided};

use super::given::{Given, Refused};
use super::{Calculated, Item, Topic, Value};

pub(super) const TOPIC: Topic = Topic {
    name: "cusum",
    title: "Chart of sums of readings",
    about: "How many readings a chart of cumulative sums takes on average to signal, with no shift (false alarms) or with one. Reference \
            value, limit and shift are counted in standard deviations of a reading.",
    words: None,
    options: &[
        Topic::once("k", "reference value: half the shift to be found", "0.5"),
        Topic::once("h", "decision limit", "4"),
        Topic::once("shift", "shift of the mean, none when left out", "0.25"),
        Topic::flag("one-sided", "one chart that watches for a rise, in place of two"),
    ],
    examples: &["cusum --k 0.5 --h 4 --shift 0.25", "cusum --k 0.5 --h 5 --one-sided"],
    answer,
};

fn answer(given: &Given<'_>) -> Result<Calculated, Refused> {
    let mut found = Calculated::default();
    let (k, h) = (given.must_number("k")?, given.must_number("h")?);
    let shift = given.number("shift")?.unwrap_or_else(|| {
        found.assume("no shift: the run until a false alarm");
        0.0
    });
    let run = if given.has("one-sided") {
        found.take(cusum_run_length(k, h, shift, 0.0)?)
    } else {
        found.assume("two charts, one for a rise and one for a fall, both from zero");
        found.take(cusum_run_length_two_sided(k, h, shift)?)
    };
    found.push(Item::new("arl", "Readings until it signals, on average", Value::Number(run)));
    found.assume("readings scatter normally by a known standard deviation and do not mind one another");
    Ok(found)
}
