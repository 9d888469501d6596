//! What nobody has measured of a bearing, as it is taken, and the range in which it usually lies.

use tribology::Standing;
use tribology::quantity::{Area, HeatTransfer, Length, Pressure};

/// The least, the usual and the most of something.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Span<T> {
    /// The least that is usual.
    pub low: T,
    /// What is taken.
    pub usual: T,
    /// The most that is usual.
    pub high: T,
}

/// An end of a span.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum End {
    /// The least.
    Low,
    /// The most.
    High,
}

/// Something that nobody has measured.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Assumed {
    /// What it is, and its range.
    pub what: What,
    /// How far the range is to be trusted.
    pub standing: Standing,
}

/// What it is, with its range.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum What {
    /// The clearance on the diameter.
    Clearance(Span<Length>),
    /// The load, as pressure on the projected bearing.
    Load(Span<Pressure>),
    /// The length of a plain bearing.
    Length(Span<Length>),
    /// The roughness of both faces.
    Roughness(Span<[Length; 2]>),
    /// The outside diameter of a rolling bearing.
    Outside(Span<Length>),
    /// The width of a rolling bearing.
    Width(Span<Length>),
    /// The factor of drag of a rolling bearing in its oil.
    Drag(Span<f64>),
    /// The surface that gives off heat.
    Surface(Span<Area>),
    /// The heat that it gives off.
    Coefficient(Span<HeatTransfer>),
    /// The part of the oil leaving a plain bearing that comes as cool as the air.
    Washed(Span<f64>),
    /// The viscosity index of the oil.
    Index(Span<f64>),
}

impl What {
    /// Whether a keeper can find it out with a rule, a dial or a scale; how heat gets away is better told by a thermometer on the bearing.
    #[must_use]
    pub fn is_dimension(&self) -> bool {
        match self {
            Self::Clearance(_) | Self::Load(_) | Self::Length(_) | Self::Roughness(_) => true,
            Self::Outside(_) | Self::Width(_) => true,
            Self::Drag(_) | Self::Surface(_) | Self::Coefficient(_) | Self::Washed(_) | Self::Index(_) => false,
        }
    }
}

impl<T: Copy> Span<T> {
    /// The end.
    #[must_use]
    pub fn at(&self, end: End) -> T {
        match end {
            End::Low => self.low,
            End::High => self.high,
        }
    }

    /// A span made of three parts.
    pub(super) fn of<P>([low, usual, high]: [P; 3], part: impl Fn(P) -> T) -> Self {
        Self { low: part(low), usual: part(usual), high: part(high) }
    }
}

impl End {
    /// Both.
    pub const BOTH: [Self; 2] = [Self::Low, Self::High];
}

impl Assumed {
    pub(super) fn new(what: What, standing: Standing) -> Self {
        Self { what, standing }
    }
}
