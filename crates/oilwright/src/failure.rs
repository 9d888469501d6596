//! Why a command stops: one sentence, and the exit code that scripts rely on.

use std::fmt;
use std::process::ExitCode;

/// Why a command stops.
#[derive(Debug)]
pub(crate) enum Failure {
    /// Wrong use, or input that cannot be right.
    Use(String),
    /// The shop is unusable.
    File(String),
    /// Whoever read our output has stopped reading, which is no fault.
    Pipe,
}

impl Failure {
    /// 2 for wrong use, 3 for an unusable shop.
    pub(crate) fn code(&self) -> ExitCode {
        match self {
            Self::Use(_) => ExitCode::from(2),
            Self::File(_) => ExitCode::from(3),
            Self::Pipe => ExitCode::SUCCESS,
        }
    }
}

impl fmt::Display for Failure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Use(says) | Self::File(says) => f.write_str(says),
            Self::Pipe => f.write_str("the output was closed"),
        }
    }
}

impl From<store::Error> for Failure {
    fn from(error: store::Error) -> Self {
        use store::Error as E;
        let says = error.to_string();
        match error {
            E::NotFound(_)
            | E::Conflict(_)
            | E::NotImported { .. }
            | E::Picture { .. }
            | E::Faulty(_)
            | E::TooLarge { .. }
            | E::NamelessZone
            | E::Exists(_) => Self::Use(says),
            _ => Self::File(says),
        }
    }
}

impl From<std::io::Error> for Failure {
    fn from(error: std::io::Error) -> Self {
        if error.kind() == std::io::ErrorKind::BrokenPipe { Self::Pipe } else { Self::Use(error.to_string()) }
    }
}
