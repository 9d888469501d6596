//! How fast surfaces rub, from what is written on a chart: turns and strokes.

use crate::quantity::{Length, Rotation, Velocity};

/// How fast a turning surface rubs on its bearing, its rim or its thread.
///
/// `v = π d n`
///
/// - `diameter`: of the surface, `d`.
/// - `turning`: how often it turns, `n`.
/// - returns: the speed of the surface.
///
/// # Range
/// All.
///
/// # Source
/// `own-calculation`
///
/// # Example
/// ```
/// use tribology::contact::rubbing_speed;
/// use tribology::quantity::{Length, Rotation};
/// let v = rubbing_speed(Length::from_mm(50.0), Rotation::from_rpm(600.0));
/// assert!((v.m_s() - 1.5708).abs() < 1e-4);
/// ```
#[must_use]
pub fn rubbing_speed(diameter: Length, turning: Rotation) -> Velocity {
    Velocity::from_m_s(std::f64::consts::PI * diameter.m() * turning.per_second())
}

/// How fast a slide goes on the mean, there and back.
///
/// `v = 2 s n`
///
/// - `stroke`: from end to end, `s`.
/// - `rate`: double strokes, `n`.
/// - returns: the mean speed.
///
/// # Range
/// All. A crank drives its slide up to about half as fast again in the middle of the stroke.
///
/// # Source
/// `own-calculation`
///
/// # Example
/// ```
/// use tribology::contact::stroking_speed;
/// use tribology::quantity::{Length, Rotation};
/// let v = stroking_speed(Length::from_m(0.5), Rotation::from_rpm(30.0));
/// assert!((v.m_s() - 0.5).abs() < 1e-12);
/// ```
#[must_use]
pub fn stroking_speed(stroke: Length, rate: Rotation) -> Velocity {
    Velocity::from_m_s(2.0 * stroke.m() * rate.per_second())
}
