//! The phases of a round, in the order in which they are gone through.

use shop::chart::State;
use shop::choice;

use super::setup::SetUp;

choice! {
    /// A phase of the round.
    Phase {
        /// Chips are wiped off what is oiled from outside: oil over chips laps the ways.
        Wipe = "wipe",
        /// Points on the stopped machine as it stands.
        Stopped = "stopped",
        /// Points for which a slide is moved or a cover taken off.
        Set = "set the machine",
        /// Signs on the running machine.
        Running = "running",
    }
}

impl Phase {
    /// The phase of a point, by the machine's state there and by what must be done to reach it.
    #[must_use]
    pub fn of(state: State, acts: &[SetUp]) -> Self {
        match state {
            State::Running => Self::Running,
            State::Stopped if acts.iter().any(|act| act.reading.sets_machine()) => Self::Set,
            State::Stopped => Self::Stopped,
        }
    }
}
