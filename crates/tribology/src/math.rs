//! The one door to powers, roots, logarithms and kin.
//!
//! The standard library leaves these to the machine, whose last digit may differ from another's; these come from a
//! library in plain Rust, so that the same input gives the same bytes everywhere. Clippy bans the others in this crate.

macro_rules! doors {
    ($($(#[$about:meta])* $name:ident($($argument:ident),+) = $of:ident;)+) => {$(
        $(#[$about])*
        #[must_use]
        pub fn $name($($argument: f64),+) -> f64 {
            libm::$of($($argument),+)
        }
    )+};
}

doors! {
    /// `x` to the power `y`.
    pow(x, y) = pow;
    /// The square root.
    sqrt(x) = sqrt;
    /// The cube root.
    cbrt(x) = cbrt;
    /// The length of the hypotenuse over two sides.
    hypot(x, y) = hypot;
    /// e to the power `x`.
    exp(x) = exp;
    /// e to the power `x`, less one; exact near zero.
    exp_m1(x) = expm1;
    /// The natural logarithm.
    ln(x) = log;
    /// The natural logarithm of one more than `x`; exact near zero.
    ln_1p(x) = log1p;
    /// The logarithm to the base ten.
    log10(x) = log10;
    /// The logarithm to the base two.
    log2(x) = log2;
    /// The sine of an angle in radians.
    sin(x) = sin;
    /// The cosine of an angle in radians.
    cos(x) = cos;
    /// The tangent of an angle in radians.
    tan(x) = tan;
    /// The angle in radians, from -π/2 to π/2, whose sine is `x`.
    asin(x) = asin;
    /// The angle in radians, from 0 to π, whose cosine is `x`.
    acos(x) = acos;
    /// The angle in radians, from -π/2 to π/2, whose tangent is `x`.
    atan(x) = atan;
    /// The angle in radians, from -π to π, of the point (`x`, `y`).
    atan2(y, x) = atan2;
    /// The hyperbolic sine.
    sinh(x) = sinh;
    /// The hyperbolic cosine.
    cosh(x) = cosh;
    /// The hyperbolic tangent.
    tanh(x) = tanh;
    /// The natural logarithm of the gamma function.
    ln_gamma(x) = lgamma;
    /// The error function.
    erf(x) = erf;
    /// One less the error function; exact where that is small.
    erfc(x) = erfc;
}

/// Ten to the power `x`.
#[must_use]
pub fn exp10(x: f64) -> f64 {
    libm::exp10(x)
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::f64::consts::{E, FRAC_PI_2, LN_2, LN_10, PI, SQRT_2};

    /// The constants of the standard library are printed values to the last digit; these doors must meet them.
    #[test]
    fn known_constants_are_met_to_the_last_digit_or_the_one_before() {
        let met = [
            (exp(1.0), E),
            (ln(2.0), LN_2),
            (ln(10.0), LN_10),
            (sqrt(2.0), SQRT_2),
            (pow(2.0, 0.5), SQRT_2),
            (acos(-1.0), PI),
            (2.0 * asin(1.0), PI),
            (atan2(1.0, 0.0), FRAC_PI_2),
            (sin(FRAC_PI_2), 1.0),
            (log10(1e5), 5.0),
            (log2(8.0), 3.0),
            (exp10(3.0), 1000.0),
            (cbrt(27.0), 3.0),
            (hypot(3.0, 4.0), 5.0),
            (expm1_over_ln(), 1.0),
            (ln_gamma(5.0), ln(24.0)),
            (erf(0.5) + erfc(0.5), 1.0),
        ];
        for (found, known) in met {
            assert!((found - known).abs() <= 2.0 * f64::EPSILON * known, "{found} for {known}");
        }
    }

    fn expm1_over_ln() -> f64 {
        exp_m1(ln_1p(1e-9)) / 1e-9
    }
}
