//! What an entry is about.

use std::fmt;
use std::str::FromStr;

use crate::id::Id;

/// What an entry is about.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Subject {
    /// A machine as a whole.
    Machine(Id),
    /// A point of a machine.
    Point(Id, Id),
    /// A reservoir of a machine.
    Reservoir(Id, Id),
    /// An oil on the shelf.
    Oil(Id),
    /// A can on the shelf.
    Can(Id),
}

impl Subject {
    /// The machine that it belongs to; nothing for the shelf's.
    #[must_use]
    pub fn machine(&self) -> Option<&Id> {
        match self {
            Self::Machine(machine) | Self::Point(machine, _) | Self::Reservoir(machine, _) => Some(machine),
            Self::Oil(_) | Self::Can(_) => None,
        }
    }

    /// The point, when it is one.
    #[must_use]
    pub fn point(&self) -> Option<&Id> {
        match self {
            Self::Point(_, point) => Some(point),
            _ => None,
        }
    }
}

impl fmt::Display for Subject {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Machine(machine) => write!(f, "machine/{machine}"),
            Self::Point(machine, point) => write!(f, "machine/{machine}/point/{point}"),
            Self::Reservoir(machine, reservoir) => write!(f, "machine/{machine}/reservoir/{reservoir}"),
            Self::Oil(oil) => write!(f, "oil/{oil}"),
            Self::Can(can) => write!(f, "can/{can}"),
        }
    }
}

/// The text is no subject.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NoSubject;

impl FromStr for Subject {
    type Err = NoSubject;

    fn from_str(text: &str) -> Result<Self, NoSubject> {
        let id = |text: &str| Id::new(text).map_err(|_| NoSubject);
        match *text.split('/').collect::<Vec<_>>() {
            ["machine", machine] => Ok(Self::Machine(id(machine)?)),
            ["machine", machine, "point", point] => Ok(Self::Point(id(machine)?, id(point)?)),
            ["machine", machine, "reservoir", reservoir] => Ok(Self::Reservoir(id(machine)?, id(reservoir)?)),
            ["oil", oil] => Ok(Self::Oil(id(oil)?)),
            ["can", can] => Ok(Self::Can(id(can)?)),
            _ => Err(NoSubject),
        }
    }
}
