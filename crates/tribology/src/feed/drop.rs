//! How large a drop is: from the tip that it hangs from, or by what the trade takes for one.
//!
//! Start at [`usual_drop`] for a sight glass that nobody has measured, at [`drop_volume`] for a tip that somebody has.

use std::f64::consts::PI;

use super::{GRAVITY_M_S2, gravity, plain, sized, step};
use crate::quantity::{Density, Length, SurfaceTension, Volume};
use crate::root::root;
use crate::{Answer, Error, Standing, math};

/// What a drop falls or rises through in a sight glass.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Glass {
    /// Air.
    Air,
    /// A clear liquid that fills the glass; the drops rise.
    Liquid,
}

/// A drop of an oil of SAE 30 or 40 in air at the temperature of a room: thirty to the millilitre.
///
/// Source: `drop-note`.
const IN_AIR: Volume = Volume::from_ul(33.0);
/// How many times larger a drop is in a glass filled with liquid.
///
/// Source: `drop-note`.
const TIMES_IN_LIQUID: f64 = 3.0;

/// The part of the ideal drop that falls, by radius of the tip over the cube root of the drop's volume.
///
/// Source: `harkins-brown-1919`, from memory; the first row, a tip without width, is the limit and no measurement.
const FALLS: [(f64, f64); 20] = [
    (0.0, 1.0),
    (0.30, 0.7256),
    (0.35, 0.7011),
    (0.40, 0.6828),
    (0.45, 0.6669),
    (0.50, 0.6515),
    (0.55, 0.6362),
    (0.60, 0.6250),
    (0.65, 0.6171),
    (0.70, 0.6093),
    (0.75, 0.6032),
    (0.80, 0.6000),
    (0.85, 0.5992),
    (0.90, 0.5998),
    (0.95, 0.6034),
    (1.00, 0.6098),
    (1.05, 0.6179),
    (1.10, 0.6280),
    (1.15, 0.6407),
    (1.20, 0.6535),
];

/// The volume of a drop in a sight glass that nobody has measured.
///
/// - `glass`: what it falls or rises through.
/// - returns: the volume.
///
/// # Range
/// Oils of SAE 30 to 40 at the temperature of a room; within about 15 % in air, and not known how near in liquid.
///
/// # Source
/// `drop-note`
///
/// # Example
/// ```
/// use tribology::feed::{Glass, usual_drop};
/// let [air, liquid] = [Glass::Air, Glass::Liquid].map(|glass| usual_drop(glass).value.ul());
/// assert!((air - 33.0).abs() < 1e-9 && (liquid - 99.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn usual_drop(glass: Glass) -> Answer<Volume> {
    let (times, formula) = match glass {
        Glass::Air => (1.0, "V = a drop of SAE 30 to 40 in air"),
        Glass::Liquid => (TIMES_IN_LIQUID, "V = three times a drop of SAE 30 to 40 in air"),
    };
    let drop = IN_AIR * times;
    let name = "Volume of a drop";
    let inputs = vec![sized("drop in air", IN_AIR)];
    Answer::of(drop, step(name, formula, inputs, sized("V", drop), "drop-note", Standing::CommonPractice))
}

/// The volume of a drop that forms slowly at a tip, by Tate's law with the factor of Harkins and Brown.
///
/// `V = 2 π r γ F / (Δρ g)`, `F` by table of `r / V^(1/3)`
///
/// The table is read straight between its rows and the equation solved by bracketing, to the last digits.
///
/// - `tip`: diameter of the part of the tip that the oil wets, `2 r`; on a wetted tip the outside.
/// - `tension`: surface tension, or that between oil and the liquid of the glass, `γ`.
/// - `density`: of the oil in air; in liquid the difference between the two, `Δρ`.
/// - returns: the volume.
///
/// # Range
/// Slow drops of thin liquids; thick oil that comes fast makes them larger. `r / V^(1/3)` from 0.3 to 1.2; a finer tip is read towards
/// Tate's own law, with a warning.
///
/// # Errors
/// [`Error::OutOfRange`] when an input is not above zero, or the tip so wide that no drop hangs from its rim.
///
/// # Source
/// `harkins-brown-1919`
///
/// # Example
/// ```
/// use tribology::feed::drop_volume;
/// use tribology::quantity::{Density, Length, SurfaceTension};
/// let (tension, density) = (SurfaceTension::from_mn_m(31.0), Density::from_kg_m3(870.0));
/// let found = drop_volume(Length::from_mm(4.0), tension, density).expect("a drop");
/// assert!((found.value.ul() - 28.1).abs() < 0.6);
/// ```
pub fn drop_volume(tip: Length, tension: SurfaceTension, density: Density) -> Result<Answer<Volume>, Error> {
    let r = Error::quantity_positive("tip", tip)?.m() / 2.0;
    let gamma = Error::quantity_positive("surface tension", tension)?;
    let rho = Error::quantity_positive("density", density)?;
    let capillary = gamma.j_m2() / (rho.kg_m3() * GRAVITY_M_S2);
    // With V = (r/x)³ the law reads x³ F(x) = r² / (2 π a²), which grows with x.
    let wanted = r * r / (2.0 * PI * capillary);
    let cubed = |x: f64| x * x * x * falls(x);
    let (widest, _) = FALLS[FALLS.len() - 1];
    let most = Length::from_m(2.0 * math::sqrt(2.0 * PI * capillary * cubed(widest)));
    Error::quantity_within("tip", tip, Length::from_m(f64::MIN_POSITIVE), most)?;
    let x = root("radius of the tip over the cube root of the drop", [0.0, widest], 1e-14, |x| cubed(x) - wanted)?.at;
    let part = falls(x);
    let drop = Error::quantity_positive("drop", Volume::from_m3(2.0 * PI * r * capillary * part))?;
    let inputs = vec![sized("r", tip / 2.0), sized("γ", gamma), plain("F", part), sized("Δρ", rho), gravity()];
    let (name, formula) = ("Volume of a drop", "V = 2 π r γ F / (Δρ g), F by table of r / V^(1/3)");
    let found = step(name, formula, inputs, sized("V", drop), "harkins-brown-1919", Standing::FromMemory);
    let answer = Answer::of(drop, found);
    Ok(answer.vouched_within("radius of the tip over the cube root of the drop", x, FALLS[1].0, widest))
}

/// The part that falls, straight between the rows.
fn falls(x: f64) -> f64 {
    let row = FALLS.windows(2).find(|pair| x <= pair[1].0).unwrap_or(&FALLS[FALLS.len() - 2..]);
    let [(x0, f0), (x1, f1)] = [row[0], row[1]];
    f0 + (f1 - f0) * (x - x0) / (x1 - x0)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A curve fitted to the same measurements by others (Lando and Oakley 1967), from memory: an independent reading of the table.
    #[test]
    fn the_table_agrees_with_a_published_fit_of_it() {
        for (x, f) in FALLS.into_iter().skip(1) {
            let fitted = 1.0 / (2.0 * PI * (0.14782 + 0.27896 * x - 0.166 * x * x));
            assert!((fitted / f - 1.0).abs() < 0.02, "{x}: {f}, fitted {fitted}");
        }
    }

    #[test]
    fn what_cannot_be_is_named_and_a_fine_tip_warned_of() {
        let (gamma, rho) = (SurfaceTension::from_mn_m(31.0), Density::from_kg_m3(870.0));
        let mm = Length::from_mm;
        for tip in [0.0, -1.0, 12.0, f64::NAN] {
            let refused = drop_volume(mm(tip), gamma, rho);
            assert!(matches!(refused, Err(Error::OutOfRange { name: "tip", .. })), "{tip}: {refused:?}");
        }
        assert!(drop_volume(mm(4.0), SurfaceTension::from_mn_m(0.0), rho).is_err());
        assert!(drop_volume(mm(4.0), gamma, Density::from_kg_m3(-870.0)).is_err());
        let warnings = |tip| drop_volume(mm(tip), gamma, rho).expect("a drop").warnings.len();
        assert_eq!((warnings(0.5), warnings(4.0), warnings(10.0)), (1, 0, 0));
    }
}
