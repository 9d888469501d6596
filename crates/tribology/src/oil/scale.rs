//! The scales in which viscosity was and is stated, and the way from one to another through mm²/s at the temperature of the reading.

use super::{engler, redwood, saybolt};
use crate::quantity::{KinematicViscosity, Temperature};
use crate::{Answer, Error};

/// A scale of viscosity.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Scale {
    /// Kinematic viscosity in mm²/s.
    Kinematic,
    /// Saybolt Universal seconds.
    SayboltUniversal,
    /// Saybolt Furol seconds.
    SayboltFurol,
    /// Redwood No. 1 seconds.
    Redwood1,
    /// Redwood No. 2 (Admiralty) seconds.
    Redwood2,
    /// Engler degrees.
    Engler,
}

impl Scale {
    /// Every scale.
    pub const ALL: [Scale; 6] = [
        Scale::Kinematic,
        Scale::SayboltUniversal,
        Scale::SayboltFurol,
        Scale::Redwood1,
        Scale::Redwood2,
        Scale::Engler,
    ];

    /// The sign behind a number on this scale.
    #[must_use]
    pub fn sign(self) -> &'static str {
        match self {
            Scale::Kinematic => "mm2/s",
            Scale::SayboltUniversal => "SUS",
            Scale::SayboltFurol => "SFS",
            Scale::Redwood1 => "R1",
            Scale::Redwood2 => "R2",
            Scale::Engler => "degE",
        }
    }

    /// How far, as a part of the viscosity, books differ in what a reading on this scale is.
    ///
    /// Source: `oil-scales-spread`.
    #[must_use]
    pub fn spread(self) -> f64 {
        match self {
            Scale::Kinematic => 0.0,
            Scale::SayboltUniversal => 0.002,
            Scale::SayboltFurol | Scale::Engler => 0.04,
            Scale::Redwood1 | Scale::Redwood2 => 0.05,
        }
    }

    /// The kinematic viscosity of a reading on this scale.
    ///
    /// - `reading`: seconds, degrees or mm²/s.
    /// - `at`: the temperature of the reading.
    /// - returns: kinematic viscosity at that temperature.
    ///
    /// # Range
    /// That of each scale's own function.
    ///
    /// # Errors
    /// Those of each scale's own function.
    ///
    /// # Source
    /// `astm-d2161`, `redwood-ip-70`, `engler-din`
    ///
    /// # Example
    /// ```
    /// use tribology::{oil::Scale, quantity::Temperature};
    /// let found = Scale::SayboltUniversal.viscosity(150.0, Temperature::from_fahrenheit(100.0));
    /// assert!(found.is_ok_and(|found| (found.value.mm2_s() - 31.89).abs() < 0.06));
    /// ```
    pub fn viscosity(self, reading: f64, at: Temperature) -> Result<Answer<KinematicViscosity>, Error> {
        match self {
            Scale::Kinematic => {
                let value = KinematicViscosity::from_mm2_s(reading);
                Error::quantity_positive("viscosity", value)?;
                Ok(Answer { value, warnings: Vec::new(), steps: Vec::new() })
            }
            Scale::SayboltUniversal => saybolt::viscosity_of_saybolt(reading, at),
            Scale::SayboltFurol => saybolt::viscosity_of_saybolt_furol(reading, at),
            Scale::Redwood1 => redwood::viscosity_of_redwood_1(reading),
            Scale::Redwood2 => redwood::viscosity_of_redwood_2(reading),
            Scale::Engler => engler::viscosity_of_engler(reading),
        }
    }

    /// The reading on this scale of a kinematic viscosity.
    ///
    /// - `kinematic`: kinematic viscosity at the temperature of the reading.
    /// - `at`: the temperature of the reading.
    /// - returns: seconds, degrees or mm²/s.
    ///
    /// # Range
    /// That of each scale's own function.
    ///
    /// # Errors
    /// Those of each scale's own function.
    ///
    /// # Source
    /// `astm-d2161`, `redwood-ip-70`, `engler-din`
    ///
    /// # Example
    /// ```
    /// use tribology::{oil::Scale, quantity::{KinematicViscosity, Temperature}};
    /// let seconds = Scale::Redwood1.reading(KinematicViscosity::from_mm2_s(49.15), Temperature::from_celsius(60.0));
    /// assert!(seconds.is_ok_and(|seconds| (seconds.value - 200.0).abs() < 0.1));
    /// ```
    pub fn reading(self, kinematic: KinematicViscosity, at: Temperature) -> Result<Answer<f64>, Error> {
        match self {
            Scale::Kinematic => {
                Error::quantity_positive("viscosity", kinematic)?;
                Ok(Answer { value: kinematic.mm2_s(), warnings: Vec::new(), steps: Vec::new() })
            }
            Scale::SayboltUniversal => saybolt::saybolt_seconds(kinematic, at),
            Scale::SayboltFurol => saybolt::saybolt_furol_seconds(kinematic, at),
            Scale::Redwood1 => redwood::redwood_1_seconds(kinematic),
            Scale::Redwood2 => redwood::redwood_2_seconds(kinematic),
            Scale::Engler => engler::engler_degrees(kinematic),
        }
    }
}
