//! The gamma distribution: its two tails, and the point that leaves a given part in one of them.
//!
//! Below one more than the shape the tail is a power series, above it a continued fraction; each gives the tail that it finds without
//! taking a difference. Accuracy: about the shape times its logarithm in last digits. Cost: of the order of the root of the shape.

use crate::Error;
use crate::math::{exp, ln, ln_gamma};
use crate::root::root;

/// Terms after which the series or the fraction is given up; a shape of 1e9 needs a few hundred thousand.
const TERMS: u32 = 2_000_000;

/// Which tail is meant.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Tail {
    /// Below the point.
    Lower,
    /// Above the point.
    Upper,
}

/// The part of a gamma distribution of this shape and scale one that lies in a tail.
///
/// Source: `didonato-morris-1986`.
pub(super) fn tail(shape: f64, at: f64, which: Tail) -> f64 {
    if at <= 0.0 {
        return if which == Tail::Lower { 0.0 } else { 1.0 };
    }
    let front = exp(shape * ln(at) - at - ln_gamma(shape));
    let (found, part) = if at < shape + 1.0 {
        (Tail::Lower, front * series(shape, at))
    } else {
        (Tail::Upper, front * fraction(shape, at))
    };
    if found == which { part.min(1.0) } else { (1.0 - part).max(0.0) }
}

/// `Σ x^n / (a (a+1) … (a+n))`.
fn series(shape: f64, at: f64) -> f64 {
    let (mut term, mut sum, mut below) = (1.0 / shape, 1.0 / shape, shape);
    for _ in 0..TERMS {
        below += 1.0;
        term *= at / below;
        sum += term;
        if term <= sum * f64::EPSILON / 4.0 {
            break;
        }
    }
    sum
}

/// `1/(x+1−a− 1(1−a)/(x+3−a− 2(2−a)/(x+5−a− …)))`, from the front by the method of Lentz.
fn fraction(shape: f64, at: f64) -> f64 {
    let nonzero = |x: f64| if x.abs() < f64::MIN_POSITIVE { f64::MIN_POSITIVE } else { x };
    let mut b = at + 1.0 - shape;
    let mut d = 1.0 / nonzero(b);
    let (mut c, mut product) = (f64::MIN_POSITIVE.recip(), d);
    for n in 1..TERMS {
        let n = f64::from(n);
        let a = -n * (n - shape);
        b += 2.0;
        d = 1.0 / nonzero(a * d + b);
        c = nonzero(b + a / c);
        let change = c * d;
        product *= change;
        if (change - 1.0).abs() <= f64::EPSILON {
            break;
        }
    }
    product
}

/// The point of a gamma distribution that leaves this part, above zero and at most a half, in a tail.
pub(super) fn point(shape: f64, part: f64, which: Tail) -> Result<f64, Error> {
    // The lower tail at x is below x^a / Γ(a+1), so the point where that bound reaches the lower part is not above the point sought.
    let lower_part = if which == Tail::Lower { part } else { 1.0 - part };
    let low = (ln(lower_part) + ln_gamma(shape + 1.0)) / shape;
    let mut high = ln(shape.max(1.0));
    let misses = |at: f64| ln(tail(shape, exp(at), which)) - ln(part);
    let beyond = |miss: f64| if which == Tail::Lower { miss > 0.0 } else { miss < 0.0 };
    while !beyond(misses(high)) {
        high += std::f64::consts::LN_2;
    }
    // A tail of nothing has no logarithm that could be drawn a chord to.
    let bounded = |at: f64| misses(at).max(-1e4);
    // In logarithms, so that a point near nothing keeps its figures.
    root("limit of the gamma distribution", [low.min(high) - 1.0, high], 1e-14, bounded).map(|root| exp(root.at))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// With a whole shape n the upper tail at x is the chance of fewer than n events where x are expected: a finite sum.
    #[test]
    fn whole_shapes_agree_with_sums_of_poisson_chances() {
        for shape in [1_u32, 2, 3, 10, 40, 150] {
            for at in [0.01, 0.7, 1.0, 2.5, 9.0, 30.0, 41.0, 140.0, 200.0] {
                let chance = |count: u32| exp(f64::from(count) * ln(at) - at - ln_gamma(f64::from(count) + 1.0));
                let upper: f64 = (0..shape).map(chance).sum();
                let lower: f64 = (shape..shape + 600).map(chance).sum();
                for (which, sum) in [(Tail::Upper, upper), (Tail::Lower, lower)] {
                    let found = tail(f64::from(shape), at, which);
                    // A tail that is found as what the other leaves keeps the figures of one, not of itself.
                    assert!((found - sum).abs() <= 1e-12 * sum + 1e-15, "{shape} {at} {which:?}: {found}, not {sum}");
                }
            }
        }
    }

    /// Half a squared normal number has shape one half, so its tail is an error function.
    #[test]
    fn the_shape_of_one_half_is_an_error_function() {
        for at in [1e-6, 0.01, 0.5, 1.4, 1.6, 4.0, 20.0] {
            let (lower, upper) = (tail(0.5, at, Tail::Lower), tail(0.5, at, Tail::Upper));
            let root = crate::math::sqrt(at);
            assert!((lower - crate::math::erf(root)).abs() <= 1e-14 * lower, "{at}");
            assert!((upper - crate::math::erfc(root)).abs() <= 1e-13 * upper + 2e-16, "{at}");
        }
    }

    #[test]
    fn a_point_leaves_the_part_that_was_asked() {
        for shape in [0.05, 0.3, 1.0, 2.0, 7.5, 100.0, 1e4] {
            for part in [1e-9, 1e-3, 0.025, 0.3, 0.5] {
                for which in [Tail::Lower, Tail::Upper] {
                    let at = point(shape, part, which).expect("there is such a point");
                    let left = tail(shape, at, which);
                    assert!((left / part - 1.0).abs() < 1e-8, "{shape} {part} {which:?}: {at} leaves {left}");
                }
            }
        }
    }
}
