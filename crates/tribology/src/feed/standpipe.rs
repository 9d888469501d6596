//! Oil over the lip of a standpipe and down its bore: as a viscous film on the wall, or over the lip as over a weir.
//!
//! Start at [`film_flow`], which is the one for oils from about ISO VG 68 up. [`lip_flow`] is for thin liquids only. How thick a film a
//! head over the lip makes is not known here.

use std::f64::consts::PI;

use super::{GRAVITY_M_S2, gravity, not_negative, sized, step};
use crate::quantity::{KinematicViscosity, Length, VolumeFlow};
use crate::{Answer, Error, Standing, math};

/// The part of the ideal flow that a sharp lip passes.
///
/// Source: `sharp-weir`.
const LIP_COEFFICIENT: f64 = 0.62;
/// The largest film over bore at which the curve of the wall takes less than about four in a hundred.
const THIN: f64 = 0.02;
/// The film's Reynolds number up to which waves leave its mean thickness as it is.
///
/// Source: `nusselt-film`, from memory.
const CALM: f64 = 1000.0;
/// The largest head over bore at which a lip is a weir.
const WEIR: f64 = 0.2;
/// Below this Reynolds number of the lip viscosity rules and not inertia: a round number, judged and not measured.
const VISCOUS_LIP: f64 = 1000.0;

/// The flow in a film that runs down the whole wall of a standpipe, as if the wall were flat.
///
/// `Q = π D g t³ / (3 ν)`
///
/// - `bore`: inside diameter, `D`.
/// - `film`: thickness of the film, `t`.
/// - `kinematic`: kinematic viscosity, `ν`.
/// - returns: the flow.
///
/// # Range
/// A film thin against the bore, all round, below a Reynolds number `4 Q / (π D ν)` of 1000. The curve of the wall makes the flow smaller
/// by 4 % at a fiftieth of the bore and by 19 % at a tenth, where [`film_flow_curved`] is right; a warning above a fiftieth.
///
/// # Errors
/// [`Error::OutOfRange`] when bore or viscosity is not above zero, or the film below zero or above half the bore.
///
/// # Source
/// `nusselt-film`
///
/// # Example
/// ```
/// use tribology::feed::film_flow;
/// use tribology::quantity::{KinematicViscosity, Length};
/// let found = film_flow(Length::from_mm(12.0), Length::from_mm(0.5), KinematicViscosity::from_mm2_s(100.0));
/// assert!(found.is_ok_and(|found| (found.value.ml_min() - 9.2426).abs() < 1e-3));
/// ```
pub fn film_flow(bore: Length, film: Length, kinematic: KinematicViscosity) -> Result<Answer<VolumeFlow>, Error> {
    let (d, t, nu) = checked(bore, film, kinematic)?;
    let flow = VolumeFlow::from_m3_s(PI * d * GRAVITY_M_S2 * t * t * t / (3.0 * nu));
    let answer = answered(flow, "Q = π D g t³ / (3 ν)", (bore, film, kinematic), Standing::Handbook)?;
    Ok(answer.vouched_within("film over bore", film / bore, 0.0, THIN))
}

/// The flow in a film that runs down the whole wall of a standpipe, with the curve of the wall.
///
/// `Q = π g / (8 ν) (R⁴ − 4 R² r² + 3 r⁴ + 4 r⁴ ln(R / r))`, `r = R − t`
///
/// - `bore`: inside diameter, `2 R`.
/// - `film`: thickness of the film, `t`.
/// - `kinematic`: kinematic viscosity, `ν`.
/// - returns: the flow.
///
/// # Range
/// A film all round, below a Reynolds number of 1000. Exact for smooth slow flow; our own integral, which needs no source but is held
/// against the flat film and the full pipe, its two limits. Very thin films, below a ten-thousandth of the bore, lose figures.
///
/// # Errors
/// [`Error::OutOfRange`] when bore or viscosity is not above zero, or the film below zero or above half the bore.
///
/// # Source
/// `own-calculation`
///
/// # Example
/// ```
/// use tribology::feed::film_flow_curved;
/// use tribology::quantity::{KinematicViscosity, Length};
/// let found = film_flow_curved(Length::from_mm(12.0), Length::from_mm(0.5), KinematicViscosity::from_mm2_s(100.0));
/// assert!(found.is_ok_and(|found| (8.3..8.6).contains(&found.value.ml_min())));
/// ```
pub fn film_flow_curved(
    bore: Length,
    film: Length,
    kinematic: KinematicViscosity,
) -> Result<Answer<VolumeFlow>, Error> {
    let (d, t, nu) = checked(bore, film, kinematic)?;
    let (big, small) = (d / 2.0, d / 2.0 - t);
    let (square, inner) = (big * big, small * small);
    // A pipe that is full has no inner radius, and r⁴ ln r goes to nothing with it.
    let log = if small > 0.0 { 4.0 * inner * inner * math::ln(big / small) } else { 0.0 };
    let shape = square * square - 4.0 * square * inner + 3.0 * inner * inner + log;
    // Rounding may leave a film of no thickness a hair below nothing.
    let flow = VolumeFlow::from_m3_s(PI * GRAVITY_M_S2 / (8.0 * nu) * shape.max(0.0));
    let formula = "Q = π g / (8 ν) (R⁴ − 4 R² r² + 3 r⁴ + 4 r⁴ ln(R / r)), R = D / 2, r = R − t";
    answered(flow, formula, (bore, film, kinematic), Standing::OwnCalculation)
}

/// The thickness of the film in which a flow runs down the whole wall of a standpipe, as if the wall were flat.
///
/// `t = (3 ν Q / (π D g))^(1/3)`
///
/// - `bore`: inside diameter, `D`.
/// - `flow`: the flow, `Q`.
/// - `kinematic`: kinematic viscosity, `ν`.
/// - returns: the thickness.
///
/// # Range
/// As [`film_flow`].
///
/// # Errors
/// [`Error::OutOfRange`] when bore or viscosity is not above zero, the flow below zero, or the film would fill the bore.
///
/// # Source
/// `nusselt-film`
///
/// # Example
/// ```
/// use tribology::feed::film_thickness;
/// use tribology::quantity::{KinematicViscosity, Length, VolumeFlow};
/// let flow = VolumeFlow::from_ml_min(9.2426);
/// let found = film_thickness(Length::from_mm(12.0), flow, KinematicViscosity::from_mm2_s(100.0));
/// assert!(found.is_ok_and(|found| (found.value.mm() - 0.5).abs() < 1e-4));
/// ```
pub fn film_thickness(bore: Length, flow: VolumeFlow, kinematic: KinematicViscosity) -> Result<Answer<Length>, Error> {
    let d = Error::quantity_positive("bore", bore)?.m();
    let q = not_negative("flow", flow)?;
    let nu = Error::quantity_positive("viscosity", kinematic)?.m2_s();
    let film = Length::from_m(math::cbrt(3.0 * nu * q.m3_s() / (PI * d * GRAVITY_M_S2)));
    Error::quantity_within("film", film, Length::from_m(0.0), bore / 2.0)?;
    let inputs = vec![sized("ν", kinematic), sized("Q", q), sized("D", bore), gravity()];
    let (name, formula) = ("Film on the wall of a standpipe", "t = (3 ν Q / (π D g))^(1/3)");
    let found = step(name, formula, inputs, sized("t", film), "nusselt-film", Standing::Handbook);
    let answer = Answer::of(film, found).vouched_within("film over bore", film / bore, 0.0, THIN);
    Ok(calm(answer, bore, kinematic, flow))
}

/// The flow over the lip of a standpipe, as over a sharp-edged weir.
///
/// `Q = 0.62 (2/3) √(2 g) π D H^1.5`
///
/// - `bore`: diameter of the lip, `D`.
/// - `head`: of the still surface over the lip, `H`.
/// - `kinematic`: kinematic viscosity, which only says whether the law holds.
/// - returns: the flow.
///
/// # Range
/// Thin liquids and heads up to a fifth of the bore. A warning above that, and where `√(2 g H) H / ν` is below 1000, where the oil is too
/// thick and the flow is less. The coefficient was found with water and heads of some 30 mm; a few millimetres are an extrapolation.
///
/// # Errors
/// [`Error::OutOfRange`] when bore or viscosity is not above zero or the head below it.
///
/// # Source
/// `sharp-weir`
///
/// # Example
/// ```
/// use tribology::feed::lip_flow;
/// use tribology::quantity::{KinematicViscosity, Length};
/// let mm = Length::from_mm;
/// let found = lip_flow(mm(12.0), mm(2.0), KinematicViscosity::from_mm2_s(68.0)).expect("a lip");
/// assert!((found.value.ml_min() - 370.34).abs() < 0.4 && found.warnings.len() == 1, "an oil is too thick for it");
/// ```
pub fn lip_flow(bore: Length, head: Length, kinematic: KinematicViscosity) -> Result<Answer<VolumeFlow>, Error> {
    let d = Error::quantity_positive("bore", bore)?;
    let h = not_negative("head", head)?;
    Error::quantity_positive("viscosity", kinematic)?;
    let flow = not_negative("flow", VolumeFlow::from_m3_s(lip(d) * h.m() * math::sqrt(h.m())))?;
    let inputs = vec![gravity(), sized("D", d), sized("H", h)];
    let (name, formula) = ("Flow over the lip of a standpipe", "Q = 0.62 (2/3) √(2 g) π D H^1.5");
    let found = step(name, formula, inputs, sized("Q", flow), "sharp-weir", Standing::Handbook);
    Ok(weir(Answer::of(flow, found), d, h, kinematic))
}

/// The head over the lip of a standpipe at which a flow goes over it, as over a sharp-edged weir.
///
/// `H = (Q / (0.62 (2/3) √(2 g) π D))^(2/3)`
///
/// - `bore`: diameter of the lip, `D`.
/// - `flow`: the flow, `Q`.
/// - `kinematic`: kinematic viscosity, which only says whether the law holds.
/// - returns: the head.
///
/// # Range
/// As [`lip_flow`].
///
/// # Errors
/// [`Error::OutOfRange`] when bore or viscosity is not above zero or the flow below it.
///
/// # Source
/// `sharp-weir`
///
/// # Example
/// ```
/// use tribology::feed::lip_head;
/// use tribology::quantity::{KinematicViscosity, Length, VolumeFlow};
/// let flow = VolumeFlow::from_ml_min(370.342);
/// let found = lip_head(Length::from_mm(12.0), flow, KinematicViscosity::from_mm2_s(68.0));
/// assert!(found.is_ok_and(|found| (found.value.mm() - 2.0).abs() < 1e-3));
/// ```
pub fn lip_head(bore: Length, flow: VolumeFlow, kinematic: KinematicViscosity) -> Result<Answer<Length>, Error> {
    let d = Error::quantity_positive("bore", bore)?;
    let q = not_negative("flow", flow)?;
    Error::quantity_positive("viscosity", kinematic)?;
    let root = math::cbrt(q.m3_s() / lip(d));
    let head = not_negative("head", Length::from_m(root * root))?;
    let inputs = vec![sized("Q", q), gravity(), sized("D", d)];
    let (name, formula) = ("Head over the lip of a standpipe", "H = (Q / (0.62 (2/3) √(2 g) π D))^(2/3)");
    let found = step(name, formula, inputs, sized("H", head), "sharp-weir", Standing::Handbook);
    Ok(weir(Answer::of(head, found), d, head, kinematic))
}

fn checked(bore: Length, film: Length, kinematic: KinematicViscosity) -> Result<(f64, f64, f64), Error> {
    let bore = Error::quantity_positive("bore", bore)?;
    let film = Error::quantity_within("film", film, Length::from_m(0.0), bore / 2.0)?;
    let kinematic = Error::quantity_positive("viscosity", kinematic)?;
    Ok((bore.m(), film.m(), kinematic.m2_s()))
}

fn answered(
    flow: VolumeFlow,
    formula: &'static str,
    (bore, film, kinematic): (Length, Length, KinematicViscosity),
    standing: Standing,
) -> Result<Answer<VolumeFlow>, Error> {
    not_negative("flow", flow)?;
    let source = if standing == Standing::OwnCalculation { "own-calculation" } else { "nusselt-film" };
    let inputs = vec![sized("D", bore), gravity(), sized("t", film), sized("ν", kinematic)];
    let found = step("Flow in a film down a standpipe", formula, inputs, sized("Q", flow), source, standing);
    Ok(calm(Answer::of(flow, found), bore, kinematic, flow))
}

fn calm<T>(answer: Answer<T>, bore: Length, kinematic: KinematicViscosity, flow: VolumeFlow) -> Answer<T> {
    let re = 4.0 * flow.m3_s() / (PI * bore.m() * kinematic.m2_s());
    answer.vouched_within("Reynolds number of the film", re, 0.0, CALM)
}

/// Flow for each unit of head to the power 1.5.
fn lip(bore: Length) -> f64 {
    LIP_COEFFICIENT * (2.0 / 3.0) * math::sqrt(2.0 * GRAVITY_M_S2) * PI * bore.m()
}

fn weir<T>(answer: Answer<T>, bore: Length, head: Length, kinematic: KinematicViscosity) -> Answer<T> {
    let re = math::sqrt(2.0 * GRAVITY_M_S2 * head.m()) * head.m() / kinematic.m2_s();
    let answer = answer.vouched_within("head over bore", head / bore, 0.0, WEIR);
    // There is no highest number: a thinner liquid only holds better to the law.
    if re < VISCOUS_LIP { answer.vouched_within("Reynolds number of the lip", re, VISCOUS_LIP, 1e6) } else { answer }
}
