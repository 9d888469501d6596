//! Blends: the viscosity of a mixture at one temperature, and the share that reaches a target. Not for oils with viscosity improvers,
//! additive packages or solids; and unlike additives can spoil a blend whose number is right.

use super::{ViscosityLine, line, step, symbol, viscosity};
use crate::quantity::{KinematicViscosity, Temperature};
use crate::working::Symbol;
use crate::{Answer, Error, Standing, math};

/// One part of a blend.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Part<T> {
    /// Its share of the whole; all shares together are one.
    pub share: f64,
    /// What it is: a viscosity at the temperature of the blend, or the line of an oil.
    pub oil: T,
}

/// How far from one the shares may be together, for thirds typed with a few digits.
const SUM_TOLERANCE: f64 = 1e-3;

/// The viscosity of a blend by the method of ASTM D7152 for one temperature.
///
/// `W = Σ fᵢ Wᵢ`, `W = log log Z`, `Z` as in ASTM D341
///
/// - `parts`: volume shares with kinematic viscosities, all at one temperature.
/// - returns: kinematic viscosity of the blend at that temperature.
///
/// # Range
/// 0.21 mm²/s up; base stocks without viscosity improvers or additive packages; within about ±6 %. The formula is from memory.
///
/// # Errors
/// [`Error::OutOfRange`] when a share is below nought, when the shares are not one together, when there is no part, or when a
/// viscosity is too thin for the chart.
///
/// # Source
/// `astm-d7152`
///
/// # Example
/// ```
/// use tribology::oil::{Part, blend_d7152};
/// use tribology::quantity::KinematicViscosity;
/// let part = |share, mm2_s| Part { share, oil: KinematicViscosity::from_mm2_s(mm2_s) };
/// let blend = blend_d7152(&[part(0.5, 32.0), part(0.5, 220.0)]);
/// assert!(blend.is_ok_and(|blend| (blend.value.mm2_s() - 75.88).abs() < 0.1));
/// ```
pub fn blend_d7152(parts: &[Part<KinematicViscosity>]) -> Result<Answer<KinematicViscosity>, Error> {
    blend(&D7152, parts)
}

/// The viscosity of a blend by the index of Refutas.
///
/// `V = Σ fᵢ Vᵢ`, `V = 14.534 ln ln(ν + 0.8) + 10.975`
///
/// - `parts`: mass shares with kinematic viscosities, all at one temperature.
/// - returns: kinematic viscosity of the blend at that temperature.
///
/// # Range
/// 0.2 mm²/s up; as [`blend_d7152`] else.
///
/// # Errors
/// Those of [`blend_d7152`].
///
/// # Source
/// `maples-2000`
///
/// # Example
/// ```
/// use tribology::oil::{Part, blend_refutas};
/// use tribology::quantity::KinematicViscosity;
/// let part = |share, mm2_s| Part { share, oil: KinematicViscosity::from_mm2_s(mm2_s) };
/// let blend = blend_refutas(&[part(0.5, 32.0), part(0.5, 220.0)]);
/// assert!(blend.is_ok_and(|blend| (blend.value.mm2_s() - 75.94).abs() < 0.15));
/// ```
pub fn blend_refutas(parts: &[Part<KinematicViscosity>]) -> Result<Answer<KinematicViscosity>, Error> {
    blend(&REFUTAS, parts)
}

/// The viscosity at a temperature of a blend of oils whose lines are known, by Wright's method: the logarithms of the temperatures at
/// which the oils have one viscosity mix by volume.
///
/// `W = (X + Σ fᵢ (mᵢ Wᵢ − Xᵢ)) / Σ fᵢ mᵢ`, `X = log T`, `mᵢ = dX / dW = −1 / Bᵢ`
///
/// - `parts`: volume shares with the lines of the oils.
/// - `at`: the temperature.
/// - returns: kinematic viscosity of the blend there.
///
/// # Range
/// As [`blend_d7152`]. The formula is from memory.
///
/// # Errors
/// Those of [`blend_d7152`]; and when the temperature is not above 0 K, or the blend too thick there for a number.
///
/// # Source
/// `astm-d7152`
///
/// # Example
/// ```
/// use tribology::oil::{Part, ViscosityLine, blend_wright};
/// use tribology::quantity::{KinematicViscosity, Temperature};
/// let at = |celsius, mm2_s| (Temperature::from_celsius(celsius), KinematicViscosity::from_mm2_s(mm2_s));
/// let thin = ViscosityLine::through(at(40.0, 32.0), at(100.0, 5.29)).map(|line| Part { share: 0.5, oil: line.value });
/// let thick = ViscosityLine::through(at(40.0, 220.0), at(100.0, 18.75)).map(|line| Part { share: 0.5, oil: line.value });
/// let blend = thin.and_then(|thin| blend_wright(&[thin, thick?], Temperature::from_celsius(40.0)));
/// assert!(blend.is_ok_and(|blend| (blend.value.mm2_s() - 79.96).abs() < 0.24));
/// ```
pub fn blend_wright(parts: &[Part<ViscosityLine>], at: Temperature) -> Result<Answer<KinematicViscosity>, Error> {
    shares(parts.iter().map(|part| part.share))?;
    let kelvin = Error::quantity_positive("temperature", at)?.kelvin();
    // On its line an oil has X = (A − W) / B, and X of the blend is the mean of those at equal W.
    let x = math::log10(kelvin);
    let over_b: f64 = parts.iter().map(|part| part.share / part.oil.b()).sum();
    let a_over_b: f64 = parts.iter().map(|part| part.share * part.oil.a() / part.oil.b()).sum();
    let found = line::viscosity_of_log_log_z((a_over_b - x) / over_b);
    if !found.is_finite() {
        return Err(Error::OutOfRange { name: "temperature", value: kelvin, low: 200.0, high: f64::MAX, unit: "K" });
    }
    let inputs = vec![symbol("Σ f/B", over_b, ""), symbol("Σ f A/B", a_over_b, ""), symbol("T", kelvin, "K")];
    let formula = "log log Z = (Σ f A/B − log T) / Σ f/B, A and B of each oil's line";
    let result = viscosity("ν", found);
    let found_step = step("Blend by Wright's method", formula, inputs, result, "astm-d7152", Standing::FromMemory);
    Ok(Answer::of(KinematicViscosity::from_mm2_s(found), found_step))
}

/// The share of the thicker of two oils in a blend that reaches a viscosity, by the method of ASTM D7152.
///
/// `f = (W − W₁) / (W₂ − W₁)`
///
/// - `thin`, `thick`, `target`: kinematic viscosities at one temperature.
/// - returns: the volume share of the thick oil, 0 to 1.
///
/// # Range
/// As [`blend_d7152`].
///
/// # Errors
/// [`Error::OutOfRange`] when the target does not lie between the two, or a viscosity is too thin for the chart.
///
/// # Source
/// `astm-d7152`
///
/// # Example
/// ```
/// use tribology::oil::share_d7152;
/// use tribology::quantity::KinematicViscosity;
/// let mm2_s = KinematicViscosity::from_mm2_s;
/// assert!(share_d7152(mm2_s(32.0), mm2_s(220.0), mm2_s(68.0)).is_ok_and(|share| (share.value - 0.442).abs() < 0.001));
/// ```
pub fn share_d7152(
    thin: KinematicViscosity,
    thick: KinematicViscosity,
    target: KinematicViscosity,
) -> Result<Answer<f64>, Error> {
    share(&D7152, thin, thick, target)
}

/// The share of the thicker of two oils in a blend that reaches a viscosity, by the index of Refutas.
///
/// `f = (V − V₁) / (V₂ − V₁)`
///
/// - `thin`, `thick`, `target`: kinematic viscosities at one temperature.
/// - returns: the mass share of the thick oil, 0 to 1.
///
/// # Range
/// As [`blend_refutas`].
///
/// # Errors
/// Those of [`share_d7152`].
///
/// # Source
/// `maples-2000`
///
/// # Example
/// ```
/// use tribology::oil::share_refutas;
/// use tribology::quantity::KinematicViscosity;
/// let mm2_s = KinematicViscosity::from_mm2_s;
/// assert!(share_refutas(mm2_s(32.0), mm2_s(220.0), mm2_s(75.94)).is_ok_and(|share| (share.value - 0.5).abs() < 0.001));
/// ```
pub fn share_refutas(
    thin: KinematicViscosity,
    thick: KinematicViscosity,
    target: KinematicViscosity,
) -> Result<Answer<f64>, Error> {
    share(&REFUTAS, thin, thick, target)
}

/// A number that mixes by shares, and the way back.
struct Method {
    name: &'static str,
    formula: &'static str,
    share_formula: &'static str,
    source: &'static str,
    standing: Standing,
    /// The number of a viscosity in mm²/s.
    number: fn(f64) -> f64,
    /// The viscosity in mm²/s of a number.
    viscosity: fn(f64) -> f64,
    /// The thinnest viscosity in mm²/s.
    from: f64,
}

const D7152: Method = Method {
    name: "Blend by double logarithms",
    formula: "W = Σ f W, W = log log Z, Z = ν + 0.7 + exp(−1.47 − 1.84 ν − 0.51 ν²)",
    share_formula: "f = (W − W1) / (W2 − W1), W = log log Z",
    source: "astm-d7152",
    standing: Standing::FromMemory,
    number: line::log_log_z,
    viscosity: line::viscosity_of_log_log_z,
    from: 0.21,
};

const REFUTAS: Method = Method {
    name: "Blend by the index of Refutas",
    formula: "V = Σ f V, V = 14.534 ln ln(ν + 0.8) + 10.975",
    share_formula: "f = (V − V1) / (V2 − V1), V = 14.534 ln ln(ν + 0.8) + 10.975",
    source: "maples-2000",
    standing: Standing::Handbook,
    number: refutas,
    viscosity: viscosity_of_refutas,
    // ln ln needs more than one inside, so more than 0.2 mm²/s.
    from: 0.21,
};

fn refutas(mm2_s: f64) -> f64 {
    14.534 * math::ln(math::ln(mm2_s + 0.8)) + 10.975
}

fn viscosity_of_refutas(number: f64) -> f64 {
    math::exp(math::exp((number - 10.975) / 14.534)) - 0.8
}

impl Method {
    fn number_of(&self, kinematic: KinematicViscosity) -> Result<f64, Error> {
        let (low, high) = (KinematicViscosity::from_mm2_s(self.from), KinematicViscosity::from_m2_s(f64::MAX));
        Error::quantity_within("viscosity", kinematic, low, high)?;
        Ok((self.number)(kinematic.mm2_s()))
    }
}

fn blend(method: &Method, parts: &[Part<KinematicViscosity>]) -> Result<Answer<KinematicViscosity>, Error> {
    shares(parts.iter().map(|part| part.share))?;
    let mut number = 0.0;
    let mut inputs: Vec<Symbol> = Vec::with_capacity(2 * parts.len());
    for part in parts {
        number += part.share * method.number_of(part.oil)?;
        inputs.extend([symbol("f", part.share, ""), viscosity("ν", part.oil.mm2_s())]);
    }
    let found = (method.viscosity)(number);
    let result = viscosity("ν of the blend", found);
    let found_step = step(method.name, method.formula, inputs, result, method.source, method.standing);
    Ok(Answer::of(KinematicViscosity::from_mm2_s(found), found_step))
}

fn share(
    method: &Method,
    thin: KinematicViscosity,
    thick: KinematicViscosity,
    target: KinematicViscosity,
) -> Result<Answer<f64>, Error> {
    let thicker = KinematicViscosity::from_m2_s(thin.m2_s().next_up());
    let thickest = KinematicViscosity::from_m2_s(f64::MAX);
    Error::quantity_within("viscosity of the thick oil", thick, thicker, thickest)?;
    Error::quantity_within("target viscosity", target, thin, thick)?;
    let (first, second, wanted) = (method.number_of(thin)?, method.number_of(thick)?, method.number_of(target)?);
    let found = (wanted - first) / (second - first);
    let inputs =
        vec![viscosity("ν1", thin.mm2_s()), viscosity("ν2", thick.mm2_s()), viscosity("target", target.mm2_s())];
    let name = "Share of the thick oil";
    let found_step = step(name, method.share_formula, inputs, symbol("f", found, ""), method.source, method.standing);
    Ok(Answer::of(found, found_step))
}

/// Refuses shares that do not make a whole.
fn shares(shares: impl Iterator<Item = f64>) -> Result<(), Error> {
    let mut sum = 0.0;
    for share in shares {
        sum += Error::unless_within("share", share, 0.0, 1.0 + SUM_TOLERANCE)?;
    }
    Error::unless_within("sum of the shares", sum, 1.0 - SUM_TOLERANCE, 1.0 + SUM_TOLERANCE).map(drop)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Row S62 of `reference/oil-properties.csv` speaks of the number, which is no public matter.
    #[test]
    fn the_number_of_refutas_is_as_published() {
        assert!((refutas(2.234) - 12.492).abs() < 0.005);
    }

    #[test]
    fn numbers_and_viscosities_are_pairs() {
        for method in [&D7152, &REFUTAS] {
            let mut mm2_s = method.from;
            while mm2_s < 1e6 {
                let back = (method.viscosity)((method.number)(mm2_s));
                assert!((back / mm2_s - 1.0).abs() < 1e-9, "{}: {mm2_s} came back as {back}", method.name);
                mm2_s *= 1.1;
            }
        }
    }

    #[test]
    fn shares_that_are_no_whole_are_refused() {
        let part = |share, mm2_s| Part { share, oil: KinematicViscosity::from_mm2_s(mm2_s) };
        for parts in [vec![], vec![part(0.6, 32.0), part(0.5, 68.0)], vec![part(1.5, 32.0), part(-0.5, 68.0)]] {
            assert!(matches!(blend_d7152(&parts), Err(Error::OutOfRange { .. })), "{parts:?}");
        }
        let thirds = [part(0.333, 32.0), part(0.333, 68.0), part(0.334, 100.0)];
        assert!(blend_refutas(&thirds).is_ok());
    }

    #[test]
    fn a_target_outside_the_parts_has_no_answer() {
        let mm2_s = KinematicViscosity::from_mm2_s;
        assert!(share_d7152(mm2_s(32.0), mm2_s(220.0), mm2_s(300.0)).is_err());
        assert!(share_d7152(mm2_s(220.0), mm2_s(32.0), mm2_s(68.0)).is_err());
        assert!(share_refutas(mm2_s(32.0), mm2_s(32.0), mm2_s(32.0)).is_err());
    }
}
