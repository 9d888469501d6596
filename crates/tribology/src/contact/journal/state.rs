//! What is known of a film in a journal bearing, in numbers without units.

use std::f64::consts::{PI, TAU};

use super::BOUNDARY;
use super::gap::Gap;
use crate::math;
use crate::quantity::Angle;

/// A steady film. `R`, `D` radius and diameter, `L` length, `C` radial clearance, `N` turns per second, `P = W / (L D)`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct JournalState {
    /// Length over diameter, `L/D`; may be infinite.
    pub ratio: f64,
    /// Eccentricity over radial clearance, `ε`.
    pub eccentricity: f64,
    /// Sommerfeld number `S = (R/C)² μ N / P`.
    pub sommerfeld: f64,
    /// Load number `So = P ψ² / (μ ω)`, which is `1 / (2 π S)`.
    pub load_number: f64,
    /// Thinnest film over radial clearance.
    pub film_ratio: f64,
    /// Angle from the line of the load to the line of centres.
    pub attitude: Angle,
    /// Coefficient of friction of the journal times `R/C`.
    pub friction_variable: f64,
    /// Flow out of both end faces over `R C N L`: what has to be fed.
    pub side_flow_variable: f64,
    /// Flow into the film over `R C N L`, where the method gives it.
    pub flow_variable: Option<f64>,
    /// Flow out of the end faces over flow in, where the method gives it.
    pub side_flow_ratio: Option<f64>,
    /// Mean pressure over highest pressure, `P / p_max`, where the method gives it.
    pub pressure_ratio: Option<f64>,
    /// Whether surfaces could be kept apart by it at all.
    pub regime: FilmRegime,
}

/// Whether a film of this eccentricity can keep surfaces apart.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FilmRegime {
    /// It may, if it is thicker than the surfaces are rough.
    ByFinish,
    /// It is under a hundredth of the clearance, so that no finish of a workshop keeps the surfaces apart.
    BoundaryByAnyFinish,
}

/// What a method finds, from which the rest follows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Core {
    pub(super) sommerfeld: f64,
    /// In radians.
    pub(super) attitude: f64,
    /// Flow in and its part that leaves by the end faces.
    pub(super) flow: f64,
    pub(super) side_ratio: f64,
    pub(super) pressure_ratio: f64,
}

impl FilmRegime {
    /// The regime of an eccentricity.
    pub(super) fn of(eccentricity: f64) -> Self {
        if eccentricity > BOUNDARY { Self::BoundaryByAnyFinish } else { Self::ByFinish }
    }

    /// The regime in plain words.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::ByFinish => "apart if the film is thicker than the finish is rough",
            Self::BoundaryByAnyFinish => "boundary by any finish",
        }
    }
}

impl Core {
    /// The state of a bearing that is sheared all round.
    pub(super) fn all_round(self, ratio: f64, eccentricity: f64) -> JournalState {
        self.sheared(ratio, eccentricity, TAU / Gap { epsilon: eccentricity }.root(), 1.0 - eccentricity)
    }

    /// The state, with the integral of `dθ / H` over what is sheared and the thinnest film.
    pub(super) fn sheared(self, ratio: f64, eccentricity: f64, shear: f64, film_ratio: f64) -> JournalState {
        let drag = PI * self.sommerfeld * shear + 0.5 * eccentricity * math::sin(self.attitude);
        JournalState {
            ratio,
            eccentricity,
            sommerfeld: self.sommerfeld,
            load_number: 1.0 / (TAU * self.sommerfeld),
            film_ratio,
            attitude: Angle::from_radians(self.attitude),
            friction_variable: drag,
            side_flow_variable: self.flow * self.side_ratio,
            flow_variable: Some(self.flow),
            side_flow_ratio: Some(self.side_ratio),
            pressure_ratio: Some(self.pressure_ratio),
            regime: FilmRegime::of(eccentricity),
        }
    }
}
