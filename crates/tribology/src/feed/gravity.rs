//! What a head of oil presses with, and the head that gives a pressure.

use super::{GRAVITY_M_S2, gravity, not_negative, sized, step};
use crate::quantity::{Density, Length, Pressure};
use crate::{Answer, Error, Standing};

/// The pressure under a head of oil.
///
/// `p = ρ g h`
///
/// - `head`: height of the oil's surface over the place, `h`.
/// - `density`: of the oil, `ρ`.
/// - returns: pressure above that of the air.
///
/// # Range
/// Oil at rest, in standard gravity.
///
/// # Errors
/// [`Error::OutOfRange`] when the head is below zero or the density not above it.
///
/// # Source
/// `hydrostatic-pressure`
///
/// # Example
/// ```
/// use tribology::feed::pressure_of_head;
/// use tribology::quantity::{Density, Length};
/// let found = pressure_of_head(Length::from_m(1.0), Density::from_kg_m3(1000.0));
/// assert!(found.is_ok_and(|found| (found.value.kpa() - 9.80665).abs() < 1e-9));
/// ```
pub fn pressure_of_head(head: Length, density: Density) -> Result<Answer<Pressure>, Error> {
    let h = not_negative("head", head)?;
    let rho = Error::quantity_positive("density", density)?;
    let found = not_negative("pressure", Pressure::from_pa(rho.kg_m3() * GRAVITY_M_S2 * h.m()))?;
    let inputs = vec![sized("ρ", rho), gravity(), sized("h", h)];
    let name = "Pressure under a head of oil";
    Ok(Answer::of(
        found,
        step(name, "p = ρ g h", inputs, sized("p", found), "hydrostatic-pressure", Standing::Handbook),
    ))
}

/// The head of oil that gives a pressure.
///
/// `h = p / (ρ g)`
///
/// - `pressure`: above that of the air, `p`.
/// - `density`: of the oil, `ρ`.
/// - returns: the head in metres of that oil.
///
/// # Range
/// Oil at rest, in standard gravity.
///
/// # Errors
/// [`Error::OutOfRange`] when the pressure is below zero or the density not above it.
///
/// # Source
/// `hydrostatic-pressure`
///
/// # Example
/// ```
/// use tribology::feed::head_of;
/// use tribology::quantity::{Density, Pressure};
/// let found = head_of(Pressure::from_bar(0.1), Density::from_kg_m3(870.0));
/// assert!(found.is_ok_and(|found| (found.value.m() - 1.172).abs() < 1e-3));
/// ```
pub fn head_of(pressure: Pressure, density: Density) -> Result<Answer<Length>, Error> {
    let p = not_negative("pressure", pressure)?;
    let rho = Error::quantity_positive("density", density)?;
    let found = not_negative("head", Length::from_m(p.pa() / (rho.kg_m3() * GRAVITY_M_S2)))?;
    let inputs = vec![sized("p", p), sized("ρ", rho), gravity()];
    let name = "Head of oil for a pressure";
    Ok(Answer::of(
        found,
        step(name, "h = p / (ρ g)", inputs, sized("h", found), "hydrostatic-pressure", Standing::Handbook),
    ))
}
