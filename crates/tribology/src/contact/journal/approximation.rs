//! The closed approximation of the standards for plain bearings, with the coefficients of Butenschön.

use std::f64::consts::{PI, TAU};

use super::gap::Gap;
use super::state::{FilmRegime, JournalState};
use super::{answer_of, eccentric};
use crate::quantity::Angle;
use crate::{Answer, Error, Standing, math};

/// Lengths over diameters for which the coefficients are meant.
const RATIOS: [f64; 2] = [0.125, 1.0];
/// Beyond this the side flow of the approximation nears zero and its load no longer means anything.
const LONGEST: f64 = 2.0;

/// Coefficients of the load number, `a₁` and `a₂`, by powers of the length over the diameter.
///
/// Source: `butenschoen-1976`.
const A1: [f64; 5] = [1.1642, -1.9456, 7.1161, -10.1073, 5.0141];
/// Source: `butenschoen-1976`.
const A2: [f64; 5] = [-1.000_026, -0.023_634, -0.4215, -0.038_817, -0.090_551];
/// Coefficients of the attitude, `a₃` to `a₇`, constant and slope in the length over the diameter.
///
/// Source: `butenschoen-1976`.
const A3_TO_A7: [[f64; 2]; 5] =
    [[1.152_624, -0.104_565], [-2.5905, 0.798_745], [8.733_93, -2.3291], [-13.3414, 3.424_337], [6.6294, -1.591_732]];
/// How side flow falls off with length: `Q₁ = D³ ψ ω · 0.25 (x − 0.223 x³) ε`.
///
/// Source: `iso-7902`.
const SIDE_FLOW: f64 = 0.223;

/// The film of a journal bearing by the closed approximation of the standards.
///
/// `So = x² ε / (2 (1 − ε²)²) · √(π² (1 − ε²) + 16 ε²) · a₁ (ε − 1) / (a₂ + ε)`,
/// `β = arctan(π √(1 − ε²) / (2 ε)) · (a₃ + a₄ ε + a₅ ε² + a₆ ε³ + a₇ ε⁴)`, `f/ψ = π / (So √(1 − ε²)) + (ε/2) sin β`,
/// `Q₁ = D³ ψ ω · 0.25 (x − 0.223 x³) ε`
///
/// - `ratio`: length over diameter, `x`.
/// - `eccentricity`: `ε`.
/// - returns: the film; flow in and peak pressure are not given by it.
///
/// # Range
/// `x` of 1/8 to 1; outside the answer carries a warning. At 18 points with `x` of 1/4 to 1 it was up to 5.7 % off its own author's table
/// in `So`, and 1.9° in `β`.
///
/// # Errors
/// [`Error::OutOfRange`] when the ratio is not above zero or above 2, or the eccentricity outside 10⁻⁶ to 0.999.
///
/// # Source
/// `butenschoen-1976`, in `iso-7902`
///
/// # Example
/// ```
/// use tribology::contact::journal::journal_approximation;
/// assert!(journal_approximation(1.0, 0.6).is_ok_and(|film| (film.value.load_number - 1.29702).abs() < 1e-4));
/// ```
pub fn journal_approximation(ratio: f64, eccentricity: f64) -> Result<Answer<JournalState>, Error> {
    let x = Error::unless_within("length/diameter", ratio, f64::MIN_POSITIVE, LONGEST)?;
    let epsilon = eccentric(eccentricity)?;
    let root = Gap { epsilon }.root();
    let square = root * root;
    let polynomial = |coefficients: &[f64], at: f64| coefficients.iter().rev().fold(0.0, |sum, a| sum * at + a);
    let short = x * x * epsilon / (2.0 * square * square) * math::sqrt(PI * PI * square + 16.0 * epsilon * epsilon);
    let load_number = short * polynomial(&A1, x) * (epsilon - 1.0) / (polynomial(&A2, x) + epsilon);
    let bend = A3_TO_A7.map(|[constant, slope]| constant + slope * x);
    let attitude = math::atan2(PI * root, 2.0 * epsilon) * polynomial(&bend, epsilon);
    let state = JournalState {
        ratio: x,
        eccentricity: epsilon,
        sommerfeld: 1.0 / (TAU * load_number),
        load_number,
        film_ratio: 1.0 - epsilon,
        attitude: Angle::from_radians(attitude),
        friction_variable: PI / (load_number * root) + 0.5 * epsilon * math::sin(attitude),
        side_flow_variable: TAU * epsilon * (1.0 - SIDE_FLOW * x * x),
        flow_variable: None,
        side_flow_ratio: None,
        pressure_ratio: None,
        regime: FilmRegime::of(epsilon),
    };
    let formula = "So = x² ε / (2 (1 − ε²)²) √(π² (1 − ε²) + 16 ε²) a1 (ε − 1) / (a2 + ε), S = 1 / (2 π So)";
    let answer = answer_of(state, formula, "butenschoen-1976", Standing::Standard);
    Ok(answer.vouched_within("length/diameter", x, RATIOS[0], RATIOS[1]))
}
