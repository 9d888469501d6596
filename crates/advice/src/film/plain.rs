//! A plain bearing: what is charted, what is taken as usual, and how it does at a speed.

use shop::chart::Pair;
use tribology::contact::journal::{
    Bearing, Curve, Housing, Method, STILL_AIR, Surroundings, Warmed, equilibrium, housing,
};
use tribology::contact::{film_ratio, usual_clearance};
use tribology::quantity::{Area, Force, HeatTransfer, Length, Pressure, Rotation, Temperature};
use tribology::{Answer, Error, Standing};

use super::assumed::{Assumed, End, Span, What};
use super::filling::Filling;
use super::state::State;
use crate::need::{Place, Way};

/// A plain bearing.
#[derive(Clone, Debug, PartialEq)]
pub struct Plain {
    pub(super) speeds: Vec<Rotation>,
    pub(super) assumed: Vec<Assumed>,
    diameter: Length,
    length: Length,
    clearance: Length,
    load: Load,
    roughness: [Length; 2],
    surface: Option<End>,
    coefficient: HeatTransfer,
    washed: f64,
    curve: Curve,
}

/// The load, as charted or as assumed.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Load {
    Charted(Force),
    Assumed(Pressure),
}

/// Length over diameter of bearings that nobody has measured (common practice).
const LENGTHS: [f64; 3] = [0.75, 1.0, 2.0];
/// Bearings of old machine tools, MPa on the projected bearing: nearly idle, lightly loaded, hard at work (from memory).
const LOADS_MPA: [f64; 3] = [0.1, 0.5, 2.0];
/// Turned and ground faces that have run in, Rq in µm (from memory).
const ROUGHNESS_UM: [f64; 2] = [0.8, 0.4];
/// How much finer and how much rougher they may be (from memory).
const ROUGHER: [f64; 3] = [0.5, 1.0, 2.0];
/// How much of the oil that leaves a bearing a pump has sent as cool as the air: that it cools at all is left out, unless asked how far it may.
const WASHED: [f64; 3] = [0.0, 0.0, 1.0];

impl Plain {
    /// A plain bearing at a place; nothing without a diameter.
    pub(super) fn of(place: &Place<'_>, pair: &Pair, speeds: Vec<Rotation>) -> Option<Self> {
        let diameter = pair.diameter.as_ref()?.value;
        let mut assumed = Vec::new();
        let mut assume = |what, standing| assumed.push(Assumed::new(what, standing));
        let clearance = match &pair.clearance {
            Some(typed) => typed.value,
            None => {
                let found = usual_clearance(diameter).ok()?.value;
                let span = Span { low: found.low, usual: found.usual, high: found.high };
                assume(What::Clearance(span), Standing::CommonPractice);
                found.usual
            }
        };
        let load = match &pair.load {
            Some(typed) => Load::Charted(typed.value),
            None => {
                let span = Span::of(LOADS_MPA, Pressure::from_mpa);
                assume(What::Load(span), Standing::FromMemory);
                Load::Assumed(span.usual)
            }
        };
        let length = match &pair.length {
            Some(typed) => typed.value,
            None => {
                let span = Span::of(LENGTHS, |times| diameter * times);
                assume(What::Length(span), Standing::CommonPractice);
                span.usual
            }
        };
        let roughness = match pair.roughness.as_slice() {
            [first, second, ..] => [first.value, second.value],
            [both] => [both.value; 2],
            [] => {
                let span = Span::of(ROUGHER, |times| ROUGHNESS_UM.map(|um| Length::from_um(um * times)));
                assume(What::Roughness(span), Standing::FromMemory);
                span.usual
            }
        };
        let Housing { low, usual, high } = housing(diameter, length).ok()?.value;
        assume(What::Surface(Span { low, usual, high }), Standing::FromMemory);
        let [least, most] = STILL_AIR;
        let still = Span { low: least, usual: (least + most) / 2.0, high: most };
        assume(What::Coefficient(still), Standing::FromMemory);
        if matches!(place.way, Way::Round | Way::Once) {
            assume(What::Washed(Span::of(WASHED, |part| part)), Standing::FromMemory);
        }
        Some(Self {
            curve: Curve::of(length / diameter).ok()?,
            washed: WASHED[1],
            coefficient: still.usual,
            surface: None,
            speeds,
            assumed,
            diameter,
            length,
            clearance,
            load,
            roughness,
        })
    }

    /// How it does at a speed.
    pub(super) fn at(&self, filling: &Filling, speed: Rotation, air: Temperature) -> Result<State, Error> {
        let Warmed { temperature, min_film, .. } =
            self.curve.warmed(self.bearing(speed), filling.oil, self.surroundings(air)?, self.washed)?;
        let [first, second] = self.roughness;
        let film = film_ratio(min_film, first, second)?.value;
        Ok(State { temperature, film_ratio: film.lambda, viscosity_ratio: None, regime: film.regime })
    }

    /// The same with its working.
    pub(super) fn working(&self, filling: &Filling, speed: Rotation, air: Temperature) -> Result<Answer<State>, Error> {
        let surface = housing(self.diameter, self.length)?;
        let warm = equilibrium(self.bearing(speed), filling.oil, self.surroundings(air)?, Method::Fast)?;
        let [first, second] = self.roughness;
        let film = film_ratio(warm.value.running.min_film, first, second)?;
        let state = State {
            temperature: warm.value.temperature,
            film_ratio: film.value.lambda,
            viscosity_ratio: None,
            regime: film.value.regime,
        };
        Ok(film.map(|_| state).after(warm).after(surface))
    }

    /// The same bearing with an end of something that was taken as usual.
    pub(super) fn varied(&self, what: &What, end: End) -> Option<Self> {
        let mut varied = self.clone();
        match what {
            What::Clearance(span) => varied.clearance = span.at(end),
            What::Load(span) => varied.load = Load::Assumed(span.at(end)),
            What::Roughness(span) => varied.roughness = span.at(end),
            What::Surface(_) => varied.surface = Some(end),
            What::Coefficient(span) => varied.coefficient = span.at(end),
            What::Washed(span) => varied.washed = span.at(end),
            What::Length(span) => {
                varied.length = span.at(end);
                varied.curve = Curve::of(varied.length / varied.diameter).ok()?;
            }
            What::Outside(_) | What::Width(_) | What::Drag(_) | What::Index(_) => return None,
        }
        Some(varied)
    }

    fn bearing(&self, speed: Rotation) -> Bearing {
        let load = match self.load {
            Load::Charted(load) => load,
            Load::Assumed(pressure) => Force::from_n(pressure.pa() * (self.diameter * self.length).m2()),
        };
        Bearing { diameter: self.diameter, length: self.length, clearance: self.clearance, load, speed }
    }

    fn surroundings(&self, air: Temperature) -> Result<Surroundings, Error> {
        let Housing { low, usual, high } = housing(self.diameter, self.length)?.value;
        let area: Area = match self.surface {
            None => usual,
            Some(End::Low) => low,
            Some(End::High) => high,
        };
        Ok(Surroundings { ambient: air, area, coefficient: self.coefficient })
    }
}
