//! What a series of events tells: how often oil is topped up, whether that has changed, and how soon a chart of sums would say so.
//! Start at [`event_rate`]. Each file is one question; when events happened, and what they mean for a machine, is for the reasoning.

mod absorbing;
mod cusum;
mod cusum_poisson;
mod gamma;
mod legendre;
mod rate;
mod two_rates;

pub use cusum::{cusum_run_length, cusum_run_length_two_sided};
pub use cusum_poisson::{MOST_STATES, poisson_reference, poisson_run_length};
pub use rate::{Prior, RateLimits, event_rate, event_rate_with_prior};
pub use two_rates::{Change, Count, two_rates};

/// The way in which a rate or a mean is watched.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sense {
    /// For a rise, as a leak gives.
    Up,
    /// For a fall, as a blocked feed gives.
    Down,
}
