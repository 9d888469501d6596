//! How far an oil does at a point: four words from best to worst, and the reasons that made it so. Start at [`Verdict`].

use std::fmt;

use tribology::Standing;

use crate::rules::Seen;

/// How far an oil does.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Verdict {
    /// It does harm: leave the machine stopped rather.
    Never,
    /// Better than none, for a while.
    Stopgap,
    /// It does, though not the best.
    Serves,
    /// It is what the point wants.
    Suits,
}

impl Verdict {
    /// All, from best to worst.
    pub const ALL: [Self; 4] = [Self::Suits, Self::Serves, Self::Stopgap, Self::Never];
}

impl fmt::Display for Verdict {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Suits => "suits",
            Self::Serves => "serves",
            Self::Stopgap => "stopgap",
            Self::Never => "never",
        })
    }
}

/// Why a verdict is no better.
#[derive(Clone, Debug, PartialEq)]
pub struct Reason {
    /// The rule's id, such as `R1`; `body` for the viscosity, `sort` for the sort of oil.
    pub rule: &'static str,
    /// How far it lets the oil do.
    pub cap: Verdict,
    /// What it says, a sentence without its full stop.
    pub says: String,
    /// How far it is to be trusted.
    pub standing: Standing,
    /// Where it is from.
    pub source: &'static str,
    /// What was seen that made it so.
    pub seen: Vec<Seen>,
}
