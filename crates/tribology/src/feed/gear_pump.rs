//! A gear pump: what a turn moves, and what slips back between the teeth and the case.
//!
//! Start at [`gear_pump_flow`] where the efficiency is known; at [`gear_pump_slip_wilson_1949`] where a delivery was measured once, which
//! then gives the delivery with other oil and other pressure.

use std::f64::consts::PI;

use super::{not_negative, plain, sized, step};
use crate::quantity::{DynamicViscosity, Length, Pressure, Rotation, Volume, VolumeFlow};
use crate::{Answer, Error, Standing};

/// How much slips back in a pump, for its displacement and for each unit of pressure over viscosity; dimensionless and of one pump.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct SlipCoefficient(f64);

impl SlipCoefficient {
    /// A coefficient that was measured.
    ///
    /// - `number`: dimensionless.
    /// - returns: the coefficient.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when it is below zero.
    pub fn new(number: f64) -> Result<Self, Error> {
        Ok(Self(Error::unless_within("slip coefficient", number, 0.0, f64::MAX)?))
    }

    /// The number, dimensionless.
    #[must_use]
    pub fn number(self) -> f64 {
        self.0
    }
}

/// What one turn of two like gears moves.
///
/// `V = 2 π m² z b`
///
/// - `module`: size of the teeth, `m`.
/// - `teeth`: of one gear, `z`.
/// - `width`: of the gears, `b`.
/// - returns: the volume of one turn.
///
/// # Range
/// Usual teeth; gears of few teeth move up to a tenth more.
///
/// # Errors
/// [`Error::OutOfRange`] when a length is not above zero or there are fewer than six teeth.
///
/// # Source
/// `gear-pump-displacement`
///
/// # Example
/// ```
/// use tribology::feed::gear_displacement;
/// use tribology::quantity::Length;
/// let found = gear_displacement(Length::from_mm(2.0), 12, Length::from_mm(10.0));
/// assert!(found.is_ok_and(|found| (found.value.ml() - 3.016).abs() < 1e-3));
/// ```
pub fn gear_displacement(module: Length, teeth: u32, width: Length) -> Result<Answer<Volume>, Error> {
    let m = Error::quantity_positive("module", module)?;
    let z = Error::unless_within("count of teeth", f64::from(teeth), 6.0, f64::MAX)?;
    let b = Error::quantity_positive("width", width)?;
    let v = Error::quantity_positive("displacement", m * m * b * (2.0 * PI * z))?;
    let inputs = vec![sized("m", m), plain("z", z), sized("b", b)];
    let name = "Displacement of a gear pump";
    let (formula, source) = ("V = 2 π m² z b", "gear-pump-displacement");
    Ok(Answer::of(v, step(name, formula, inputs, sized("V", v), source, Standing::FromMemory)))
}

/// What a gear pump of known efficiency delivers.
///
/// `Q = V n η`
///
/// - `displacement`: volume of one turn, `V`.
/// - `speed`: turns in a time, `n`.
/// - `efficiency`: part that is delivered, 0 to 1, `η`.
/// - returns: the flow.
///
/// # Range
/// A pump that fills: thick cold oil at the suction is judged by [`limit`](super::limit()).
///
/// # Errors
/// [`Error::OutOfRange`] when the displacement is not above zero, the speed below it, or the efficiency not from 0 to 1.
///
/// # Source
/// `own-calculation`
///
/// # Example
/// ```
/// use tribology::feed::gear_pump_flow;
/// use tribology::quantity::{Rotation, Volume};
/// let found = gear_pump_flow(Volume::from_ml(3.0), Rotation::from_rpm(500.0), 0.8);
/// assert!(found.is_ok_and(|found| (found.value.l_min() - 1.2).abs() < 1e-9));
/// ```
pub fn gear_pump_flow(displacement: Volume, speed: Rotation, efficiency: f64) -> Result<Answer<VolumeFlow>, Error> {
    let (v, n) = turning(displacement, speed)?;
    let eta = Error::unless_within("efficiency", efficiency, 0.0, 1.0)?;
    let flow = not_negative("flow", VolumeFlow::from_m3_s(v.m3() * n.per_second() * eta))?;
    let inputs = vec![sized("V", v), sized("n", n), plain("η", eta)];
    let name = "Delivery of a gear pump";
    let found = step(name, "Q = V n η", inputs, sized("Q", flow), "own-calculation", Standing::OwnCalculation);
    Ok(Answer::of(flow, found))
}

/// What a gear pump delivers against a pressure, by its slip.
///
/// `Q = V n − C V Δp / (2 π μ)`
///
/// - `displacement`: volume of one turn, `V`.
/// - `speed`: turns in a time, `n`.
/// - `slip`: coefficient of this pump, `C`; none is offered here, for wear changes it.
/// - `dynamic`: dynamic viscosity, `μ`.
/// - `pressure`: that it pumps against, `Δp`.
/// - returns: the flow; none where as much slips back as is moved.
///
/// # Range
/// Slow flow in the gaps, and a pump that fills. Thin warm oil slips more, so that a worn pump fails when warm.
///
/// # Errors
/// [`Error::OutOfRange`] when displacement or viscosity is not above zero, or speed or pressure below it.
///
/// # Source
/// `wilson-1949`
///
/// # Example
/// ```
/// use tribology::feed::{SlipCoefficient, gear_pump_flow_wilson_1949};
/// use tribology::quantity::{DynamicViscosity, Pressure, Rotation, Volume};
/// let slip = SlipCoefficient::new(4e-6).expect("a coefficient");
/// let (v, n, p) = (Volume::from_ml(3.0), Rotation::from_rpm(500.0), Pressure::from_bar(2.0));
/// let flow = |mpa_s| gear_pump_flow_wilson_1949(v, n, slip, DynamicViscosity::from_mpa_s(mpa_s), p).expect("a flow").value;
/// assert!(flow(20.0) < flow(60.0));
/// ```
pub fn gear_pump_flow_wilson_1949(
    displacement: Volume,
    speed: Rotation,
    slip: SlipCoefficient,
    dynamic: DynamicViscosity,
    pressure: Pressure,
) -> Result<Answer<VolumeFlow>, Error> {
    let (v, n) = turning(displacement, speed)?;
    let mu = Error::quantity_positive("viscosity", dynamic)?;
    let p = not_negative("pressure", pressure)?;
    let back = slip.0 * v.m3() * p.pa() / (2.0 * PI * mu.pa_s());
    let moved = v.m3() * n.per_second();
    let flow = not_negative("flow", VolumeFlow::from_m3_s((moved - back).max(0.0)))?;
    let inputs = vec![sized("V", v), sized("n", n), plain("C", slip.0), sized("Δp", p), sized("μ", mu)];
    let (name, formula) = ("Delivery of a gear pump with its slip", "Q = V n − C V Δp / (2 π μ), at least nothing");
    Ok(Answer::of(flow, step(name, formula, inputs, sized("Q", flow), "wilson-1949", Standing::FromMemory)))
}

/// The slip coefficient of a gear pump from a delivery that was measured.
///
/// `C = 2 π μ (V n − Q) / (V Δp)`
///
/// - `displacement`: volume of one turn, `V`.
/// - `speed`: turns in a time, `n`.
/// - `delivered`: the flow as caught in a jug, `Q`.
/// - `dynamic`: dynamic viscosity then, `μ`.
/// - `pressure`: that it pumped against, `Δp`.
/// - returns: the coefficient of this pump as worn as it is.
///
/// # Range
/// Slow flow in the gaps, and a pump that fills.
///
/// # Errors
/// [`Error::OutOfRange`] when displacement, viscosity or pressure is not above zero, the speed below it, or more is delivered than is moved.
///
/// # Source
/// `wilson-1949`
///
/// # Example
/// ```
/// use tribology::feed::gear_pump_slip_wilson_1949;
/// use tribology::quantity::{DynamicViscosity, Pressure, Rotation, Volume, VolumeFlow};
/// let (v, n, q) = (Volume::from_ml(3.0), Rotation::from_rpm(500.0), VolumeFlow::from_l_min(1.2));
/// let found = gear_pump_slip_wilson_1949(v, n, q, DynamicViscosity::from_mpa_s(60.0), Pressure::from_bar(2.0));
/// assert!(found.is_ok_and(|found| (found.value.number() - 3.14e-6).abs() < 1e-8));
/// ```
pub fn gear_pump_slip_wilson_1949(
    displacement: Volume,
    speed: Rotation,
    delivered: VolumeFlow,
    dynamic: DynamicViscosity,
    pressure: Pressure,
) -> Result<Answer<SlipCoefficient>, Error> {
    let (v, n) = turning(displacement, speed)?;
    let moved = VolumeFlow::from_m3_s(v.m3() * n.per_second());
    let q = Error::quantity_within("delivery", delivered, VolumeFlow::from_m3_s(0.0), moved)?;
    let mu = Error::quantity_positive("viscosity", dynamic)?;
    let p = Error::quantity_positive("pressure", pressure)?;
    let slip = SlipCoefficient::new(2.0 * PI * mu.pa_s() * (moved - q).m3_s() / (v.m3() * p.pa()))?;
    let inputs = vec![sized("μ", mu), sized("V", v), sized("n", n), sized("Q", q), sized("Δp", p)];
    let (name, formula) = ("Slip coefficient of a gear pump", "C = 2 π μ (V n − Q) / (V Δp)");
    Ok(Answer::of(slip, step(name, formula, inputs, plain("C", slip.0), "wilson-1949", Standing::FromMemory)))
}

fn turning(displacement: Volume, speed: Rotation) -> Result<(Volume, Rotation), Error> {
    Ok((Error::quantity_positive("displacement", displacement)?, not_negative("speed", speed)?))
}
