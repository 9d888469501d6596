//! The one warning that comes of a film: a plain bearing whose measured clearance is too tight for its oil at its top speed. Never from a
//! clearance that was assumed, never where oil comes by hand, cup, pad or wick, and never where the middle of a guess alone says so.

use shop::chart::{Chart, Evidence, How, Method, Pair, PairKind, Point};
use shop::id::Id;
use shop::shelf::Shelf;
use tribology::quantity::{Rotation, Temperature};

use super::assumed::End;
use super::contact::Contact;
use super::filling::Filling;
use super::room::Room;
use super::swing::varied;
use crate::judge::Judged;
use crate::need::{Need, Place};

/// Above this a plain tool spindle is stopped, °C (from memory, section 7 of trade practice; the maker's figure comes first).
pub const STOP_C: f64 = 70.0;
/// Ways of oiling that keep a bearing full. A splash, a tray and a metered shot may; how much arrives nobody knows.
const FULL: [Method; 5] = [Method::Bath, Method::Ring, Method::CirculatingPump, Method::TotalLossPump, Method::Bottle];

/// A plain bearing that is too tight for its oil at its top speed.
#[derive(Clone, Debug, PartialEq)]
pub struct TooTight {
    /// The pair.
    pub pair: Id,
    /// What it is called.
    pub name: String,
    /// The oil.
    pub oil: String,
    /// Its top speed.
    pub speed: Rotation,
    /// Its clearance as it stands on the chart.
    pub clearance: String,
    /// The air of the shop.
    pub air: Temperature,
    /// How warm it gets even with everything assumed at its coolest; nothing where friction makes more heat than is given off.
    pub at_least: Option<Temperature>,
    /// What was measured while working, as it stands on the chart.
    pub measured: Option<String>,
}

/// The pairs of a point that are too tight for the oil that serves it as charted; where the chart asks for none, for the oil on hand that does
/// best.
#[must_use]
pub fn warnings(
    chart: &Chart,
    point: &Point,
    need: &Need<'_>,
    shelf: &Shelf,
    judged: &[Judged],
    room: Room,
) -> Vec<TooTight> {
    let charted = Filling::charted(chart, point, shelf);
    let Some(filling) = charted.or_else(|| Filling::best(chart, point, shelf, judged)) else { return Vec::new() };
    need.pairs.iter().filter_map(|(place, _)| too_tight(place, &filling, room)).collect()
}

/// Whether a plain bearing is too tight for its oil in a room of this temperature.
#[must_use]
pub fn too_tight(place: &Place<'_>, filling: &Filling, room: Room) -> Option<TooTight> {
    let pair = place.pair.filter(|pair| pair.kind == PairKind::Journal && FULL.contains(&place.point.method))?;
    let clearance = pair.clearance.as_ref().filter(|_| is_measured(pair))?;
    let contact = Contact::of(place)?;
    let (top, air) = (contact.top(), room.air);
    let warmth = |contact: &Contact, filling: &Filling| {
        let found = contact.at(filling, top, air).ok()?;
        Some(found.map_or(f64::INFINITY, |state| state.temperature.celsius()))
    };
    let mut coolest = (contact.clone(), filling.clone());
    let assumed: Vec<_> = contact.assumed().iter().copied().chain(filling.assumed()).collect();
    for one in &assumed {
        for end in End::BOTH {
            let Some(other) = varied(&coolest.0, &coolest.1, one, end) else { continue };
            if warmth(&other.0, &other.1)? < warmth(&coolest.0, &coolest.1)? {
                coolest = other;
            }
        }
    }
    let celsius = warmth(&coolest.0, &coolest.1)?;
    (celsius > STOP_C).then(|| TooTight {
        pair: pair.id.clone(),
        name: pair.name.clone().unwrap_or_else(|| pair.id.as_str().replace('-', " ")),
        oil: filling.name.clone(),
        speed: top,
        clearance: clearance.text.clone(),
        at_least: celsius.is_finite().then(|| Temperature::from_celsius(celsius)),
        measured: pair.temperature.as_ref().map(|typed| typed.text.clone()),
        air,
    })
}

/// Whether the clearance on the chart is more than a guess. What is said of it by name counts before what is said of all.
fn is_measured(pair: &Pair) -> bool {
    let named = |evidence: &&Evidence| evidence.of.iter().any(|of| of == "clearance" || of == "dimensions");
    let of_all = |evidence: &&Evidence| evidence.of.is_empty();
    let mut said: Vec<&Evidence> = pair.evidence.iter().filter(named).collect();
    if said.is_empty() {
        said = pair.evidence.iter().filter(of_all).collect();
    }
    said.is_empty() || said.iter().any(|evidence| !matches!(evidence.how, How::Guess | How::Unknown))
}
