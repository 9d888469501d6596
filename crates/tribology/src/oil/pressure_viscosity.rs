//! How fast the viscosity of a mineral oil grows with pressure: two estimates, and the law that they feed.

use super::{step, symbol, viscosity};
use crate::quantity::{Density, DynamicViscosity, KinematicViscosity, Pressure, PressureViscosity};
use crate::{Answer, Error, Standing, math};

/// Dynamic viscosities in mPa·s of the measured oils that the estimate was held against.
const MEASURED: [f64; 2] = [4.0, 1000.0];

/// The pressure-viscosity coefficient of a mineral oil from its dynamic viscosity alone.
///
/// `α = (0.6 + 0.965 log η₀) · 10⁻⁸ /Pa`, `η₀` in mPa·s
///
/// - `dynamic`: dynamic viscosity at the temperature and at no pressure, `η₀`.
/// - returns: the coefficient.
///
/// # Range
/// Mineral oils of about 4 to 1000 mPa·s; within about ±25 % of measured values. The form is from memory.
///
/// # Errors
/// [`Error::OutOfRange`] when the viscosity is not above 0.24 mPa·s, where the coefficient would not be above zero.
///
/// # Source
/// `wooster-1984`
///
/// # Example
/// ```
/// use tribology::oil::pressure_viscosity_wooster;
/// use tribology::quantity::DynamicViscosity;
/// let found = pressure_viscosity_wooster(DynamicViscosity::from_mpa_s(50.0));
/// assert!(found.is_ok_and(|found| (found.value.per_gpa() - 22.40).abs() < 0.05));
/// ```
pub fn pressure_viscosity_wooster(dynamic: DynamicViscosity) -> Result<Answer<PressureViscosity>, Error> {
    let lowest = DynamicViscosity::from_mpa_s(math::exp10(-0.6 / 0.965).next_up());
    Error::quantity_within("viscosity", dynamic, lowest, DynamicViscosity::from_pa_s(f64::MAX))?;
    let found = 10.0 * (0.6 + 0.965 * math::log10(dynamic.mpa_s()));
    let inputs = vec![symbol("η0", dynamic.pa_s(), "Pa·s")];
    let formula = "α = (0.6 + 0.965 log η0) 10⁻⁸ /Pa, η0 in mPa·s";
    let result = symbol("α", found * 1e-9, "/Pa");
    let name = "Pressure-viscosity coefficient";
    let found_step = step(name, formula, inputs, result, "wooster-1984", Standing::FromMemory);
    let answer = Answer::of(PressureViscosity::from_per_gpa(found), found_step);
    let [low, high] = MEASURED.map(DynamicViscosity::from_mpa_s);
    Ok(answer.quantity_vouched_within("viscosity", dynamic, low, high))
}

/// The pressure-viscosity coefficient of a mineral oil from its viscosity, its slope on the chart of ASTM D341 and its density.
///
/// `α = (1.216 + 4.143 w^3.0627 + 2.848·10⁻⁴ b^5.1903 w^1.5976 − 3.999 w^3.0975 r^0.1162) · 10⁻⁸ /Pa`, `w = log ν`
///
/// - `kinematic`: kinematic viscosity at the temperature, `ν` in mm²/s.
/// - `slope`: the slope `B` of the oil's line, `b`.
/// - `density`: density at the temperature, `r` in g/cm³.
/// - returns: the coefficient.
///
/// # Range
/// Mineral oils; within about ±40 % of measured values, worst for thick oils. The constants are from memory.
///
/// # Errors
/// [`Error::OutOfRange`] when the viscosity is not above 1 mm²/s or another input not above zero.
///
/// # Source
/// `so-klaus-1980`
///
/// # Example
/// ```
/// use tribology::oil::pressure_viscosity_so_klaus_1980;
/// use tribology::quantity::{Density, KinematicViscosity};
/// let (thin, density) = (KinematicViscosity::from_mm2_s(32.0), Density::from_kg_m3(865.0));
/// let found = pressure_viscosity_so_klaus_1980(thin, 3.6, density);
/// assert!(found.is_ok_and(|found| (found.value.per_gpa() - 21.79).abs() < 0.1));
/// ```
pub fn pressure_viscosity_so_klaus_1980(
    kinematic: KinematicViscosity,
    slope: f64,
    density: Density,
) -> Result<Answer<PressureViscosity>, Error> {
    let lowest = KinematicViscosity::from_m2_s(super::MM2_S.next_up());
    Error::quantity_within("viscosity", kinematic, lowest, KinematicViscosity::from_m2_s(f64::MAX))?;
    let b = Error::unless_positive("slope", slope)?;
    let rho = Error::quantity_positive("density", density)?.kg_m3();
    let (w, r) = (math::log10(kinematic.mm2_s()), rho / 1000.0);
    let pow = math::pow;
    let found = 10.0
        * (1.216 + 4.143 * pow(w, 3.0627) + 2.848e-4 * pow(b, 5.1903) * pow(w, 1.5976)
            - 3.999 * pow(w, 3.0975) * pow(r, 0.1162));
    let inputs = vec![viscosity("ν", kinematic.mm2_s()), symbol("b", b, ""), symbol("r", rho, "kg/m³")];
    let formula =
        "α = (1.216 + 4.143 w^3.0627 + 2.848e-4 b^5.1903 w^1.5976 − 3.999 w^3.0975 r^0.1162) 10⁻⁸ /Pa, w = log ν";
    let result = symbol("α", found * 1e-9, "/Pa");
    let name = "Pressure-viscosity coefficient";
    let found_step = step(name, formula, inputs, result, "so-klaus-1980", Standing::FromMemory);
    Ok(Answer::of(PressureViscosity::from_per_gpa(found), found_step))
}

/// The viscosity of an oil under pressure, by the law of Barus.
///
/// `η = η₀ exp(α p)`
///
/// - `dynamic`: dynamic viscosity at the temperature and at no pressure, `η₀`.
/// - `coefficient`: the pressure-viscosity coefficient, `α`.
/// - `pressure`: the pressure, `p`.
/// - returns: dynamic viscosity.
///
/// # Range
/// Up to about 0.5 GPa; above, the law gives far too much.
///
/// # Errors
/// [`Error::OutOfRange`] when the viscosity is not above zero, or the result would have no end.
///
/// # Source
/// `stachowiak-batchelor`
///
/// # Example
/// ```
/// use tribology::oil::viscosity_under_pressure;
/// use tribology::quantity::{DynamicViscosity, Pressure, PressureViscosity};
/// let (eta, alpha) = (DynamicViscosity::from_mpa_s(50.0), PressureViscosity::from_per_gpa(20.0));
/// let found = viscosity_under_pressure(eta, alpha, Pressure::from_gpa(0.1));
/// assert!(found.is_ok_and(|found| (found.value.mpa_s() - 369.45).abs() < 0.37));
/// ```
pub fn viscosity_under_pressure(
    dynamic: DynamicViscosity,
    coefficient: PressureViscosity,
    pressure: Pressure,
) -> Result<Answer<DynamicViscosity>, Error> {
    let eta = Error::quantity_positive("viscosity", dynamic)?.pa_s();
    let exponent = coefficient.per_pa() * pressure.pa();
    Error::unless_within("coefficient times pressure", exponent, -700.0, 700.0)?;
    let found = eta * math::exp(exponent);
    let inputs =
        vec![symbol("η0", eta, "Pa·s"), symbol("α", coefficient.per_pa(), "/Pa"), symbol("p", pressure.pa(), "Pa")];
    let result = symbol("η", found, "Pa·s");
    let name = "Viscosity under pressure";
    let found_step = step(name, "η = η0 exp(α p)", inputs, result, "stachowiak-batchelor", Standing::Handbook);
    let [low, high] = [0.0, 0.5].map(Pressure::from_gpa);
    let answer = Answer::of(DynamicViscosity::from_pa_s(found), found_step);
    Ok(answer.quantity_vouched_within("pressure", pressure, low, high))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_cannot_be_is_refused() {
        assert!(pressure_viscosity_wooster(DynamicViscosity::from_mpa_s(0.2)).is_err());
        assert!(pressure_viscosity_wooster(DynamicViscosity::from_mpa_s(f64::NAN)).is_err());
        let (eta, alpha) = (DynamicViscosity::from_mpa_s(50.0), PressureViscosity::from_per_gpa(20.0));
        assert!(viscosity_under_pressure(eta, alpha, Pressure::from_gpa(100.0)).is_err());
        assert_eq!(viscosity_under_pressure(eta, alpha, Pressure::from_gpa(1.0)).expect("high").warnings.len(), 1);
    }
}
