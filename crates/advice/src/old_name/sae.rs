//! SAE numbers by time: before 1926 the number was Saybolt's own figure; from 1926 to 1950 the limits were Saybolt seconds at 130 °F and
//! 210 °F; since then they are viscosities at 210 °F and 100 °C.

use tribology::oil::{EngineEdition, EngineGrade, GearEdition, GearGrade, engine_limits, gear_limits};
use tribology::quantity::KinematicViscosity;

use super::spec::{Use, Winter};

/// The time of a table.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Era {
    /// 1911 to 1926.
    Saybolt,
    /// 1926 to 1950.
    Seconds,
    /// Since 1950.
    Modern,
}

impl Era {
    pub(super) const ALL: [Self; 3] = [Self::Modern, Self::Seconds, Self::Saybolt];

    /// The time of a year.
    pub(super) fn of(year: i32) -> Self {
        match year {
            ..1926 => Self::Saybolt,
            1926..1950 => Self::Seconds,
            _ => Self::Modern,
        }
    }

    /// In words.
    pub(super) fn says(self) -> &'static str {
        match self {
            Self::Saybolt => "before 1926, when it was Saybolt's own figure",
            Self::Seconds => "of 1926 to 1950",
            Self::Modern => "since 1950",
        }
    }
}

/// A limit of a table.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Limit {
    /// Saybolt Universal seconds at a temperature in °F.
    Seconds(f64, f64),
    /// Kinematic viscosity at 100 °C.
    At100(KinematicViscosity),
}

/// The limits of an SAE number in a time; nothing where it had no such number.
pub(super) fn limits(
    number: u32,
    winter: Winter,
    used: Option<Use>,
    era: Era,
    year: Option<i32>,
) -> Option<(Limit, Limit)> {
    match era {
        Era::Saybolt if winter == Winter::None && used != Some(Use::Gear) => saybolt(number),
        Era::Seconds if winter == Winter::None && used != Some(Use::Gear) => {
            seconds(number).or_else(|| gear(number, winter, year))
        }
        Era::Seconds => gear(number, winter, year),
        Era::Modern => match used {
            Some(Use::Gear) => gear(number, winter, year),
            Some(Use::Engine) => engine(number, winter, year),
            // The two tables share no number.
            None => engine(number, winter, year).or_else(|| gear(number, winter, year)),
        },
        Era::Saybolt => None,
    }
}

/// Numbers up to 50 were the first two figures of the seconds at 100 °F, those from 60 the seconds at 210 °F.
fn saybolt(number: u32) -> Option<(Limit, Limit)> {
    let number = f64::from(number);
    match number as u32 {
        10..=50 => Some((Limit::Seconds(10.0 * number - 20.0, 100.0), Limit::Seconds(10.0 * number + 20.0, 100.0))),
        60..=115 => Some((Limit::Seconds(number - 5.0, 210.0), Limit::Seconds(number + 5.0, 210.0))),
        _ => None,
    }
}

fn seconds(number: u32) -> Option<(Limit, Limit)> {
    let at = |low, low_f, high, high_f| Some((Limit::Seconds(low, low_f), Limit::Seconds(high, high_f)));
    match number {
        10 => at(90.0, 130.0, 120.0, 130.0),
        20 => at(120.0, 130.0, 185.0, 130.0),
        30 => at(185.0, 130.0, 255.0, 130.0),
        40 => at(255.0, 130.0, 80.0, 210.0),
        50 => at(80.0, 210.0, 105.0, 210.0),
        60 => at(105.0, 210.0, 125.0, 210.0),
        70 => at(125.0, 210.0, 150.0, 210.0),
        _ => None,
    }
}

fn engine(number: u32, winter: Winter, year: Option<i32>) -> Option<(Limit, Limit)> {
    let spelled = spelled(number, winter);
    let grade = EngineGrade::ALL.into_iter().find(|(_, name)| *name == spelled)?.0;
    // An old machine's plate is from before 2013 unless somebody says otherwise.
    let edition = year.map_or(EngineEdition::Before2013, EngineEdition::in_year);
    let limits = engine_limits(grade, edition).or_else(|| engine_limits(grade, EngineEdition::Since2013))?;
    // A winter number has no upper limit at 100 °C; that of the summer number of its body is taken.
    let high = limits.below.unwrap_or(KinematicViscosity::from_mm2_s(limits.low.mm2_s() * 1.5));
    Some((Limit::At100(limits.low), Limit::At100(high)))
}

fn gear(number: u32, winter: Winter, year: Option<i32>) -> Option<(Limit, Limit)> {
    let spelled = spelled(number, winter);
    let grade = GearGrade::ALL.into_iter().find(|(_, name)| *name == spelled)?.0;
    let edition = year.map_or(GearEdition::Before2005, GearEdition::in_year);
    let limits = gear_limits(grade, edition).or_else(|| gear_limits(grade, GearEdition::From2019))?;
    let high = limits.below.unwrap_or(KinematicViscosity::from_mm2_s(limits.low.mm2_s() * 1.5));
    Some((Limit::At100(limits.low), Limit::At100(high)))
}

fn spelled(number: u32, winter: Winter) -> String {
    match winter {
        Winter::W => format!("{number}W"),
        Winter::None => number.to_string(),
    }
}
