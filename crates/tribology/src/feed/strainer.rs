//! The pressure that a woven wire strainer takes, clean and partly blocked, by the correlation of Armour and Cannon.
//!
//! Start at [`Screen::of_mesh`] and [`strainer_pressure`]. Oil lies below the tested range, and each answer for oil says so. A closed
//! formula and its exact inverse.

use std::f64::consts::PI;

use super::{Liquid, not_negative, plain, rising_root, sized, step};
use crate::quantity::{Length, Pressure, Velocity};
use crate::{Answer, Error, Standing, Symbol, math};

/// A plain square weave of round wires.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Screen {
    pitch: Length,
    wire: Length,
}

/// The two factors of the correlation: creeping and inertial.
///
/// Source: `armour-cannon-1968`.
const CREEPING: f64 = 8.61;
const INERTIAL: f64 = 0.52;
/// Reynolds numbers of the wires that were tried.
const TRIED: [f64; 2] = [0.1, 1000.0];
/// Parts of the weave that were open space in those tried.
const TRIED_VOID: [f64; 2] = [0.35, 0.76];
/// The most of its area that a strainer may have lost; what little is left beyond is no longer a strainer of this weave.
///
/// Source: `common-practice`.
const MOST_BLOCKED: f64 = 0.99;

const FORMULA: &str = "Δp = (8.61 μ a² u / (1 − b) + 0.52 ρ (u / (1 − b))² / D) B / e²";

impl Screen {
    /// A weave of this pitch and wire.
    ///
    /// - `pitch`: from wire to wire.
    /// - `wire`: diameter of the wires.
    /// - returns: the screen.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when the pitch is not above zero, the wire not between nothing and the pitch, or both so near each other
    /// that the weave would have no open space.
    pub fn new(pitch: Length, wire: Length) -> Result<Self, Error> {
        let pitch = Error::quantity_positive("pitch", pitch)?;
        let wire = Error::quantity_within("wire", wire, Length::from_m(f64::MIN_POSITIVE), pitch)?;
        let screen = Self { pitch, wire };
        // At 0.9 of the pitch the wires of a plain weave could not pass each other.
        Error::unless_within("open space of the weave", screen.void(), 0.05, 1.0)?;
        Ok(screen)
    }

    /// A weave of so many wires to the inch.
    ///
    /// - `per_inch`: mesh number, wires in an inch.
    /// - `wire`: diameter of the wires.
    /// - returns: the screen.
    ///
    /// # Range
    /// Any mesh whose wires leave holes.
    ///
    /// # Errors
    /// As [`Screen::new`], and when the mesh number is not above zero.
    ///
    /// # Source
    /// `own-calculation`
    ///
    /// # Example
    /// ```
    /// use tribology::feed::Screen;
    /// use tribology::quantity::Length;
    /// let found = Screen::of_mesh(60.0, Length::from_mm(0.19)).expect("a screen");
    /// assert!((found.opening().mm() - 0.2333).abs() < 1e-4);
    /// ```
    pub fn of_mesh(per_inch: f64, wire: Length) -> Result<Self, Error> {
        Self::new(Length::from_inches(1.0) / Error::unless_positive("mesh", per_inch)?, wire)
    }

    /// The side of a hole.
    #[must_use]
    pub fn opening(self) -> Length {
        self.pitch - self.wire
    }

    /// Length of wire in one pitch, over the pitch: the wire goes up and down over its neighbours.
    fn crimp(self) -> f64 {
        let bend = self.wire / self.pitch;
        math::sqrt(1.0 + bend * bend)
    }

    /// The part of the weave that is open space.
    fn void(self) -> f64 {
        1.0 - PI / 4.0 * (self.wire / self.pitch) * self.crimp()
    }

    /// Surface of wire in a volume of weave, 1/m.
    fn surface(self) -> f64 {
        PI * self.crimp() / self.pitch.m()
    }

    /// The factors of the speed and of its square.
    fn terms(self, liquid: Liquid) -> [f64; 2] {
        let (surface, void) = (self.surface(), self.void());
        let share = 2.0 * self.wire.m() / (void * void);
        let creeping = CREEPING * liquid.dynamic().pa_s() * surface * surface;
        [creeping * share, INERTIAL * liquid.density().kg_m3() / self.opening().m() * share]
    }
}

/// The pressure that a strainer takes.
///
/// `Δp = (8.61 μ a² v + 0.52 ρ v² / D) B / e²`, `v = u / (1 − b)`; with the pitch `1/n` and the wire `d`: `l = √(1/n² + d²)`,
/// `a = π n² l`, `e = 1 − (π/4) n² d l`, `B = 2 d`, `D = 1/n − d`
///
/// - `screen`: the weave.
/// - `liquid`: the oil, `μ` and `ρ`.
/// - `approach`: flow over the whole area of the strainer, `u`.
/// - `blocked`: part of that area that dirt has closed, 0 to 0.99, `b`.
/// - returns: difference of pressure across it.
///
/// # Range
/// Reynolds number of the wires 0.1 to 1000 and open space 0.35 to 0.76, as tried; warnings outside. Oil at the flow of a machine lies
/// far below 0.1, where the viscous part is an extrapolation. Dirt that lies on the wires and narrows the holes takes more than this.
///
/// # Errors
/// [`Error::OutOfRange`] when the approach is below zero or the blocked part not from 0 to 0.99: through a blocked strainer nothing flows.
///
/// # Source
/// `armour-cannon-1968`
///
/// # Example
/// ```
/// use tribology::feed::{Liquid, Screen, strainer_pressure};
/// use tribology::quantity::{Density, DynamicViscosity, Length, Velocity};
/// let screen = Screen::of_mesh(100.0, Length::from_mm(0.114)).expect("a screen");
/// let oil = Liquid::new(DynamicViscosity::from_mpa_s(100.0), Density::from_kg_m3(880.0)).expect("an oil");
/// let found = strainer_pressure(screen, oil, Velocity::from_mm_s(10.0), 0.0).expect("a clean screen");
/// assert!((found.value.pa() - 958.4).abs() < 9.6 && !found.warnings.is_empty());
/// ```
pub fn strainer_pressure(
    screen: Screen,
    liquid: Liquid,
    approach: Velocity,
    blocked: f64,
) -> Result<Answer<Pressure>, Error> {
    let u = not_negative("approach", approach)?;
    let b = Error::unless_within("blocked part", blocked, 0.0, MOST_BLOCKED)?;
    let [slow, fast] = screen.terms(liquid);
    let through = u.m_s() / (1.0 - b);
    let pressure = not_negative("pressure", Pressure::from_pa(slow * through + fast * through * through))?;
    let inputs = symbols(screen, liquid, [sized("u", u), plain("b", b)]);
    let name = "Pressure across a strainer";
    let found = step(name, FORMULA, inputs, sized("Δp", pressure), "armour-cannon-1968", Standing::Handbook);
    Ok(tried(Answer::of(pressure, found), screen, liquid, through))
}

/// The speed at which oil comes to a strainer under a pressure: the flow over the strainer's whole area.
///
/// [`strainer_pressure`] solved for `u`.
///
/// - `screen`: the weave.
/// - `liquid`: the oil, `μ` and `ρ`.
/// - `pressure`: difference across it, `Δp`.
/// - `blocked`: part of the area that dirt has closed, 0 to 0.99, `b`.
/// - returns: the approach, `u`.
///
/// # Range
/// As [`strainer_pressure`].
///
/// # Errors
/// [`Error::OutOfRange`] when the pressure is below zero or the blocked part not from 0 to 0.99.
///
/// # Source
/// `armour-cannon-1968`
///
/// # Example
/// ```
/// use tribology::feed::{Liquid, Screen, strainer_approach};
/// use tribology::quantity::{Density, DynamicViscosity, Length, Pressure};
/// let screen = Screen::of_mesh(100.0, Length::from_mm(0.114)).expect("a screen");
/// let oil = Liquid::new(DynamicViscosity::from_mpa_s(100.0), Density::from_kg_m3(880.0)).expect("an oil");
/// let found = strainer_approach(screen, oil, Pressure::from_pa(958.4), 0.5).expect("half a screen");
/// assert!((found.value.mm_s() - 5.0).abs() < 0.05, "half the flow through half the area");
/// ```
pub fn strainer_approach(
    screen: Screen,
    liquid: Liquid,
    pressure: Pressure,
    blocked: f64,
) -> Result<Answer<Velocity>, Error> {
    let p = not_negative("pressure", pressure)?;
    let b = Error::unless_within("blocked part", blocked, 0.0, MOST_BLOCKED)?;
    let [slow, fast] = screen.terms(liquid);
    let through = rising_root(slow, fast, p.pa());
    let approach = not_negative("approach", Velocity::from_m_s(through * (1.0 - b)))?;
    let inputs = symbols(screen, liquid, [sized("Δp", p), plain("b", b)]);
    let name = "Approach to a strainer";
    let found = step(name, FORMULA, inputs, sized("u", approach), "armour-cannon-1968", Standing::Handbook);
    Ok(tried(Answer::of(approach, found), screen, liquid, through))
}

fn symbols(screen: Screen, liquid: Liquid, asked: [Symbol; 2]) -> Vec<Symbol> {
    let mut symbols = vec![
        sized("1/n", screen.pitch),
        sized("d", screen.wire),
        sized("D", screen.opening()),
        plain("e", screen.void()),
        Symbol { symbol: "a", si: screen.surface(), unit: "1/m" },
        sized("B", screen.wire * 2.0),
        sized("μ", liquid.dynamic()),
        sized("ρ", liquid.density()),
    ];
    symbols.extend(asked);
    symbols
}

/// Warnings where the flow or the weave lies outside what was tried.
fn tried<T>(answer: Answer<T>, screen: Screen, liquid: Liquid, through: f64) -> Answer<T> {
    let surface = screen.surface();
    let re = through / (liquid.kinematic().m2_s() * surface * surface * screen.opening().m());
    answer.vouched_within("Reynolds number of the wires", re, TRIED[0], TRIED[1]).vouched_within(
        "open space of the weave",
        screen.void(),
        TRIED_VOID[0],
        TRIED_VOID[1],
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Density, DynamicViscosity};

    #[test]
    fn what_cannot_be_is_named() {
        let named = |found: Result<Screen, Error>| match found {
            Err(Error::OutOfRange { name, .. }) => name,
            other => panic!("{other:?}"),
        };
        let mm = Length::from_mm;
        assert_eq!(named(Screen::of_mesh(0.0, mm(0.1))), "mesh");
        assert_eq!(named(Screen::of_mesh(60.0, mm(0.0))), "wire");
        assert_eq!(named(Screen::of_mesh(60.0, mm(0.5))), "wire");
        assert_eq!(named(Screen::of_mesh(60.0, mm(0.42))), "open space of the weave");
        let screen = Screen::of_mesh(60.0, mm(0.19)).expect("a screen");
        let oil = Liquid::new(DynamicViscosity::from_mpa_s(60.0), Density::from_kg_m3(870.0)).expect("an oil");
        for blocked in [1.0, 1.5, -0.1, f64::NAN] {
            let refused = strainer_pressure(screen, oil, Velocity::from_mm_s(20.0), blocked);
            assert!(matches!(refused, Err(Error::OutOfRange { name: "blocked part", .. })), "{blocked}: {refused:?}");
        }
        assert!(strainer_pressure(screen, oil, Velocity::from_mm_s(-1.0), 0.0).is_err());
    }
}
