//! What the film of a plain or a rolling bearing is at each of its speeds and at the shop's temperatures, if it is given all the oil that it
//! wants: how warm it runs, and whether its surfaces touch. At an oil hole, a cup and a wick it has less by design, so nothing here ever sets a
//! verdict. Start at [`film()`]; [`too_tight`] is the one warning that comes of it. What nobody has measured is taken as usual and told, with how
//! far it moves the answer.

mod assumed;
mod at_work;
mod contact;
mod filling;
mod plain;
mod rolling;
mod room;
mod state;
mod swing;
mod tight;

pub use assumed::{Assumed, End, Span, What};
pub use at_work::{AtWork, By, WARMER_K, at_work};
pub use contact::{Contact, Kind};
pub use filling::Filling;
pub use room::{Day, Room, rooms};
pub use state::{Change, InRoom, Reached, State};
pub use swing::Swing;
pub use tight::{STOP_C, TooTight, too_tight, warnings};

use tribology::Answer;

use crate::need::Place;

/// The film of a bearing over its speeds.
#[derive(Clone, Debug, PartialEq)]
pub struct Film {
    /// What kind of bearing it is.
    pub kind: Kind,
    /// Its speeds in each room, in the order of the rooms.
    pub rooms: Vec<InRoom>,
    /// What was taken as usual.
    pub assumed: Vec<Assumed>,
    /// How far each of these moves the answer on a usual day, the one that moves it most first.
    pub swing: Vec<Swing>,
}

/// The film of a bearing with an oil in rooms of these temperatures, with the working of its top speed on a usual day. Nothing for other pairs
/// and for grease, without a size or a turning speed, and where no sum has an answer.
#[must_use]
pub fn film(place: &Place<'_>, filling: &Filling, rooms: &[Room]) -> Option<Answer<Film>> {
    let contact = Contact::of(place)?;
    let usual = rooms.iter().find(|room| room.day == Day::Usual).or(rooms.first())?;
    let films: Vec<InRoom> = rooms.iter().map(|room| contact.over(filling, *room)).collect();
    if films.iter().all(|film| film.at.is_empty()) {
        return None;
    }
    let assumed: Vec<Assumed> = contact.assumed().iter().copied().chain(filling.assumed()).collect();
    let swing = swing::swing(&contact, filling, &assumed, usual.air);
    let value = Film { kind: contact.kind(), rooms: films, assumed, swing };
    let worked = contact.working(filling, usual.air);
    Some(Answer { value, warnings: worked.warnings, steps: worked.steps })
}
