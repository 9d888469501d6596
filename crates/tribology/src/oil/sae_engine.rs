//! SAE numbers of engine oils, after SAE J300 by edition: limits at 100 °C, and for the winter numbers in the cold.

use super::saybolt;
use crate::quantity::{DynamicViscosity, KinematicViscosity, Temperature};

/// An edition of the table, by what it changed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum EngineEdition {
    /// Before about 1980: limits in Saybolt seconds at 210 °F (from memory).
    Before1980,
    /// Up to April 2013: SAE 20 began at 5.6 mm²/s.
    Before2013,
    /// Since April 2013: SAE 16 and, from 2015, 8 and 12; SAE 20 begins at 6.9 mm²/s.
    Since2013,
}

/// An SAE number of an engine oil.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[expect(missing_docs, reason = "each is the number that its name spells")]
pub enum EngineGrade {
    W0,
    W5,
    W10,
    W15,
    W20,
    W25,
    N8,
    N12,
    N16,
    N20,
    N30,
    N40,
    N50,
    N60,
}

/// The limits of an SAE number.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EngineLimits {
    /// The lowest viscosity at 100 °C.
    pub low: KinematicViscosity,
    /// The viscosity at 100 °C that is no longer in it; winter numbers have none.
    pub below: Option<KinematicViscosity>,
    /// Winter numbers: the coldest start, and the highest viscosity there (cranking).
    pub cranking: Option<(Temperature, DynamicViscosity)>,
    /// Winter numbers: the coldest that still pumps, and the highest viscosity there.
    pub pumping: Option<(Temperature, DynamicViscosity)>,
}

impl EngineEdition {
    /// The edition that was in force in most of a year.
    #[must_use]
    pub fn in_year(year: i32) -> Self {
        match year {
            ..1980 => Self::Before1980,
            1980..2014 => Self::Before2013,
            _ => Self::Since2013,
        }
    }
}

impl EngineGrade {
    /// Every number with its spelling, winter numbers first, thinnest first.
    pub const ALL: [(EngineGrade, &'static str); 14] = [
        (EngineGrade::W0, "0W"),
        (EngineGrade::W5, "5W"),
        (EngineGrade::W10, "10W"),
        (EngineGrade::W15, "15W"),
        (EngineGrade::W20, "20W"),
        (EngineGrade::W25, "25W"),
        (EngineGrade::N8, "8"),
        (EngineGrade::N12, "12"),
        (EngineGrade::N16, "16"),
        (EngineGrade::N20, "20"),
        (EngineGrade::N30, "30"),
        (EngineGrade::N40, "40"),
        (EngineGrade::N50, "50"),
        (EngineGrade::N60, "60"),
    ];
}

/// The limits of an SAE number in an edition.
///
/// - `grade`: the number.
/// - `edition`: the edition of the table.
/// - returns: its limits, or nothing where the edition has no such number.
///
/// # Range
/// The editions named. Numbers 8 to 20 of the newest overlap, so that one viscosity may be two of them. Figures of 12 and of the
/// edition before 1980 are from memory; that one had Saybolt seconds at 210 °F, which are given here as they were read, one degree
/// below 100 °C.
///
/// # Source
/// `sae-j300`
///
/// # Example
/// ```
/// use tribology::oil::{EngineEdition, EngineGrade, engine_limits};
/// let limits = engine_limits(EngineGrade::N30, EngineEdition::Since2013);
/// assert!(limits.is_some_and(|limits| (limits.low.mm2_s() - 9.3).abs() < 1e-9));
/// ```
#[must_use]
pub fn engine_limits(grade: EngineGrade, edition: EngineEdition) -> Option<EngineLimits> {
    if edition == EngineEdition::Before1980 {
        return match grade {
            EngineGrade::N20 => by_seconds(45.0, 58.0),
            EngineGrade::N30 => by_seconds(58.0, 70.0),
            EngineGrade::N40 => by_seconds(70.0, 85.0),
            EngineGrade::N50 => by_seconds(85.0, 110.0),
            _ => None,
        };
    }
    let newest = edition == EngineEdition::Since2013;
    match grade {
        EngineGrade::W0 => winter(3.8, -35.0, 6200.0),
        EngineGrade::W5 => winter(3.8, -30.0, 6600.0),
        EngineGrade::W10 => winter(4.1, -25.0, 7000.0),
        EngineGrade::W15 => winter(5.6, -20.0, 7000.0),
        EngineGrade::W20 => winter(5.6, -15.0, 9500.0),
        EngineGrade::W25 => winter(9.3, -10.0, 13_000.0),
        EngineGrade::N8 if newest => summer(4.0, 6.1),
        EngineGrade::N12 if newest => summer(5.0, 7.1),
        EngineGrade::N16 if newest => summer(6.1, 8.2),
        EngineGrade::N8 | EngineGrade::N12 | EngineGrade::N16 => None,
        EngineGrade::N20 => summer(if newest { 6.9 } else { 5.6 }, 9.3),
        EngineGrade::N30 => summer(9.3, 12.5),
        EngineGrade::N40 => summer(12.5, 16.3),
        EngineGrade::N50 => summer(16.3, 21.9),
        EngineGrade::N60 => summer(21.9, 26.1),
    }
}

fn summer(low: f64, below: f64) -> Option<EngineLimits> {
    let mm2_s = KinematicViscosity::from_mm2_s;
    Some(EngineLimits { low: mm2_s(low), below: Some(mm2_s(below)), cranking: None, pumping: None })
}

/// Limits in Saybolt Universal seconds at 210 °F.
fn by_seconds(low: f64, below: f64) -> Option<EngineLimits> {
    let at = Temperature::from_fahrenheit(210.0);
    let mm2_s = |seconds| saybolt::viscosity_of_saybolt(seconds, at).ok().map(|answer| answer.value);
    Some(EngineLimits { low: mm2_s(low)?, below: Some(mm2_s(below)?), cranking: None, pumping: None })
}

/// Pumping is tried five degrees below cranking, and its limit is the same for all.
fn winter(low: f64, celsius: f64, cranking: f64) -> Option<EngineLimits> {
    let at = |celsius, mpa_s| Some((Temperature::from_celsius(celsius), DynamicViscosity::from_mpa_s(mpa_s)));
    let (cranking, pumping) = (at(celsius, cranking), at(celsius - 5.0, 60_000.0));
    Some(EngineLimits { low: KinematicViscosity::from_mm2_s(low), below: None, cranking, pumping })
}
