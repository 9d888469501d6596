//! How often something happens, from how often it was seen: the rate with its limits, from the count alone or with what was believed before.

use super::gamma::{Tail, point};
use crate::quantity::{EventRate, Quantity as _, Time};
use crate::working::{Standing, Step, Symbol};
use crate::{Answer, Error};

/// The most events that are taken.
const MOST: f64 = 1e6;

/// A rate and its limits.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RateLimits {
    /// The likeliest rate from the count alone, or the mean of what is believed after it.
    pub rate: EventRate,
    /// The lower limit.
    pub low: EventRate,
    /// The upper limit.
    pub high: EventRate,
    /// The lower limit as the number of events to expect in the time watched.
    pub low_events: f64,
    /// The upper limit likewise.
    pub high_events: f64,
}

/// What was believed of a rate before: as if `shape` events had been seen in `exposure`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Prior {
    /// The shape of the gamma distribution, dimensionless.
    pub shape: f64,
    /// Its exposure (the inverse of its scale).
    pub exposure: Time,
}

/// The rate of independent events, with exact limits.
///
/// `λ = n / T`, from `χ²(α/2; 2n) / 2T` to `χ²(1 − α/2; 2n + 2) / 2T`
///
/// - `events`: how many were seen, `n`.
/// - `exposure`: the time watched, `T`.
/// - `confidence`: how surely the limits hold the true rate, `1 − α`, dimensionless.
/// - returns: the rate and limits; they hold it at least as often as `confidence` says, whatever the true rate.
///
/// # Range
/// Events that come singly and do not mind one another; up to a million of them. Limits to about eight figures or better.
///
/// # Errors
/// [`Error::OutOfRange`] when the exposure is not above zero, there are more than a million events, or the confidence is not
/// 0.01 to 0.9999.
///
/// # Source
/// `garwood-1936`, `didonato-morris-1986`
///
/// # Example
/// ```
/// use tribology::quantity::Time;
/// use tribology::series::event_rate;
/// let found = event_rate(5, Time::from_hours(100.0), 0.95);
/// assert!(found.is_ok_and(|found| (found.value.high_events - 11.668).abs() < 0.001));
/// ```
pub fn event_rate(events: u32, exposure: Time, confidence: f64) -> Result<Answer<RateLimits>, Error> {
    let n = Error::unless_within("number of events", f64::from(events), 0.0, MOST)?;
    let time = Error::quantity_positive("exposure", exposure)?.seconds();
    let out = outside(confidence)?;
    let low = if events == 0 { 0.0 } else { point(n, out, Tail::Lower)? };
    let high = point(n + 1.0, out, Tail::Upper)?;
    let found = limits(n / time, low / time, high / time, time);
    let symbols =
        vec![number("n", n), seconds("T", time), number("α", 2.0 * out), number("low", low), number("high", high)];
    let formula = "λ = n / T, from χ²(α/2; 2n) / 2T to χ²(1 − α/2; 2n + 2) / 2T; low and high are events in T";
    Ok(Answer::of(found, step("Rate of events", formula, symbols, found.rate, "garwood-1936")))
}

/// The rate of independent events after they were seen, from what was believed before.
///
/// `Gamma(a, b)` becomes `Gamma(a + n, b + T)`
///
/// - `events`: how many were seen, `n`.
/// - `exposure`: the time watched, `T`; zero leaves the belief as it was.
/// - `prior`: what was believed before, `a` and `b`.
/// - `confidence`: how much of the belief lies between the limits, dimensionless; as much lies outside on either side.
/// - returns: the mean and limits of what is believed after.
///
/// # Range
/// As [`event_rate`]; shapes from 0.05 to a million.
///
/// # Errors
/// As [`event_rate`], and when the prior's shape or exposure is out of range.
///
/// # Source
/// `gelman-2013`
///
/// # Example
/// ```
/// use tribology::quantity::Time;
/// use tribology::series::{Prior, event_rate_with_prior};
/// let prior = Prior { shape: 2.0, exposure: Time::from_hours(100.0) };
/// let found = event_rate_with_prior(7, Time::from_hours(120.0), prior, 0.95);
/// assert!(found.is_ok_and(|found| (found.value.rate.per_hour() - 0.0409091).abs() < 1e-7));
/// ```
pub fn event_rate_with_prior(
    events: u32,
    exposure: Time,
    prior: Prior,
    confidence: f64,
) -> Result<Answer<RateLimits>, Error> {
    let n = Error::unless_within("number of events", f64::from(events), 0.0, MOST)?;
    let time = Error::quantity_within("exposure", exposure, Time::from_si(0.0), Time::from_si(f64::MAX))?.seconds();
    let shape = Error::unless_within("shape of the prior", prior.shape, 0.05, MOST)?;
    let before = Error::quantity_positive("exposure of the prior", prior.exposure)?.seconds();
    let out = outside(confidence)?;
    let (a, b) = (shape + n, before + time);
    let low = point(a, out, Tail::Lower)? / b;
    let high = point(a, out, Tail::Upper)? / b;
    let found = limits(a / b, low, high, time);
    let symbols = vec![number("a", shape), seconds("b", before), number("n", n), seconds("T", time)];
    let formula = "Gamma(a, b) becomes Gamma(a + n, b + T), with the mean (a + n) / (b + T)";
    Ok(Answer::of(found, step("Rate believed after", formula, symbols, found.rate, "gelman-2013")))
}

/// What lies outside the limits on either side.
fn outside(confidence: f64) -> Result<f64, Error> {
    Error::unless_within("confidence", confidence, 0.01, 0.9999).map(|confidence| (1.0 - confidence) / 2.0)
}

fn limits(rate: f64, low: f64, high: f64, time: f64) -> RateLimits {
    let per_second = EventRate::from_per_second;
    RateLimits {
        rate: per_second(rate),
        low: per_second(low),
        high: per_second(high),
        low_events: low * time,
        high_events: high * time,
    }
}

fn number(symbol: &'static str, value: f64) -> Symbol {
    Symbol { symbol, si: value, unit: "" }
}

fn seconds(symbol: &'static str, si: f64) -> Symbol {
    Symbol { symbol, si, unit: "s" }
}

fn step(
    name: &'static str,
    formula: &'static str,
    symbols: Vec<Symbol>,
    rate: EventRate,
    source: &'static str,
) -> Step {
    let result = Symbol { symbol: "λ", si: rate.per_second(), unit: "per s" };
    Step { name, formula, symbols, result, source, standing: Standing::Handbook }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_cannot_be_is_refused() {
        let hours = Time::from_hours;
        assert!(event_rate(3, hours(0.0), 0.95).is_err());
        assert!(event_rate(3, hours(f64::NAN), 0.95).is_err());
        assert!(event_rate(3, hours(1.0), 1.0).is_err());
        assert!(event_rate(2_000_000, hours(1.0), 0.95).is_err());
        let prior = |shape, exposure| Prior { shape, exposure: hours(exposure) };
        assert!(event_rate_with_prior(3, hours(1.0), prior(0.0, 1.0), 0.95).is_err());
        assert!(event_rate_with_prior(3, hours(1.0), prior(1.0, 0.0), 0.95).is_err());
    }

    /// With no event seen the upper limit is the rate at which none would be seen once in forty: n = 0, −ln 0.025 by hand.
    #[test]
    fn nothing_seen_is_no_proof_of_nothing() {
        let found = event_rate(0, Time::from_hours(1.0), 0.95).expect("it has limits").value;
        assert_eq!((found.low_events, found.rate.per_hour()), (0.0, 0.0));
        assert!((found.high_events + crate::math::ln(0.025)).abs() < 1e-12, "{found:?}");
    }

    #[test]
    fn a_million_events_are_taken() {
        let found = event_rate(1_000_000, Time::from_hours(1.0), 0.95).expect("it has limits").value;
        // Nearly normal: 1.96 roots of the count on either side.
        assert!(
            (found.low_events - 998_041.0).abs() < 2.0 && (found.high_events - 1_001_962.0).abs() < 2.0,
            "{found:?}"
        );
    }
}
