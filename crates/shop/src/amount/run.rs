//! How long a machine ran or will run, as people type it.

use tribology::quantity::{Kind, Time, TypedFault, Unit, typed_in};

/// The longest run in one entry; a longer one is entered day by day.
pub const LONGEST_RUN: Time = Time::from_hours(24.0);

/// Why a text is no run.
#[derive(Clone, Debug, PartialEq)]
pub enum RunFault {
    /// The quantity itself is faulty.
    Typed(TypedFault),
    /// It is nothing, or longer than a day.
    NoDay,
}

/// The run that this text spells: `3`, `3 h`, `90 min`. A bare number is hours.
///
/// # Errors
/// [`RunFault`] when the text is no time, not above zero, or longer than [`LONGEST_RUN`].
pub fn read_run(text: &str) -> Result<Time, RunFault> {
    let hour = Unit::find(Kind::Time, "h").expect("the table of units holds the hour");
    let time = typed_in::<Time>(text, hour).map_err(RunFault::Typed)?.value;
    if time > Time::from_hours(0.0) && time <= LONGEST_RUN { Ok(time) } else { Err(RunFault::NoDay) }
}
