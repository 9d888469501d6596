//! A fit of our own solutions of Reynolds' equation, so that a film costs microseconds: what Ocvirk's short bearing says, corrected by
//! smooth functions that were fitted once and are kept in `table.rs`. Outside the fit the known limits lead on.

mod table;

use super::state::{Core, JournalState};
use super::{BOUNDARY, ECCENTRICITIES, answer_of, long, short, slender};
use crate::{Answer, Error, Standing, math};
use table::{LENGTHS, TABLE};

/// The highest eccentricity for which there is an answer.
pub(super) const HIGHEST: f64 = 1.0 - 1e-9;
/// The highest for which the closed form of the infinitely long bearing keeps eight digits.
const LAST_CLOSED: f64 = 0.9999;

/// The film of a whole journal bearing, by a fit of our own solutions.
///
/// `ln(S / S_Ocvirk)` and its like for the attitude, the flows and the peak pressure, as sums of products of Chebyshev polynomials of
/// `−ln(1 − ε)` and `ln(L/D)`. A shorter bearing than was fitted goes over into Ocvirk's with the square of its length, a longer
/// one into the infinitely long one with `D/L`; above `ε = 0.99` the film is taken as alike to one at 0.99 of the same
/// `√(1 − ε) D/L`. A few microseconds.
///
/// - `ratio`: length over diameter, `L/D`; infinite for a bearing without side flow.
/// - `eccentricity`: `ε`.
/// - returns: the film; the whole circle is taken as sheared.
///
/// # Range
/// Eccentricities to 0.99; above them the answer carries a warning and [`FilmRegime::BoundaryByAnyFinish`](super::FilmRegime).
/// Beside [`journal_reynolds`](super::journal_reynolds) the worst number seen among 80 points with `ε` of 0.02 to 0.99 and `L/D` of 0.1 to 4
/// was 0.003 % off; beyond those lengths 0.1 %; above `ε = 0.99`, to 0.999, 3 %.
///
/// # Errors
/// [`Error::OutOfRange`] when the ratio is not above zero or the eccentricity outside 10⁻⁶ to `1 − 10⁻⁹`.
///
/// # Source
/// `own-calculation`: [`journal_reynolds`](super::journal_reynolds), fitted by `cargo xtask fit-journal`
///
/// # Example
/// ```
/// use tribology::contact::journal::journal_fast;
/// assert!(journal_fast(1.0, 0.6).is_ok_and(|film| (film.value.sommerfeld - 0.121).abs() < 0.001));
/// ```
pub fn journal_fast(ratio: f64, eccentricity: f64) -> Result<Answer<JournalState>, Error> {
    let ratio = slender(ratio)?;
    let epsilon = Error::unless_within("eccentricity", eccentricity, ECCENTRICITIES[0], HIGHEST)?;
    let state = core(ratio, epsilon)?.all_round(ratio, epsilon);
    let formula = "S = S_short exp Σ a Tm(−ln(1 − ε)) Tn(ln L/D), fitted to solutions of Reynolds' equation";
    Ok(answer_of(state, formula, "own-calculation", Standing::OwnCalculation))
}

/// The film in numbers.
pub(super) fn core(ratio: f64, epsilon: f64) -> Result<Core, Error> {
    if epsilon > BOUNDARY {
        narrow(ratio, epsilon)
    } else if ratio.is_infinite() {
        long::core(epsilon)
    } else if ratio > LENGTHS[1] {
        let (last, endless) = (fitted(LENGTHS[1], epsilon), long::core(epsilon)?);
        let part = LENGTHS[1] / ratio;
        let between = |last: f64, endless: f64| endless + (last - endless) * part;
        let flow = between(last.flow, endless.flow);
        Ok(Core {
            // Loads add up along the bearing, not their inverses.
            sommerfeld: 1.0 / between(1.0 / last.sommerfeld, 1.0 / endless.sommerfeld),
            attitude: between(last.attitude, endless.attitude),
            flow,
            side_ratio: last.side_ratio * last.flow * part / flow,
            pressure_ratio: between(last.pressure_ratio, endless.pressure_ratio),
        })
    } else {
        Ok(fitted(ratio, epsilon))
    }
}

/// Inside the fit, or shorter.
fn fitted(ratio: f64, epsilon: f64) -> Core {
    let length = ratio.max(LENGTHS[0]);
    let fade = (ratio / length) * (ratio / length);
    let x = -2.0 * math::ln_1p(-epsilon) / -math::ln_1p(-BOUNDARY) - 1.0;
    let [shortest, longest] = LENGTHS.map(math::ln);
    let y = 2.0 * (math::ln(length) - shortest) / (longest - shortest) - 1.0;
    let factor = |rows: &[[f64; table::BY_LENGTH]]| {
        math::exp(fade * series(rows.iter().map(|row| series(row.iter().copied(), y)), x))
    };
    let short = short::core(ratio, epsilon);
    let [sommerfeld, attitude, flow, side_ratio, pressure_ratio] = TABLE.each_ref().map(|rows| factor(rows));
    Core {
        sommerfeld: short.sommerfeld * sommerfeld,
        attitude: short.attitude * attitude,
        flow: short.flow * flow,
        side_ratio: short.side_ratio * side_ratio,
        pressure_ratio: short.pressure_ratio * pressure_ratio,
    }
}

/// Above the highest eccentricity of the fit. There the film is a short stretch at the narrowest gap, and all such stretches
/// with the same `√(1 − ε) D/L` are alike beside the infinitely long bearing of their eccentricity.
fn narrow(ratio: f64, epsilon: f64) -> Result<Core, Error> {
    let closer = (1.0 - epsilon) / (1.0 - BOUNDARY);
    let (alike, here) = (core(ratio / math::sqrt(closer), BOUNDARY)?, core(ratio, BOUNDARY)?);
    let (before, after) = (long::core(BOUNDARY)?, endless(epsilon)?);
    Ok(Core {
        sommerfeld: after.sommerfeld * alike.sommerfeld / before.sommerfeld,
        attitude: after.attitude * alike.attitude / before.attitude,
        flow: if ratio.is_infinite() { after.flow } else { here.flow },
        side_ratio: if ratio.is_infinite() { 0.0 } else { 1.0 - (1.0 - here.side_ratio) * closer },
        pressure_ratio: after.pressure_ratio * alike.pressure_ratio / before.pressure_ratio,
    })
}

/// The infinitely long bearing; where its closed form has lost its digits, by the powers of `1 − ε` that it has there.
fn endless(epsilon: f64) -> Result<Core, Error> {
    let last = epsilon.min(LAST_CLOSED);
    let (film, closer) = (long::core(last)?, (1.0 - epsilon) / (1.0 - last));
    let root = math::sqrt(closer);
    Ok(Core {
        sommerfeld: film.sommerfeld * closer,
        attitude: film.attitude * root,
        flow: film.flow * closer,
        side_ratio: 0.0,
        pressure_ratio: film.pressure_ratio * root,
    })
}

/// A sum of Chebyshev polynomials by Clenshaw's rule.
fn series(coefficients: impl DoubleEndedIterator<Item = f64>, x: f64) -> f64 {
    let (mut next, mut after) = (0.0, 0.0);
    let mut coefficients = coefficients.rev().peekable();
    while let Some(coefficient) = coefficients.next() {
        if coefficients.peek().is_none() {
            return coefficient + x * next - after;
        }
        (next, after) = (coefficient + 2.0 * x * next - after, next);
    }
    0.0
}

#[cfg(test)]
mod tests {
    use super::*;

    /// `T₀ = 1, T₁ = x, T₂ = 2x² − 1, T₃ = 4x³ − 3x`.
    #[test]
    fn a_series_is_its_polynomials() {
        for x in [-1.0, -0.3, 0.0, 0.7, 1.0] {
            let wanted = 0.5 - 2.0 * x + 3.0 * (2.0 * x * x - 1.0) + 0.25 * (4.0 * x * x * x - 3.0 * x);
            assert!((series([0.5, -2.0, 3.0, 0.25].into_iter(), x) - wanted).abs() < 1e-14, "{x}");
        }
    }

    /// The limits join the fit without a step that anybody could see.
    #[test]
    fn the_limits_join_the_fit() {
        for epsilon in [0.05, 0.4, 0.8, 0.95, 0.99] {
            for ratio in LENGTHS {
                let [below, above] = [0.999_999, 1.000_001].map(|part| core(ratio * part, epsilon).expect("a film"));
                assert!((below.sommerfeld / above.sommerfeld - 1.0).abs() < 1e-4, "{ratio} {epsilon}");
            }
        }
        for ratio in [0.05, 0.3, 1.0, 8.0, f64::INFINITY] {
            let [below, above] = [0.99, 0.990_000_01].map(|epsilon| core(ratio, epsilon).expect("a film"));
            for (below, above) in [(below.sommerfeld, above.sommerfeld), (below.flow, above.flow)] {
                assert!((below / above - 1.0).abs() < 1e-4, "{ratio}");
            }
        }
    }
}
