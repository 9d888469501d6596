//! Flow through a sharp-edged hole in a thin plate: known where inertia rules and where viscosity does, guessed between.
//!
//! Oil through the small holes of a machine is nearly always on the viscous side. A hole longer than about half its bore is a short
//! tube: `loss.rs` has it.

use std::f64::consts::PI;

use super::{Liquid, not_negative, plain, rising_root, sized, step};
use crate::quantity::{Density, DynamicViscosity, Length, Pressure, VolumeFlow};
use crate::{Answer, Error, Standing, math};

/// The part of the ideal jet that a sharp hole passes.
///
/// Source: `orifice-coefficient`.
const COEFFICIENT: f64 = 0.6;
/// Above this Reynolds number of the hole the jet is ruled by inertia.
const INERTIAL: f64 = 3000.0;
/// Below this it creeps.
const CREEPING: f64 = 1.0;

/// The flow through a sharp hole that creeping oil makes.
///
/// `Q = Δp d³ / (24 μ)`
///
/// - `bore`: of the hole, `d`.
/// - `dynamic`: dynamic viscosity, `μ`.
/// - `pressure`: difference across the plate, `Δp`.
/// - returns: the flow.
///
/// # Range
/// Exact for a hole without thickness and a Reynolds number far below 1; [`orifice_flow`] says where that ends.
///
/// # Errors
/// [`Error::OutOfRange`] when bore or viscosity is not above zero or the pressure below it.
///
/// # Source
/// `sampson-1891`
///
/// # Example
/// ```
/// use tribology::feed::orifice_flow_sampson_1891;
/// use tribology::quantity::{DynamicViscosity, Length, Pressure};
/// let eta = DynamicViscosity::from_mpa_s(100.0);
/// let found = orifice_flow_sampson_1891(Length::from_mm(1.0), eta, Pressure::from_kpa(1.0));
/// assert!(found.is_ok_and(|found| (found.value.ml_min() - 25.0).abs() < 1e-9));
/// ```
pub fn orifice_flow_sampson_1891(
    bore: Length,
    dynamic: DynamicViscosity,
    pressure: Pressure,
) -> Result<Answer<VolumeFlow>, Error> {
    let d = Error::quantity_positive("bore", bore)?;
    let mu = Error::quantity_positive("viscosity", dynamic)?;
    let p = not_negative("pressure", pressure)?;
    let flow = not_negative("flow", VolumeFlow::from_m3_s(p.pa() / viscous(d, mu)))?;
    let inputs = vec![sized("Δp", p), sized("d", d), sized("μ", mu)];
    let name = "Flow creeping through a sharp hole";
    let formula = "Q = Δp d³ / (24 μ)";
    Ok(Answer::of(flow, step(name, formula, inputs, sized("Q", flow), "sampson-1891", Standing::Handbook)))
}

/// The flow through a sharp hole that thin oil makes as a jet.
///
/// `Q = 0.6 (π/4) d² √(2 Δp / ρ)`
///
/// - `bore`: of the hole, `d`.
/// - `density`: of the oil, `ρ`.
/// - `pressure`: difference across the plate, `Δp`.
/// - returns: the flow.
///
/// # Range
/// Only above a Reynolds number of a few thousand, which oil hardly reaches; [`orifice_flow`] says where.
///
/// # Errors
/// [`Error::OutOfRange`] when bore or density is not above zero or the pressure below it.
///
/// # Source
/// `orifice-coefficient`
///
/// # Example
/// ```
/// use tribology::feed::orifice_flow_inertial;
/// use tribology::quantity::{Density, Length, Pressure};
/// let found = orifice_flow_inertial(Length::from_mm(2.0), Density::from_kg_m3(870.0), Pressure::from_bar(1.0));
/// assert!(found.is_ok_and(|found| (found.value.l_min() - 1.715).abs() < 1e-3));
/// ```
pub fn orifice_flow_inertial(bore: Length, density: Density, pressure: Pressure) -> Result<Answer<VolumeFlow>, Error> {
    let d = Error::quantity_positive("bore", bore)?;
    let rho = Error::quantity_positive("density", density)?;
    let p = not_negative("pressure", pressure)?;
    let flow = not_negative("flow", VolumeFlow::from_m3_s(math::sqrt(p.pa() / inertial(d, rho))))?;
    let inputs = vec![sized("d", d), sized("Δp", p), sized("ρ", rho)];
    let formula = "Q = 0.6 (π/4) d² √(2 Δp / ρ)";
    let name = "Jet through a sharp hole";
    Ok(Answer::of(flow, step(name, formula, inputs, sized("Q", flow), "orifice-coefficient", Standing::Handbook)))
}

/// The flow through a sharp hole at any Reynolds number: the two known laws, with their pressures added between.
///
/// `Δp = 24 μ Q / d³ + ρ Q² / (2 (0.6 (π/4) d²)²)`, solved for `Q`
///
/// - `bore`: of the hole, `d`.
/// - `liquid`: the oil, `μ` and `ρ`.
/// - `pressure`: difference across the plate, `Δp`.
/// - returns: the flow; it is below that of either law.
///
/// # Range
/// Known below a Reynolds number of 1 and above 3000. Between, adding the pressures is our own bridge, held against nothing; it may be
/// low by a third, and the answer carries a warning.
///
/// # Errors
/// [`Error::OutOfRange`] when the bore is not above zero or the pressure below it.
///
/// # Source
/// `sampson-1891`, `orifice-coefficient`; own calculation between.
///
/// # Example
/// ```
/// use tribology::feed::{Liquid, orifice_flow};
/// use tribology::quantity::{Density, DynamicViscosity, Length, Pressure};
/// let oil = Liquid::new(DynamicViscosity::from_mpa_s(100.0), Density::from_kg_m3(870.0)).expect("an oil");
/// let found = orifice_flow(Length::from_mm(1.0), oil, Pressure::from_kpa(1.0)).expect("a flow");
/// assert!(found.value.ml_min() < 25.0 && found.warnings.len() == 1);
/// ```
pub fn orifice_flow(bore: Length, liquid: Liquid, pressure: Pressure) -> Result<Answer<VolumeFlow>, Error> {
    let d = Error::quantity_positive("bore", bore)?;
    let p = not_negative("pressure", pressure)?;
    let (a, b) = (viscous(d, liquid.dynamic()), inertial(d, liquid.density()));
    let flow = not_negative("flow", VolumeFlow::from_m3_s(rising_root(a, b, p.pa())))?;
    let inputs = vec![sized("Δp", p), sized("d", d), sized("μ", liquid.dynamic()), sized("ρ", liquid.density())];
    let name = "Flow through a sharp hole";
    let found = step(name, FORMULA, inputs, sized("Q", flow), "own-calculation", Standing::OwnCalculation);
    Ok(judged(reynolds(d, liquid, flow)?, Answer::of(flow, found)))
}

/// The pressure that drives a flow through a sharp hole at any Reynolds number.
///
/// `Δp = 24 μ Q / d³ + ρ Q² / (2 (0.6 (π/4) d²)²)`
///
/// - `bore`: of the hole, `d`.
/// - `liquid`: the oil, `μ` and `ρ`.
/// - `flow`: the flow, `Q`.
/// - returns: difference of pressure across the plate.
///
/// # Range
/// As [`orifice_flow`].
///
/// # Errors
/// [`Error::OutOfRange`] when the bore is not above zero or the flow below it.
///
/// # Source
/// `sampson-1891`, `orifice-coefficient`; own calculation between.
///
/// # Example
/// ```
/// use tribology::feed::{Liquid, orifice_pressure};
/// use tribology::quantity::{Density, DynamicViscosity, Length, VolumeFlow};
/// let oil = Liquid::new(DynamicViscosity::from_mpa_s(100.0), Density::from_kg_m3(870.0)).expect("an oil");
/// let found = orifice_pressure(Length::from_mm(1.0), oil, VolumeFlow::from_ml_min(0.25)).expect("a flow");
/// assert!((found.value.pa() - 10.0).abs() < 0.1, "creeping, so that the law of Sampson holds");
/// ```
pub fn orifice_pressure(bore: Length, liquid: Liquid, flow: VolumeFlow) -> Result<Answer<Pressure>, Error> {
    let d = Error::quantity_positive("bore", bore)?;
    let q = not_negative("flow", flow)?.m3_s();
    let (a, b) = (viscous(d, liquid.dynamic()), inertial(d, liquid.density()));
    let pressure = not_negative("pressure", Pressure::from_pa(a * q + b * q * q))?;
    let inputs = vec![sized("Q", flow), sized("d", d), sized("μ", liquid.dynamic()), sized("ρ", liquid.density())];
    let name = "Pressure for a flow through a sharp hole";
    let found = step(name, FORMULA, inputs, sized("Δp", pressure), "own-calculation", Standing::OwnCalculation);
    Ok(judged(reynolds(d, liquid, flow)?, Answer::of(pressure, found)))
}

const FORMULA: &str = "Δp = 24 μ Q / d³ + ρ Q² / (2 (0.6 (π/4) d²)²)";

/// Pressure for each unit of flow by the law of Sampson.
fn viscous(bore: Length, dynamic: DynamicViscosity) -> f64 {
    let d = bore.m();
    24.0 * dynamic.pa_s() / (d * d * d)
}

/// Pressure for each unit of the flow's square in a jet.
fn inertial(bore: Length, density: Density) -> f64 {
    let area = COEFFICIENT * PI / 4.0 * bore.m() * bore.m();
    density.kg_m3() / (2.0 * area * area)
}

fn reynolds(bore: Length, liquid: Liquid, flow: VolumeFlow) -> Result<Answer<f64>, Error> {
    let re = 4.0 * flow.m3_s() / (PI * bore.m() * liquid.kinematic().m2_s());
    Error::unless_within("Reynolds number", re, 0.0, f64::MAX)?;
    let inputs = vec![sized("Q", flow), sized("d", bore), sized("ν", liquid.kinematic())];
    let formula = "Re = 4 Q / (π d ν)";
    let name = "Reynolds number of the hole";
    Ok(Answer::of(re, step(name, formula, inputs, plain("Re", re), "orifice-coefficient", Standing::Handbook)))
}

/// The answer with its Reynolds number, and a warning where neither law is known to hold.
fn judged<T: Copy>(reynolds: Answer<f64>, found: Answer<T>) -> Answer<T> {
    let (re, value) = (reynolds.value, found.value);
    let answer = reynolds.after(found).map(|_| value);
    if re < INERTIAL { answer.vouched_within("Reynolds number of the hole", re, 0.0, CREEPING) } else { answer }
}
