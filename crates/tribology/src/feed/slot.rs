//! Slow flow through narrow slots: between flat faces, and through the ring-shaped gap round a shaft or a plunger.
//!
//! Start at [`gap_flow`] for a bearing or a plunger. All are closed formulas, linear in the pressure.

use std::f64::consts::PI;

use super::{not_negative, plain, sized, step};
use crate::quantity::{DynamicViscosity, Length, Pressure, VolumeFlow};
use crate::{Answer, Error, Standing, Symbol};

/// A flat slot.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Slot {
    width: Length,
    height: Length,
    length: Length,
}

/// The gap round a shaft in its hole.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Gap {
    diameter: Length,
    clearance: Length,
    length: Length,
    eccentricity: f64,
}

/// The largest height over width at which the sides of a slot take less than about three in a hundred of the flow.
const FLAT: f64 = 0.05;

impl Slot {
    /// A slot of this size.
    ///
    /// - `width`: across the flow, the long side.
    /// - `height`: across the flow, the narrow side.
    /// - `length`: along the flow.
    /// - returns: the slot.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when one is not above zero.
    pub fn new(width: Length, height: Length, length: Length) -> Result<Self, Error> {
        let width = Error::quantity_positive("width", width)?;
        let height = Error::quantity_positive("height", height)?;
        Ok(Self { width, height, length: Error::quantity_positive("length", length)? })
    }

    fn symbols(self) -> Vec<Symbol> {
        vec![sized("w", self.width), sized("h", self.height), sized("L", self.length)]
    }

    /// Flow times viscosity for each unit of pressure.
    fn ease(self) -> f64 {
        let h = self.height.m();
        self.width.m() * h * h * h / (12.0 * self.length.m())
    }
}

impl Gap {
    /// A gap of this size.
    ///
    /// - `diameter`: of the shaft.
    /// - `clearance`: on the diameter: hole less shaft.
    /// - `length`: along the shaft.
    /// - `eccentricity`: how far the shaft lies off the middle, as a part of the clearance on the radius: 0 in the middle, 1 where it
    ///   touches.
    /// - returns: the gap.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when a length is not above zero, or the eccentricity not from 0 to 1.
    pub fn new(diameter: Length, clearance: Length, length: Length, eccentricity: f64) -> Result<Self, Error> {
        let diameter = Error::quantity_positive("diameter", diameter)?;
        let clearance = Error::quantity_positive("clearance", clearance)?;
        let length = Error::quantity_positive("length", length)?;
        let eccentricity = Error::unless_within("eccentricity", eccentricity, 0.0, 1.0)?;
        Ok(Self { diameter, clearance, length, eccentricity })
    }

    fn symbols(self) -> Vec<Symbol> {
        vec![
            sized("D", self.diameter),
            sized("C", self.clearance),
            sized("L", self.length),
            plain("ε", self.eccentricity),
        ]
    }

    /// Flow times viscosity for each unit of pressure.
    fn ease(self) -> f64 {
        let c = self.clearance.m() / 2.0;
        let off = 1.0 + 1.5 * self.eccentricity * self.eccentricity;
        PI * self.diameter.m() * c * c * c * off / (12.0 * self.length.m())
    }
}

/// The flow that a pressure drives through a flat slot.
///
/// `Q = w h³ Δp / (12 μ L)`
///
/// - `slot`: width `w`, height `h`, length `L`.
/// - `dynamic`: dynamic viscosity, `μ`.
/// - `pressure`: difference between the ends, `Δp`.
/// - returns: the flow.
///
/// # Range
/// Laminar flow in a slot at least twenty times as wide as high; a warning beyond.
///
/// # Errors
/// [`Error::OutOfRange`] when the viscosity is not above zero or the pressure below it.
///
/// # Source
/// `slot-flow`
///
/// # Example
/// ```
/// use tribology::feed::{Slot, slot_flow};
/// use tribology::quantity::{DynamicViscosity, Length, Pressure};
/// let mm = Length::from_mm;
/// let slot = Slot::new(mm(10.0), mm(0.1), mm(20.0)).expect("a slot");
/// let found = slot_flow(slot, DynamicViscosity::from_mpa_s(50.0), Pressure::from_bar(1.0));
/// assert!(found.is_ok_and(|found| (found.value.ml_min() - 5.0).abs() < 1e-9));
/// ```
pub fn slot_flow(slot: Slot, dynamic: DynamicViscosity, pressure: Pressure) -> Result<Answer<VolumeFlow>, Error> {
    let (flow, inputs) = flow(slot.ease(), slot.symbols(), dynamic, pressure)?;
    let name = "Flow through a slot";
    let found = step(name, "Q = w h³ Δp / (12 μ L)", inputs, sized("Q", flow), "slot-flow", Standing::Handbook);
    Ok(flat(Answer::of(flow, found), slot))
}

/// The pressure that drives a flow through a flat slot.
///
/// `Δp = 12 μ L Q / (w h³)`
///
/// - `slot`: width `w`, height `h`, length `L`.
/// - `dynamic`: dynamic viscosity, `μ`.
/// - `flow`: the flow, `Q`.
/// - returns: difference of pressure between the ends.
///
/// # Range
/// As [`slot_flow`].
///
/// # Errors
/// [`Error::OutOfRange`] when the viscosity is not above zero or the flow below it.
///
/// # Source
/// `slot-flow`
///
/// # Example
/// ```
/// use tribology::feed::{Slot, slot_pressure};
/// use tribology::quantity::{DynamicViscosity, Length, VolumeFlow};
/// let mm = Length::from_mm;
/// let slot = Slot::new(mm(10.0), mm(0.1), mm(20.0)).expect("a slot");
/// let found = slot_pressure(slot, DynamicViscosity::from_mpa_s(50.0), VolumeFlow::from_ml_min(5.0));
/// assert!(found.is_ok_and(|found| (found.value.bar() - 1.0).abs() < 1e-9));
/// ```
pub fn slot_pressure(slot: Slot, dynamic: DynamicViscosity, flow: VolumeFlow) -> Result<Answer<Pressure>, Error> {
    let (found, inputs) = pressure(slot.ease(), slot.symbols(), dynamic, flow)?;
    let name = "Pressure for a flow through a slot";
    let line = step(name, "Δp = 12 μ L Q / (w h³)", inputs, sized("Δp", found), "slot-flow", Standing::Handbook);
    Ok(flat(Answer::of(found, line), slot))
}

/// The flow that a pressure drives along a shaft through its gap.
///
/// `Q = π D (C/2)³ (1 + 1.5 ε²) Δp / (12 μ L)`
///
/// - `gap`: diameter `D`, clearance on the diameter `C`, length `L`, eccentricity `ε`.
/// - `dynamic`: dynamic viscosity, `μ`.
/// - `pressure`: difference between the ends, `Δp`.
/// - returns: the flow; two and a half times as much when the shaft touches as when it is in the middle.
///
/// # Range
/// Laminar flow, a gap narrow against the shaft, and a shaft at rest: turning moves oil round, not along.
///
/// # Errors
/// [`Error::OutOfRange`] when the viscosity is not above zero or the pressure below it.
///
/// # Source
/// `slot-flow`
///
/// # Example
/// ```
/// use tribology::feed::{Gap, gap_flow};
/// use tribology::quantity::{DynamicViscosity, Length, Pressure};
/// let mm = Length::from_mm;
/// let gap = Gap::new(mm(50.0), mm(0.06), mm(50.0), 0.0).expect("a gap");
/// let found = gap_flow(gap, DynamicViscosity::from_mpa_s(50.0), Pressure::from_bar(1.0));
/// assert!(found.is_ok_and(|found| (found.value.ml_min() - 0.848).abs() < 1e-3));
/// ```
pub fn gap_flow(gap: Gap, dynamic: DynamicViscosity, pressure: Pressure) -> Result<Answer<VolumeFlow>, Error> {
    let (flow, inputs) = flow(gap.ease(), gap.symbols(), dynamic, pressure)?;
    let (name, formula) = ("Flow through the gap round a shaft", "Q = π D (C/2)³ (1 + 1.5 ε²) Δp / (12 μ L)");
    Ok(Answer::of(flow, step(name, formula, inputs, sized("Q", flow), "slot-flow", Standing::Handbook)))
}

/// The pressure that drives a flow along a shaft through its gap.
///
/// `Δp = 12 μ L Q / (π D (C/2)³ (1 + 1.5 ε²))`
///
/// - `gap`: diameter `D`, clearance on the diameter `C`, length `L`, eccentricity `ε`.
/// - `dynamic`: dynamic viscosity, `μ`.
/// - `flow`: the flow, `Q`.
/// - returns: difference of pressure between the ends.
///
/// # Range
/// As [`gap_flow`].
///
/// # Errors
/// [`Error::OutOfRange`] when the viscosity is not above zero or the flow below it.
///
/// # Source
/// `slot-flow`
///
/// # Example
/// ```
/// use tribology::feed::{Gap, gap_pressure};
/// use tribology::quantity::{DynamicViscosity, Length, VolumeFlow};
/// let mm = Length::from_mm;
/// let gap = Gap::new(mm(50.0), mm(0.06), mm(50.0), 1.0).expect("a gap");
/// let found = gap_pressure(gap, DynamicViscosity::from_mpa_s(50.0), VolumeFlow::from_ml_min(0.848));
/// assert!(found.is_ok_and(|found| (found.value.bar() - 0.4).abs() < 1e-3));
/// ```
pub fn gap_pressure(gap: Gap, dynamic: DynamicViscosity, flow: VolumeFlow) -> Result<Answer<Pressure>, Error> {
    let (found, inputs) = pressure(gap.ease(), gap.symbols(), dynamic, flow)?;
    let formula = "Δp = 12 μ L Q / (π D (C/2)³ (1 + 1.5 ε²))";
    let name = "Pressure for a flow through the gap round a shaft";
    Ok(Answer::of(found, step(name, formula, inputs, sized("Δp", found), "slot-flow", Standing::Handbook)))
}

fn flow(
    ease: f64,
    mut symbols: Vec<Symbol>,
    dynamic: DynamicViscosity,
    pressure: Pressure,
) -> Result<(VolumeFlow, Vec<Symbol>), Error> {
    let mu = Error::quantity_positive("viscosity", dynamic)?;
    let p = not_negative("pressure", pressure)?;
    let found = not_negative("flow", VolumeFlow::from_m3_s(ease * p.pa() / mu.pa_s()))?;
    symbols.extend([sized("Δp", p), sized("μ", mu)]);
    Ok((found, symbols))
}

fn pressure(
    ease: f64,
    mut symbols: Vec<Symbol>,
    dynamic: DynamicViscosity,
    flow: VolumeFlow,
) -> Result<(Pressure, Vec<Symbol>), Error> {
    let mu = Error::quantity_positive("viscosity", dynamic)?;
    let q = not_negative("flow", flow)?;
    let found = not_negative("pressure", Pressure::from_pa(q.m3_s() * mu.pa_s() / ease))?;
    symbols.extend([sized("μ", mu), sized("Q", q)]);
    Ok((found, symbols))
}

fn flat<T>(answer: Answer<T>, slot: Slot) -> Answer<T> {
    answer.vouched_within("height of the slot over its width", slot.height / slot.width, 0.0, FLAT)
}
