//! The gap round a journal, and the variable that makes its integrals plain.
//!
//! Angles `θ` run from the widest gap in the direction of rotation. Sommerfeld's variable `γ` follows from
//! `1 + ε cos θ = (1 − ε²) / (1 − ε cos γ)`; even steps of it are short where the gap is narrow.

use std::f64::consts::{PI, TAU};

use crate::math;

/// The gap of a journal out of centre by a part `ε` of the clearance, in units of the radial clearance.
#[derive(Clone, Copy, Debug)]
pub(super) struct Gap {
    pub(super) epsilon: f64,
}

impl Gap {
    /// The square root of `1 − ε²`, without loss near one.
    pub(super) fn root(self) -> f64 {
        math::sqrt((1.0 - self.epsilon) * (1.0 + self.epsilon))
    }

    /// The film thickness at an angle.
    pub(super) fn at(self, theta: f64) -> f64 {
        // Near the narrowest gap `1 + ε cos θ` would lose its digits.
        let half = math::cos(0.5 * theta);
        (1.0 - self.epsilon) + 2.0 * self.epsilon * half * half
    }

    /// The film thickness at Sommerfeld's variable.
    pub(super) fn at_gamma(self, gamma: f64) -> f64 {
        let half = math::sin(0.5 * gamma);
        (1.0 - self.epsilon) * (1.0 + self.epsilon) / ((1.0 - self.epsilon) + 2.0 * self.epsilon * half * half)
    }

    /// Sommerfeld's variable at an angle, whole turns kept.
    pub(super) fn gamma(self, theta: f64) -> f64 {
        self.turned(theta, math::sqrt((1.0 - self.epsilon) / (1.0 + self.epsilon)))
    }

    /// The angle at Sommerfeld's variable, whole turns kept.
    pub(super) fn theta(self, gamma: f64) -> f64 {
        self.turned(gamma, math::sqrt((1.0 + self.epsilon) / (1.0 - self.epsilon)))
    }

    /// `2 arctan(factor · tan(angle / 2))` on the branch of the angle.
    fn turned(self, angle: f64, factor: f64) -> f64 {
        let turns = ((angle + PI) / TAU).floor();
        let within = 0.5 * (angle - TAU * turns);
        TAU * turns + 2.0 * math::atan2(factor * math::sin(within), math::cos(within))
    }

    /// `∫ (H − 1) / H³ dθ` from the widest gap on, times `(1 − ε²)^(5/2)`.
    pub(super) fn wedge(self, gamma: f64) -> f64 {
        let e = self.epsilon;
        let (sin, cos) = (math::sin(gamma), math::cos(gamma));
        e * ((1.0 + e * e) * sin - 1.5 * e * gamma - 0.5 * e * sin * cos)
    }

    /// `∫ dθ / H³` from the widest gap on, times `(1 − ε²)^(5/2)`.
    pub(super) fn resistance(self, gamma: f64) -> f64 {
        let e = self.epsilon;
        let (sin, cos) = (math::sin(gamma), math::cos(gamma));
        gamma - 2.0 * e * sin + 0.5 * e * e * (gamma + sin * cos)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_variable_and_the_angle_are_a_pair() {
        for epsilon in [1e-6, 0.3, 0.9, 0.999] {
            let gap = Gap { epsilon };
            for theta in [-3.0, -0.4, 0.0, 1.0, 3.0, 3.3, 5.0] {
                let gamma = gap.gamma(theta);
                assert!((gap.theta(gamma) - theta).abs() < 1e-12, "{epsilon} {theta}: {gamma}");
                assert!((gap.at_gamma(gamma) / gap.at(theta) - 1.0).abs() < 1e-10, "{epsilon} {theta}");
            }
        }
    }

    /// The closed integrals against sums of many narrow strips.
    #[test]
    fn the_integrals_are_those_of_the_gap() {
        for epsilon in [0.1, 0.6, 0.95] {
            let (gap, steps) = (Gap { epsilon }, 200_000);
            let (end, power) = (3.7, math::pow(1.0 - epsilon * epsilon, 2.5));
            let width = end / f64::from(steps);
            let sums = (0..steps).fold([0.0; 2], |[wedge, resistance], strip| {
                let h = 1.0 + epsilon * math::cos((f64::from(strip) + 0.5) * width);
                [wedge + width * (h - 1.0) / (h * h * h), resistance + width / (h * h * h)]
            });
            let gamma = gap.gamma(end);
            assert!((gap.wedge(gamma) - power * sums[0]).abs() < 1e-7, "{epsilon}");
            assert!((gap.resistance(gamma) - power * sums[1]).abs() < 1e-7, "{epsilon}");
        }
    }
}
