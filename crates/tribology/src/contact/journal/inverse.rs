//! The eccentricity that a load brings about.

use super::fast::HIGHEST as HIGHEST_OF_FIT;
use super::method::{Method, journal};
use super::state::JournalState;
use super::{ECCENTRICITIES, symbol};
use crate::root::root;
use crate::working::Step;
use crate::{Answer, Error, Standing, math};

/// The film of a journal bearing at a Sommerfeld number.
///
/// The eccentricity at which the method gives that number, found as a root of `ln S` over `−ln(1 − ε)`.
///
/// - `ratio`: length over diameter, `L/D`; infinite for a bearing without side flow.
/// - `sommerfeld`: `S = (R/C)² μ N / P`.
/// - `method`: how the film is found.
/// - returns: the film, with its eccentricity. A load that leaves less than a hundredth of the clearance is answered with a warning
///   and [`FilmRegime::BoundaryByAnyFinish`](super::FilmRegime).
///
/// # Range
/// That of the method.
///
/// # Errors
/// [`Error::OutOfRange`] when the number is not above zero, or is none that the method gives between eccentricities of 10⁻⁶ and
/// 0.999 (`1 − 10⁻⁹` for [`Method::Fast`]); others as the method.
///
/// # Source
/// None: each method names its own.
///
/// # Example
/// ```
/// use tribology::contact::journal::{Method, eccentricity_of};
/// let film = eccentricity_of(1.0, 0.135, Method::Fast);
/// assert!(film.is_ok_and(|film| (film.value.eccentricity - 0.5726).abs() < 0.003));
/// ```
pub fn eccentricity_of(ratio: f64, sommerfeld: f64, method: Method) -> Result<Answer<JournalState>, Error> {
    let wanted = Error::unless_positive("Sommerfeld number", sommerfeld)?;
    let sought = Sought { ratio, wanted, method };
    let (ends, tolerance) = match method {
        Method::Reynolds(_) => (sought.around_the_fit()?, 1e-8),
        Method::Fast => (sought.within(HIGHEST_OF_FIT)?, 1e-13),
        Method::Short | Method::Approximation => (sought.within(ECCENTRICITIES[1])?, 1e-13),
    };
    let found = root("eccentricity", ends, tolerance, |u| sought.miss(u).unwrap_or(f64::NAN))?;
    let film = journal(ratio, eccentricity_at(found.at), method)?;
    let step = Step {
        name: "Eccentricity under the load",
        formula: "ε such that S(ε, L/D) = S",
        symbols: vec![symbol("L/D", ratio, ""), symbol("S", wanted, "")],
        result: symbol("ε", film.value.eccentricity, ""),
        source: "own-calculation",
        standing: Standing::OwnCalculation,
    };
    Ok(film.after(Answer::of((), step)))
}

/// What is sought.
#[derive(Clone, Copy)]
struct Sought {
    ratio: f64,
    wanted: f64,
    method: Method,
}

impl Sought {
    /// How far the Sommerfeld number is above the wanted one, as a logarithm; it falls as the journal leaves the middle.
    fn miss(self, u: f64) -> Result<f64, Error> {
        let film = journal(self.ratio, eccentricity_at(u), self.method)?;
        Ok(math::ln(film.value.sommerfeld / self.wanted))
    }

    /// The widest ends, if the number lies between theirs.
    fn within(self, highest: f64) -> Result<[f64; 2], Error> {
        let ends = [ECCENTRICITIES[0], highest].map(position);
        let [high, low] = [self.miss(ends[0])?, self.miss(ends[1])?].map(|miss| self.wanted * math::exp(miss));
        Error::unless_within("Sommerfeld number", self.wanted, low, high)?;
        Ok(ends)
    }

    /// Ends about the eccentricity that the fit of whole bearings says, moved until they enclose the wanted one: each try is dear.
    fn around_the_fit(self) -> Result<[f64; 2], Error> {
        let all = ECCENTRICITIES.map(position);
        let fit = eccentricity_of(self.ratio, self.wanted, Method::Fast)?.value.eccentricity;
        let u = position(fit).clamp(all[0], all[1]);
        let [mut low, mut high] = [(0.99 * u).max(all[0]), (1.01 * u).min(all[1])];
        while self.miss(low)? < 0.0 {
            if low == all[0] {
                return self.within(ECCENTRICITIES[1]);
            }
            (low, high) = ((0.8 * low).max(all[0]), low);
        }
        while self.miss(high)? > 0.0 {
            if high == all[1] {
                return self.within(ECCENTRICITIES[1]);
            }
            (low, high) = (high, (1.15 * high).min(all[1]));
        }
        Ok([low, high])
    }
}

/// Where an eccentricity stands among those sought: `−ln(1 − ε)`.
fn position(eccentricity: f64) -> f64 {
    -math::ln_1p(-eccentricity)
}

fn eccentricity_at(u: f64) -> f64 {
    -math::exp_m1(-u)
}
