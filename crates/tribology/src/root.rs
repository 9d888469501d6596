//! The one solver for a single unknown between two known ends.
//!
//! Start at [`root`]. Systems of unknowns and minima are left to the files that need them.

use crate::Error;

/// A root with how well it was found.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Root {
    /// Where the function crosses zero.
    pub at: f64,
    /// What remains of the function there.
    pub residual: f64,
    /// Evaluations beyond the two ends.
    pub iterations: u32,
}

/// The point between two ends at which a continuous function crosses zero.
///
/// Regula falsi with the Illinois weight, and a halving step whenever the bracket has not shrunk by half in three.
///
/// - `name`: what is sought, as an error will name it.
/// - `ends`: the two ends, in any order, in the unit of the unknown.
/// - `tolerance`: width of the final bracket, in the unit of the unknown; the root lies inside it.
/// - `f`: the function, in any unit.
/// - returns: the root, the residual and the count of evaluations.
///
/// # Range
/// Any finite ends; `tolerance` zero asks for neighbouring numbers.
///
/// # Errors
/// [`Error::NotBracketed`] when `f` has the same sign at both ends or is not a number there;
/// [`Error::NotConverged`] after 200 evaluations, or where `f` is not a number on the way.
///
/// # Source
/// `dowell-jarratt-1971`
///
/// # Example
/// ```
/// use tribology::root::root;
/// let found = root("side of a square of 2", [0.0, 2.0], 1e-12, |x| x * x - 2.0);
/// assert!(found.is_ok_and(|root| (root.at - 2.0_f64.sqrt()).abs() < 1e-12));
/// ```
pub fn root(name: &'static str, ends: [f64; 2], tolerance: f64, mut f: impl FnMut(f64) -> f64) -> Result<Root, Error> {
    let [mut a, mut b] = ends;
    let (mut fa, mut fb) = (f(a), f(b));
    for (at, residual) in [(a, fa), (b, fb)] {
        if residual == 0.0 && at.is_finite() {
            return Ok(Root { at, residual, iterations: 0 });
        }
    }
    let opposed = (fa < 0.0 && fb > 0.0) || (fa > 0.0 && fb < 0.0);
    if !(opposed && a.is_finite() && b.is_finite()) {
        return Err(Error::NotBracketed { name, low: a.min(b), high: a.max(b) });
    }
    let (mut weight_a, mut weight_b, mut moved) = (1.0, 1.0, None);
    let (mut last, mut residual) = (b, fb);
    let mut width_three_ago = (b - a).abs();
    for iterations in 1..=200 {
        let middle = a + (b - a) / 2.0;
        let slow = iterations % 3 == 0 && (b - a).abs() > width_three_ago / 2.0;
        if iterations % 3 == 0 {
            width_three_ago = (b - a).abs();
        }
        let chord = a - (b - a) * (fa * weight_a) / (fb * weight_b - fa * weight_a);
        let inside = chord > a.min(b) && chord < a.max(b);
        let at = if slow || !inside { middle } else { chord };
        (last, residual) = (at, f(at));
        if residual.is_nan() {
            return Err(Error::NotConverged { name, last, residual, iterations });
        }
        if residual == 0.0 || at == a || at == b {
            return Ok(Root { at, residual, iterations });
        }
        // The end that stays put twice running counts for half, or the chord would creep up on it for ever.
        if (residual < 0.0) == (fa < 0.0) {
            (a, fa) = (at, residual);
            weight_b *= if moved == Some(End::A) { 0.5 } else { 1.0 };
            weight_a = 1.0;
            moved = Some(End::A);
        } else {
            (b, fb) = (at, residual);
            weight_a *= if moved == Some(End::B) { 0.5 } else { 1.0 };
            weight_b = 1.0;
            moved = Some(End::B);
        }
        if (b - a).abs() <= tolerance {
            return Ok(Root { at, residual, iterations });
        }
    }
    Err(Error::NotConverged { name, last, residual, iterations: 200 })
}

/// Which end of the bracket moved last.
#[derive(PartialEq)]
enum End {
    A,
    B,
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::math::{cos, exp};

    #[track_caller]
    fn check(ends: [f64; 2], f: impl Fn(f64) -> f64, wanted: f64) {
        let found = root("x", ends, 1e-14, f).expect("the ends enclose a root");
        assert!((found.at - wanted).abs() < 1e-13, "{found:?}");
        assert!(found.iterations < 60, "{found:?}");
    }

    /// The cosine's fixed point and the omega constant: OEIS A003957 and A030178. The square root of two is known.
    #[test]
    fn known_roots_are_found() {
        check([0.0, 1.0], |x| x - cos(x), 0.739_085_133_215_160_6);
        check([0.0, 1.0], |x| x * exp(x) - 1.0, 0.567_143_290_409_784);
        check([0.0, 2.0], |x| x * x - 2.0, std::f64::consts::SQRT_2);
        check([2.0, 0.0], |x| 2.0 - x * x, std::f64::consts::SQRT_2);
    }

    /// On such shapes the plain chord creeps.
    #[test]
    fn hard_shapes_are_found_too() {
        check([0.0, 4.0], |x| x * x * x * x * x * x * x * x * x - 1.0, 1.0);
        check([-1.0, 1e6], |x| x - 0.25, 0.25);
        check([0.0, 1.0], |x| if x < 0.3 { -1e-9 } else { 1e9 }, 0.3);
    }

    #[test]
    fn a_root_at_an_end_needs_no_search() {
        let found = root("x", [0.0, 1.0], 0.0, |x| x);
        assert_eq!(found, Ok(Root { at: 0.0, residual: 0.0, iterations: 0 }));
    }

    #[test]
    fn ends_without_a_root_between_them_are_refused() {
        let fault = Error::NotBracketed { name: "x", low: 1.0, high: 2.0 };
        assert_eq!(root("x", [2.0, 1.0], 0.0, |x| x), Err(fault));
        let nowhere = root("x", [f64::NEG_INFINITY, 1.0], 0.0, |x| x - 0.5);
        assert!(matches!(nowhere, Err(Error::NotBracketed { .. })));
        assert!(matches!(root("x", [0.0, 1.0], 0.0, |_| f64::NAN), Err(Error::NotBracketed { .. })));
    }

    #[test]
    fn a_function_that_breaks_on_the_way_is_told() {
        let broken = root("x", [0.0, 1.0], 0.0, |x| {
            if x == 0.0 {
                -1.0
            } else if x == 1.0 {
                1.0
            } else {
                f64::NAN
            }
        });
        let Err(Error::NotConverged { name, last, residual, iterations }) = broken else {
            panic!("no answer can come of it");
        };
        assert_eq!((name, last, residual.is_nan(), iterations), ("x", 0.5, true, 1));
    }
}
