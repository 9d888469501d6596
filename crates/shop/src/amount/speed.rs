//! A speed on a chart: spindles turn, tables and rams slide.

use tribology::quantity::{Kind, Rotation, TypedFault, Velocity, typed};

/// How fast a pair moves.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Speed {
    /// It turns, or strokes, so many times a second.
    Turning(Rotation),
    /// It slides so many metres a second.
    Sliding(Velocity),
}

impl Speed {
    /// The speed that this text spells: `94 rpm`, `40 strokes/min`, `0.3 m/s`, `60 ft/min`.
    ///
    /// # Errors
    /// The fault of the text; a unit that is neither a rotation's nor a velocity's is told as for a rotation.
    pub fn read(text: &str) -> Result<Self, TypedFault> {
        match typed::<Rotation>(text) {
            Ok(turning) => Ok(Self::Turning(turning.value)),
            Err(fault @ TypedFault::WrongKind { is: Kind::Velocity, .. }) => {
                typed::<Velocity>(text).map(|sliding| Self::Sliding(sliding.value)).map_err(|_| fault)
            }
            Err(fault) => Err(fault),
        }
    }

    /// Whether it is above zero.
    #[must_use]
    pub fn is_positive(self) -> bool {
        match self {
            Self::Turning(rotation) => rotation > Rotation::from_rpm(0.0),
            Self::Sliding(velocity) => velocity > Velocity::from_m_s(0.0),
        }
    }
}
