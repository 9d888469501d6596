//! The four sorts of rolling bearing that the life formulas tell apart.

/// A sort of rolling bearing.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Class {
    /// Balls, load across the shaft.
    RadialBall,
    /// Rollers, load across the shaft.
    RadialRoller,
    /// Balls, load along the shaft.
    ThrustBall,
    /// Rollers, load along the shaft.
    ThrustRoller,
}

impl Class {
    /// Every sort with its spelling.
    pub const ALL: [(Class, &'static str); 4] = [
        (Class::RadialBall, "radial-ball"),
        (Class::RadialRoller, "radial-roller"),
        (Class::ThrustBall, "thrust-ball"),
        (Class::ThrustRoller, "thrust-roller"),
    ];

    /// Whether its rolling bodies are balls.
    #[must_use]
    pub fn has_balls(self) -> bool {
        matches!(self, Class::RadialBall | Class::ThrustBall)
    }

    /// Whether it takes its load along the shaft.
    #[must_use]
    pub fn is_thrust(self) -> bool {
        matches!(self, Class::ThrustBall | Class::ThrustRoller)
    }
}
