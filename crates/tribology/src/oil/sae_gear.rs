//! SAE numbers of gear oils, after SAE J306 by edition. Gear 90 is about as thick as engine 40 to 50.

use crate::quantity::{KinematicViscosity, Temperature};

/// An edition of the table, by what it changed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum GearEdition {
    /// Before 2005: 90 and 140 were twice as wide, and 110 and 190 did not exist.
    Before2005,
    /// 2005 to 2018.
    From2005,
    /// Since February 2019: 65, 70 and 75; 70W, 75W, 80W and 80 changed.
    From2019,
}

/// An SAE number of a gear oil.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[expect(missing_docs, reason = "each is the number that its name spells")]
pub enum GearGrade {
    W70,
    W75,
    W80,
    W85,
    N65,
    N70,
    N75,
    N80,
    N85,
    N90,
    N110,
    N140,
    N190,
    N250,
}

/// The limits of an SAE number of a gear oil.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GearLimits {
    /// The lowest viscosity at 100 °C.
    pub low: KinematicViscosity,
    /// The viscosity at 100 °C that is no longer in it; winter numbers and 250 have none.
    pub below: Option<KinematicViscosity>,
    /// Winter numbers: the highest temperature at which the viscosity may be 150 000 mPa·s.
    pub thick_at: Option<Temperature>,
}

impl GearEdition {
    /// The edition that was in force in most of a year.
    #[must_use]
    pub fn in_year(year: i32) -> Self {
        match year {
            ..2005 => Self::Before2005,
            2005..2019 => Self::From2005,
            _ => Self::From2019,
        }
    }
}

impl GearGrade {
    /// Every number with its spelling, winter numbers first, thinnest first.
    pub const ALL: [(GearGrade, &'static str); 14] = [
        (GearGrade::W70, "70W"),
        (GearGrade::W75, "75W"),
        (GearGrade::W80, "80W"),
        (GearGrade::W85, "85W"),
        (GearGrade::N65, "65"),
        (GearGrade::N70, "70"),
        (GearGrade::N75, "75"),
        (GearGrade::N80, "80"),
        (GearGrade::N85, "85"),
        (GearGrade::N90, "90"),
        (GearGrade::N110, "110"),
        (GearGrade::N140, "140"),
        (GearGrade::N190, "190"),
        (GearGrade::N250, "250"),
    ];
}

/// The limits of an SAE number of a gear oil in an edition.
///
/// - `grade`: the number.
/// - `edition`: the edition of the table.
/// - returns: its limits, or nothing where the edition has no such number.
///
/// # Range
/// The editions named. Before 2005 only what is known to differ is taken from that time; the rest is that of 2005.
///
/// # Source
/// `sae-j306`
///
/// # Example
/// ```
/// use tribology::oil::{GearEdition, GearGrade, gear_limits};
/// let limits = gear_limits(GearGrade::N90, GearEdition::From2019);
/// assert!(limits.is_some_and(|limits| (limits.low.mm2_s() - 13.5).abs() < 1e-9));
/// ```
#[must_use]
pub fn gear_limits(grade: GearGrade, edition: GearEdition) -> Option<GearLimits> {
    let newest = edition == GearEdition::From2019;
    let oldest = edition == GearEdition::Before2005;
    match grade {
        GearGrade::W70 => winter(if newest { 3.8 } else { 4.1 }, -55.0),
        GearGrade::W75 => winter(if newest { 3.8 } else { 4.1 }, -40.0),
        GearGrade::W80 => winter(if newest { 8.5 } else { 7.0 }, -26.0),
        GearGrade::W85 => winter(11.0, -12.0),
        GearGrade::N65 if newest => summer(3.8, Some(5.0)),
        GearGrade::N70 if newest => summer(5.0, Some(6.5)),
        GearGrade::N75 if newest => summer(6.5, Some(8.5)),
        GearGrade::N65 | GearGrade::N70 | GearGrade::N75 => None,
        GearGrade::N80 => summer(if newest { 8.5 } else { 7.0 }, Some(11.0)),
        GearGrade::N85 => summer(11.0, Some(13.5)),
        GearGrade::N90 => summer(13.5, Some(if oldest { 24.0 } else { 18.5 })),
        GearGrade::N140 => summer(24.0, Some(if oldest { 41.0 } else { 32.5 })),
        GearGrade::N110 | GearGrade::N190 if oldest => None,
        GearGrade::N110 => summer(18.5, Some(24.0)),
        GearGrade::N190 => summer(32.5, Some(41.0)),
        GearGrade::N250 => summer(41.0, None),
    }
}

fn summer(low: f64, below: Option<f64>) -> Option<GearLimits> {
    let mm2_s = KinematicViscosity::from_mm2_s;
    Some(GearLimits { low: mm2_s(low), below: below.map(mm2_s), thick_at: None })
}

fn winter(low: f64, celsius: f64) -> Option<GearLimits> {
    let thick_at = Some(Temperature::from_celsius(celsius));
    Some(GearLimits { low: KinematicViscosity::from_mm2_s(low), below: None, thick_at })
}
