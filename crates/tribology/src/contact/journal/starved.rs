//! A journal that is given less oil than it could carry: the film begins only where the gap has narrowed to what arrives.

use super::gap::Gap;
use super::reynolds;
use super::state::JournalState;
use super::{answer_of, eccentric, slender, symbol};
use crate::quantity::Angle;
use crate::working::Step;
use crate::{Answer, Error, Standing, math};

/// A starved film.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Starved {
    /// The film; the whole circle is taken as sheared, which is the most that friction can be.
    pub state: JournalState,
    /// Where the film begins, counted from the widest gap in the direction of rotation.
    pub begins: Angle,
}

/// The film of a journal bearing to which a layer of oil arrives that is thinner than the widest gap.
///
/// `1 + ε cos θ₁ = supply`, with Reynolds' equation from `θ₁` on
///
/// As [`journal_reynolds`](super::journal_reynolds), with the film begun where the gap equals the supply. What the layer does before
/// it fills the gap is left out, and so is oil that the rupture carries round again; take the answer as the kind of answer it is and
/// never as a verdict on an oil-can bearing.
///
/// - `ratio`: length over diameter, `L/D`; may be infinite.
/// - `eccentricity`: `ε`.
/// - `supply`: thickness of the layer that arrives over the radial clearance.
/// - returns: the film, and where it begins. From `1 + ε` on it is flooded, and begins at the widest gap.
///
/// # Range
/// As [`journal_reynolds`](super::journal_reynolds); the rule for the beginning is a simple one and not held against measurements.
///
/// # Errors
/// [`Error::OutOfRange`] also when the supply is not above the thinnest film, `1 − ε`, so that no film can form; others as
/// [`journal_reynolds`](super::journal_reynolds).
///
/// # Source
/// Own calculation: the rule of beginning is common in textbooks, the numbers are our own solution.
///
/// # Example
/// ```
/// use tribology::contact::journal::journal_starved;
/// let [little, much] = [0.7, 1.6].map(|supply| journal_starved(1.0, 0.6, supply).map(|found| found.value.state.load_number));
/// assert!(little.is_ok_and(|little| much.is_ok_and(|much| little < 0.9 * much)));
/// ```
pub fn journal_starved(ratio: f64, eccentricity: f64, supply: f64) -> Result<Answer<Starved>, Error> {
    let (ratio, epsilon) = (slender(ratio)?, eccentric(eccentricity)?);
    let thinnest = 1.0 - epsilon;
    Error::unless_within("supply over clearance", supply, thinnest.next_up(), f64::MAX)?;
    let theta = math::acos(((supply - 1.0) / epsilon).clamp(-1.0, 1.0));
    let state = reynolds::begun_at(ratio, epsilon, theta)?.all_round(ratio, epsilon);
    let begins = Step {
        name: "Beginning of the film",
        formula: "1 + ε cos θ1 = supply",
        symbols: vec![symbol("ε", epsilon, ""), symbol("supply", supply, "")],
        result: symbol("θ1", theta, "rad"),
        source: "own-calculation",
        standing: Standing::OwnCalculation,
    };
    debug_assert!(Gap { epsilon }.at(theta) <= supply * (1.0 + 1e-9));
    let formula = "∂/∂θ(H³ ∂p/∂θ) + (D/L)² ∂/∂Z(H³ ∂p/∂Z) = dH/dθ from θ1 on, p ≥ 0";
    let film = answer_of(state, formula, "reynolds-1886", Standing::OwnCalculation);
    let film = film.after(Answer::of((), begins));
    Ok(film.map(|state| Starved { state, begins: Angle::from_radians(theta) }))
}
