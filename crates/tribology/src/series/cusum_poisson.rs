//! How long a chart of cumulative sums of counts runs before it signals, by an exact chain of chance.
//!
//! Up: `S = max(0, S + x − k)`; down: `S = max(0, S + k − x)`; a signal when `S ≥ h`. For counts it matters that reaching `h` is enough. A
//! sum takes only steps of the unit that `k` is a whole number of, so the chain is exact. A chart that watches a low rate for a fall is slow.

use super::Sense;
use super::absorbing::Chain;
use super::cusum::finite;
use crate::math::{exp, ln, ln_gamma, sqrt};
use crate::working::{Standing, Step, Symbol};
use crate::{Answer, Error};

/// The most states that the chain of a chart may have: the decision limit in steps of the unit of which `k` is a whole number.
pub const MOST_STATES: usize = 2000;
/// The finest unit is one over this.
const FINEST: u32 = 1000;

/// The reference value of a chart that tells two rates apart soonest.
///
/// `k = (λ₁ − λ₀) / ln(λ₁/λ₀)`
///
/// - `usual`: the mean count in an interval as it should be, `λ₀`, dimensionless.
/// - `feared`: the mean count that is to be found, `λ₁`, dimensionless.
/// - returns: the reference value, dimensionless, between the two; round it to a half or a tenth.
///
/// # Range
/// Any two different rates.
///
/// # Errors
/// [`Error::OutOfRange`] when a rate is not above zero, or they are equal.
///
/// # Source
/// `lucas-1985`
///
/// # Example
/// ```
/// use tribology::series::poisson_reference;
/// assert!(poisson_reference(2.0, 4.0).is_ok_and(|found| (found.value - 2.88539).abs() < 1e-5));
/// ```
pub fn poisson_reference(usual: f64, feared: f64) -> Result<Answer<f64>, Error> {
    Error::unless_positive("usual rate", usual)?;
    Error::unless_positive("feared rate", feared)?;
    Error::unless_positive("difference of the rates", (feared - usual).abs())?;
    let k = (feared - usual) / ln(feared / usual);
    let symbols = vec![number("λ0", usual), number("λ1", feared)];
    Ok(Answer::of(k, step("Reference value", "k = (λ1 − λ0) / ln(λ1/λ0)", symbols, number("k", k), "lucas-1985")))
}

/// The mean number of intervals until a chart of counts signals.
///
/// - `k`: the reference value, dimensionless; a whole number of halves, tenths, thousandths or another part of one.
/// - `h`: the decision limit, dimensionless; the chart signals when the sum reaches it.
/// - `rate`: the mean count in an interval, dimensionless.
/// - `sense`: whether the chart watches for a rise or a fall.
/// - returns: the mean run length in intervals from a sum of zero, the one that signals included.
///
/// # Range
/// Independent Poisson counts; to about ten figures.
///
/// # Errors
/// [`Error::OutOfRange`] when `k`, `h` or the rate is not above zero (a rate of zero is taken where a fall is watched for) or above a
/// thousand, the chain would have more than [`MOST_STATES`] states, or the run is longer than numbers go.
///
/// # Source
/// `lucas-1985`, `grassmann-taksar-heyman-1985`
///
/// # Example
/// ```
/// use tribology::series::{Sense, poisson_run_length};
/// let found = poisson_run_length(3.0, 5.0, 4.0, Sense::Up);
/// assert!(found.is_ok_and(|found| (found.value - 5.20205).abs() < 1e-5));
/// ```
pub fn poisson_run_length(k: f64, h: f64, rate: f64, sense: Sense) -> Result<Answer<f64>, Error> {
    let least = f64::MIN_POSITIVE;
    Error::unless_within("reference value k", k, least, 1000.0)?;
    Error::unless_within("decision limit h", h, least, 1000.0)?;
    Error::unless_within("rate", rate, if sense == Sense::Up { least } else { 0.0 }, 1000.0)?;
    let parts = parts_of_one(k);
    // Steps of the unit below the limit; a limit that is a whole number of them is itself a signal.
    let states = (h * f64::from(parts) * (1.0 - 1e-12)).ceil().max(1.0);
    Error::unless_within("number of steps to the decision limit", states, 1.0, MOST_STATES as f64)?;
    let reference = (k * f64::from(parts)).round() as i64;
    let run = finite(run_length(reference, i64::from(parts), states as i64, rate, sense))?;
    let symbols = vec![number("k", k), number("h", h), number("λ", rate), number("states", states)];
    let formula = match sense {
        Sense::Up => "S = max(0, S + x − k), signal when S ≥ h: exact chain",
        Sense::Down => "S = max(0, S + k − x), signal when S ≥ h: exact chain",
    };
    Ok(Answer::of(run, step("Mean run of a chart of counts", formula, symbols, number("L", run), "lucas-1985")))
}

/// The fewest parts of one of which a number is a whole number, to twelve figures; a great many when it is none.
fn parts_of_one(number: f64) -> u32 {
    let whole = |parts: &u32| {
        let scaled = number * f64::from(*parts);
        scaled >= 0.5 && (scaled - scaled.round()).abs() <= 1e-12 * scaled
    };
    (1..=FINEST).find(whole).unwrap_or(u32::MAX)
}

/// The mean run from zero, in units of which one holds `parts`.
///
/// Cost: at most a third of the cube of the number of states.
fn run_length(reference: i64, parts: i64, states: i64, rate: f64, sense: Sense) -> f64 {
    let counts = Counts::new(rate, (states + reference) / parts + 1);
    let mut chain = Chain::new(states as usize);
    for from in 0..states {
        let place = from as usize;
        match sense {
            Sense::Up => {
                // Back to zero with x at most (k − S); a signal with x at least (h + k − S).
                let (last_back, first_out) =
                    ((reference - from).div_euclid(parts), (states + reference - from + parts - 1).div_euclid(parts));
                chain.go(place, 0, counts.at_most(last_back));
                for count in (last_back + 1).max(0)..first_out {
                    chain.go(place, (from - reference + count * parts) as usize, counts.exactly(count));
                }
                chain.stop(place, counts.at_least(first_out.max(0)));
            }
            Sense::Down => {
                // A signal with x at most (S + k − h); back to zero with x at least (S + k).
                let (last_out, first_back) =
                    ((from + reference - states).div_euclid(parts), (from + reference + parts - 1).div_euclid(parts));
                chain.stop(place, counts.at_most(last_out));
                for count in (last_out + 1).max(0)..first_back {
                    chain.go(place, (from + reference - count * parts) as usize, counts.exactly(count));
                }
                chain.go(place, 0, counts.at_least(first_back));
            }
        }
    }
    chain.steps()[0]
}

/// The chances of Poisson counts, each tail added up from its far end.
struct Counts {
    exactly: Vec<f64>,
    at_most: Vec<f64>,
    at_least: Vec<f64>,
}

impl Counts {
    /// Counts up to `most` and as far beyond as matters.
    fn new(rate: f64, most: i64) -> Self {
        let most = (most as f64).max(rate);
        let size = (most + 12.0 * sqrt(most) + 60.0) as usize;
        let chance = |count: usize| {
            let count = count as f64;
            if rate == 0.0 { f64::from(count == 0.0) } else { exp(count * ln(rate) - rate - ln_gamma(count + 1.0)) }
        };
        let exactly: Vec<f64> = (0..size).map(chance).collect();
        let add = |sum: &mut f64, chance: &f64| {
            *sum += chance;
            Some(*sum)
        };
        let at_most = exactly.iter().scan(0.0, add).collect();
        let mut at_least: Vec<f64> = exactly.iter().rev().scan(0.0, add).collect();
        at_least.reverse();
        Self { exactly, at_most, at_least }
    }

    fn exactly(&self, count: i64) -> f64 {
        self.exactly[count as usize]
    }

    fn at_most(&self, count: i64) -> f64 {
        usize::try_from(count).map_or(0.0, |count| self.at_most[count])
    }

    fn at_least(&self, count: i64) -> f64 {
        usize::try_from(count).map_or(1.0, |count| self.at_least[count])
    }
}

fn number(symbol: &'static str, si: f64) -> Symbol {
    Symbol { symbol, si, unit: "" }
}

fn step(name: &'static str, formula: &'static str, symbols: Vec<Symbol>, result: Symbol, source: &'static str) -> Step {
    Step { name, formula, symbols, result, source, standing: Standing::Handbook }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A limit of one with k of one: up, two or more events in one interval signal, and nothing else is remembered.
    #[test]
    fn a_chart_without_memory_is_one_over_a_chance() {
        for rate in [0.1_f64, 1.0, 3.0] {
            let run = poisson_run_length(1.0, 1.0, rate, Sense::Up).expect("it signals").value;
            let chance = 1.0 - exp(-rate) * (1.0 + rate);
            assert!((run * chance - 1.0).abs() < 1e-12, "{rate}: {run}");
            let run = poisson_run_length(1.0, 1.0, rate, Sense::Down).expect("it signals").value;
            // Down, an interval without any event signals.
            assert!((run * exp(-rate) - 1.0).abs() < 1e-12, "{rate}: {run}");
        }
    }

    /// Nothing is counted any more: the sum grows by k each interval.
    #[test]
    fn a_feed_that_stopped_is_found_after_h_over_k() {
        for (k, h, wanted) in [(2.5, 8.0, 4.0), (2.0, 8.0, 4.0), (2.5, 7.5, 3.0), (0.1, 0.3, 3.0), (5.5, 8.0, 2.0)] {
            let run = poisson_run_length(k, h, 0.0, Sense::Down).expect("it signals").value;
            assert!((run - wanted).abs() < 1e-12, "{k} {h}: {run}");
        }
    }

    #[test]
    fn what_cannot_be_is_refused() {
        assert!(poisson_run_length(3.0, 5.0, 0.0, Sense::Up).is_err());
        assert!(poisson_run_length(3.0, 5.0, -1.0, Sense::Down).is_err());
        assert!(poisson_run_length(0.0, 5.0, 1.0, Sense::Up).is_err());
        assert!(poisson_run_length(2.885_390_081_777_93, 5.0, 1.0, Sense::Up).is_err(), "no whole number of steps");
        assert!(poisson_run_length(999.0, 1000.0, 1e-3, Sense::Up).is_err(), "a run beyond all numbers");
        assert!(poisson_reference(2.0, 2.0).is_err());
    }
}
