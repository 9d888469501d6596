//! How long a chart of cumulative sums runs before it signals, for readings that scatter normally.
//!
//! `S = max(0, S + x − k)`, a signal when `S` reaches `h`; readings, `k`, `h` and shifts are in standard deviations. The integral equation
//! for the mean run is summed at Gauss points and solved as a chain of chance, the way out of each point given exactly, so that even
//! a run of many millions keeps its figures.

use super::absorbing::Chain;
use super::legendre::legendre;
use crate::math::{erfc, exp};
use crate::working::{Standing, Step, Symbol};
use crate::{Answer, Error};
use std::f64::consts::{FRAC_1_SQRT_2, PI};

/// The mean number of readings until a one-sided chart signals.
///
/// `L(u) = 1 + L(0) Φ(k − u − δ) + ∫₀ʰ L(x) φ(x + k − u − δ) dx`
///
/// - `k`: the reference value, dimensionless: half the shift that is to be found soonest.
/// - `h`: the decision limit, dimensionless.
/// - `shift`: by how much the mean is off, `δ`, dimensionless; above zero is toward what the chart watches for.
/// - `start`: where the sum begins, `u`, dimensionless; zero, or a head start below `h`.
/// - returns: the mean run length in readings, the one that signals included.
///
/// # Range
/// Independent readings of known scatter; to about ten figures.
///
/// # Errors
/// [`Error::OutOfRange`] when `k` is not 0 to 10, `h` not 0.01 to 50, the shift not -20 to 20, the start not from zero to below `h`, or
/// the run is longer than numbers go.
///
/// # Source
/// `page-1954`, `grassmann-taksar-heyman-1985`
///
/// # Example
/// ```
/// use tribology::series::cusum_run_length;
/// let found = cusum_run_length(0.5, 5.0, 0.0, 0.0);
/// assert!(found.is_ok_and(|found| (found.value - 930.887).abs() < 0.001));
/// ```
pub fn cusum_run_length(k: f64, h: f64, shift: f64, start: f64) -> Result<Answer<f64>, Error> {
    check(k, h, shift)?;
    Error::unless_within("start of the sum", start, 0.0, h.next_down())?;
    let run = finite(run_length(k, h, shift, start))?;
    let mut symbols = symbols(k, h, shift);
    symbols.push(number("u", start));
    Ok(Answer::of(
        run,
        step("Mean run of a one-sided chart", "L(u) = 1 + L(0) Φ(k−u−δ) + ∫ L(x) φ(x+k−u−δ) dx", symbols, run),
    ))
}

/// The mean number of readings until one of two charts signals, one watching for a rise and one for a fall, both from zero.
///
/// `1/L = 1/L₊ + 1/L₋`
///
/// - `k`, `h`, `shift`: as [`cusum_run_length`], the same for both; the sign of the shift does not matter.
/// - returns: the mean run length in readings.
///
/// # Range
/// As [`cusum_run_length`], and a signal leaves the other sum at zero, which is so unless `k` is far below the scatter and `h` low.
///
/// # Errors
/// As [`cusum_run_length`].
///
/// # Source
/// `kemp-1961`, `page-1954`
///
/// # Example
/// ```
/// use tribology::series::cusum_run_length_two_sided;
/// let found = cusum_run_length_two_sided(0.5, 4.0, 1.0);
/// assert!(found.is_ok_and(|found| (found.value - 8.38).abs() < 0.005));
/// ```
pub fn cusum_run_length_two_sided(k: f64, h: f64, shift: f64) -> Result<Answer<f64>, Error> {
    check(k, h, shift)?;
    let [up, down] = [shift, -shift].map(|shift| run_length(k, h, shift, 0.0));
    // A side that never signals adds nothing.
    let run = finite(1.0 / (up.recip() + down.recip()))?;
    let mut symbols = symbols(k, h, shift);
    symbols.extend([number("L+", up), number("L-", down)]);
    Ok(Answer::of(
        run,
        step("Mean run of a two-sided chart", "1/L = 1/L+ + 1/L-, each by its integral equation", symbols, run),
    ))
}

/// A run length that is a number.
pub(super) fn finite(run: f64) -> Result<f64, Error> {
    // Numbers go further, but what divides by them does not.
    Error::unless_within("average run length", run, 1.0, 1e300)
}

fn check(k: f64, h: f64, shift: f64) -> Result<(), Error> {
    Error::unless_within("reference value k", k, 0.0, 10.0)?;
    Error::unless_within("decision limit h", h, 0.01, 50.0)?;
    Error::unless_within("shift", shift, -20.0, 20.0).map(|_| ())
}

/// Cost: the cube of some twenty points and six more for each unit of `h`.
fn run_length(k: f64, h: f64, shift: f64, start: f64) -> f64 {
    // The bell's spectrum ends at about nine radians a unit; points resolve three or four radians each.
    let points = legendre(24 + 6 * h.ceil() as u32, h);
    let states: Vec<f64> = std::iter::once(0.0).chain(points.iter().map(|(x, _)| *x)).collect();
    // Chances from a sum `u`: back to zero, to each point, and out.
    let to_zero = |u: f64| normal_below(k - u - shift);
    let out = |u: f64| normal_below(u + shift - k - h);
    let to_point = |u: f64, (x, weight): (f64, f64)| weight * bell(x + k - u - shift);
    let mut chain = Chain::new(states.len());
    for (from, u) in states.iter().enumerate() {
        chain.go(from, 0, to_zero(*u));
        points.iter().enumerate().for_each(|(to, point)| chain.go(from, to + 1, to_point(*u, *point)));
        chain.stop(from, out(*u));
    }
    let steps = chain.steps();
    if start == 0.0 {
        return steps[0];
    }
    let onward: f64 = points.iter().zip(&steps[1..]).map(|(point, steps)| to_point(start, *point) * steps).sum();
    let whole: f64 = out(start) + to_zero(start) + points.iter().map(|point| to_point(start, *point)).sum::<f64>();
    (1.0 + to_zero(start) * steps[0] + onward) / whole
}

/// The part of the normal distribution below a point.
fn normal_below(at: f64) -> f64 {
    erfc(-at * FRAC_1_SQRT_2) / 2.0
}

/// The density of the normal distribution.
fn bell(at: f64) -> f64 {
    exp(-at * at / 2.0) * FRAC_1_SQRT_2 / crate::math::sqrt(PI)
}

fn number(symbol: &'static str, si: f64) -> Symbol {
    Symbol { symbol, si, unit: "" }
}

fn symbols(k: f64, h: f64, shift: f64) -> Vec<Symbol> {
    vec![number("k", k), number("h", h), number("δ", shift)]
}

fn step(name: &'static str, formula: &'static str, symbols: Vec<Symbol>, run: f64) -> Step {
    Step { name, formula, symbols, result: number("L", run), source: "page-1954", standing: Standing::Handbook }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// With a low limit and a high reference value the sum is always zero before the reading that signals, so readings are judged one by
    /// one: the run is one over the chance of a reading above h + k.
    #[test]
    fn a_chart_that_forgets_judges_single_readings() {
        let run = cusum_run_length(8.0, 0.01, 7.0, 0.0).expect("it signals").value;
        // From zero the sum is seldom between zero and h: it is there for a hundredth of the bell.
        let single = 1.0 / normal_below(7.0 - 8.0 - 0.01);
        assert!((run / single - 1.0).abs() < 0.01 && run < single, "{run} {single}");
    }

    #[test]
    fn what_cannot_be_is_refused() {
        assert!(cusum_run_length(-0.1, 4.0, 0.0, 0.0).is_err());
        assert!(cusum_run_length(0.5, 0.0, 0.0, 0.0).is_err());
        assert!(cusum_run_length(0.5, 4.0, f64::NAN, 0.0).is_err());
        assert!(cusum_run_length(0.5, 4.0, 0.0, 4.0).is_err());
        assert!(cusum_run_length(10.0, 50.0, -20.0, 0.0).is_err(), "a run beyond all numbers");
    }
}
