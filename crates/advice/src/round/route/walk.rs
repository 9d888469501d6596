//! How far it is from stand to stand: a person walks round the machine, not through it.

use std::f64::consts::PI;

use tribology::math;
use tribology::quantity::Length;

/// A place on the floor, as a chart has it: from the machine's middle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Place {
    /// To the right.
    pub x: Length,
    /// Toward the front.
    pub y: Length,
}

/// How much of the way from its middle to the nearest stand the machine fills (own guess, no source).
const FILLED: f64 = 0.6;

/// The shortest walk between two places of a machine, of which the machine fills a round in the middle: the straight line, or
/// where the machine is in its way the two tangents and the arc between them. Never longer than over a third place.
#[must_use]
pub fn walk(places: &[Place], from: Place, to: Place) -> Length {
    let nearest = places.iter().map(|place| math::hypot(place.x.m(), place.y.m())).fold(f64::INFINITY, f64::min);
    let radius = if nearest.is_finite() { FILLED * nearest } else { 0.0 };
    Length::from_m(round_disc((from.x.m(), from.y.m()), (to.x.m(), to.y.m()), radius))
}

fn round_disc(a: (f64, f64), b: (f64, f64), radius: f64) -> f64 {
    let straight = math::hypot(b.0 - a.0, b.1 - a.1);
    let (far_a, far_b) = (math::hypot(a.0, a.1), math::hypot(b.0, b.1));
    if radius <= 0.0 || straight == 0.0 || far_a <= radius || far_b <= radius {
        return straight;
    }
    // The angle at the middle between the two places, and the part of it that each tangent covers.
    let apart = (math::atan2(a.1, a.0) - math::atan2(b.1, b.0)).abs();
    let apart = if apart > PI { 2.0 * PI - apart } else { apart };
    let (cover_a, cover_b) = (math::acos(radius / far_a), math::acos(radius / far_b));
    let arc = apart - cover_a - cover_b;
    if arc <= 0.0 {
        return straight;
    }
    let tangent = |far: f64| math::sqrt(far * far - radius * radius);
    tangent(far_a) + tangent(far_b) + radius * arc
}
