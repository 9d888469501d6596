//! The one place that turns answers into sentences.

mod after;
mod assumption;
mod blend;
mod cold;
mod cold_feed;
mod contents;
mod due;
mod entry;
mod film;
mod found;
mod judged;
mod need;
mod no_answer;
mod no_flow;
mod old_remedy;
mod round;
mod seen;
mod shelf_plan;
mod shopping;
mod short;
mod step;
mod stock;
mod typed;

pub use after::{after_at, after_use};
pub use assumption::assumption;
pub use blend::{against, property};
pub use cold::{cold, cold_remedy};
pub use cold_feed::cold_feed;
pub use contents::{contents, contents_act, contents_harm, contents_replaced, draining, fit};
pub use due::{due, due_because, hours};
pub use entry::entry;
pub use film::{
    at_work, degrees, film_assumed, film_spans, film_swing, regime, regimes, too_tight, too_tight_remedy, warmth,
    worth_measuring,
};
pub use found::{found, lines};
pub use judged::{answer, band, known, reason, to_buy};
pub use need::{care, movable, plate, unwanted};
pub use no_answer::no_answer;
pub use no_flow::no_flow;
pub use old_remedy::old_remedy;
pub use round::{
    caution, caution_at, covers_back, first, kept_apart, later, short_interval, stop, summary, unsuited, wipe,
};
pub use seen::{look, seen};
pub use shelf_plan::{names, plan_answer, point_at, proof, suffers, too_few};
pub use shopping::{fate, mix_up, purchase, taken};
pub use short::{left_undone, within};
pub use step::{source, step, warning};
pub use stock::{amount, stock_left, stock_sums};
pub use typed::typed;

use shop::id::Id;

/// Ids set behind one another: `3, 4 and 7`.
#[must_use]
pub fn list(ids: &[Id]) -> String {
    let words: Vec<&str> = ids.iter().map(Id::as_str).collect();
    join(&words)
}

/// Words set behind one another: `a, b and c`.
#[must_use]
pub fn join(words: &[&str]) -> String {
    match words {
        [] => String::new(),
        [only] => (*only).to_owned(),
        [rest @ .., last] => format!("{} and {last}", rest.join(", ")),
    }
}

/// `1 point`, `2 points`.
#[must_use]
pub fn count(number: usize, thing: &str) -> String {
    if number == 1 { format!("1 {thing}") } else { format!("{number} {thing}s") }
}
