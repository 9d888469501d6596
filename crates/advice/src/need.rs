//! What a point wants: a band of body for each pair that it feeds and for all of them together, the sorts of oil that are made for it, and
//! what the way of oiling can still move at the shop's temperatures. Start at [`need`].

mod band;
mod cold;
mod place;
mod plate;
mod sort;
mod wish;

pub use band::{Band, band};
pub use cold::{ColdFeed, Movable, cold_feed, cold_feed_of, feed, movable};
pub use place::{CLOSE, FAST_M_S, HOT_C, Known, Place, QUICK_M_S, Range, Way, gone, pairs_of};
pub use plate::{Against, Plate, plate};
pub use sort::{sort, wanted, wants};
pub use wish::{Unwanted, unwanted};

use shop::chart::{Chart, Point};
use shop::id::Id;

/// What a point wants.
#[derive(Clone, Debug, PartialEq)]
pub struct Need<'c> {
    /// Its pairs, each as the point feeds it, with the band that it wants.
    pub pairs: Vec<(Place<'c>, Option<Band>)>,
    /// The band for all of them; nothing where none is known.
    pub band: Option<Band>,
    /// The pairs that the band leaves out, where they do not want anything in common.
    pub suffer: Vec<Id>,
}

/// What a point wants.
#[must_use]
pub fn need<'c>(chart: &'c Chart, point: &'c Point) -> Need<'c> {
    let mut pairs: Vec<(Place<'c>, Option<Band>)> = Place::all(chart, point)
        .into_iter()
        .map(|place| {
            let band = if place.takes_grease() || place.is_dry_clutch { None } else { band(&place) };
            (place, band)
        })
        .collect();
    // The plate of a close, fast spindle is followed exactly, where it is of a body that such spindles want.
    if let Some(plate) = plate(chart, point) {
        for (_, band) in pairs.iter_mut().filter(|(place, _)| place.is_close_and_fast) {
            *band = band.map(|band| band.and(&plate.as_band()).unwrap_or(band));
        }
    }
    // A close, fast spindle seizes under an oil that is too thick; whatever shares its oil does with what it wants.
    if let Some(spindle) = pairs.iter().find(|(place, _)| place.is_close_and_fast).and_then(|(_, band)| *band) {
        for (place, band) in &mut pairs {
            place.is_with_close_spindle = true;
            *band = band.map(|_| spindle);
        }
    }
    let bands: Vec<(Option<&Id>, Band)> =
        pairs.iter().filter_map(|(place, band)| Some((place.pair.map(|pair| &pair.id), (*band)?))).collect();
    let (band, suffer) = together(&bands);
    Need { band, suffer, pairs }
}

/// What all want; where they want nothing in common, the band that is fewest grades off for whom it is worst off, and who suffers.
fn together(bands: &[(Option<&Id>, Band)]) -> (Option<Band>, Vec<Id>) {
    let Some(((_, first), rest)) = bands.split_first() else { return (None, Vec::new()) };
    if let Some(common) = rest.iter().try_fold(*first, |common, (_, band)| common.and(band)) {
        return (Some(common), Vec::new());
    }
    // The least bad body lies where the thinnest upper and the thickest lower edge are equally far, by ratio.
    let low = bands.iter().map(|(_, band)| band.high).fold(f64::INFINITY, f64::min);
    let high = bands.iter().map(|(_, band)| band.low).fold(0.0, f64::max);
    let middle = tribology::math::sqrt(low * high);
    let compromise =
        Band { low: middle / 1.1, high: middle * 1.1, source: "between pairs that want nothing in common", ..*first };
    let suffer =
        bands.iter().filter(|(_, band)| band.steps(compromise.middle()) != 0.0).filter_map(|(id, _)| (*id).cloned());
    (Some(compromise), suffer.collect())
}
