//! Whether a rate has changed: counts before and after held against each other.

use super::Sense;
use crate::math::{exp, ln, ln_1p, ln_gamma};
use crate::quantity::Time;
use crate::working::{Standing, Step, Symbol};
use crate::{Answer, Error};

/// The most events that are taken.
const MOST: f64 = 1e6;

/// How many events were seen in a time.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Count {
    /// How many.
    pub events: u32,
    /// In this time.
    pub exposure: Time,
}

/// How much speaks for a change.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Change {
    /// How often so large a change in that sense would be seen were there none; dimensionless.
    pub p_value: f64,
    /// The logarithm of how much likelier the counts are with two rates than with one, each the likeliest; dimensionless.
    pub log_glr: f64,
}

/// Whether the rate of independent events has changed, from the counts before and after.
///
/// `X₂ | n ~ Binomial(n, T₂ / (T₁ + T₂))`; `ln GLR = n₁ ln(n₁/T₁) + n₂ ln(n₂/T₂) − n ln(n/T)`
///
/// - `before`, `after`: the counts and their times, `n₁`, `T₁`, `n₂`, `T₂`.
/// - `sense`: the change that is looked for.
/// - returns: the one-sided chance and the logarithm of the ratio; the ratio does not know the sense.
///
/// # Range
/// Events that come singly and do not mind one another, up to a million on either side; the chance to nine figures.
/// The moment of the change must not have been picked by the counts.
///
/// # Errors
/// [`Error::OutOfRange`] when a time is not above zero or there are more than a million events.
///
/// # Source
/// `przyborowski-wilenski-1940`
///
/// # Example
/// ```
/// use tribology::quantity::Time;
/// use tribology::series::{Count, Sense, two_rates};
/// let before = Count { events: 4, exposure: Time::from_hours(80.0) };
/// let after = Count { events: 12, exposure: Time::from_hours(100.0) };
/// let found = two_rates(before, after, Sense::Up);
/// assert!(found.is_ok_and(|found| (found.value.p_value - 0.0924569).abs() < 1e-5));
/// ```
pub fn two_rates(before: Count, after: Count, sense: Sense) -> Result<Answer<Change>, Error> {
    let n1 = Error::unless_within("number of events before", f64::from(before.events), 0.0, MOST)?;
    let n2 = Error::unless_within("number of events after", f64::from(after.events), 0.0, MOST)?;
    let t1 = Error::quantity_positive("exposure before", before.exposure)?.seconds();
    let t2 = Error::quantity_positive("exposure after", after.exposure)?.seconds();
    let n = before.events + after.events;
    // Shares of the whole, so that neither is found as a difference.
    let [share1, share2] = [t1 / (t1 + t2), t2 / (t1 + t2)];
    let p_value = match sense {
        Sense::Up => binomial(n, [share2, share1], after.events, n),
        Sense::Down => binomial(n, [share2, share1], 0, after.events),
    };
    // The ratio of each count to what the common rate would give: the same number without large terms that cancel.
    let part = |count: f64, share: f64| if count == 0.0 { 0.0 } else { count * ln(count / (f64::from(n) * share)) };
    let log_glr = (part(n1, share1) + part(n2, share2)).max(0.0);
    let number = |symbol, si| Symbol { symbol, si, unit: "" };
    let seconds = |symbol, si| Symbol { symbol, si, unit: "s" };
    let symbols = vec![number("n1", n1), seconds("T1", t1), number("n2", n2), seconds("T2", t2)];
    let step = |name, formula, result| Step {
        name,
        formula,
        symbols: symbols.clone(),
        result,
        source: "przyborowski-wilenski-1940",
        standing: Standing::Handbook,
    };
    let chance = match sense {
        Sense::Up => "P(X2 ≥ n2), X2 binomial of n1 + n2 with T2 / (T1 + T2)",
        Sense::Down => "P(X2 ≤ n2), X2 binomial of n1 + n2 with T2 / (T1 + T2)",
    };
    let ratio = "ln GLR = n1 ln(n1/T1) + n2 ln(n2/T2) − n ln(n/T)";
    let mut answer = Answer::of(
        Change { p_value, log_glr },
        step("Chance of so large a change without one", chance, number("p", p_value)),
    );
    answer.steps.push(step("How much likelier with a change", ratio, number("ln GLR", log_glr)));
    Ok(answer)
}

/// The chance of a count from `from` to `to`, both included, among `n` with these shares.
///
/// Terms from the largest outward, each from its neighbour, until they no longer count.
fn binomial(n: u32, [yes, no]: [f64; 2], from: u32, to: u32) -> f64 {
    if from == 0 && to == n {
        return 1.0;
    }
    let odds = yes / no;
    let likeliest = ((f64::from(n) + 1.0) * yes) as u32;
    let top = likeliest.clamp(from, to);
    let ln_choose = |k: u32| {
        let factorial = |of: u32| ln_gamma(f64::from(of) + 1.0);
        factorial(n) - factorial(k) - factorial(n - k)
    };
    let ln_share = |share: f64, other: f64| if share > 0.5 { ln_1p(-other) } else { ln(share) };
    let powers = |k: u32| f64::from(k) * ln_share(yes, no) + f64::from(n - k) * ln_share(no, yes);
    let mut sum = 1.0;
    let (mut term, mut k) = (1.0, top);
    while k > from && term > sum * 1e-18 {
        term *= f64::from(k) / (f64::from(n - k + 1) * odds);
        sum += term;
        k -= 1;
    }
    (term, k) = (1.0, top);
    while k < to && term > sum * 1e-18 {
        term *= f64::from(n - k) * odds / f64::from(k + 1);
        sum += term;
        k += 1;
    }
    (exp(ln_choose(top) + powers(top)) * sum).min(1.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn count(events: u32, hours: f64) -> Count {
        Count { events, exposure: Time::from_hours(hours) }
    }

    /// Three events after and none before in equal times: one half to the third power.
    #[test]
    fn equal_times_are_tosses_of_a_coin() {
        let found = two_rates(count(0, 10.0), count(3, 10.0), Sense::Up).expect("it can be said").value;
        assert!((found.p_value - 0.125).abs() < 1e-15, "{found:?}");
        // 3 ln(3/10) − 3 ln(3/20) = 3 ln 2.
        assert!((found.log_glr - 3.0 * std::f64::consts::LN_2).abs() < 1e-14, "{found:?}");
    }

    #[test]
    fn nothing_seen_says_nothing() {
        let found = two_rates(count(0, 10.0), count(0, 20.0), Sense::Up).expect("it can be said").value;
        assert_eq!((found.p_value, found.log_glr), (1.0, 0.0));
    }

    #[test]
    fn what_cannot_be_is_refused() {
        assert!(two_rates(count(1, 0.0), count(1, 1.0), Sense::Up).is_err());
        assert!(two_rates(count(1, 1.0), count(2_000_000, 1.0), Sense::Up).is_err());
    }
}
