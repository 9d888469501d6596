//! A rolling bearing: what is charted, what is taken as usual, and how it does at a speed.

use shop::chart::Pair;
use tribology::contact::journal::{Housing, STILL_AIR, Surroundings, housing};
use tribology::contact::regime;
use tribology::contact::rolling::{Bearing, Oiling, film_ratio_of, friction_factor, viscosity_ratio, warmed};
use tribology::quantity::{HeatTransfer, Length, Rotation, Temperature};
use tribology::{Answer, Error, Standing};

use super::assumed::{Assumed, End, Span, What};
use super::filling::Filling;
use super::state::State;
use crate::need::{Place, Way};

/// A rolling bearing.
#[derive(Clone, Debug, PartialEq)]
pub struct Rolling {
    pub(super) speeds: Vec<Rotation>,
    pub(super) assumed: Vec<Assumed>,
    bore: Length,
    outside: Length,
    width: Width,
    drag: f64,
    surface: Option<End>,
    coefficient: HeatTransfer,
}

/// The width, as charted, or half of what lies between bore and outside, times a number.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Width {
    Charted(Length),
    Assumed(f64),
}

/// Outside over bore: of thin rings, of the usual ones, of heavy ones (from memory).
const OUTSIDES: [f64; 3] = [1.5, 2.0, 2.7];
/// Width over half of what lies between bore and outside: a ball is about as wide as it is high (from memory).
const WIDTHS: [f64; 3] = [0.7, 1.0, 1.6];
/// The factor of drag where the sort of bearing is unknown (from memory).
const DRAG: [f64; 3] = [1.0, 2.0, 6.0];
/// A bearing nearly dry drags half as much, one too full twice as much (from memory).
const FULLER: [f64; 3] = [0.5, 1.0, 2.0];

impl Rolling {
    /// A rolling bearing at a place; nothing without a bore.
    pub(super) fn of(place: &Place<'_>, pair: &Pair, speeds: Vec<Rotation>) -> Option<Self> {
        let bore = pair.bore.as_ref().or(pair.diameter.as_ref())?.value;
        let mut assumed = Vec::new();
        let mut assume = |what| assumed.push(Assumed::new(what, Standing::FromMemory));
        let outside = match &pair.outside {
            Some(typed) => typed.value,
            None => {
                let span = Span::of(OUTSIDES, |times| bore * times);
                assume(What::Outside(span));
                span.usual
            }
        };
        let width = match &pair.width {
            Some(typed) => Width::Charted(typed.value),
            None => {
                assume(What::Width(Span::of(WIDTHS, |times| (outside - bore) * (0.5 * times))));
                Width::Assumed(WIDTHS[1])
            }
        };
        let drag = drag(place, pair);
        assume(What::Drag(drag));
        let [least, most] = STILL_AIR;
        let still = Span { low: least, usual: (least + most) / 2.0, high: most };
        let mut found = Self {
            drag: drag.usual,
            surface: None,
            coefficient: still.usual,
            assumed: Vec::new(),
            speeds,
            bore,
            outside,
            width,
        };
        let Housing { low, usual, high } = found.housing().ok()?;
        assume(What::Surface(Span { low, usual, high }));
        assume(What::Coefficient(still));
        found.assumed = assumed;
        Some(found)
    }

    /// How it does at a speed, with its working.
    pub(super) fn at(&self, filling: &Filling, speed: Rotation, air: Temperature) -> Result<Answer<State>, Error> {
        let Housing { low, usual, high } = self.housing()?;
        let area = match self.surface {
            None => usual,
            Some(End::Low) => low,
            Some(End::High) => high,
        };
        let surroundings = Surroundings { ambient: air, area, coefficient: self.coefficient };
        let pitch = (self.bore + self.outside) / 2.0;
        let warm = warmed(self.drag, speed, pitch, filling.oil.line, surroundings)?;
        let ratio = viscosity_ratio(warm.value.viscosity, speed, pitch)?;
        let film = film_ratio_of(ratio.value)?;
        let state = State {
            temperature: warm.value.temperature,
            film_ratio: film.value,
            viscosity_ratio: Some(ratio.value),
            regime: regime(film.value)?,
        };
        Ok(film.map(|_| state).after(ratio).after(warm))
    }

    /// The same bearing with an end of something that was taken as usual.
    pub(super) fn varied(&self, what: &What, end: End) -> Option<Self> {
        let mut varied = self.clone();
        match what {
            What::Outside(span) => varied.outside = span.at(end),
            What::Width(_) => varied.width = Width::Assumed(Span::of(WIDTHS, |times| times).at(end)),
            What::Drag(span) => varied.drag = span.at(end),
            What::Surface(_) => varied.surface = Some(end),
            What::Coefficient(span) => varied.coefficient = span.at(end),
            _ => return None,
        }
        Some(varied)
    }

    fn housing(&self) -> Result<Housing, Error> {
        let width = match self.width {
            Width::Charted(width) => width,
            Width::Assumed(times) => (self.outside - self.bore) * (0.5 * times),
        };
        housing(self.outside, width).map(|answer| answer.value)
    }
}

/// The factor of drag by the sort of bearing and the way of oiling.
fn drag(place: &Place<'_>, pair: &Pair) -> Span<f64> {
    let oiling = if matches!(place.way, Way::Bath | Way::Round) { Oiling::Bath } else { Oiling::Mist };
    let sort = pair.kind_type.as_deref().and_then(sort);
    let found = sort.and_then(|sort| friction_factor(sort, oiling).or_else(|| friction_factor(sort, Oiling::Bath)));
    found.map_or(Span::of(DRAG, |factor| factor), |answer| {
        let (low, high) = answer.value;
        Span::of(FULLER, |times| 0.5 * (low + high) * times)
    })
}

/// The sort of bearing in the words of a chart.
fn sort(words: &str) -> Option<Bearing> {
    let words = words.to_lowercase();
    let sorts = [
        ("deep groove", Bearing::DeepGroove),
        ("angular", Bearing::AngularContact),
        ("cylindrical", Bearing::CylindricalRoller),
        ("taper", Bearing::TaperRoller),
        ("thrust", Bearing::ThrustBall),
    ];
    sorts.into_iter().find(|(word, _)| words.contains(word)).map(|(_, sort)| sort)
}
