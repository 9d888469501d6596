//! What to do about an oil that is in already: a table by how far it does, by what it does there, and by whether the pair is warm, close
//! or cannot be bought again. Common practice, no source.

use std::fmt;

use tribology::Standing;

use crate::need::{Known, Place};
use crate::verdict::{Reason, Verdict};

/// What to do about what is in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Act {
    /// Leave it; all is well.
    Leave,
    /// Take a sample and look; treat it as unknown.
    Sample,
    /// Run it to the next change, and fill another then.
    NextChange,
    /// Drain it when convenient.
    Drain,
    /// Fill it before the machine runs.
    Fill,
    /// Leave the machine stopped until it is out.
    DoNotRun,
}

/// A row of the table.
#[derive(Clone, Copy, Debug)]
pub struct Row {
    /// How far the oil does.
    pub verdict: &'static str,
    /// Where.
    pub place: &'static str,
    /// What to do.
    pub act: Act,
}

/// How far the table is to be trusted.
pub const STANDING: Standing = Standing::CommonPractice;

/// The table, as people read it; every verdict on what is inside follows it.
pub const TABLE: [Row; 6] = [
    Row { verdict: "suits", place: "anywhere", act: Act::Leave },
    Row { verdict: "serves", place: "anywhere", act: Act::NextChange },
    Row {
        verdict: "stopgap, and it eats metal, slips a clutch, clogs, or is a mixture (R1, R2, R7, R9, R13, R24)",
        place: "anywhere",
        act: Act::Drain,
    },
    Row {
        verdict: "stopgap by its sort or its body",
        place: "above 60 °C or loaded, close and fast, or not to be bought again",
        act: Act::Drain,
    },
    Row { verdict: "stopgap by its sort or its body", place: "elsewhere", act: Act::NextChange },
    Row { verdict: "never", place: "anywhere", act: Act::DoNotRun },
];

/// The rules whose harm goes on for as long as the oil is in, wherever it is.
const WORKS_ON: [&str; 6] = ["R1", "R2", "R7", "R9", "R13", "R24"];

/// What to do for one reason why an oil does no further.
///
/// - `place`: the pair that it is about; nothing where it is about the oil itself.
#[must_use]
pub(super) fn act(reason: &Reason, place: Option<&Place<'_>>) -> Act {
    let is_delicate = place.is_some_and(|place| {
        place.is_irreplaceable || place.is_close_and_fast || place.is_with_close_spindle || place.hot == Known::Yes
    });
    match reason.cap {
        Verdict::Suits => Act::Leave,
        Verdict::Serves => Act::NextChange,
        Verdict::Stopgap if is_delicate || WORKS_ON.contains(&reason.rule) => Act::Drain,
        Verdict::Stopgap => Act::NextChange,
        Verdict::Never => Act::DoNotRun,
    }
}

impl fmt::Display for Act {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Leave => "leave it",
            Self::Sample => "take a sample",
            Self::NextChange => "run to the next change",
            Self::Drain => "drain when convenient",
            Self::Fill => "fill it first",
            Self::DoNotRun => "do not run",
        })
    }
}
