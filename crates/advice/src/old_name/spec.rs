//! The sorts of statement that a wording may hold.

use tribology::oil::{IsoGrade, Scale};
use tribology::quantity::Temperature;

/// What an SAE number is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Use {
    /// Engines.
    Engine,
    /// Gears.
    Gear,
}

/// What the words ask for, as far as it is a viscosity.
#[derive(Clone, Debug, PartialEq)]
pub enum Wanted {
    /// A reading on an old or new scale.
    Reading {
        /// The scale, when the words say which.
        scale: Option<Scale>,
        /// The lowest.
        low: f64,
        /// The highest.
        high: f64,
        /// The temperature, when the words say it.
        at: Option<Heat>,
    },
    /// An SAE number.
    Sae {
        /// The number.
        number: u32,
        /// A W behind it.
        winter: Winter,
        /// Engine or gear, when the words say it.
        used: Option<Use>,
    },
    /// A grade of today.
    Iso(IsoGrade),
    /// A grade with a name in the AGMA series.
    Agma(IsoGrade),
    /// The number of a national series: mm²/s at 50 °C.
    At50(f64),
    /// A name or a symbol of the US Navy: Saybolt seconds at a temperature in °F.
    Navy {
        /// The lowest seconds.
        low: f64,
        /// The highest.
        high: f64,
        /// The temperature in °F.
        fahrenheit: f64,
    },
    /// Limits that go with a name and nothing else, in mm²/s at 40 °C.
    Named(f64, f64),
}

/// A temperature as it stands on a plate, where the letter behind the degrees is often left out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Heat {
    /// The number.
    pub degrees: f64,
    /// The letter, when there is one.
    pub letter: Option<Letter>,
}

/// The letter behind degrees.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Letter {
    /// Celsius.
    C,
    /// Fahrenheit.
    F,
}

impl Heat {
    /// The temperature of a reading on a scale: Engler and mm²/s were read in °C, Saybolt and Redwood in °F.
    pub(super) fn on(self, scale: Scale) -> Temperature {
        let celsius =
            self.letter.map_or(matches!(scale, Scale::Engler | Scale::Kinematic), |letter| letter == Letter::C);
        if celsius { Temperature::from_celsius(self.degrees) } else { Temperature::from_fahrenheit(self.degrees) }
    }
}

/// Whether an SAE number has a W behind it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Winter {
    /// It has.
    W,
    /// It has not.
    None,
}
