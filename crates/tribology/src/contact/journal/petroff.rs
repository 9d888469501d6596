//! Petroff's drag: oil sheared in an even gap, as round a journal that runs in the middle of its bearing.

use std::f64::consts::PI;

use super::symbol;
use crate::quantity::{Angle, DynamicViscosity, Force, Length, Rotation, Torque};
use crate::working::Step;
use crate::{Answer, Error, Standing, math};

/// The drag on a journal.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Drag {
    /// At the surface of the journal.
    pub force: Force,
    /// About its axis.
    pub torque: Torque,
}

/// The drag of oil round a journal that runs in the middle of its bearing.
///
/// `F = μ (π D N / C) π D L`, `M = F D / 2`
///
/// - `diameter`, `length`: of the bearing, `D` and `L`.
/// - `clearance`: on the diameter, `2 C`.
/// - `speed`: turns per second, `N`.
/// - `viscosity`: dynamic viscosity in the film, `μ`.
/// - returns: the drag. A journal without load has it; a loaded one has more.
///
/// # Range
/// Laminar films that fill the gap, at small load.
///
/// # Errors
/// [`Error::OutOfRange`] when a size or the viscosity is not above zero, or the speed below zero.
///
/// # Source
/// `petroff-1883`
///
/// # Example
/// ```
/// use tribology::contact::journal::petroff;
/// use tribology::quantity::{DynamicViscosity, Length, Rotation};
/// let inches = Length::from_inches;
/// let drag = petroff(inches(3.0), inches(3.0), inches(0.0015), Rotation::from_rpm(400.0), DynamicViscosity::from_mpa_s(49.99));
/// assert!(drag.is_ok_and(|drag| (drag.value.force.n() - 76.39).abs() < 0.1));
/// ```
pub fn petroff(
    diameter: Length,
    length: Length,
    clearance: Length,
    speed: Rotation,
    viscosity: DynamicViscosity,
) -> Result<Answer<Drag>, Error> {
    let d = Error::quantity_positive("diameter", diameter)?.m();
    let l = Error::quantity_positive("length", length)?.m();
    let gap = Error::quantity_positive("clearance", clearance)?.m();
    let n = turning(speed)?;
    let mu = Error::quantity_positive("viscosity", viscosity)?.pa_s();
    let force = mu * (PI * d * n / (0.5 * gap)) * PI * d * l;
    let step = Step {
        name: "Petroff's drag",
        formula: "F = μ (π D N / C) π D L, C half the clearance on the diameter",
        symbols: vec![
            symbol("μ", mu, "Pa·s"),
            symbol("D", d, "m"),
            symbol("L", l, "m"),
            symbol("C", 0.5 * gap, "m"),
            symbol("N", n, "/s"),
        ],
        result: symbol("F", force, "N"),
        source: "petroff-1883",
        standing: Standing::Handbook,
    };
    Ok(Answer::of(Drag { force: Force::from_n(force), torque: Torque::from_n_m(0.5 * force * d) }, step))
}

/// The torque of oil sheared between a cone and its seat.
///
/// `M = (π μ ω / (2 h cos α)) (r₁⁴ − r₀⁴)`, `r₁ = r₀ + l cos α`
///
/// - `radius`: at the small end, `r₀`.
/// - `face`: length of the face down the slope, `l`.
/// - `slope`: of the face against the plane across the axis, `α`: nought for a flat collar.
/// - `gap`: thickness of the film, `h`.
/// - `speed`: turns per second.
/// - `viscosity`: dynamic viscosity in the film, `μ`.
/// - returns: the torque about the axis.
///
/// # Range
/// Laminar films of even thickness; slopes below a right angle, where the cone would be a journal.
///
/// # Errors
/// [`Error::OutOfRange`] when a size or the viscosity is not above zero, the speed below zero, or the slope outside 0° to 89°.
///
/// # Source
/// `petroff-1883`: the same shear, summed over rings
///
/// # Example
/// ```
/// use std::f64::consts::TAU;
/// use tribology::contact::journal::cone_drag;
/// use tribology::quantity::{Angle, DynamicViscosity, Length, Rotation};
/// let (speed, oil) = (Rotation::from_per_second(50.0 / TAU), DynamicViscosity::from_mpa_s(9.0));
/// let mm = Length::from_mm;
/// let drag = cone_drag(mm(40.0), mm(150.0), Angle::from_degrees(40.0), mm(0.025), speed, oil);
/// assert!(drag.is_ok_and(|drag| (drag.value.n_m() - 21.158).abs() < 0.02));
/// ```
pub fn cone_drag(
    radius: Length,
    face: Length,
    slope: Angle,
    gap: Length,
    speed: Rotation,
    viscosity: DynamicViscosity,
) -> Result<Answer<Torque>, Error> {
    let r0 = Error::quantity_positive("radius", radius)?.m();
    let l = Error::quantity_positive("face", face)?.m();
    let steepest = Angle::from_degrees(89.0);
    let alpha = Error::quantity_within("slope", slope, Angle::from_degrees(0.0), steepest)?.radians();
    let h = Error::quantity_positive("gap", gap)?.m();
    let n = turning(speed)?;
    let mu = Error::quantity_positive("viscosity", viscosity)?.pa_s();
    let cos = math::cos(alpha);
    let r1 = r0 + l * cos;
    let torque = PI * PI * mu * n / (h * cos) * (r1 * r1 * r1 * r1 - r0 * r0 * r0 * r0);
    let step = Step {
        name: "Drag of a cone in its seat",
        formula: "M = (π² μ N / (h cos α)) (r1⁴ − r0⁴), r1 = r0 + l cos α",
        symbols: vec![
            symbol("μ", mu, "Pa·s"),
            symbol("r0", r0, "m"),
            symbol("l", l, "m"),
            symbol("α", alpha, "rad"),
            symbol("h", h, "m"),
            symbol("N", n, "/s"),
        ],
        result: symbol("M", torque, "N·m"),
        source: "petroff-1883",
        standing: Standing::Handbook,
    };
    Ok(Answer::of(Torque::from_n_m(torque), step))
}

fn turning(speed: Rotation) -> Result<f64, Error> {
    let [still, fastest] = [0.0, f64::MAX].map(Rotation::from_per_second);
    Error::quantity_within("speed", speed, still, fastest).map(Rotation::per_second)
}
