//! How warm a pair works on a usual day, and what its band at 40 °C comes to at that warmth.

use tribology::oil::{USUAL_INDEX, ViscosityLine};
use tribology::quantity::{KinematicViscosity, Temperature, TemperatureDifference};

use super::{Day, Film, Room};
use crate::need::{Band, Place};

/// How warm a pair works.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AtWork {
    /// Its warmth.
    pub temperature: Temperature,
    /// How that is known.
    pub by: By,
}

/// How the warmth of a pair at work is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum By {
    /// It was measured.
    Measured,
    /// By the heat that it makes at its top speed.
    Heat,
    /// It is taken to be so much warmer than the shop.
    RuleOfThumb,
}

/// How much warmer than the shop a pair of an old machine works, of which nothing else is known, K (common practice).
pub const WARMER_K: f64 = 15.0;

/// How warm a pair works on a usual day.
#[must_use]
pub fn at_work(place: &Place<'_>, film: Option<&Film>, usual: Room) -> AtWork {
    if let Some(measured) = place.pair.and_then(|pair| pair.temperature.as_ref()) {
        return AtWork { temperature: measured.value, by: By::Measured };
    }
    let in_usual = film.and_then(|film| film.rooms.iter().find(|one| one.room.day == Day::Usual));
    let states = in_usual.iter().flat_map(|one| &one.at).filter_map(|(_, state)| state.as_ref());
    match states.map(|state| state.temperature).max_by(|a, b| a.celsius().total_cmp(&b.celsius())) {
        Some(temperature) => AtWork { temperature, by: By::Heat },
        None => AtWork { temperature: usual.air + TemperatureDifference::from_kelvin(WARMER_K), by: By::RuleOfThumb },
    }
}

impl AtWork {
    /// What a band at 40 °C comes to at this warmth, thinnest and thickest, for the usual viscosity index; nothing where that index gives no line.
    #[must_use]
    pub fn band(&self, band: &Band) -> Option<(KinematicViscosity, KinematicViscosity)> {
        let at_work = |v40| {
            let line = ViscosityLine::with_index(KinematicViscosity::from_mm2_s(v40), USUAL_INDEX).ok()?.value;
            Some(line.at(self.temperature))
        };
        Some((at_work(band.low)?, at_work(band.high)?))
    }
}

#[cfg(test)]
mod tests {
    use tribology::Standing;

    use super::*;

    /// 68 mm²/s at 40 °C and an index of 95 are 8.53 mm²/s at 100 °C (row OP-S32 of `reference/oil-properties.csv`).
    #[test]
    fn a_band_is_thinner_where_it_is_warmer() {
        let band = Band { low: 46.0, high: 68.0, standing: Standing::CommonPractice, source: "tried" };
        let at = |celsius| AtWork { temperature: Temperature::from_celsius(celsius), by: By::Measured }.band(&band);
        let (low, high) = at(40.0).expect("a band");
        assert!((low.mm2_s() - 46.0).abs() < 0.01 && (high.mm2_s() - 68.0).abs() < 0.01);
        let (_, hot) = at(100.0).expect("a band");
        assert!((hot.mm2_s() - 8.53).abs() < 0.02, "{}", hot.mm2_s());
        let (cool, _) = at(20.0).expect("a band");
        assert!(cool.mm2_s() > 100.0);
    }
}
