//! How far each thing that nobody has measured moves the answer, one at a time over its usual range, so that the keeper knows what is worth
//! measuring.

use tribology::math;
use tribology::quantity::Temperature;

use super::assumed::{Assumed, End};
use super::contact::Contact;
use super::filling::Filling;
use super::state::Reached;

/// How far something moves the answer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Swing {
    /// What was taken as usual.
    pub assumed: Assumed,
    /// The coolest and the warmest at top speed over its range; nothing where at an end friction makes more heat than is given off.
    pub top: [Option<Temperature>; 2],
    /// The earliest and the latest speed from which the film is as good as wanted.
    pub reached: [Reached; 2],
    /// How much that is: ten kelvins, and twice the speed, count for one each.
    pub much: f64,
}

/// What counts for one, in kelvins and as a factor of the speed (our own weights).
const COUNTS_K: f64 = 10.0;
const COUNTS_TIMES: f64 = 2.0;

/// How far each assumed thing moves the answer in air of this temperature, the one that moves it most first.
pub(super) fn swing(contact: &Contact, filling: &Filling, assumed: &[Assumed], air: Temperature) -> Vec<Swing> {
    let found = |contact: &Contact, filling: &Filling| {
        let top = contact.at(filling, contact.top(), air).ok()?;
        Some((top.map(|state| state.temperature), contact.reached(filling, air, contact.kind().wanted())))
    };
    let Some(nominal) = found(contact, filling) else { return Vec::new() };
    let speeds = [contact.speeds().first(), contact.speeds().last()].map(|speed| speed.map_or(1.0, |n| n.per_second()));
    let place = |reached: Reached| match reached {
        Reached::Always => speeds[0],
        Reached::From(speed) => speed.per_second(),
        Reached::Never => speeds[1],
    };
    let mut swings: Vec<Swing> = assumed
        .iter()
        .filter_map(|assumed| {
            let at =
                |end| varied(contact, filling, assumed, end).and_then(|(contact, filling)| found(&contact, &filling));
            let all = [at(End::Low)?, nominal, at(End::High)?];
            let mut tops = all.map(|(top, _)| top);
            // No balance at all is warmer than any.
            let kelvin = |top: &Option<Temperature>| top.map_or(f64::INFINITY, |top| top.kelvin());
            tops.sort_by(|a, b| kelvin(a).total_cmp(&kelvin(b)));
            let mut reached = all.map(|(_, reached)| reached);
            let rank = |reached: &Reached| (*reached == Reached::Never, place(*reached));
            reached.sort_by(|a, b| rank(a).0.cmp(&rank(b).0).then(rank(a).1.total_cmp(&rank(b).1)));
            let [coolest, _, warmest] = tops;
            let [earliest, _, latest] = reached;
            let warmer = (kelvin(&warmest) - kelvin(&coolest)) / COUNTS_K;
            let later = math::ln(place(latest) / place(earliest)) / math::ln(COUNTS_TIMES);
            let much = if warmer.is_nan() { later } else { warmer + later };
            Some(Swing { assumed: *assumed, top: [coolest, warmest], reached: [earliest, latest], much })
        })
        .collect();
    swings.sort_by(|a, b| b.much.total_cmp(&a.much));
    swings
}

/// Bearing and oil with an end of something that was taken as usual, whichever of the two it belongs to.
pub(super) fn varied(contact: &Contact, filling: &Filling, assumed: &Assumed, end: End) -> Option<(Contact, Filling)> {
    match filling.varied(&assumed.what, end) {
        Some(filling) => Some((contact.clone(), filling)),
        None => Some((contact.varied(&assumed.what, end)?, filling.clone())),
    }
}
