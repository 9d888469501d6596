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

/// The longest time that a round may be given.
pub const LONGEST_ROUND: Time = Time::from_hours(8.0);

/// The whole minutes that this text spells, for a round: `10`, `10 min`, `1/4 h`. A bare number is minutes.
///
/// # Errors
/// [`RunFault`] when the text is no time, less than a minute, no whole number of minutes, or longer than [`LONGEST_ROUND`].
pub fn read_minutes(text: &str) -> Result<u32, RunFault> {
    let minute = Unit::find(Kind::Time, "min").expect("the table of units holds the minute");
    let minutes = typed_in::<Time>(text, minute).map_err(RunFault::Typed)?.value.seconds() / 60.0;
    let whole = minutes.round();
    // A third of an hour is no whole number of minutes in the last digit.
    let is_whole = (minutes - whole).abs() < 1e-6;
    let most = LONGEST_ROUND.seconds() / 60.0;
    if is_whole && (1.0..=most).contains(&whole) { Ok(whole as u32) } else { Err(RunFault::NoDay) }
}
