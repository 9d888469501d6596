//! The shop's temperatures at which films are told: a cold morning, a usual day, a warm one.

use shop::snapshot::Conditions;
use tribology::quantity::{Temperature, TemperatureDifference};

/// A kind of day.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Day {
    /// A cold morning.
    Cold,
    /// A usual day.
    Usual,
    /// A warm day.
    Warm,
}

/// How warm the shop is on a kind of day.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Room {
    /// The kind of day.
    pub day: Day,
    /// The air about the machine.
    pub air: Temperature,
    /// Whether nobody has said so.
    pub is_assumed: bool,
}

/// A shop of which nobody says how warm it is, °C (common practice).
const USUAL_C: f64 = 18.0;
/// How much colder a cold morning and how much warmer a warm day is, K (common practice).
const COLDER_K: f64 = 13.0;
const WARMER_K: f64 = 10.0;

impl Day {
    /// `a cold morning`.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Cold => "a cold morning",
            Self::Usual => "a usual day",
            Self::Warm => "a warm day",
        }
    }

    /// `cold`.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Cold => "cold",
            Self::Usual => "usual",
            Self::Warm => "warm",
        }
    }
}

/// The shop's temperatures, coldest first; those that nobody has said are taken as usual.
#[must_use]
pub fn rooms(conditions: &Conditions) -> [Room; 3] {
    let usual = conditions.usual.unwrap_or_else(|| {
        let usual = Temperature::from_celsius(USUAL_C);
        let above = conditions.cold.filter(|cold| *cold > usual);
        let below = conditions.warm.filter(|warm| *warm < usual);
        above.or(below).unwrap_or(usual)
    });
    let room =
        |day, said: Option<Temperature>, taken| Room { day, air: said.unwrap_or(taken), is_assumed: said.is_none() };
    [
        room(Day::Cold, conditions.cold, usual - TemperatureDifference::from_kelvin(COLDER_K)),
        room(Day::Usual, conditions.usual, usual),
        room(Day::Warm, conditions.warm, usual + TemperatureDifference::from_kelvin(WARMER_K)),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rooms_stand_from_cold_to_warm_whatever_is_said() {
        let at = Temperature::from_celsius;
        for (cold, usual, warm) in [
            (None, None, None),
            (Some(2.0), None, None),
            (Some(25.0), None, None),
            (None, None, Some(10.0)),
            (None, Some(8.0), None),
            (Some(5.0), Some(18.0), Some(30.0)),
        ] {
            let conditions = Conditions { cold: cold.map(at), usual: usual.map(at), warm: warm.map(at) };
            let found = rooms(&conditions);
            assert!(found[0].air <= found[1].air && found[1].air <= found[2].air, "{conditions:?}");
            let said = [cold, usual, warm].map(|said| said.is_none());
            assert_eq!(found.map(|room| room.is_assumed), said);
        }
    }
}
