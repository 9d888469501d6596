//! A journal bearing in measures of the workshop: what it carries, and the film, drag and flow that follow.

use std::f64::consts::{PI, TAU};

use super::inverse::eccentricity_of;
use super::method::Method;
use super::state::JournalState;
use super::symbol;
use crate::quantity::{DynamicViscosity, Force, Length, Power, Pressure, Rotation, Torque, VolumeFlow};
use crate::working::{Step, Symbol};
use crate::{Answer, Error, Standing};

/// A journal bearing with its load and its speed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bearing {
    /// Diameter of the journal.
    pub diameter: Length,
    /// Length of the bearing along the journal.
    pub length: Length,
    /// Clearance on the diameter: twice the radial one.
    pub clearance: Length,
    /// Load on the bearing.
    pub load: Force,
    /// Speed of the journal.
    pub speed: Rotation,
}

/// How a bearing runs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Running {
    /// The film in numbers without units.
    pub state: JournalState,
    /// Dynamic viscosity in the film.
    pub viscosity: DynamicViscosity,
    /// Thinnest film.
    pub min_film: Length,
    /// Force of friction at the journal over the load.
    pub friction_coefficient: f64,
    /// About the axis of the journal.
    pub friction_torque: Torque,
    /// What friction takes.
    pub power_loss: Power,
    /// What leaves by the end faces and has to be fed.
    pub side_flow: VolumeFlow,
    /// Highest pressure in the film, where the method gives it.
    pub peak_pressure: Option<Pressure>,
}

impl Bearing {
    /// How the bearing runs with oil of a viscosity.
    ///
    /// `S = (R/C)² μ N / P`, `P = W / (L D)`; then `h = C (film ratio)`, `f = (C/R) (friction variable)`, `M = f W R`
    ///
    /// - `viscosity`: dynamic viscosity in the film, `μ`.
    /// - `method`: how the film is found.
    /// - returns: film, friction, flow and pressure.
    ///
    /// # Range
    /// Steady load, laminar film, one viscosity throughout, no grooves in the loaded half.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when diameter, length, clearance, load, speed or viscosity is not above zero, or the clearance not below
    /// the diameter; others as [`eccentricity_of`].
    ///
    /// # Source
    /// `raimondi-boyd-1958` for the numbers by which it is reckoned
    ///
    /// # Example
    /// ```
    /// use tribology::contact::journal::{Bearing, Method};
    /// use tribology::quantity::{DynamicViscosity, Force, Length, Rotation};
    /// let bearing = Bearing {
    ///     diameter: Length::from_mm(50.0),
    ///     length: Length::from_mm(50.0),
    ///     clearance: Length::from_mm(0.05),
    ///     load: Force::from_kn(2.0),
    ///     speed: Rotation::from_rpm(1800.0),
    /// };
    /// let running = bearing.running(DynamicViscosity::from_mpa_s(25.0), Method::Fast);
    /// assert!(running.is_ok_and(|running| running.value.min_film < Length::from_um(25.0)));
    /// ```
    pub fn running(self, viscosity: DynamicViscosity, method: Method) -> Result<Answer<Running>, Error> {
        let d = Error::quantity_positive("diameter", self.diameter)?.m();
        let l = Error::quantity_positive("length", self.length)?.m();
        let narrower = Length::from_m(d.next_down());
        let least = Length::from_m(f64::MIN_POSITIVE);
        let clearance = Error::quantity_within("clearance", self.clearance, least, narrower)?.m();
        let w = Error::quantity_positive("load", self.load)?.n();
        let n = Error::quantity_positive("speed", self.speed)?.per_second();
        let mu = Error::quantity_positive("viscosity", viscosity)?.pa_s();
        let (psi, c, mean) = (clearance / d, 0.5 * clearance, w / (l * d));
        let sommerfeld = mu * n / (mean * psi * psi);
        let number = line(
            "Sommerfeld number",
            "S = (R/C)² μ N / P, P = W / (L D)",
            vec![
                symbol("D", d, "m"),
                symbol("L", l, "m"),
                symbol("C", c, "m"),
                symbol("W", w, "N"),
                symbol("N", n, "/s"),
                symbol("μ", mu, "Pa·s"),
            ],
            symbol("S", sommerfeld, ""),
        );
        let mut film = eccentricity_of(l / d, sommerfeld, method)?.after(Answer::of((), number));
        let state = film.value;
        let friction = state.friction_variable * psi;
        let torque = friction * w * 0.5 * d;
        let running = Running {
            state,
            viscosity,
            min_film: Length::from_m(c * state.film_ratio),
            friction_coefficient: friction,
            friction_torque: Torque::from_n_m(torque),
            power_loss: Power::from_w(torque * TAU * n),
            side_flow: VolumeFlow::from_m3_s(state.side_flow_variable * 0.5 * d * c * n * l),
            peak_pressure: state.pressure_ratio.map(|ratio| Pressure::from_pa(mean / ratio)),
        };
        film.steps.extend(dimensional(&running, [d, c, w, n, l], mean));
        Ok(film.map(|_| running))
    }
}

/// The lines of working from numbers to measures.
fn dimensional(running: &Running, [d, c, w, n, l]: [f64; 5], mean: f64) -> Vec<Step> {
    let state = &running.state;
    let mut steps = vec![
        line(
            "Thinnest film",
            "h = C (film ratio)",
            vec![symbol("C", c, "m"), symbol("film ratio", state.film_ratio, "")],
            symbol("h", running.min_film.m(), "m"),
        ),
        line(
            "Friction",
            "f = (C/R) (2 π² S / √(1 − ε²) + (ε/2) sin φ), all round; M = f W R",
            vec![
                symbol("(R/C) f", state.friction_variable, ""),
                symbol("f", running.friction_coefficient, ""),
                symbol("W", w, "N"),
                symbol("R", 0.5 * d, "m"),
            ],
            symbol("M", running.friction_torque.n_m(), "N·m"),
        ),
        line(
            "Power lost to friction",
            "M 2 π N",
            vec![symbol("M", running.friction_torque.n_m(), "N·m"), symbol("N", n, "/s")],
            symbol("power", running.power_loss.w(), "W"),
        ),
        line(
            "Flow out of both ends",
            "Qs = (Qs / (R C N L)) R C N L",
            vec![symbol("Qs / (R C N L)", state.side_flow_variable, ""), symbol("C", c, "m"), symbol("L", l, "m")],
            symbol("Qs", running.side_flow.m3_s(), "m³/s"),
        ),
    ];
    if let (Some(ratio), Some(peak)) = (state.pressure_ratio, running.peak_pressure) {
        let inputs = vec![symbol("P", mean, "Pa"), symbol("P / pmax", ratio, "")];
        steps.push(line("Highest pressure", "pmax = P / (P / pmax)", inputs, symbol("pmax", peak.pa(), "Pa")));
    }
    steps
}

fn line(name: &'static str, formula: &'static str, symbols: Vec<Symbol>, result: Symbol) -> Step {
    Step { name, formula, symbols, result, source: "raimondi-boyd-1958", standing: Standing::Handbook }
}

/// The speed of the journal's surface.
pub(super) fn surface_speed(bearing: &Bearing) -> f64 {
    PI * bearing.diameter.m() * bearing.speed.per_second()
}
