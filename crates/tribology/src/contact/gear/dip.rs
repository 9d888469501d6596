//! How fast gears may dip into their bath and still carry oil instead of throwing it off.

use crate::contact::line::{line, measured};
use crate::quantity::Velocity;
use crate::{Answer, Standing};

/// How deep a gear dips, in depths of its teeth.
///
/// Source: `tribology-handbook-gears`.
pub const IMMERSION_TOOTH_DEPTHS: f64 = 2.0;

/// What stands round gears that dip.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Casing {
    /// A plain box.
    Simple,
    /// A box with guards and pans that hold the churned oil together.
    Guarded,
}

/// How teeth mesh, as far as a bath cares.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Mesh {
    /// Spur, helical or bevel gears; the speed is that of the pitch line.
    SpurOrBevel,
    /// Worm and wheel; the speed is that at which they slide.
    Worm,
}

/// The speed of the pitch line up to which dipping serves spur, helical and bevel gears.
///
/// - `casing`: what stands round them.
/// - returns: the limit.
///
/// # Range
/// Spur, helical and bevel gears that dip about two tooth depths.
///
/// # Source
/// `tribology-handbook-gears`
///
/// # Example
/// ```
/// use tribology::contact::gear::{Casing, dip_limit};
/// assert!((dip_limit(Casing::Simple).value.m_s() - 12.5).abs() < 1e-9);
/// ```
#[must_use]
pub fn dip_limit(casing: Casing) -> Answer<Velocity> {
    let limit = Velocity::from_m_s(match casing {
        Casing::Simple => 12.5,
        Casing::Guarded => 25.0,
    });
    let formula = "12.5 m/s in a plain box, 25 m/s with guards";
    let (result, source) = (measured("highest speed", limit), "tribology-handbook-gears");
    Answer::of(limit, line("Limit of dipping", formula, Vec::new(), result, source, Standing::Handbook))
}

/// The speeds between which a supplier's guide gives gears a bath; below, a brush or grease serves, and above, a jet.
///
/// - `mesh`: how the teeth mesh.
/// - returns: the lowest and the highest speed.
///
/// # Range
/// A guide of one supplier; boxes of old machines work well below the lower end.
///
/// # Source
/// `gear-bath-guide`
///
/// # Example
/// ```
/// use tribology::contact::gear::{Mesh, bath_speeds};
/// assert!((bath_speeds(Mesh::Worm).value.1.m_s() - 10.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn bath_speeds(mesh: Mesh) -> Answer<(Velocity, Velocity)> {
    let (low, high) = match mesh {
        Mesh::SpurOrBevel => (4.0, 15.0),
        Mesh::Worm => (3.0, 10.0),
    };
    let (low, high) = (Velocity::from_m_s(low), Velocity::from_m_s(high));
    let formula = "bath from 4 to 15 m/s of the pitch line, worms from 3 to 10 m/s of sliding";
    let (inputs, result) = (vec![measured("highest speed", high)], measured("lowest speed", low));
    let step = line("Speeds for a bath", formula, inputs, result, "gear-bath-guide", Standing::CommonPractice);
    Answer::of((low, high), step)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn guards_let_gears_run_faster_and_worms_want_less() {
        assert!(dip_limit(Casing::Simple).value < dip_limit(Casing::Guarded).value);
        for mesh in [Mesh::SpurOrBevel, Mesh::Worm] {
            let (low, high) = bath_speeds(mesh).value;
            assert!(low < high);
        }
        assert!(bath_speeds(Mesh::Worm).value.1 < bath_speeds(Mesh::SpurOrBevel).value.1);
    }
}
