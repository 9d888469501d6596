//! The ways to a film, from which a person may choose.

use super::reynolds::{Arc, journal_reynolds};
use super::state::JournalState;
use super::{approximation, fast, short};
use crate::{Answer, Error};

/// A way to the film of a journal bearing.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub enum Method {
    /// A fit of our own solutions of Reynolds' equation, for a whole bearing of any length.
    #[default]
    Fast,
    /// Reynolds' equation itself.
    Reynolds(Arc),
    /// Ocvirk's short bearing.
    Short,
    /// The closed approximation of the standards.
    Approximation,
}

/// The film of a journal bearing at an eccentricity.
///
/// - `ratio`: length over diameter, `L/D`; infinite for a bearing without side flow.
/// - `eccentricity`: `ε`.
/// - `method`: how.
/// - returns: the film.
///
/// # Range
/// That of the method: [`journal_fast`](super::journal_fast), [`journal_reynolds`], [`journal_short`](super::journal_short),
/// [`journal_approximation`](super::journal_approximation).
///
/// # Errors
/// Those of the method.
///
/// # Source
/// None: each method names its own.
///
/// # Example
/// ```
/// use tribology::contact::journal::{Method, journal};
/// let near = |method| journal(0.25, 0.3, method).map(|film| film.value.sommerfeld);
/// assert!(near(Method::Fast).is_ok_and(|fast| near(Method::Short).is_ok_and(|short| (short / fast - 1.0).abs() < 0.1)));
/// ```
pub fn journal(ratio: f64, eccentricity: f64, method: Method) -> Result<Answer<JournalState>, Error> {
    match method {
        Method::Fast => fast::journal_fast(ratio, eccentricity),
        Method::Reynolds(arc) => Ok(journal_reynolds(ratio, eccentricity, arc)?.map(|solved| solved.state)),
        Method::Short => short::journal_short(ratio, eccentricity),
        Method::Approximation => approximation::journal_approximation(ratio, eccentricity),
    }
}
