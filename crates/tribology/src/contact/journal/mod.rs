//! The plain journal bearing: steady, laminar, one viscosity.
//!
//! Start at [`Method`] and [`journal`], which answer for an eccentricity, and at [`eccentricity_of`] for a load; [`Bearing`] says it in
//! measures of the workshop, [`equilibrium`] how warm it runs, [`Curve`] the same for a whole machine at once. `reynolds` solves the film, `fast` reads a fit of its solutions, the
//! others are closed forms. Two numbers are inverse to each other and named apart: `sommerfeld`, `S = (R/C)² μ N / P`, and
//! `load_number`, `So = P ψ² / (μ ω) = 1 / (2 π S)`.

mod state;

mod band;
mod film;
mod gap;
mod reynolds;

mod approximation;
mod fast;
mod long;
mod short;

mod bearing;
mod curve;
mod heat;
mod housing;
mod inverse;
mod method;
mod petroff;
mod starved;

pub use approximation::journal_approximation;
pub use bearing::{Bearing, Running};
pub use curve::{Curve, Warmed};
pub use fast::journal_fast;
pub use heat::{Equilibrium, Oil, STILL_AIR, Surroundings, equilibrium};
pub use housing::{Housing, housing};
pub use inverse::eccentricity_of;
pub use long::journal_long;
pub use method::{Method, journal};
pub use petroff::{Drag, cone_drag, petroff};
pub use reynolds::{Arc, Solved, journal_reynolds};
pub use short::journal_short;
pub use starved::{Starved, journal_starved};
pub use state::{FilmRegime, JournalState};

use crate::working::{Standing, Step, Symbol};
use crate::{Answer, Error};

/// Above this eccentricity the narrowest gap is under a hundredth of the clearance: less than the finish of any machine tool's bearing.
const BOUNDARY: f64 = 0.99;
/// The eccentricities for which a film is worked out at all.
const ECCENTRICITIES: [f64; 2] = [1e-6, 0.999];

/// The eccentricity, if it is one that a film can be worked out for.
fn eccentric(eccentricity: f64) -> Result<f64, Error> {
    Error::unless_within("eccentricity", eccentricity, ECCENTRICITIES[0], ECCENTRICITIES[1])
}

/// Length over diameter, if it is above zero; it may be infinite.
fn slender(ratio: f64) -> Result<f64, Error> {
    Error::unless_within("length/diameter", ratio, f64::MIN_POSITIVE, f64::INFINITY)
}

/// The state as an answer, with a warning where no finish would keep the surfaces apart.
fn answer_of(
    state: JournalState,
    formula: &'static str,
    source: &'static str,
    standing: Standing,
) -> Answer<JournalState> {
    let symbols = vec![symbol("L/D", state.ratio, ""), symbol("ε", state.eccentricity, "")];
    let result = symbol("S", state.sommerfeld, "");
    let step = Step { name: "Sommerfeld number of the film", formula, symbols, result, source, standing };
    Answer::of(state, step).vouched_within("eccentricity", state.eccentricity, 0.0, BOUNDARY)
}

/// A symbol with its value.
fn symbol(symbol: &'static str, si: f64, unit: &'static str) -> Symbol {
    Symbol { symbol, si, unit }
}
