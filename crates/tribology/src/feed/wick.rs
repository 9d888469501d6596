//! What a wick lifts and what it delivers. Two formulas for who knows his wick's constants, which no supplier prints, and a table of
//! kinds of wick in words: delivery was found only as curves without digits.
//!
//! Start at [`WICKS`].

use super::{GRAVITY_M_S2, Liquid, gravity, not_negative, plain, sized, step};
use crate::quantity::{Angle, Area, Density, Length, SurfaceTension, VolumeFlow};
use crate::{Answer, Error, Standing, math};

/// What a wick is made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum WickMaterial {
    /// Dense wool felt.
    DenseFelt,
    /// Woven cotton, as in lamps.
    CottonLampWick,
    /// Strands of wool or worsted.
    WoolStrands,
    /// Loose wool waste, packed.
    WoolWaste,
}

/// How well a wick does, against the others.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Lift {
    /// Worst of those that were tried.
    Poor,
    /// Between.
    Fair,
    /// Best of those that were tried.
    Best,
}

/// What is known of a kind of wick.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wick {
    /// What it is made of.
    pub material: WickMaterial,
    /// How well it lifts and delivers, against the others; nothing where it was not among those tried.
    pub does: Option<Lift>,
    /// About how high it still lifts oil; nothing where no figure was found.
    pub lifts: Option<Length>,
    /// How firmly this stands.
    pub standing: Standing,
}

/// What is known of each kind of wick. Cotton is to be taken where wool no longer lifts; how much higher it lifts was not found.
///
/// Source: `wick-note`.
pub const WICKS: [Wick; 4] = [
    wick(WickMaterial::DenseFelt, Some(Lift::Best), None),
    wick(WickMaterial::CottonLampWick, Some(Lift::Fair), None),
    wick(WickMaterial::WoolStrands, None, Some(Length::from_mm(30.0))),
    wick(WickMaterial::WoolWaste, Some(Lift::Poor), None),
];

const fn wick(material: WickMaterial, does: Option<Lift>, lifts: Option<Length>) -> Wick {
    Wick { material, does, lifts, standing: Standing::CommonPractice }
}

/// The height at which a wick stops lifting.
///
/// `h = 2 γ cos θ / (ρ g r)`
///
/// - `tension`: surface tension, `γ`.
/// - `contact`: angle at which the oil meets the fibre, `θ`; nothing for oil on a clean wick.
/// - `density`: of the oil, `ρ`.
/// - `pore`: radius of the ways between the fibres, `r`.
/// - returns: the height; at it nothing is delivered.
///
/// # Range
/// Round ways of one size. The size is a fitted number for any real wick, and no list of it was found.
///
/// # Errors
/// [`Error::OutOfRange`] when tension, density or radius is not above zero, or the angle not from nothing to a right angle.
///
/// # Source
/// `capillary-rise`
///
/// # Example
/// ```
/// use tribology::feed::wick_rise;
/// use tribology::quantity::{Angle, Density, Length, SurfaceTension};
/// let (tension, density) = (SurfaceTension::from_mn_m(31.0), Density::from_kg_m3(870.0));
/// let found = wick_rise(tension, Angle::from_degrees(0.0), density, Length::from_um(100.0));
/// assert!(found.is_ok_and(|found| (found.value.mm() - 72.67).abs() < 0.01));
/// ```
pub fn wick_rise(
    tension: SurfaceTension,
    contact: Angle,
    density: Density,
    pore: Length,
) -> Result<Answer<Length>, Error> {
    let gamma = Error::quantity_positive("surface tension", tension)?;
    let theta = Error::quantity_within("contact angle", contact, Angle::from_degrees(0.0), Angle::from_degrees(90.0))?;
    let rho = Error::quantity_positive("density", density)?;
    let r = Error::quantity_positive("radius of the ways", pore)?;
    let pulls = 2.0 * gamma.j_m2() * math::cos(theta.radians());
    let rise = not_negative("height", Length::from_m(pulls / (rho.kg_m3() * GRAVITY_M_S2 * r.m())))?;
    let inputs = vec![sized("γ", gamma), sized("θ", theta), sized("ρ", rho), gravity(), sized("r", r)];
    let (name, formula) = ("Height at which a wick stops lifting", "h = 2 γ cos θ / (ρ g r)");
    Ok(Answer::of(rise, step(name, formula, inputs, sized("h", rise), "capillary-rise", Standing::Handbook)))
}

/// The flow through a wick whose constants are known.
///
/// `Q = K A ρ g (h_c − h) / (μ L)`
///
/// - `permeability`: how easily the wick lets oil through, `K`.
/// - `section`: cross-section of the wick, `A`.
/// - `liquid`: the oil, `μ` and `ρ`.
/// - `rise`: height at which it stops lifting, `h_c`, as from [`wick_rise`].
/// - `height`: of the wick's upper bend over the oil's level, `h`.
/// - `length`: of the wick, `L`.
/// - returns: the flow.
///
/// # Range
/// A wick soaked throughout. Only for constants measured on that wick: none are offered here.
///
/// # Errors
/// [`Error::OutOfRange`] when an input is not above zero, or the height not from nothing to the rise.
///
/// # Source
/// `darcy-1856`
///
/// # Example
/// ```
/// use tribology::feed::{Liquid, wick_flow};
/// use tribology::quantity::{Area, Density, DynamicViscosity, Length};
/// let oil = Liquid::new(DynamicViscosity::from_mpa_s(60.0), Density::from_kg_m3(870.0)).expect("an oil");
/// let mm = Length::from_mm;
/// let (permeability, section) = (Area::from_mm2(1e-4), Area::from_mm2(20.0));
/// let found = wick_flow(permeability, section, oil, mm(70.0), mm(30.0), mm(100.0));
/// assert!(found.is_ok_and(|found| (found.value.ml_h() - 0.4095).abs() < 1e-3));
/// ```
pub fn wick_flow(
    permeability: Area,
    section: Area,
    liquid: Liquid,
    rise: Length,
    height: Length,
    length: Length,
) -> Result<Answer<VolumeFlow>, Error> {
    let k = Error::quantity_positive("permeability", permeability)?;
    let a = Error::quantity_positive("section", section)?;
    let most = Error::quantity_positive("rise", rise)?;
    let h = Error::quantity_within("height", height, Length::from_m(0.0), most)?;
    let l = Error::quantity_positive("length", length)?;
    let (mu, rho) = (liquid.dynamic(), liquid.density());
    let drive = rho.kg_m3() * GRAVITY_M_S2 * (most - h).m();
    let flow = VolumeFlow::from_m3_s(k.m2() * a.m2() * drive / (mu.pa_s() * l.m()));
    let flow = not_negative("flow", flow)?;
    // The areas of pores are too small for any unit of the workshop.
    let inputs = vec![
        plain("K in µm²", k.mm2() * 1e6),
        sized("A", a),
        sized("ρ", rho),
        gravity(),
        sized("h_c", most),
        sized("h", h),
        sized("μ", mu),
        sized("L", l),
    ];
    let (name, formula) = ("Flow through a wick", "Q = K A ρ g (h_c − h) / (μ L)");
    Ok(Answer::of(flow, step(name, formula, inputs, sized("Q", flow), "darcy-1856", Standing::Handbook)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn felt_does_better_than_cotton_and_cotton_than_waste() {
        let does = |material| WICKS.iter().find(|wick| wick.material == material).and_then(|wick| wick.does);
        assert!(does(WickMaterial::DenseFelt) > does(WickMaterial::CottonLampWick));
        assert!(does(WickMaterial::CottonLampWick) > does(WickMaterial::WoolWaste));
    }

    #[test]
    fn a_wick_that_is_too_high_is_named() {
        let mm = Length::from_mm;
        let oil = Liquid::new(crate::quantity::DynamicViscosity::from_mpa_s(60.0), Density::from_kg_m3(870.0));
        let oil = oil.expect("an oil");
        let flow = |height| wick_flow(Area::from_mm2(1e-4), Area::from_mm2(20.0), oil, mm(70.0), mm(height), mm(100.0));
        assert!(flow(70.0).is_ok_and(|found| found.value.m3_s() == 0.0));
        let refused = flow(71.0);
        assert!(matches!(refused, Err(Error::OutOfRange { name: "height", .. })), "{refused:?}");
    }
}
