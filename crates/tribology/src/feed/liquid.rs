//! An oil where it flows: its viscosity there and its density. How these come from grade and temperature is the business of
//! [`crate::oil`].

use crate::Error;
use crate::quantity::{Density, DynamicViscosity, KinematicViscosity};

/// An oil at the temperature of the place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Liquid {
    dynamic: DynamicViscosity,
    density: Density,
}

impl Liquid {
    /// An oil of this dynamic viscosity.
    ///
    /// - `dynamic`, `density`: at the temperature of the place.
    /// - returns: the oil.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when the viscosity or the density is not above zero.
    pub fn new(dynamic: DynamicViscosity, density: Density) -> Result<Self, Error> {
        let dynamic = Error::quantity_positive("viscosity", dynamic)?;
        Ok(Self { dynamic, density: Error::quantity_positive("density", density)? })
    }

    /// An oil of this kinematic viscosity.
    ///
    /// `μ = ν ρ`
    ///
    /// - `kinematic`, `density`: at the temperature of the place.
    /// - returns: the oil.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when the viscosity or the density is not above zero.
    ///
    /// # Example
    /// ```
    /// use tribology::feed::Liquid;
    /// use tribology::quantity::{Density, KinematicViscosity};
    /// let oil = Liquid::from_kinematic(KinematicViscosity::from_mm2_s(100.0), Density::from_kg_m3(870.0));
    /// assert!(oil.is_ok_and(|oil| (oil.dynamic().mpa_s() - 87.0).abs() < 1e-9));
    /// ```
    pub fn from_kinematic(kinematic: KinematicViscosity, density: Density) -> Result<Self, Error> {
        let kinematic = Error::quantity_positive("viscosity", kinematic)?;
        Self::new(kinematic * Error::quantity_positive("density", density)?, density)
    }

    /// The dynamic viscosity.
    #[must_use]
    pub fn dynamic(self) -> DynamicViscosity {
        self.dynamic
    }

    /// The density.
    #[must_use]
    pub fn density(self) -> Density {
        self.density
    }

    /// The kinematic viscosity.
    #[must_use]
    pub fn kinematic(self) -> KinematicViscosity {
        self.dynamic / self.density
    }
}
