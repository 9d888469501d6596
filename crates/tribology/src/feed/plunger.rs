//! A plunger pump: what a stroke gives, what slips past the plunger and back through the check, and how long thick oil takes to refill it.
//!
//! Start at [`plunger_flow`]. Each loss is worked out by itself as a part of the stroke; whoever knows them takes them from one to have
//! the efficiency.

use std::f64::consts::PI;

use super::{Gap, Tube, counted, gap_flow, not_negative, plain, sized, step, tube_flow};
use crate::quantity::{DynamicViscosity, Length, Pressure, Rotation, Time, Volume, VolumeFlow};
use crate::{Answer, Error, Standing};

/// A plunger with its stroke.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Plunger {
    diameter: Length,
    stroke: Length,
}

impl Plunger {
    /// A plunger of this size.
    ///
    /// - `diameter`: of the plunger.
    /// - `stroke`: how far it goes.
    /// - returns: the plunger.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when either is not above zero.
    pub fn new(diameter: Length, stroke: Length) -> Result<Self, Error> {
        let diameter = Error::quantity_positive("plunger", diameter)?;
        Ok(Self { diameter, stroke: Error::quantity_positive("stroke", stroke)? })
    }

    fn volume(self) -> Volume {
        self.diameter * self.diameter * self.stroke * (PI / 4.0)
    }
}

/// The volume of one stroke.
///
/// `V = (π/4) d² s`
///
/// - `plunger`: diameter `d` and stroke `s`.
/// - returns: the volume, nothing lost.
///
/// # Range
/// Any plunger.
///
/// # Errors
/// [`Error::OutOfRange`] when the volume is without end.
///
/// # Source
/// `own-calculation`
///
/// # Example
/// ```
/// use tribology::feed::{Plunger, stroke_volume};
/// use tribology::quantity::Length;
/// let plunger = Plunger::new(Length::from_mm(8.0), Length::from_mm(6.0)).expect("a plunger");
/// assert!(stroke_volume(plunger).is_ok_and(|found| (found.value.ul() - 301.593).abs() < 1e-3));
/// ```
pub fn stroke_volume(plunger: Plunger) -> Result<Answer<Volume>, Error> {
    let v = Error::quantity_positive("volume of a stroke", plunger.volume())?;
    let inputs = vec![sized("d", plunger.diameter), sized("s", plunger.stroke)];
    let name = "Volume of a stroke";
    let found = step(name, "V = (π/4) d² s", inputs, sized("V", v), "own-calculation", Standing::OwnCalculation);
    Ok(Answer::of(v, found))
}

/// What a plunger pump delivers.
///
/// `Q = V n η`
///
/// - `plunger`: diameter and stroke.
/// - `rate`: strokes in a time, `n`.
/// - `efficiency`: part of each stroke that is delivered, 0 to 1, `η`.
/// - returns: the flow.
///
/// # Range
/// As long as the barrel refills in the time of a stroke: [`refill_time`] tells.
///
/// # Errors
/// [`Error::OutOfRange`] when the rate is below zero or the efficiency not from 0 to 1.
///
/// # Source
/// `own-calculation`
///
/// # Example
/// ```
/// use tribology::feed::{Plunger, plunger_flow};
/// use tribology::quantity::{Length, Rotation};
/// let plunger = Plunger::new(Length::from_mm(8.0), Length::from_mm(6.0)).expect("a plunger");
/// let found = plunger_flow(plunger, Rotation::from_per_minute(40.0), 0.85);
/// assert!(found.is_ok_and(|found| (found.value.ml_min() - 10.2542).abs() < 1e-3));
/// ```
pub fn plunger_flow(plunger: Plunger, rate: Rotation, efficiency: f64) -> Result<Answer<VolumeFlow>, Error> {
    let n = not_negative("rate", rate)?;
    let eta = Error::unless_within("efficiency", efficiency, 0.0, 1.0)?;
    let stroke = stroke_volume(plunger)?;
    let flow = not_negative("flow", VolumeFlow::from_m3_s(stroke.value.m3() * n.per_second() * eta))?;
    let inputs = vec![sized("V", stroke.value), counted("n", n), plain("η", eta)];
    let name = "Delivery of a plunger pump";
    let found = step(name, "Q = V n η", inputs, sized("Q", flow), "own-calculation", Standing::OwnCalculation);
    Ok(Answer::of(flow, found).after(stroke))
}

/// The part of a stroke that slips back past the plunger while it presses.
///
/// `slip = Q_gap t / V`
///
/// - `plunger`: diameter and stroke.
/// - `clearance`: barrel less plunger, on the diameter.
/// - `guide`: length of plunger in the barrel at mid-stroke.
/// - `dynamic`: dynamic viscosity.
/// - `pressure`: that it presses against.
/// - `pressing`: time of the pressing half of a stroke, `t`.
/// - returns: a part of one; the whole stroke, 1, where more would slip than the stroke gives.
///
/// # Range
/// A plunger that leans on its barrel, as they do, so that the gap is at its widest on one side; slow flow in the gap.
///
/// # Errors
/// [`Error::OutOfRange`] when a length or the viscosity is not above zero, or pressure or time below it.
///
/// # Source
/// `slot-flow`
///
/// # Example
/// ```
/// use tribology::feed::{Plunger, plunger_slip};
/// use tribology::quantity::{DynamicViscosity, Length, Pressure, Time};
/// let mm = Length::from_mm;
/// let plunger = Plunger::new(mm(8.0), mm(6.0)).expect("a plunger");
/// let oil = DynamicViscosity::from_mpa_s(60.0);
/// let found = plunger_slip(plunger, mm(0.04), mm(20.0), oil, Pressure::from_bar(5.0), Time::from_seconds(0.5));
/// assert!(found.is_ok_and(|found| (0.02..0.04).contains(&found.value)));
/// ```
pub fn plunger_slip(
    plunger: Plunger,
    clearance: Length,
    guide: Length,
    dynamic: DynamicViscosity,
    pressure: Pressure,
    pressing: Time,
) -> Result<Answer<f64>, Error> {
    let t = not_negative("time", pressing)?;
    let gap = Gap::new(plunger.diameter, clearance, guide, 1.0)?;
    let leak = gap_flow(gap, dynamic, pressure)?;
    let stroke = stroke_volume(plunger)?;
    let part = lost(leak.value, t, stroke.value);
    let inputs = vec![sized("Q_gap", leak.value), sized("t", t), sized("V", stroke.value)];
    let (name, formula) = ("Part of a stroke that slips past the plunger", "slip = Q_gap t / V, at most 1");
    let found = step(name, formula, inputs, plain("slip", part), "slot-flow", Standing::Handbook);
    Ok(Answer::of(part, found).after(leak.after(stroke)))
}

/// The part of a stroke that runs back through a check that does not close.
///
/// `loss = Q t / V`
///
/// - `plunger`: diameter and stroke.
/// - `leak`: flow back through the closed check, as caught in a glass, `Q`.
/// - `resting`: time of the filling half of a stroke with the rest after it, `t`.
/// - returns: a part of one; the whole stroke, 1, where as much runs back as it gives, so that the pump moves and delivers nothing.
///
/// # Range
/// A leak measured at the pressure of the line.
///
/// # Errors
/// [`Error::OutOfRange`] when leak or time is below zero.
///
/// # Source
/// `own-calculation`
///
/// # Example
/// ```
/// use tribology::feed::{Plunger, check_leak_share};
/// use tribology::quantity::{Length, Time, VolumeFlow};
/// let plunger = Plunger::new(Length::from_mm(8.0), Length::from_mm(6.0)).expect("a plunger");
/// let found = check_leak_share(plunger, VolumeFlow::from_ml_min(6.0), Time::from_seconds(1.0));
/// assert!(found.is_ok_and(|found| (found.value - 0.3316).abs() < 1e-4));
/// ```
pub fn check_leak_share(plunger: Plunger, leak: VolumeFlow, resting: Time) -> Result<Answer<f64>, Error> {
    let q = not_negative("leak", leak)?;
    let t = not_negative("time", resting)?;
    let stroke = stroke_volume(plunger)?;
    let part = lost(q, t, stroke.value);
    let inputs = vec![sized("Q", q), sized("t", t), sized("V", stroke.value)];
    let (name, formula) = ("Part of a stroke that runs back through the check", "loss = Q t / V, at most 1");
    let found = step(name, formula, inputs, plain("loss", part), "own-calculation", Standing::OwnCalculation);
    Ok(Answer::of(part, found).after(stroke))
}

/// How long the barrel takes to fill again through its suction line.
///
/// `t = V / Q_suction`
///
/// - `plunger`: diameter and stroke.
/// - `suction`: the line from tank to barrel, as one tube.
/// - `dynamic`: dynamic viscosity of the oil as cold as it is.
/// - `pressure`: that drives it: a spring or a head; a plunger that sucks has less than the air, 100 kPa, and froths before.
/// - returns: the time. A pump that is driven faster than twice this a stroke delivers less than its strokes.
///
/// # Range
/// Slow flow in one tube; strainer and ball take more.
///
/// # Errors
/// [`Error::OutOfRange`] when the viscosity or the pressure is not above zero, or the time without end.
///
/// # Source
/// `hagen-poiseuille`
///
/// # Example
/// ```
/// use tribology::feed::{Plunger, Tube, refill_time};
/// use tribology::quantity::{DynamicViscosity, Length, Pressure};
/// let mm = Length::from_mm;
/// let plunger = Plunger::new(mm(8.0), mm(6.0)).expect("a plunger");
/// let suction = Tube::new(mm(3.0), mm(200.0)).expect("a tube");
/// let refill = |mpa_s| refill_time(plunger, suction, DynamicViscosity::from_mpa_s(mpa_s), Pressure::from_kpa(10.0));
/// let [warm, cold] = [60.0, 600.0].map(|mpa_s| refill(mpa_s).expect("a time").value.seconds());
/// assert!((cold / warm - 10.0).abs() < 1e-9);
/// ```
pub fn refill_time(
    plunger: Plunger,
    suction: Tube,
    dynamic: DynamicViscosity,
    pressure: Pressure,
) -> Result<Answer<Time>, Error> {
    let p = Error::quantity_positive("pressure", pressure)?;
    let flow = tube_flow(suction, dynamic, p)?;
    let stroke = stroke_volume(plunger)?;
    let time = not_negative("time", Time::from_seconds(stroke.value.m3() / flow.value.m3_s()))?;
    let inputs = vec![sized("V", stroke.value), sized("Q_suction", flow.value)];
    let name = "Time to refill the barrel";
    let found = step(name, "t = V / Q_suction", inputs, sized("t", time), "hagen-poiseuille", Standing::Handbook);
    Ok(Answer::of(time, found).after(flow.after(stroke)))
}

/// The part of a stroke that a flow takes in a time; never more than there is.
fn lost(flow: VolumeFlow, time: Time, stroke: Volume) -> f64 {
    (flow * time / stroke).min(1.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_cannot_be_is_named() {
        let mm = Length::from_mm;
        assert!(matches!(Plunger::new(mm(0.0), mm(6.0)), Err(Error::OutOfRange { name: "plunger", .. })));
        assert!(matches!(Plunger::new(mm(8.0), mm(-6.0)), Err(Error::OutOfRange { name: "stroke", .. })));
        let plunger = Plunger::new(mm(8.0), mm(6.0)).expect("a plunger");
        for efficiency in [-0.1, 1.1, f64::NAN] {
            let refused = plunger_flow(plunger, Rotation::from_per_minute(40.0), efficiency);
            assert!(matches!(refused, Err(Error::OutOfRange { name: "efficiency", .. })), "{refused:?}");
        }
    }

    #[test]
    fn a_check_that_lets_everything_back_takes_the_whole_stroke() {
        let plunger = Plunger::new(Length::from_mm(8.0), Length::from_mm(6.0)).expect("a plunger");
        let part = |ml_min| check_leak_share(plunger, VolumeFlow::from_ml_min(ml_min), Time::from_seconds(1.0));
        assert_eq!(part(0.0).map(|found| found.value), Ok(0.0));
        assert_eq!(part(100.0).map(|found| found.value), Ok(1.0));
    }
}
