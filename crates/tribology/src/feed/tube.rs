//! Slow flow through a round tube: the law of Hagen and Poiseuille both ways, and the Reynolds number that says whether it holds.
//!
//! Start at [`tube_flow`]. What ends and bends take besides is next door in `loss.rs`. All are closed formulas.

use std::f64::consts::PI;

use super::{LAMINAR, not_negative, plain, sized, step};
use crate::quantity::{DynamicViscosity, KinematicViscosity, Length, Pressure, VolumeFlow};
use crate::{Answer, Error, Standing, Symbol};

/// A straight round tube.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tube {
    bore: Length,
    length: Length,
}

/// How much flows for each unit of pressure.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Conductance(f64);

/// The unit of a conductance.
const CONDUCTANCE_UNIT: &str = "m³/(s·Pa)";

impl Tube {
    /// A tube of this bore and length.
    ///
    /// - `bore`: inside diameter.
    /// - `length`: along its middle line.
    /// - returns: the tube.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when either is not above zero.
    pub fn new(bore: Length, length: Length) -> Result<Self, Error> {
        let bore = Error::quantity_positive("bore", bore)?;
        Ok(Self { bore, length: Error::quantity_positive("length", length)? })
    }

    /// The inside diameter.
    #[must_use]
    pub fn bore(self) -> Length {
        self.bore
    }

    /// The length.
    #[must_use]
    pub fn length(self) -> Length {
        self.length
    }

    pub(super) fn conductance(self, dynamic: DynamicViscosity) -> Conductance {
        let square = self.bore.m() * self.bore.m();
        Conductance(PI * square * square / (128.0 * dynamic.pa_s() * self.length.m()))
    }
}

impl Conductance {
    /// The number of m³/(s·Pa).
    #[must_use]
    pub fn m3_s_pa(self) -> f64 {
        self.0
    }

    /// The flow that a pressure drives.
    ///
    /// - `pressure`: difference between the ends; its sign is that of the flow.
    /// - returns: the flow.
    ///
    /// # Range
    /// Where the conductance holds.
    ///
    /// # Source
    /// `hagen-poiseuille`
    #[must_use]
    pub fn flow(self, pressure: Pressure) -> VolumeFlow {
        VolumeFlow::from_m3_s(self.0 * pressure.pa())
    }

    /// The pressure that drives a flow.
    ///
    /// - `flow`: its sign is that of the pressure.
    /// - returns: difference between the ends.
    ///
    /// # Range
    /// Where the conductance holds.
    ///
    /// # Source
    /// `hagen-poiseuille`
    #[must_use]
    pub fn pressure(self, flow: VolumeFlow) -> Pressure {
        Pressure::from_pa(flow.m3_s() / self.0)
    }
}

/// The flow through a straight tube for each unit of pressure.
///
/// `G = π d⁴ / (128 μ L)`
///
/// - `tube`: bore `d` and length `L`.
/// - `dynamic`: dynamic viscosity at the temperature of the tube, `μ`.
/// - returns: the conductance.
///
/// # Range
/// Laminar flow, Reynolds number up to 2000, in a tube much longer than its entry; [`tube_reynolds`] warns of both.
///
/// # Errors
/// [`Error::OutOfRange`] when the viscosity is not above zero or the result without end.
///
/// # Source
/// `hagen-poiseuille`
///
/// # Example
/// ```
/// use tribology::feed::{Tube, tube_conductance};
/// use tribology::quantity::{DynamicViscosity, Length, Pressure};
/// let tube = Tube::new(Length::from_mm(3.0), Length::from_m(0.5)).expect("a tube");
/// let found = tube_conductance(tube, DynamicViscosity::from_mpa_s(60.0)).expect("an oil");
/// assert!((found.value.flow(Pressure::from_kpa(5.0)).ml_min() - 19.88).abs() < 0.01);
/// ```
pub fn tube_conductance(tube: Tube, dynamic: DynamicViscosity) -> Result<Answer<Conductance>, Error> {
    let mu = Error::quantity_positive("viscosity", dynamic)?;
    let found = tube.conductance(mu);
    Error::unless_positive("conductance", found.0)?;
    let inputs = vec![sized("d", tube.bore), sized("μ", mu), sized("L", tube.length)];
    let result = Symbol { symbol: "G", si: found.0, unit: CONDUCTANCE_UNIT };
    let name = "Conductance of a round tube";
    let formula = "G = π d⁴ / (128 μ L)";
    Ok(Answer::of(found, step(name, formula, inputs, result, "hagen-poiseuille", Standing::Handbook)))
}

/// The flow that a pressure drives through a straight tube.
///
/// `Q = π Δp d⁴ / (128 μ L)`
///
/// - `tube`: bore `d` and length `L`.
/// - `dynamic`: dynamic viscosity at the temperature of the tube, `μ`.
/// - `pressure`: difference between its ends, `Δp`.
/// - returns: the flow. A tenth more bore gives nearly half as much again.
///
/// # Range
/// Laminar flow, Reynolds number up to 2000, in a tube much longer than its entry; [`tube_reynolds`] warns of both.
///
/// # Errors
/// [`Error::OutOfRange`] when the viscosity is not above zero, the pressure below it, or the result without end.
///
/// # Source
/// `hagen-poiseuille`
///
/// # Example
/// ```
/// use tribology::feed::{Tube, tube_flow};
/// use tribology::quantity::{DynamicViscosity, Length, Pressure};
/// let tube = Tube::new(Length::from_mm(3.0), Length::from_m(0.5)).expect("a tube");
/// let found = tube_flow(tube, DynamicViscosity::from_mpa_s(60.0), Pressure::from_kpa(5.0));
/// assert!(found.is_ok_and(|found| (found.value.ml_min() - 19.88).abs() < 0.01));
/// ```
pub fn tube_flow(tube: Tube, dynamic: DynamicViscosity, pressure: Pressure) -> Result<Answer<VolumeFlow>, Error> {
    let mu = Error::quantity_positive("viscosity", dynamic)?;
    let p = not_negative("pressure", pressure)?;
    let flow = not_negative("flow", tube.conductance(mu).flow(p))?;
    let inputs = vec![sized("Δp", p), sized("d", tube.bore), sized("μ", mu), sized("L", tube.length)];
    let (name, formula) = ("Flow through a round tube", "Q = π Δp d⁴ / (128 μ L)");
    Ok(Answer::of(flow, step(name, formula, inputs, sized("Q", flow), "hagen-poiseuille", Standing::Handbook)))
}

/// The pressure that drives a flow through a straight tube.
///
/// `Δp = 128 μ L Q / (π d⁴)`
///
/// - `tube`: bore `d` and length `L`.
/// - `dynamic`: dynamic viscosity at the temperature of the tube, `μ`.
/// - `flow`: the flow, `Q`.
/// - returns: difference of pressure between the ends.
///
/// # Range
/// Laminar flow, Reynolds number up to 2000, in a tube much longer than its entry; [`tube_reynolds`] warns of both.
///
/// # Errors
/// [`Error::OutOfRange`] when the viscosity is not above zero, the flow below it, or the result without end.
///
/// # Source
/// `hagen-poiseuille`
///
/// # Example
/// ```
/// use tribology::feed::{Tube, tube_pressure};
/// use tribology::quantity::{DynamicViscosity, Length, VolumeFlow};
/// let tube = Tube::new(Length::from_mm(3.0), Length::from_m(0.5)).expect("a tube");
/// let found = tube_pressure(tube, DynamicViscosity::from_mpa_s(60.0), VolumeFlow::from_ml_min(19.8804));
/// assert!(found.is_ok_and(|found| (found.value.kpa() - 5.0).abs() < 1e-3));
/// ```
pub fn tube_pressure(tube: Tube, dynamic: DynamicViscosity, flow: VolumeFlow) -> Result<Answer<Pressure>, Error> {
    let mu = Error::quantity_positive("viscosity", dynamic)?;
    let q = not_negative("flow", flow)?;
    let pressure = not_negative("pressure", tube.conductance(mu).pressure(q))?;
    let inputs = vec![sized("μ", mu), sized("L", tube.length), sized("Q", q), sized("d", tube.bore)];
    let (name, formula) = ("Pressure for a flow through a round tube", "Δp = 128 μ L Q / (π d⁴)");
    let result = sized("Δp", pressure);
    Ok(Answer::of(pressure, step(name, formula, inputs, result, "hagen-poiseuille", Standing::Handbook)))
}

/// The Reynolds number of the flow in a tube, with what it says of the laws of this file.
///
/// `Re = 4 Q / (π d ν)`
///
/// - `tube`: bore `d`; its length is held against that of the entry.
/// - `kinematic`: kinematic viscosity, `ν`.
/// - `flow`: the flow, `Q`.
/// - returns: the number, dimensionless.
///
/// # Range
/// Any flow; the answer carries a warning above 2000, where the flow is no longer surely laminar, and where the entry is longer than the
/// tube, so that the law of the straight tube asks for too little pressure.
///
/// # Errors
/// [`Error::OutOfRange`] when the viscosity is not above zero or the flow below it.
///
/// # Source
/// `hagen-poiseuille`
///
/// # Example
/// ```
/// use tribology::feed::{Tube, tube_reynolds};
/// use tribology::quantity::{KinematicViscosity, Length, VolumeFlow};
/// let tube = Tube::new(Length::from_mm(10.0), Length::from_m(2.0)).expect("a tube");
/// let found = tube_reynolds(tube, KinematicViscosity::from_mm2_s(1.0), VolumeFlow::from_l_min(1.2)).expect("a flow");
/// assert!((found.value - 2546.0).abs() < 1.0 && !found.warnings.is_empty());
/// ```
pub fn tube_reynolds(tube: Tube, kinematic: KinematicViscosity, flow: VolumeFlow) -> Result<Answer<f64>, Error> {
    let nu = Error::quantity_positive("viscosity", kinematic)?;
    let q = not_negative("flow", flow)?;
    let re = 4.0 * q.m3_s() / (PI * tube.bore.m() * nu.m2_s());
    Error::unless_within("Reynolds number", re, 0.0, f64::MAX)?;
    let inputs = vec![sized("Q", q), sized("d", tube.bore), sized("ν", nu)];
    let (name, formula) = ("Reynolds number in a tube", "Re = 4 Q / (π d ν)");
    let found = step(name, formula, inputs, plain("Re", re), "hagen-poiseuille", Standing::Handbook);
    let entry = entry_length(tube.bore, re)?.value / tube.length;
    let answer = Answer::of(re, found).vouched_within("Reynolds number", re, 0.0, LAMINAR);
    Ok(answer.vouched_within("length of the entry over that of the tube", entry, 0.0, 1.0))
}

/// The Darcy friction factor of laminar flow in a round tube.
///
/// `f = 64 / Re`
///
/// - `re`: Reynolds number on the bore, dimensionless.
/// - returns: Darcy (not Fanning) friction factor, dimensionless.
///
/// # Range
/// `0 < re <= 2000`; above it the answer carries a warning.
///
/// # Errors
/// [`Error::OutOfRange`] when `re` is not above zero.
///
/// # Source
/// `hagen-poiseuille`
///
/// # Example
/// ```
/// use tribology::feed::friction_factor;
/// assert!(friction_factor(50.0).is_ok_and(|found| (found.value - 1.28).abs() < 1e-12));
/// ```
pub fn friction_factor(re: f64) -> Result<Answer<f64>, Error> {
    let re = Error::unless_positive("Reynolds number", re)?;
    let f = 64.0 / re;
    let name = "Darcy friction factor";
    let found = step(name, "f = 64 / Re", vec![plain("Re", re)], plain("f", f), "hagen-poiseuille", Standing::Handbook);
    Ok(Answer::of(f, found).vouched_within("Reynolds number", re, 0.0, LAMINAR))
}

/// How far into a tube laminar flow still gathers its shape.
///
/// `Lₑ = 0.06 Re d`
///
/// - `bore`: inside diameter, `d`.
/// - `re`: Reynolds number on the bore, dimensionless.
/// - returns: the length of the entry. In slow thick oil it is less than the bore.
///
/// # Range
/// Laminar flow; above a Reynolds number of 2000 the answer carries a warning. Below 10 the entry is rather half a bore long.
///
/// # Errors
/// [`Error::OutOfRange`] when the bore is not above zero or the number below it.
///
/// # Source
/// `entry-length`
///
/// # Example
/// ```
/// use tribology::feed::entry_length;
/// use tribology::quantity::Length;
/// let found = entry_length(Length::from_mm(4.0), 100.0);
/// assert!(found.is_ok_and(|found| (found.value.mm() - 24.0).abs() < 1e-9));
/// ```
pub fn entry_length(bore: Length, re: f64) -> Result<Answer<Length>, Error> {
    let d = Error::quantity_positive("bore", bore)?;
    let re = Error::unless_within("Reynolds number", re, 0.0, f64::MAX)?;
    let entry = not_negative("length of the entry", d * (0.06 * re))?;
    let inputs = vec![plain("Re", re), sized("d", d)];
    let name = "Length of the entry";
    let found = step(name, "Lₑ = 0.06 Re d", inputs, sized("Lₑ", entry), "entry-length", Standing::FromMemory);
    Ok(Answer::of(entry, found).vouched_within("Reynolds number", re, 0.0, LAMINAR))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_cannot_be_is_named() {
        let named = |found: Result<Tube, Error>| match found {
            Err(Error::OutOfRange { name, .. }) => name,
            other => panic!("{other:?}"),
        };
        let mm = Length::from_mm;
        assert_eq!(named(Tube::new(mm(0.0), mm(1.0))), "bore");
        assert_eq!(named(Tube::new(mm(f64::NAN), mm(1.0))), "bore");
        assert_eq!(named(Tube::new(mm(1.0), mm(-1.0))), "length");
        let tube = Tube::new(mm(3.0), mm(500.0)).expect("a tube");
        let eta = DynamicViscosity::from_mpa_s;
        for (eta, pressure) in [(eta(0.0), 1.0), (eta(-1.0), 1.0), (eta(60.0), -1.0), (eta(60.0), f64::INFINITY)] {
            assert!(tube_flow(tube, eta, Pressure::from_pa(pressure)).is_err(), "{eta:?} {pressure}");
        }
        assert!(tube_pressure(tube, eta(60.0), VolumeFlow::from_ml_min(-1.0)).is_err());
    }

    #[test]
    fn a_short_tube_and_a_fast_flow_each_have_their_warning() {
        let warned = |bore, length, mm2_s, ml_min| {
            let tube = Tube::new(Length::from_mm(bore), Length::from_mm(length)).expect("a tube");
            let flow = VolumeFlow::from_ml_min(ml_min);
            let found = tube_reynolds(tube, KinematicViscosity::from_mm2_s(mm2_s), flow).expect("a flow");
            found.warnings.len()
        };
        assert_eq!(warned(3.0, 500.0, 68.0, 20.0), 0);
        // Re = 849, so that the entry is 0.2 m long.
        assert_eq!(warned(4.0, 100.0, 1.0, 160.0), 1);
        assert_eq!(warned(4.0, 100.0, 1.0, 1600.0), 2);
    }
}
