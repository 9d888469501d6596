//! How a bearing does at a speed, over its speeds, and between them.

use tribology::contact::Regime;
use tribology::quantity::{Rotation, Temperature};
use tribology::{Error, math, root};

use super::contact::Contact;
use super::filling::Filling;
use super::room::Room;

/// How a bearing does at a speed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct State {
    /// How warm it runs.
    pub temperature: Temperature,
    /// The film over the roughness of both faces; of a rolling bearing the one that goes with its viscosity ratio.
    pub film_ratio: f64,
    /// Viscosity over what ISO 281 asks for; of rolling bearings only.
    pub viscosity_ratio: Option<f64>,
    /// Whether the surfaces touch.
    pub regime: Regime,
}

/// A bearing over its speeds in one room.
#[derive(Clone, Debug, PartialEq)]
pub struct InRoom {
    /// The room.
    pub room: Room,
    /// Each charted speed of which there is an answer, slowest first; nothing where friction makes more heat than is given off.
    pub at: Vec<(Rotation, Option<State>)>,
    /// The speeds between them at which the film changes, slowest first.
    pub changes: Vec<Change>,
}

/// A change of the film.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Change {
    /// From this speed on.
    pub from: Rotation,
    /// To this.
    pub to: Regime,
}

/// From which speed on a film is as good as asked, within the charted speeds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Reached {
    /// At all of them.
    Always,
    /// From here on.
    From(Rotation),
    /// At none.
    Never,
}

/// Steps of a curve over the speeds.
const STEPS: u32 = 30;
/// Speeds are sought to this part of themselves.
const NEAR: f64 = 1e-4;

impl Contact {
    /// The bearing over its charted speeds in a room.
    #[must_use]
    pub fn over(&self, filling: &Filling, room: Room) -> InRoom {
        let at: Vec<(Rotation, Option<State>)> =
            self.speeds().iter().filter_map(|speed| Some((*speed, self.at(filling, *speed, room.air).ok()?))).collect();
        let mut changes = Vec::new();
        for pair in at.windows(2) {
            let [(slow, Some(before)), (fast, Some(after))] = pair else { continue };
            changes.extend(self.between(filling, room.air, (*slow, *before), (*fast, *after)));
        }
        InRoom { room, at, changes }
    }

    /// How warm it runs at many speeds from its slowest to its fastest, for a plot; it ends where no temperature is in balance any more.
    #[must_use]
    pub fn warmth(&self, filling: &Filling, room: Room) -> Vec<(Rotation, Temperature)> {
        let [Some(slow), Some(fast)] = [self.speeds().first(), self.speeds().last()] else { return Vec::new() };
        let [from, to] = [slow, fast].map(|speed| math::ln(speed.per_second()));
        let steps = (0..=STEPS).map(|step| from + (to - from) * f64::from(step) / f64::from(STEPS));
        let speeds = steps.map(|place| Rotation::from_per_second(math::exp(place)));
        speeds.filter_map(|speed| Some((speed, self.at(filling, speed, room.air).ok()??.temperature))).collect()
    }

    /// From which of its speeds on the film is as good as this.
    pub(super) fn reached(&self, filling: &Filling, air: Temperature, wanted: Regime) -> Reached {
        let mut before: Option<(Rotation, State)> = None;
        for speed in self.speeds() {
            let Ok(Some(state)) = self.at(filling, *speed, air) else { continue };
            if state.regime >= wanted {
                let Some(before) = before else { return Reached::Always };
                let crossing = self.crossing(filling, air, [before.0, *speed], wanted.span().0);
                return Reached::From(crossing.unwrap_or(*speed));
            }
            before = Some((*speed, state));
        }
        Reached::Never
    }

    /// The changes between two neighbouring speeds.
    fn between(
        &self,
        filling: &Filling,
        air: Temperature,
        (slow, before): (Rotation, State),
        (fast, after): (Rotation, State),
    ) -> Vec<Change> {
        let rises = after.regime > before.regime;
        let (worse, better) = if rises { (before.regime, after.regime) } else { (after.regime, before.regime) };
        let crossed = Regime::ALL.windows(2).filter(|pair| pair[0] >= worse && pair[1] <= better);
        let mut changes: Vec<Change> = crossed
            .filter_map(|pair| {
                let from = self.crossing(filling, air, [slow, fast], pair[1].span().0)?;
                Some(Change { from, to: if rises { pair[1] } else { pair[0] } })
            })
            .collect();
        changes.sort_by(|a, b| a.from.per_second().total_cmp(&b.from.per_second()));
        changes
    }

    /// The speed between two at which the film ratio passes a limit.
    fn crossing(&self, filling: &Filling, air: Temperature, ends: [Rotation; 2], limit: f64) -> Option<Rotation> {
        let ratio = |place: f64| -> Result<Option<State>, Error> {
            self.at(filling, Rotation::from_per_second(math::exp(place)), air)
        };
        let over = |place: f64| match ratio(place) {
            Ok(Some(state)) => state.film_ratio - limit,
            _ => f64::NAN,
        };
        let found = root::root("speed", ends.map(|speed| math::ln(speed.per_second())), NEAR, over).ok()?;
        Some(Rotation::from_per_second(math::exp(found.at)))
    }
}
