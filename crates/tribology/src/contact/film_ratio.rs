//! A film held against the roughness of the two faces: whether they touch, and how much.

use super::line::{line, measured, number};
use crate::quantity::Length;
use crate::{Answer, Error, Standing, math};

/// Below this the faces touch; the load is carried by their peaks.
///
/// Source: `film-ratio-texts`.
const BOUNDARY_BELOW: f64 = 1.0;
/// Above this the film keeps the faces apart.
///
/// Source: `film-ratio-texts`.
const FULL_ABOVE: f64 = 3.0;
/// Texts that ask for more before they call a film full ask for this.
///
/// Source: `film-ratio-texts`.
pub const FULL_IN_EVERY_TEXT: f64 = 4.0;
const SOURCE: &str = "film-ratio-texts";

/// How a contact is lubricated.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Regime {
    /// Peaks carry the load; what counts is what clings to them.
    Boundary,
    /// Peaks and film share the load.
    Mixed,
    /// The film keeps the faces apart.
    Full,
}

/// A film against the roughness.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FilmRatio {
    /// The film over the roughness of both faces together.
    pub lambda: f64,
    /// How the contact is lubricated.
    pub regime: Regime,
}

impl Regime {
    /// Every regime, thinnest film first.
    pub const ALL: [Regime; 3] = [Regime::Boundary, Regime::Mixed, Regime::Full];

    /// The regime in one plain word.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Regime::Boundary => "boundary",
            Regime::Mixed => "mixed",
            Regime::Full => "full",
        }
    }

    /// The film ratios that it spans: from, and to where the next begins; the last has no end.
    #[must_use]
    pub fn span(self) -> (f64, Option<f64>) {
        match self {
            Regime::Boundary => (0.0, Some(BOUNDARY_BELOW)),
            Regime::Mixed => (BOUNDARY_BELOW, Some(FULL_ABOVE)),
            Regime::Full => (FULL_ABOVE, None),
        }
    }
}

/// The film over the roughness of both faces, and what that means.
///
/// `λ = h / √(Rq₁² + Rq₂²)`
///
/// - `film`: the thinnest place of the film, `h`.
/// - `first`, `second`: root-mean-square roughness of each face, `Rq`; not the arithmetical mean `Ra`, which is smaller.
/// - returns: the ratio and its regime.
///
/// # Range
/// Any film. Between 3 and 4 texts differ: some call the film full from 3, some from 4 on.
///
/// # Errors
/// [`Error::OutOfRange`] when the film or a roughness is below zero or no number, or both faces have no roughness at all.
///
/// # Source
/// `film-ratio-texts`
///
/// # Example
/// ```
/// use tribology::{contact::{Regime, film_ratio}, quantity::Length};
/// let um = Length::from_um;
/// let found = film_ratio(um(1.2), um(0.3), um(0.4)).map(|answer| answer.value);
/// assert!(found.is_ok_and(|found| (found.lambda - 2.4).abs() < 1e-9 && found.regime == Regime::Mixed));
/// ```
pub fn film_ratio(film: Length, first: Length, second: Length) -> Result<Answer<FilmRatio>, Error> {
    let (none, most) = (Length::from_m(0.0), Length::from_m(f64::MAX));
    Error::quantity_within("film", film, none, most)?;
    Error::quantity_within("roughness of the first face", first, none, most)?;
    Error::quantity_within("roughness of the second face", second, none, most)?;
    let both = Length::from_m(math::hypot(first.m(), second.m()));
    Error::quantity_positive("roughness of both faces together", both)?;
    let lambda = film / both;
    let inputs = vec![measured("h", film), measured("Rq1", first), measured("Rq2", second)];
    let formula = "λ = h / √(Rq1² + Rq2²); below 1 boundary, 1 to 3 mixed, above 3 full";
    let step = line("Film against roughness", formula, inputs, number("λ", lambda), SOURCE, Standing::Handbook);
    Ok(Answer::of(FilmRatio { lambda, regime: regime(lambda)? }, step))
}

/// The regime of a film ratio.
///
/// - `lambda`: the film over the roughness of both faces, dimensionless.
/// - returns: boundary below 1, mixed from 1 to 3, full above 3.
///
/// # Range
/// Any film ratio; the limits are a convention, and life has no step there.
///
/// # Errors
/// [`Error::OutOfRange`] when the ratio is below zero or no number.
///
/// # Source
/// `film-ratio-texts`
///
/// # Example
/// ```
/// use tribology::contact::{Regime, regime};
/// assert_eq!((regime(3.0), regime(3.1)), (Ok(Regime::Mixed), Ok(Regime::Full)));
/// ```
pub fn regime(lambda: f64) -> Result<Regime, Error> {
    Error::unless_within("film ratio", lambda, 0.0, f64::MAX)?;
    Ok(if lambda < BOUNDARY_BELOW {
        Regime::Boundary
    } else if lambda <= FULL_ABOVE {
        Regime::Mixed
    } else {
        Regime::Full
    })
}

/// The film at which the highest peaks of two new faces just clear one another; a new bearing is run in until it has that.
///
/// `h = Rp₁ + Rp₂`
///
/// - `first`, `second`: the height of the peaks that stand out of each face, `Rp`.
/// - returns: the film.
///
/// # Range
/// Plain bearings of ordinary finish.
///
/// # Errors
/// [`Error::OutOfRange`] when a height is below zero or no number.
///
/// # Source
/// `running-in-1957`
///
/// # Example
/// ```
/// use tribology::{contact::running_in_film, quantity::Length};
/// let film = running_in_film(Length::from_um(1.5), Length::from_um(2.0));
/// assert!(film.is_ok_and(|film| (film.value.um() - 3.5).abs() < 1e-9));
/// ```
pub fn running_in_film(first: Length, second: Length) -> Result<Answer<Length>, Error> {
    let (none, most) = (Length::from_m(0.0), Length::from_m(f64::MAX));
    Error::quantity_within("peaks of the first face", first, none, most)?;
    Error::quantity_within("peaks of the second face", second, none, most)?;
    let film = first + second;
    let inputs = vec![measured("Rp1", first), measured("Rp2", second)];
    let result = measured("h", film);
    let step =
        line("Film that clears the peaks", "h = Rp1 + Rp2", inputs, result, "running-in-1957", Standing::Handbook);
    Ok(Answer::of(film, step))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn regimes_meet_and_leave_no_gap() {
        for pair in Regime::ALL.windows(2) {
            assert_eq!(pair[0].span().1, Some(pair[1].span().0));
        }
        for one in Regime::ALL {
            let (from, to) = one.span();
            let within = to.map_or(from + 1.0, |to| (from + to) / 2.0);
            assert_eq!(regime(within), Ok(one));
        }
        assert_eq!(Regime::Full.span().1, None);
    }

    #[test]
    fn two_mirrors_have_no_ratio_and_one_has() {
        let um = Length::from_um;
        let Err(Error::OutOfRange { name, .. }) = film_ratio(um(1.0), um(0.0), um(0.0)) else { panic!("no roughness") };
        assert_eq!(name, "roughness of both faces together");
        assert!(film_ratio(um(1.0), um(0.0), um(0.2)).is_ok_and(|found| found.value.regime == Regime::Full));
        assert!(film_ratio(um(0.0), um(0.2), um(0.2)).is_ok_and(|found| found.value.regime == Regime::Boundary));
        assert!(film_ratio(um(-1.0), um(0.2), um(0.2)).is_err() && film_ratio(um(1.0), um(-0.2), um(0.2)).is_err());
        assert!(regime(f64::NAN).is_err() && regime(-0.1).is_err());
    }
}
