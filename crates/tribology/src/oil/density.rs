//! Density of lubricating oils at a temperature, API gravity, and the way from kinematic to dynamic viscosity.

use super::{step, symbol, viscosity};
use crate::quantity::{Density, DynamicViscosity, KinematicViscosity, Temperature};
use crate::{Answer, Error, Standing, math};

/// Coefficient of the lubricating-oil group on °F and the density at 60 °F in kg/m³.
///
/// Source: `api-mpms-11-1`.
const K_FAHRENHEIT: f64 = 0.348_78;
/// The same on °C and the density at 15 °C.
///
/// Source: `api-mpms-11-1`.
const K_CELSIUS: f64 = 0.6278;
/// Densities at 15 °C in kg/m³ for which the group is meant.
const DENSITIES: [f64; 2] = [801.0, 1164.0];
/// Loss of density for each degree, kg/m³ on °C, by rule of thumb.
///
/// Source: `common-practice`.
const SLOPE: f64 = 0.65;

/// The density of an oil at a temperature, from that at 15 °C.
///
/// `ρ = ρ₁₅ exp(−α d (1 + 0.8 α d))`, `α = 0.6278 / ρ₁₅`, `d = t − 15 °C`
///
/// - `at_15`: density at 15 °C, `ρ₁₅`.
/// - `at`: the temperature, `t`.
/// - returns: density.
///
/// # Range
/// 801 to 1164 kg/m³ at 15 °C: lubricating oils.
///
/// # Errors
/// [`Error::OutOfRange`] when the density is not above zero or the temperature not above 0 K.
///
/// # Source
/// `api-mpms-11-1`
///
/// # Example
/// ```
/// use tribology::oil::density_at;
/// use tribology::quantity::{Density, Temperature};
/// let warm = density_at(Density::from_kg_m3(880.0), Temperature::from_celsius(40.0));
/// assert!(warm.is_ok_and(|warm| (warm.value.kg_m3() - 864.22).abs() < 0.3));
/// ```
pub fn density_at(at_15: Density, at: Temperature) -> Result<Answer<Density>, Error> {
    let (rho15, kelvin) = positive(at_15, at)?;
    let d = at.celsius() - 15.0;
    let found = rho15 * correction(K_CELSIUS / rho15 * d);
    let formula = "ρ = ρ15 exp(−α d (1 + 0.8 α d)), α = 0.6278 / ρ15, d = t − 15 °C";
    let inputs = vec![symbol("ρ15", rho15, "kg/m³"), symbol("t", kelvin, "K")];
    let result = symbol("ρ", found, "kg/m³");
    let found_step = step("Density at the temperature", formula, inputs, result, "api-mpms-11-1", Standing::Standard);
    let answer = Answer::of(Density::from_kg_m3(found), found_step);
    let [low, high] = DENSITIES.map(Density::from_kg_m3);
    Ok(answer.quantity_vouched_within("density at 15 °C", at_15, low, high))
}

/// The density of an oil at a temperature, from that at 60 °F.
///
/// `ρ = ρ₆₀ · F`, with `F` as [`volume_correction_60f`]
///
/// - `at_60`: density at 60 °F.
/// - `at`: the temperature.
/// - returns: density.
///
/// # Range
/// As [`density_at`].
///
/// # Errors
/// Those of [`density_at`].
///
/// # Source
/// `api-mpms-11-1`
///
/// # Example
/// ```
/// use tribology::oil::density_at_60f;
/// use tribology::quantity::{Density, Temperature};
/// let warm = density_at_60f(Density::from_kg_m3(880.0), Temperature::from_fahrenheit(104.0));
/// assert!(warm.is_ok_and(|warm| (warm.value.kg_m3() - 864.57).abs() < 0.3));
/// ```
pub fn density_at_60f(at_60: Density, at: Temperature) -> Result<Answer<Density>, Error> {
    let factor = volume_correction_60f(at_60, at)?;
    Ok(factor.map(|factor| Density::from_kg_m3(factor * at_60.kg_m3())))
}

/// What a volume of oil at a temperature would be at 60 °F, as a part of it.
///
/// `F = exp(−α d (1 + 0.8 α d))`, `α = 0.34878 / ρ₆₀`, `d = t − 60 °F`
///
/// - `at_60`: density at 60 °F, `ρ₆₀`.
/// - `at`: the temperature, `t`.
/// - returns: the factor, dimensionless.
///
/// # Range
/// As [`density_at`].
///
/// # Errors
/// Those of [`density_at`].
///
/// # Source
/// `api-mpms-11-1`
///
/// # Example
/// ```
/// use tribology::oil::volume_correction_60f;
/// use tribology::quantity::{Density, Temperature};
/// let factor = volume_correction_60f(Density::from_kg_m3(880.0), Temperature::from_fahrenheit(104.0));
/// assert!(factor.is_ok_and(|factor| (factor.value - 0.98247).abs() < 2e-4));
/// ```
pub fn volume_correction_60f(at_60: Density, at: Temperature) -> Result<Answer<f64>, Error> {
    let (rho60, kelvin) = positive(at_60, at)?;
    let found = correction(K_FAHRENHEIT / rho60 * (at.fahrenheit() - 60.0));
    let formula = "F = exp(−α d (1 + 0.8 α d)), α = 0.34878 / ρ60, d = t − 60 °F";
    let inputs = vec![symbol("ρ60", rho60, "kg/m³"), symbol("t", kelvin, "K")];
    let result = symbol("F", found, "");
    let found_step = step("Volume correction to 60 °F", formula, inputs, result, "api-mpms-11-1", Standing::Standard);
    let [low, high] = DENSITIES.map(Density::from_kg_m3);
    Ok(Answer::of(found, found_step).quantity_vouched_within("density at 60 °F", at_60, low, high))
}

/// The density of an oil at a temperature by rule of thumb.
///
/// `ρ = ρ₁₅ − 0.65 (t − 15 °C)`
///
/// - `at_15`: density at 15 °C.
/// - `at`: the temperature.
/// - returns: density.
///
/// # Range
/// −10 to 100 °C and 850 to 900 kg/m³, where it stays within 1.1 kg/m³ of [`density_at`].
///
/// # Errors
/// Those of [`density_at`].
///
/// # Source
/// `common-practice`
///
/// # Example
/// ```
/// use tribology::oil::density_rule_of_thumb;
/// use tribology::quantity::{Density, Temperature};
/// let warm = density_rule_of_thumb(Density::from_kg_m3(880.0), Temperature::from_celsius(40.0));
/// assert!(warm.is_ok_and(|warm| (warm.value.kg_m3() - 863.75).abs() < 0.01));
/// ```
pub fn density_rule_of_thumb(at_15: Density, at: Temperature) -> Result<Answer<Density>, Error> {
    let (rho15, kelvin) = positive(at_15, at)?;
    let found = rho15 - SLOPE * (at.celsius() - 15.0);
    let inputs = vec![symbol("ρ15", rho15, "kg/m³"), symbol("t", kelvin, "K")];
    let result = symbol("ρ", found, "kg/m³");
    let formula = "ρ = ρ15 − 0.65 (t − 15 °C)";
    let name = "Density at the temperature, by rule of thumb";
    let found_step = step(name, formula, inputs, result, "common-practice", Standing::CommonPractice);
    let [cold, warm] = [-10.0, 100.0].map(Temperature::from_celsius);
    let [low, high] = [850.0, 900.0].map(Density::from_kg_m3);
    let answer = Answer::of(Density::from_kg_m3(found), found_step);
    let answer = answer.quantity_vouched_within("density at 15 °C", at_15, low, high);
    Ok(answer.quantity_vouched_within("temperature", at, cold, warm))
}

/// The relative density (specific gravity) at 60 °F of an oil of a given API gravity.
///
/// `SG = 141.5 / (API + 131.5)`
///
/// - `api`: API gravity, in degrees.
/// - returns: density beside that of water, both at 60 °F; times 999.016 kg/m³ it is the density at 60 °F.
///
/// # Range
/// All that has a meaning: above −131.5 degrees.
///
/// # Errors
/// [`Error::OutOfRange`] at −131.5 degrees and below.
///
/// # Source
/// `api-mpms-11-1`
///
/// # Example
/// ```
/// use tribology::oil::relative_density;
/// assert!(relative_density(30.0).is_ok_and(|found| (found.value - 0.8762).abs() < 1e-4));
/// ```
pub fn relative_density(api: f64) -> Result<Answer<f64>, Error> {
    Error::unless_within("API gravity", api, (-131.5_f64).next_up(), f64::MAX)?;
    let found = 141.5 / (api + 131.5);
    let inputs = vec![symbol("API", api, "")];
    let formula = "SG = 141.5 / (API + 131.5)";
    let result = symbol("SG", found, "");
    let found_step = step("Relative density at 60 °F", formula, inputs, result, "api-mpms-11-1", Standing::Standard);
    Ok(Answer::of(found, found_step))
}

/// The dynamic viscosity of an oil.
///
/// `η = ν ρ`
///
/// - `kinematic`: kinematic viscosity at the temperature.
/// - `density`: density at the same temperature.
/// - returns: dynamic viscosity.
///
/// # Range
/// All.
///
/// # Errors
/// [`Error::OutOfRange`] when one is not above zero.
///
/// # Source
/// `own-calculation`
///
/// # Example
/// ```
/// use tribology::oil::dynamic_viscosity;
/// use tribology::quantity::{Density, KinematicViscosity};
/// let found = dynamic_viscosity(KinematicViscosity::from_mm2_s(68.0), Density::from_kg_m3(864.22));
/// assert!(found.is_ok_and(|found| (found.value.mpa_s() - 58.77).abs() < 0.02));
/// ```
pub fn dynamic_viscosity(kinematic: KinematicViscosity, density: Density) -> Result<Answer<DynamicViscosity>, Error> {
    Error::quantity_positive("viscosity", kinematic)?;
    let rho = Error::quantity_positive("density", density)?.kg_m3();
    let found = kinematic * density;
    let inputs = vec![viscosity("ν", kinematic.mm2_s()), symbol("ρ", rho, "kg/m³")];
    let result = symbol("η", found.pa_s(), "Pa·s");
    let found_step = step("Dynamic viscosity", "η = ν ρ", inputs, result, "own-calculation", Standing::OwnCalculation);
    Ok(Answer::of(found, found_step))
}

/// The kinematic viscosity of an oil.
///
/// `ν = η / ρ`
///
/// - `dynamic`: dynamic viscosity at the temperature.
/// - `density`: density at the same temperature.
/// - returns: kinematic viscosity.
///
/// # Range
/// All.
///
/// # Errors
/// [`Error::OutOfRange`] when one is not above zero.
///
/// # Source
/// `own-calculation`
///
/// # Example
/// ```
/// use tribology::oil::kinematic_viscosity;
/// use tribology::quantity::{Density, DynamicViscosity};
/// let found = kinematic_viscosity(DynamicViscosity::from_mpa_s(58.77), Density::from_kg_m3(864.22));
/// assert!(found.is_ok_and(|found| (found.value.mm2_s() - 68.0).abs() < 0.02));
/// ```
pub fn kinematic_viscosity(dynamic: DynamicViscosity, density: Density) -> Result<Answer<KinematicViscosity>, Error> {
    let eta = Error::quantity_positive("viscosity", dynamic)?.pa_s();
    let rho = Error::quantity_positive("density", density)?.kg_m3();
    let found = dynamic / density;
    let inputs = vec![symbol("η", eta, "Pa·s"), symbol("ρ", rho, "kg/m³")];
    let result = viscosity("ν", found.mm2_s());
    let found_step =
        step("Kinematic viscosity", "ν = η / ρ", inputs, result, "own-calculation", Standing::OwnCalculation);
    Ok(Answer::of(found, found_step))
}

fn positive(density: Density, at: Temperature) -> Result<(f64, f64), Error> {
    let rho = Error::quantity_positive("density", density)?.kg_m3();
    Ok((rho, Error::quantity_positive("temperature", at)?.kelvin()))
}

fn correction(alpha_d: f64) -> f64 {
    math::exp(-alpha_d * (1.0 + 0.8 * alpha_d))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn water_has_ten_degrees() {
        assert!(relative_density(10.0).is_ok_and(|found| (found.value - 1.0).abs() < 1e-12));
        assert!(relative_density(-131.5).is_err() && relative_density(f64::NAN).is_err());
    }

    #[test]
    fn the_two_scales_are_one_law() {
        for celsius in [-10.0, 0.0, 15.0, 40.0, 100.0] {
            let at = Temperature::from_celsius(celsius);
            let metric = density_at(Density::from_kg_m3(880.0), at).expect("an oil").value;
            let at_60 = density_at(Density::from_kg_m3(880.0), Temperature::from_fahrenheit(60.0)).expect("an oil");
            let us = density_at_60f(at_60.value, at).expect("an oil").value;
            assert!((metric.kg_m3() - us.kg_m3()).abs() < 0.05, "{celsius}: {metric:?} {us:?}");
        }
    }

    #[test]
    fn the_rule_of_thumb_stays_as_near_as_it_says() {
        for rho in [850.0, 875.0, 900.0] {
            for celsius in [-10.0, 15.0, 60.0, 100.0] {
                let (density, at) = (Density::from_kg_m3(rho), Temperature::from_celsius(celsius));
                let by_rule = density_rule_of_thumb(density, at).expect("an oil");
                let exact = density_at(density, at).expect("an oil");
                assert!((by_rule.value.kg_m3() - exact.value.kg_m3()).abs() <= 1.1, "{rho} {celsius}");
                assert!(by_rule.warnings.is_empty());
            }
        }
    }
}
