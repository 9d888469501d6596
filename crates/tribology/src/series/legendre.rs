//! The points and weights of Gauss and Legendre, with which a smooth function is summed over a stretch.

use crate::math::cos;
use std::f64::consts::PI;

/// Points and weights for the stretch from zero to `to`, exact for polynomials up to twice `count` less one.
///
/// Newton's method on the Legendre polynomial, from the usual first guess; a few steps for each point.
///
/// Source: `abramowitz-stegun`, 25.4.29.
pub(super) fn legendre(count: u32, to: f64) -> Vec<(f64, f64)> {
    let point = |number: u32| {
        let mut x = cos(PI * (f64::from(number) + 0.75) / (f64::from(count) + 0.5));
        let mut slope = 0.0;
        for _ in 0..6 {
            let value;
            (value, slope) = polynomial(count, x);
            x -= value / slope;
        }
        let weight = 2.0 / ((1.0 - x * x) * slope * slope);
        // From one end to the other, as x goes from one to minus one.
        (to * (1.0 - x) / 2.0, to * weight / 2.0)
    };
    (0..count).map(point).collect()
}

/// The Legendre polynomial of this degree and its slope.
fn polynomial(degree: u32, x: f64) -> (f64, f64) {
    let (mut before, mut value) = (1.0, x);
    for n in 2..=degree {
        let n = f64::from(n);
        (before, value) = (value, ((2.0 * n - 1.0) * x * value - (n - 1.0) * before) / n);
    }
    (value, f64::from(degree) * (x * value - before) / (x * x - 1.0))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::math::pow;

    /// The integral of x^n from zero to two is 2^(n+1) / (n+1).
    #[test]
    fn polynomials_are_summed_exactly() {
        for count in [2, 5, 24, 200] {
            for power in 0..(2 * count).min(40) {
                let sum: f64 = legendre(count, 2.0).iter().map(|(x, weight)| weight * pow(*x, f64::from(power))).sum();
                let exact = pow(2.0, f64::from(power + 1)) / f64::from(power + 1);
                assert!((sum / exact - 1.0).abs() < 1e-12, "{count} points, power {power}: {sum}, not {exact}");
            }
        }
    }
}
