//! How much oil keeps a rubbing face wet: the trade's rule of a film so thick, renewed so often, over the whole face.

use std::f64::consts::PI;

use crate::contact::line::{line, measured, number};
use crate::quantity::{Area, Length, Time, VolumeFlow};
use crate::{Answer, Error, Standing};

/// The film that is renewed.
///
/// Source: `film-renewal-rule`.
const FILM: Length = Length::from_inches(0.001);
/// Service factors that the rule knows.
///
/// Source: `film-renewal-rule`.
const SERVICE: [f64; 2] = [1.0, 8.0];
const SOURCE: &str = "film-renewal-rule";

/// How often the film is renewed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Renewal {
    /// Once an hour: the oil runs off and is lost.
    OnceThrough,
    /// Once a minute: the oil comes back.
    Circulating,
}

impl Renewal {
    /// The time between two films.
    #[must_use]
    pub fn every(self) -> Time {
        match self {
            Renewal::OnceThrough => Time::from_hours(1.0),
            Renewal::Circulating => Time::from_minutes(1.0),
        }
    }
}

/// The oil that keeps a face wet.
///
/// `Q = f A t / T`, `t` 0.001 in, `T` an hour once through and a minute in circulation
///
/// - `area`: the largest face, `A`: of a way its own; of a bush [`bush_area`]; of a rolling bearing [`rolling_area`].
/// - `renewal`: how often the film is renewed.
/// - `service`: service factor, `f`: one to eight, the more the harder the service.
/// - returns: the flow.
///
/// # Range
/// Service factors of 1 to 8; outside them the answer carries a warning. A rule of the trade, and no sum of a film.
///
/// # Errors
/// [`Error::OutOfRange`] when the area or the factor is not above zero.
///
/// # Source
/// `film-renewal-rule`
///
/// # Example
/// ```
/// use tribology::{contact::slideway::{Renewal, replacement}, quantity::Area};
/// let found = replacement(Area::from_cm2(1000.0), Renewal::OnceThrough, 1.0);
/// assert!(found.is_ok_and(|found| (found.value.ml_h() - 2.54).abs() < 1e-9));
/// ```
pub fn replacement(area: Area, renewal: Renewal, service: f64) -> Result<Answer<VolumeFlow>, Error> {
    Error::quantity_positive("area", area)?;
    Error::unless_positive("service factor", service)?;
    let found = VolumeFlow::from_m3_s(service * (area * FILM).m3() / renewal.every().seconds());
    let inputs = vec![measured("A", area), measured("t", FILM), measured("T", renewal.every()), number("f", service)];
    let result = measured("Q", found);
    let step = line("Oil that renews the film", "Q = f A t / T", inputs, result, SOURCE, Standing::CommonPractice);
    Ok(Answer::of(found, step).vouched_within("service factor", service, SERVICE[0], SERVICE[1]))
}

/// The face of a plain bush as the rule counts it.
///
/// `A = π d L`
///
/// - `diameter`, `length`: of the bush.
/// - returns: the area.
///
/// # Range
/// Round bushes, the whole way round.
///
/// # Errors
/// [`Error::OutOfRange`] when a size is not above zero.
///
/// # Source
/// `film-renewal-rule`
///
/// # Example
/// ```
/// use tribology::{contact::slideway::bush_area, quantity::Length};
/// let found = bush_area(Length::from_mm(100.0), Length::from_mm(50.0));
/// assert!(found.is_ok_and(|found| (found.value.cm2() - 157.08).abs() < 0.01));
/// ```
pub fn bush_area(diameter: Length, length: Length) -> Result<Answer<Area>, Error> {
    let d = Error::quantity_positive("diameter", diameter)?;
    let l = Error::quantity_positive("length", length)?;
    let found = d * l * PI;
    let inputs = vec![measured("d", d), measured("L", l)];
    Ok(Answer::of(found, area_step("Face of the bush", "A = π d L", inputs, found)))
}

/// The face of a rolling bearing as the rule counts it.
///
/// `A = d² z`
///
/// - `shaft`: diameter of the shaft, `d`.
/// - `rows`: rows of rolling bodies, `z`.
/// - returns: the area.
///
/// # Range
/// Bearings oiled by drops or lines; mist has a rule of its own.
///
/// # Errors
/// [`Error::OutOfRange`] when the diameter is not above zero, or there is no row.
///
/// # Source
/// `film-renewal-rule`
///
/// # Example
/// ```
/// use tribology::{contact::slideway::rolling_area, quantity::Length};
/// let found = rolling_area(Length::from_mm(50.0), 2);
/// assert!(found.is_ok_and(|found| (found.value.cm2() - 50.0).abs() < 1e-9));
/// ```
pub fn rolling_area(shaft: Length, rows: u32) -> Result<Answer<Area>, Error> {
    let d = Error::quantity_positive("diameter of the shaft", shaft)?;
    let z = Error::unless_within("rows", f64::from(rows), 1.0, f64::MAX)?;
    let found = d * d * z;
    let inputs = vec![measured("d", d), number("z", z)];
    Ok(Answer::of(found, area_step("Face of the rolling bearing", "A = d² z", inputs, found)))
}

fn area_step(name: &'static str, formula: &'static str, inputs: Vec<crate::Symbol>, found: Area) -> crate::Step {
    line(name, formula, inputs, measured("A", found), SOURCE, Standing::CommonPractice)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn circulation_takes_sixty_times_as_much() {
        let of = |renewal| replacement(Area::from_cm2(180.0), renewal, 1.0).expect("a face").value;
        let times = of(Renewal::Circulating) / of(Renewal::OnceThrough);
        assert!((times - 60.0).abs() < 1e-9, "{times}");
    }

    #[test]
    fn what_cannot_be_is_refused_and_what_is_odd_is_told() {
        let of = |cm2, service| replacement(Area::from_cm2(cm2), Renewal::OnceThrough, service);
        assert!(of(0.0, 1.0).is_err() && of(-1.0, 1.0).is_err() && of(10.0, 0.0).is_err());
        assert!(of(10.0, 20.0).is_ok_and(|found| found.warnings.len() == 1));
        assert!(of(10.0, 8.0).is_ok_and(|found| found.warnings.is_empty()));
        assert!(bush_area(Length::from_mm(0.0), Length::from_mm(5.0)).is_err());
        assert!(rolling_area(Length::from_mm(50.0), 0).is_err());
    }
}
