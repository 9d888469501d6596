//! Films of one length over diameter, worked out beforehand at a row of eccentricities: how warm a bearing runs is then one root and not
//! one inside another, so that a whole machine takes milliseconds. Start at [`Curve::of`]. What it leaves out is the working; for that the
//! same is asked of [`equilibrium`](super::equilibrium).

use std::f64::consts::PI;

use super::bearing::Bearing;
use super::fast::{HIGHEST, core};
use super::heat::{Oil, Surroundings, THINNEST};
use super::{BOUNDARY, ECCENTRICITIES, slender};
use crate::quantity::{Length, Power, Temperature};
use crate::root::root;
use crate::{Error, math};

/// Between neighbouring eccentricities, in `ln(ε / (1 − ε))`.
const STEP: f64 = 0.25;
/// Heat that a volume of mineral oil takes up, J/(m³ K).
///
/// Source: `iso-7902`, from memory.
const OIL_HEAT: f64 = 1.8e6;

/// The films of all whole bearings of one length over diameter.
#[derive(Clone, Debug, PartialEq)]
pub struct Curve {
    ratio: f64,
    /// Of the first node, in `ln(ε / (1 − ε))`; the others follow in even steps.
    first: f64,
    nodes: Vec<Node>,
}

/// The film at one eccentricity, in logarithms: of the Sommerfeld number, the friction variable and the side flow variable.
type Node = [f64; 3];

/// A bearing that has warmed up, without its working.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Warmed {
    /// Temperature of the film and of the housing.
    pub temperature: Temperature,
    /// Thinnest film.
    pub min_film: Length,
    /// What friction takes.
    pub power_loss: Power,
}

/// A bearing in its oil and its surroundings, as the sum needs it.
struct Case {
    /// Kinematic viscosity in mm²/s of a Sommerfeld number of one.
    unit: f64,
    oil: Oil,
    ambient: f64,
    /// Heat given off by the housing, W/K.
    housing: f64,
    /// Heat taken along by the oil, W/K, of a side flow variable of one.
    flow: f64,
    /// Power of a friction variable of one, W.
    power: f64,
}

impl Curve {
    /// The films of whole bearings of one length over diameter.
    ///
    /// - `ratio`: length over diameter, `L/D`; may be infinite.
    /// - returns: the films at even steps of `ln(ε / (1 − ε))`.
    ///
    /// # Range
    /// As [`journal_fast`](super::journal_fast).
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when the ratio is not above zero.
    ///
    /// # Source
    /// `own-calculation`: [`journal_fast`](super::journal_fast) at a row of eccentricities
    pub fn of(ratio: f64) -> Result<Self, Error> {
        let ratio = slender(ratio)?;
        // A node stands where one formula of the films hands over to the next.
        let handover = logit(BOUNDARY);
        let below = ((handover - logit(ECCENTRICITIES[0])) / STEP).floor();
        let above = ((logit(HIGHEST) - handover) / STEP).floor();
        let first = handover - below * STEP;
        let count = (below + above) as usize + 1;
        let node = |number: usize| {
            let epsilon = logistic(first + number as f64 * STEP).clamp(ECCENTRICITIES[0], HIGHEST);
            let film = core(ratio, epsilon)?.all_round(ratio, epsilon);
            // An infinitely long bearing loses nothing by its ends.
            let side = film.side_flow_variable.max(f64::MIN_POSITIVE);
            Ok([film.sommerfeld, film.friction_variable, side].map(math::ln))
        };
        Ok(Self { ratio, first, nodes: (0..count).map(node).collect::<Result<_, Error>>()? })
    }

    /// The length over diameter for which it was made.
    #[must_use]
    pub fn ratio(&self) -> f64 {
        self.ratio
    }

    /// How warm a bearing of this length over diameter runs, and its film there.
    ///
    /// `f W U = (k A + w ρc Qs) (T − T_amb)`, the film as warm as the housing
    ///
    /// The unknown is the eccentricity: it gives the Sommerfeld number, that the viscosity, that the temperature.
    ///
    /// - `bearing`: with its load and speed.
    /// - `oil`: what is in it.
    /// - `surroundings`: what takes the heat away.
    /// - `washed`: the part `w` of the oil leaving by the ends that comes as cool as the air, because a pump sends it; 0 where none does.
    /// - returns: temperature and film.
    ///
    /// # Range
    /// As [`equilibrium`](super::equilibrium), beside which it is less than 0.01 K off. The heat that oil takes up is from memory.
    ///
    /// # Errors
    /// [`Error::NotBracketed`], with both temperatures in kelvins, when friction makes more heat than is taken away up to the end of the
    /// oil's chart; [`Error::OutOfRange`] when an input is not above zero, the length over diameter is another than that of the curve, the
    /// part outside 0 to 1, or the journal nearer to the middle than an eccentricity of 10⁻⁶.
    ///
    /// # Source
    /// `iso-7902`
    ///
    /// # Example
    /// ```
    /// use tribology::contact::journal::{Bearing, Curve, Method, Oil, Surroundings, equilibrium};
    /// use tribology::oil::ViscosityLine;
    /// use tribology::quantity::{Area, Density, Force, HeatTransfer, KinematicViscosity, Length, Rotation, Temperature};
    /// let line = ViscosityLine::with_index(KinematicViscosity::from_mm2_s(32.0), 95.0).map(|line| line.value)?;
    /// let oil = Oil { line, density: Density::from_kg_m3(870.0) };
    /// let bearing = Bearing {
    ///     diameter: Length::from_mm(50.0),
    ///     length: Length::from_mm(50.0),
    ///     clearance: Length::from_mm(0.05),
    ///     load: Force::from_kn(2.0),
    ///     speed: Rotation::from_rpm(600.0),
    /// };
    /// let surroundings = Surroundings {
    ///     ambient: Temperature::from_celsius(22.0),
    ///     area: Area::from_m2(0.12),
    ///     coefficient: HeatTransfer::from_w_m2_k(18.0),
    /// };
    /// let quick = Curve::of(1.0)?.warmed(bearing, oil, surroundings, 0.0)?;
    /// let whole = equilibrium(bearing, oil, surroundings, Method::Fast)?.value;
    /// assert!((quick.temperature.kelvin() - whole.temperature.kelvin()).abs() < 0.01);
    /// # Ok::<(), tribology::Error>(())
    /// ```
    pub fn warmed(&self, bearing: Bearing, oil: Oil, surroundings: Surroundings, washed: f64) -> Result<Warmed, Error> {
        let clearance = bearing.clearance.m();
        let case = self.case(bearing, oil, surroundings, washed)?;
        // The warmer, the farther out: cells are halved until one holds the balance.
        let last = self.nodes.partition_point(|[sommerfeld, ..]| math::exp(*sommerfeld) * case.unit >= THINNEST);
        let at_node = |number: usize| self.excess(&case, self.first + number as f64 * STEP);
        let hot = last.checked_sub(1).map_or(f64::NAN, |last| case.oil.line.kelvin_of(self.viscosity(&case, last)));
        let too_hot = Error::NotBracketed { name: "film temperature", low: case.ambient, high: hot };
        let (mut low, mut high) = (0, last.checked_sub(1).ok_or(too_hot)?);
        if at_node(high) > 0.0 {
            return Err(too_hot);
        }
        if at_node(low) <= 0.0 {
            let (name, value) = ("eccentricity", ECCENTRICITIES[0]);
            return Err(Error::OutOfRange { name, value, low: value.next_up(), high: HIGHEST, unit: "" });
        }
        while high - low > 1 {
            let middle = low.midpoint(high);
            if at_node(middle) > 0.0 {
                low = middle;
            } else {
                high = middle;
            }
        }
        let ends = [low, high].map(|number| self.first + number as f64 * STEP);
        let found = root("film temperature", ends, 1e-9, |place| self.excess(&case, place))?.at;
        let [sommerfeld, friction, _] = self.film(found);
        Ok(Warmed {
            temperature: Temperature::from_kelvin(case.oil.line.kelvin_of(sommerfeld * case.unit)),
            min_film: Length::from_m(0.5 * clearance * (1.0 - logistic(found))),
            power_loss: Power::from_w(friction * case.power),
        })
    }

    fn case(&self, bearing: Bearing, oil: Oil, surroundings: Surroundings, washed: f64) -> Result<Case, Error> {
        let d = Error::quantity_positive("diameter", bearing.diameter)?.m();
        let l = Error::quantity_positive("length", bearing.length)?.m();
        let (least, narrower) = (Length::from_m(f64::MIN_POSITIVE), Length::from_m(d.next_down()));
        let clearance = Error::quantity_within("clearance", bearing.clearance, least, narrower)?.m();
        let w = Error::quantity_positive("load", bearing.load)?.n();
        let n = Error::quantity_positive("speed", bearing.speed)?.per_second();
        let density = Error::quantity_positive("density", oil.density)?.kg_m3();
        let area = Error::quantity_positive("area", surroundings.area)?.m2();
        let coefficient = Error::quantity_positive("heat transfer coefficient", surroundings.coefficient)?.w_m2_k();
        let ambient = Error::quantity_positive("ambient temperature", surroundings.ambient)?.kelvin();
        let washed = Error::unless_within("part of the flow", washed, 0.0, 1.0)?;
        Error::unless_within("length/diameter", l / d, self.ratio * (1.0 - 1e-9), self.ratio * (1.0 + 1e-9))?;
        let (psi, mean) = (clearance / d, w / (l * d));
        Ok(Case {
            unit: 1e6 * mean * psi * psi / (n * density),
            oil,
            ambient,
            housing: coefficient * area,
            flow: washed * OIL_HEAT * 0.25 * d * clearance * n * l,
            power: psi * w * PI * d * n,
        })
    }

    fn viscosity(&self, case: &Case, number: usize) -> f64 {
        math::exp(self.nodes[number][0]) * case.unit
    }

    /// How much more heat friction makes than is taken away, W.
    fn excess(&self, case: &Case, place: f64) -> f64 {
        let [sommerfeld, friction, side] = self.film(place);
        let warmer = case.oil.line.kelvin_of(sommerfeld * case.unit) - case.ambient;
        friction * case.power - (case.housing + side * case.flow) * warmer
    }

    /// Sommerfeld number, friction variable and side flow variable between nodes: a cubic through four of them, one-sided at the ends and
    /// where the films change their formula.
    fn film(&self, place: f64) -> [f64; 3] {
        let along = ((place - self.first) / STEP).clamp(0.0, (self.nodes.len() - 1) as f64);
        let handover = ((logit(BOUNDARY) - self.first) / STEP).round() as usize;
        let cell = (along.floor() as usize).min(self.nodes.len() - 2);
        // Four nodes on the cell's own side of the handover.
        let (from, to) = if cell < handover { (0, handover) } else { (handover, self.nodes.len() - 1) };
        let start = cell.saturating_sub(1).clamp(from, to - 3);
        let x = along - start as f64;
        let weights = [
            -(x - 1.0) * (x - 2.0) * (x - 3.0) / 6.0,
            x * (x - 2.0) * (x - 3.0) / 2.0,
            -x * (x - 1.0) * (x - 3.0) / 2.0,
            x * (x - 1.0) * (x - 2.0) / 6.0,
        ];
        let mut logarithms = [0.0; 3];
        for (node, weight) in self.nodes[start..start + 4].iter().zip(weights) {
            for (sum, value) in logarithms.iter_mut().zip(node) {
                *sum += weight * value;
            }
        }
        logarithms.map(math::exp)
    }
}

/// Where an eccentricity stands among the nodes.
fn logit(epsilon: f64) -> f64 {
    math::ln(epsilon) - math::ln_1p(-epsilon)
}

fn logistic(place: f64) -> f64 {
    1.0 / (1.0 + math::exp(-place))
}

#[cfg(test)]
mod tests {
    use super::super::heat::equilibrium;
    use super::super::method::Method;
    use super::*;
    use crate::oil::ViscosityLine;
    use crate::quantity::{Area, Density, Force, HeatTransfer, KinematicViscosity, Rotation};

    fn oil(v40: f64) -> Oil {
        let line = ViscosityLine::with_index(KinematicViscosity::from_mm2_s(v40), 95.0).expect("an oil").value;
        Oil { line, density: Density::from_kg_m3(870.0) }
    }

    fn bearing(mm: f64, ratio: f64, per_mille: f64, newton: f64, rpm: f64) -> Bearing {
        let diameter = Length::from_mm(mm);
        Bearing {
            diameter,
            length: diameter * ratio,
            clearance: diameter * (per_mille / 1000.0),
            load: Force::from_n(newton),
            speed: Rotation::from_rpm(rpm),
        }
    }

    fn air(celsius: f64) -> Surroundings {
        Surroundings {
            ambient: Temperature::from_celsius(celsius),
            area: Area::from_m2(0.05),
            coefficient: HeatTransfer::from_w_m2_k(17.5),
        }
    }

    /// Both are the same balance; only the way to it differs.
    #[test]
    fn it_is_as_warm_as_by_the_whole_sum() {
        let mut tried = 0;
        for ratio in [0.3, 1.0, 2.5, 9.0] {
            let curve = Curve::of(ratio).expect("a ratio");
            for (mm, per_mille, newton) in [(12.0, 1.5, 100.0), (45.0, 0.55, 250.0), (80.0, 1.0, 20_000.0)] {
                for (rpm, v40, celsius) in [(12.0, 220.0, 5.0), (300.0, 68.0, 18.0), (2800.0, 10.0, 30.0)] {
                    let (bearing, oil) = (bearing(mm, ratio, per_mille, newton, rpm), oil(v40));
                    let whole = equilibrium(bearing, oil, air(celsius), Method::Fast);
                    let quick = curve.warmed(bearing, oil, air(celsius), 0.0);
                    let (Ok(whole), Ok(quick)) = (whole, quick) else { panic!("{bearing:?}: {quick:?}") };
                    let off = quick.temperature.kelvin() - whole.value.temperature.kelvin();
                    assert!(off.abs() < 0.01, "{bearing:?} {v40}: {off}");
                    let film = quick.min_film / whole.value.running.min_film;
                    assert!((film - 1.0).abs() < 2e-3, "{bearing:?} {v40}: {film}");
                    tried += 1;
                }
            }
        }
        assert_eq!(tried, 36);
    }

    #[test]
    fn oil_that_comes_cool_takes_heat_along_and_too_much_heat_has_no_balance() {
        let curve = Curve::of(1.0).expect("a ratio");
        let tight = bearing(60.0, 1.0, 0.5, 500.0, 3000.0);
        let at = |washed| curve.warmed(tight, oil(32.0), air(20.0), washed).map(|warm| warm.temperature.celsius());
        assert!(
            at(0.0).is_ok_and(|still| at(0.5).is_ok_and(|some| at(1.0).is_ok_and(|all| all < some && some < still)))
        );
        let absurd = bearing(200.0, 1.0, 0.05, 50_000.0, 30_000.0);
        let found = curve.warmed(absurd, oil(68.0), air(20.0), 0.0);
        assert!(matches!(found, Err(Error::NotBracketed { name: "film temperature", .. })), "{found:?}");
        assert!(matches!(
            equilibrium(absurd, oil(68.0), air(20.0), Method::Fast),
            Err(Error::NotBracketed { name: "film temperature", .. })
        ));
    }

    #[test]
    fn what_cannot_be_is_named() {
        let curve = Curve::of(1.0).expect("a ratio");
        let good = bearing(50.0, 1.0, 1.0, 500.0, 300.0);
        let longer = bearing(50.0, 1.2, 1.0, 500.0, 300.0);
        let still = Bearing { speed: Rotation::from_rpm(0.0), ..good };
        for (bearing, washed, wrong) in [
            (longer, 0.0, "length/diameter"),
            (still, 0.0, "speed"),
            (good, 1.5, "part of the flow"),
            (good, f64::NAN, "part of the flow"),
        ] {
            let found = curve.warmed(bearing, oil(68.0), air(20.0), washed);
            assert!(matches!(found, Err(Error::OutOfRange { name, .. }) if name == wrong), "{wrong}: {found:?}");
        }
        assert!(Curve::of(0.0).is_err() && Curve::of(f64::NAN).is_err());
    }
}
