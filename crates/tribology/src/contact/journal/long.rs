//! The infinitely long bearing: no oil leaves by the end faces, and the film is a closed form but for where it ruptures.

use std::f64::consts::{FRAC_PI_2, PI, TAU};

use super::gap::Gap;
use super::state::{Core, JournalState};
use super::{answer_of, eccentric};
use crate::root::root;
use crate::{Answer, Error, Standing, math};

/// The film of an infinitely long journal bearing.
///
/// `dp/dθ = (H − H_m) / H³`, `H = 1 + ε cos θ`; `p = 0` at the widest gap and, with its slope, where `H = H_m`
///
/// The place of rupture is found as a root between closed forms in Sommerfeld's variable, to the last digits; microseconds.
///
/// - `eccentricity`: `ε`.
/// - returns: the film; the whole circle is taken as sheared.
///
/// # Range
/// As a limit for long bearings: at a length of ten diameters and `ε = 0.6` the Sommerfeld number is still 9 % above it.
///
/// # Errors
/// [`Error::OutOfRange`] when the eccentricity is outside 10⁻⁶ to 0.999.
///
/// # Source
/// `sommerfeld-1904` for the integrals, `swift-1932` for the rupture
///
/// # Example
/// ```
/// use tribology::contact::journal::journal_long;
/// assert!(journal_long(0.6).is_ok_and(|film| (film.value.sommerfeld - 0.0389).abs() < 0.0002));
/// ```
pub fn journal_long(eccentricity: f64) -> Result<Answer<JournalState>, Error> {
    let epsilon = eccentric(eccentricity)?;
    let state = core(epsilon)?.all_round(f64::INFINITY, epsilon);
    let formula = "dp/dθ = (H − Hm) / H³, p = 0 at θ = 0 and at H = Hm, S = 1 / (6 π ∫p)";
    Ok(answer_of(state, formula, "sommerfeld-1904", Standing::Handbook))
}

/// The film in numbers.
pub(super) fn core(epsilon: f64) -> Result<Core, Error> {
    let gap = Gap { epsilon };
    // The thickness less one, over the eccentricity: the cosine of the angle.
    let cosine = |gamma: f64| (math::cos(gamma) - epsilon) / (1.0 - epsilon * math::cos(gamma));
    let pressure = |gamma: f64, cosine: f64| gap.wedge(gamma) / epsilon - cosine * gap.resistance(gamma);
    let rupture = |gamma: f64| pressure(gamma, cosine(gamma));
    let gamma = root("place of rupture", [PI, 3.0 * FRAC_PI_2], 1e-14, rupture)?.at;
    let (last, thickness) = (cosine(gamma), gap.at_gamma(gamma));
    let scale = math::pow(gap.root(), 5.0);
    let (sin, cos) = (math::sin(gamma), math::cos(gamma));
    let squares = 0.5 * (gamma + sin * cos) - 2.0 * epsilon * sin + epsilon * epsilon * gamma;
    let across = (epsilon * squares - last * gap.wedge(gamma)) / scale;
    let widest = 1.0 + epsilon;
    let along = epsilon * (1.0 - last) * (1.0 - last) / (2.0 * thickness * widest * widest);
    let load = math::hypot(along, across);
    let peak = epsilon * pressure(TAU - gamma, last) / scale;
    Ok(Core {
        sommerfeld: 1.0 / (6.0 * PI * load),
        attitude: math::atan2(across, along),
        flow: PI * thickness,
        side_ratio: 0.0,
        pressure_ratio: 0.5 * load / peak,
    })
}
