//! What the ends and the bends of a tube take besides its length: little in slow thick oil, unless the tube is short or much bent.
//!
//! Viscous and inertial parts are added, `Δp = a Q + b Q²`, so that the flow is a closed formula and the exact inverse. What is added
//! is known to perhaps a third of itself.

use std::f64::consts::PI;

use super::{Liquid, Tube, not_negative, plain, rising_root, sized, step};
use crate::quantity::{Length, Pressure, VolumeFlow};
use crate::{Answer, Error, Standing, Symbol};

/// Bores of straight tube that take as much as both ends together in creeping flow, `24 π / 128`.
///
/// Source: `dagan-1982`.
const ENDS: f64 = 24.0 * PI / 128.0;
/// Velocity heads that the ends take beyond that: the speed itself, lost at the outlet, and what the entry takes to shape the flow.
///
/// Source: `hagenbach-couette`; values in use lie from 2.2 to 2.4.
const ENDS_INERTIAL: f64 = 2.28;
/// Bores of straight tube that take as much as a square bend of one bore's radius, `800 / 64`.
///
/// Source: `hooper-1981`.
const BEND: f64 = 800.0 / 64.0;
/// Velocity heads that such a bend takes beyond that in a wide pipe.
///
/// Source: `hooper-1981`.
const BEND_INERTIAL: f64 = 0.25;
/// More bends than anybody makes in one tube.
const MOST_BENDS: f64 = 1000.0;

/// The flow through a tube with its two ends and its bends.
///
/// `Δp = 128 μ Q (L + 0.59 d + 12.5 d n) / (π d⁴) + (2.28 + n 0.25 (1 + 25.4 mm / d)) ρ v² / 2`, solved for `Q`
///
/// - `tube`: bore `d` and length `L`.
/// - `bends`: square bends, `n`.
/// - `liquid`: the oil, `μ` and `ρ`.
/// - `pressure`: difference between still oil before and behind, `Δp`.
/// - returns: the flow.
///
/// # Range
/// Laminar flow between still pools; bends as measured on pipes of 25 mm and more, so that small tubes are an extrapolation.
///
/// # Errors
/// [`Error::OutOfRange`] when the pressure is below zero, the bends are above 1000, or the result is without end.
///
/// # Source
/// `dagan-1982`, `hagenbach-couette`, `hooper-1981`
///
/// # Example
/// ```
/// use tribology::feed::{Liquid, Tube, flow_with_losses, tube_flow};
/// use tribology::quantity::{Density, DynamicViscosity, Length, Pressure};
/// let tube = Tube::new(Length::from_mm(3.0), Length::from_mm(50.0)).expect("a tube");
/// let oil = Liquid::new(DynamicViscosity::from_mpa_s(60.0), Density::from_kg_m3(870.0)).expect("an oil");
/// let pressure = Pressure::from_kpa(0.5);
/// let (bent, straight) = (flow_with_losses(tube, 2, oil, pressure), tube_flow(tube, oil.dynamic(), pressure));
/// assert!(bent.expect("a flow").value < straight.expect("a flow").value);
/// ```
pub fn flow_with_losses(
    tube: Tube,
    bends: u32,
    liquid: Liquid,
    pressure: Pressure,
) -> Result<Answer<VolumeFlow>, Error> {
    let p = not_negative("pressure", pressure)?;
    let [a, b] = terms(tube, bends, liquid)?;
    let flow = not_negative("flow", VolumeFlow::from_m3_s(rising_root(a, b, p.pa())))?;
    let mut inputs = symbols(tube, bends, liquid);
    inputs.push(sized("Δp", p));
    let name = "Flow through a tube with ends and bends";
    Ok(Answer::of(flow, step(name, FORMULA, inputs, sized("Q", flow), "hooper-1981", Standing::FromMemory)))
}

/// The pressure that drives a flow through a tube with its two ends and its bends.
///
/// `Δp = 128 μ Q (L + 0.59 d + 12.5 d n) / (π d⁴) + (2.28 + n 0.25 (1 + 25.4 mm / d)) ρ v² / 2`
///
/// - `tube`: bore `d` and length `L`.
/// - `bends`: square bends, `n`.
/// - `liquid`: the oil, `μ` and `ρ`.
/// - `flow`: the flow, `Q`.
/// - returns: difference of pressure between still oil before and behind.
///
/// # Range
/// As [`flow_with_losses`].
///
/// # Errors
/// [`Error::OutOfRange`] when the flow is below zero, the bends are above 1000, or the result is without end.
///
/// # Source
/// `dagan-1982`, `hagenbach-couette`, `hooper-1981`
///
/// # Example
/// ```
/// use tribology::feed::{Liquid, Tube, pressure_with_losses};
/// use tribology::quantity::{Density, DynamicViscosity, Length, VolumeFlow};
/// let tube = Tube::new(Length::from_mm(3.0), Length::from_mm(500.0)).expect("a tube");
/// let oil = Liquid::new(DynamicViscosity::from_mpa_s(60.0), Density::from_kg_m3(870.0)).expect("an oil");
/// let found = pressure_with_losses(tube, 0, oil, VolumeFlow::from_ml_min(19.8804)).expect("a flow");
/// assert!((5.01..5.03).contains(&found.value.kpa()), "in a long tube the ends hardly matter");
/// ```
pub fn pressure_with_losses(
    tube: Tube,
    bends: u32,
    liquid: Liquid,
    flow: VolumeFlow,
) -> Result<Answer<Pressure>, Error> {
    let q = not_negative("flow", flow)?.m3_s();
    let [a, b] = terms(tube, bends, liquid)?;
    let pressure = not_negative("pressure", Pressure::from_pa(a * q + b * q * q))?;
    let mut inputs = symbols(tube, bends, liquid);
    inputs.push(sized("Q", flow));
    let name = "Pressure for a flow through a tube with ends and bends";
    Ok(Answer::of(pressure, step(name, FORMULA, inputs, sized("Δp", pressure), "hooper-1981", Standing::FromMemory)))
}

const FORMULA: &str =
    "Δp = 128 μ Q (L + 0.59 d + 12.5 d n) / (π d⁴) + (2.28 + n 0.25 (1 + 25.4 mm / d)) ρ v² / 2, v = 4 Q / (π d²)";

fn symbols(tube: Tube, bends: u32, liquid: Liquid) -> Vec<Symbol> {
    vec![
        sized("d", tube.bore()),
        sized("L", tube.length()),
        plain("n", f64::from(bends)),
        sized("μ", liquid.dynamic()),
        sized("ρ", liquid.density()),
    ]
}

/// The factors of the flow and of its square.
fn terms(tube: Tube, bends: u32, liquid: Liquid) -> Result<[f64; 2], Error> {
    let n = Error::unless_within("count of bends", f64::from(bends), 0.0, MOST_BENDS)?;
    let d = tube.bore();
    let whole = Tube::new(d, tube.length() + d * (ENDS + BEND * n))?;
    let a = 1.0 / whole.conductance(liquid.dynamic()).m3_s_pa();
    let speed = 4.0 / (PI * d.m() * d.m());
    let heads = ENDS_INERTIAL + n * BEND_INERTIAL * (1.0 + Length::from_inches(1.0) / d);
    Ok([a, heads * liquid.density().kg_m3() / 2.0 * speed * speed])
}
