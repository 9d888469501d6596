//! The infinitely short bearing after Ocvirk: pressure follows from the flow along the bearing alone, and the film is closed-form.

use std::f64::consts::PI;

use super::gap::Gap;
use super::state::{Core, JournalState};
use super::{answer_of, eccentric, slender};
use crate::{Answer, Error, Standing, math};

/// The film of a short journal bearing.
///
/// `S (L/D)² = (1 − ε²)² / (π ε √(π² (1 − ε²) + 16 ε²))`, `tan φ = π √(1 − ε²) / (4 ε)`, `Qs = 2 π ε R C N L`
///
/// - `ratio`: length over diameter, `L/D`.
/// - `eccentricity`: `ε`.
/// - returns: the film, whole for half a turn from the widest gap; the whole circle is taken as sheared.
///
/// # Range
/// Lengths to a quarter of the diameter at moderate eccentricity; beside our own solution the Sommerfeld number at `L/D = 1/4` is
/// 7 % low at `ε = 0.6` and 28 % at 0.9. The answer carries a warning above `L/D = 1/4`.
///
/// # Errors
/// [`Error::OutOfRange`] when the ratio is not above zero or infinite, or the eccentricity outside 10⁻⁶ to 0.999.
///
/// # Source
/// `ocvirk-1953`
///
/// # Example
/// ```
/// use tribology::contact::journal::journal_short;
/// assert!(journal_short(0.25, 0.6).is_ok_and(|film| (film.value.sommerfeld - 1.00048).abs() < 1e-5));
/// ```
pub fn journal_short(ratio: f64, eccentricity: f64) -> Result<Answer<JournalState>, Error> {
    let ratio = Error::unless_positive("length/diameter", slender(ratio)?)?;
    let epsilon = eccentric(eccentricity)?;
    let state = core(ratio, epsilon).all_round(ratio, epsilon);
    let formula = "S (L/D)² = (1 − ε²)² / (π ε √(π² (1 − ε²) + 16 ε²))";
    let answer = answer_of(state, formula, "ocvirk-1953", Standing::Handbook);
    Ok(answer.vouched_within("length/diameter", ratio, 0.0, 0.25))
}

/// The film in numbers.
pub(super) fn core(ratio: f64, epsilon: f64) -> Core {
    let gap = Gap { epsilon };
    let square = gap.root() * gap.root();
    let vector = math::sqrt(PI * PI * square + 16.0 * epsilon * epsilon);
    let sommerfeld = square * square / (PI * epsilon * vector) / (ratio * ratio);
    // Where sin θ / H³ is greatest.
    let cosine = -6.0 * epsilon / (1.0 + math::sqrt(1.0 + 24.0 * epsilon * epsilon));
    let h = 1.0 + epsilon * cosine;
    let peak = 0.5 * ratio * ratio * epsilon * math::sqrt(1.0 - cosine * cosine) / (h * h * h);
    Core {
        sommerfeld,
        attitude: math::atan2(PI * gap.root(), 4.0 * epsilon),
        flow: PI * (1.0 + epsilon),
        side_ratio: 2.0 * epsilon / (1.0 + epsilon),
        pressure_ratio: 0.5 / (6.0 * PI * sommerfeld) / peak,
    }
}
