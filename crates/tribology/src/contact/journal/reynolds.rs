//! Reynolds' equation for a whole bearing or a part of a circle, solved on finer and finer grids until the answer stands.

use std::f64::consts::{FRAC_PI_2, PI, TAU};

use super::film::{Film, Place, Steps};
use super::gap::Gap;
use super::state::{Core, JournalState};
use super::{answer_of, eccentric, slender};
use crate::quantity::Angle;
use crate::root::root;
use crate::{Answer, Error, Standing, math};

/// Steps round the bearing on the grids that are always solved; along it there are an eighth as many.
const GRIDS: [usize; 3] = [64, 128, 256];
/// Steps on the grid that is solved only when the others leave more than [`WANTED`] open.
const LAST_GRID: usize = 512;
/// How far, as a part of the number, the finest grid and its extrapolation may lie apart before a finer one is solved.
const WANTED: f64 = 2e-3;
/// And at the end.
const ALLOWED: f64 = 2e-2;
/// No film from the widest gap reaches further in Sommerfeld's variable: the longest bearing, at no eccentricity, ruptures at 4.4934.
const END: f64 = 3.0 * FRAC_PI_2;
/// The narrowest arc that is solved for, in radians.
const NARROW: f64 = PI / 9.0;

/// How much of the circle the bearing wraps.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Arc {
    /// All of it; the film begins at the widest gap.
    Whole,
    /// So much, with the load on its middle. Pressure is that of the air at both edges; a film does not begin before the widest gap.
    Part(Angle),
}

/// A film that has been solved for, with how well.
#[derive(Clone, Debug, PartialEq)]
pub struct Solved {
    /// The film.
    pub state: JournalState,
    /// How far the Sommerfeld number of the finest grid lies from the one given, which is extrapolated, as a part of it. The error
    /// left is smaller: see [`journal_reynolds`].
    pub bound: f64,
    /// What flow in, less flow out round the bearing and at the end faces, leaves over on the finest grid, as a part of the flow in.
    pub balance: f64,
    /// Steps of the finest grid round the bearing, and from its middle to the end face.
    pub grid: [usize; 2],
    /// Guesses of the extent of the film on the finest grid.
    pub guesses: u32,
    /// Angle from the widest gap, in radians, and pressure over the mean pressure on the projected bearing, round its middle on the finest
    /// grid; outside these angles there is none.
    pub middle: Vec<(f64, f64)>,
}

/// What one grid gives.
struct OnGrid {
    core: Core,
    film: Film,
}

/// What the grids together give.
struct ByGrids {
    /// The extrapolated numbers.
    core: Core,
    /// How far the Sommerfeld number of the finest grid lies from the extrapolated one, as a part of it.
    bound: f64,
    steps: Steps,
    film: Film,
}

/// The film of a journal bearing at an eccentricity, by Reynolds' equation.
///
/// `∂/∂θ(H³ ∂p/∂θ) + (D/L)² ∂/∂Z(H³ ∂p/∂Z) = dH/dθ`, `H = 1 + ε cos θ`, `p ≥ 0`
///
/// Pressure is that of the air at the end faces and where the film begins, and the film ruptures where pressure and its slope vanish
/// (Swift and Stieber): a complementarity problem, solved by an active set with a banded direct method on grids of 64, 128 and
/// 256 steps (512 where needed), each begun from the one before, then extrapolated for errors of second order. Friction takes the
/// whole circle, or the whole arc, as sheared. On 256 steps about 0.015 s in a release build; an arc, whose place under the load is sought, ten times that.
///
/// - `ratio`: length over diameter, `L/D`; infinite for a bearing without side flow.
/// - `eccentricity`: `ε`.
/// - `arc`: how much of the circle the bearing wraps.
/// - returns: the film, and how far the finest grid lies from the extrapolated value. Against grids twice as fine the extrapolated
///   numbers of a whole bearing are good to 0.01 %, the flow at the highest eccentricities to 0.05 %.
///
/// # Range
/// Eccentricities to 0.99; above them the answer carries a warning and [`FilmRegime::BoundaryByAnyFinish`](super::FilmRegime).
///
/// # Errors
/// [`Error::OutOfRange`] when the ratio is not above zero, the eccentricity outside 10⁻⁶ to 0.999, or the arc outside 20° to 360°;
/// [`Error::NotConverged`] when the grids leave more than 2 % open.
///
/// # Source
/// `reynolds-1886`, `swift-1932`; the numbers are our own solution
///
/// # Example
/// ```
/// use tribology::contact::journal::{Arc, journal_reynolds};
/// let solved = journal_reynolds(1.0, 0.6, Arc::Whole);
/// assert!(solved.is_ok_and(|solved| (solved.value.state.sommerfeld - 0.121).abs() < 0.001));
/// ```
pub fn journal_reynolds(ratio: f64, eccentricity: f64, arc: Arc) -> Result<Answer<Solved>, Error> {
    let (ratio, epsilon) = (slender(ratio)?, eccentric(eccentricity)?);
    if let Arc::Part(angle) = arc {
        Error::quantity_within("arc", angle, Angle::from_radians(NARROW), Angle::from_radians(TAU))?;
    }
    let gap = Gap { epsilon };
    let solved = by_grids(|steps, coarse| match arc {
        Arc::Whole => on_grid(Place { gap, gamma: [0.0, END], ratio }, steps, coarse.map(|coarse| &coarse.film)),
        Arc::Part(angle) => under_load(gap, ratio, angle.radians(), steps, coarse),
    })?;
    let core = solved.core;
    let state = match arc {
        Arc::Whole => core.all_round(ratio, epsilon),
        Arc::Part(angle) => {
            let [first, last] = edges(core.attitude, angle.radians());
            let shear = (gap.gamma(last) - gap.gamma(first)) / gap.root();
            let thinnest = if last >= PI { 1.0 - epsilon } else { gap.at(last) };
            core.sheared(ratio, epsilon, shear, thinnest)
        }
    };
    let formula = "∂/∂θ(H³ ∂p/∂θ) + (D/L)² ∂/∂Z(H³ ∂p/∂Z) = dH/dθ, H = 1 + ε cos θ, p ≥ 0, S = 1 / (6 π ∫∫p)";
    let answer = answer_of(state, formula, "reynolds-1886", Standing::OwnCalculation);
    let (film, steps) = (&solved.film, solved.steps);
    let balance = (film.inlet - film.outlet - film.side) / film.inlet;
    let grid = [steps.round, if ratio.is_finite() { steps.along } else { 1 }];
    // The load in the film's own unit is over the radius and the length; the mean pressure is over diameter and length.
    let mean = 0.5 * math::hypot(film.along_centres, film.across);
    let middle = film.middle.iter().map(|(theta, pressure)| (*theta, pressure / mean)).collect();
    Ok(answer.map(|state| Solved { state, bound: solved.bound, balance, grid, guesses: film.guesses, middle }))
}

/// The film that begins at an angle behind the widest gap, whole circle sheared.
pub(super) fn begun_at(ratio: f64, epsilon: f64, theta: f64) -> Result<Core, Error> {
    let gap = Gap { epsilon };
    let place = Place { gap, gamma: [gap.gamma(theta), END], ratio };
    by_grids(|steps, coarse| on_grid(place, steps, coarse.map(|coarse| &coarse.film))).map(|solved| solved.core)
}

/// Solves on finer and finer grids until the finest lies near enough to what it and the one before point to.
fn by_grids(mut solve: impl FnMut(Steps, Option<&OnGrid>) -> Result<OnGrid, Error>) -> Result<ByGrids, Error> {
    let mut before: Option<OnGrid> = None;
    let mut last = (f64::NAN, f64::NAN);
    for round in GRIDS.into_iter().chain([LAST_GRID]) {
        let steps = Steps { round, along: round / 8 };
        let here = solve(steps, before.as_ref())?;
        if let Some(before) = &before {
            let (core, open) = extrapolated(&before.core, &here.core);
            let widest = open.into_iter().fold(0.0, f64::max);
            last = (core.sommerfeld, widest);
            let enough = if round == LAST_GRID { ALLOWED } else { WANTED };
            if round >= GRIDS[2] && (open[0] <= enough && open[1] <= enough && widest <= ALLOWED) {
                return Ok(ByGrids { core, bound: open[0], steps, film: here.film });
            }
        }
        before = Some(here);
    }
    let iterations = GRIDS.len() as u32 + 1;
    Err(Error::NotConverged { name: "Sommerfeld number", last: last.0, residual: last.1, iterations })
}

/// The numbers to which two grids point whose errors fall with the square of the step, and how far the finer one is from them.
fn extrapolated(coarse: &Core, fine: &Core) -> (Core, [f64; 5]) {
    let numbers = |core: &Core| [core.sommerfeld, core.attitude, core.flow, core.side_ratio, core.pressure_ratio];
    let (coarse, fine) = (numbers(coarse), numbers(fine));
    let found: [f64; 5] = std::array::from_fn(|at| fine[at] + (fine[at] - coarse[at]) / 3.0);
    let open = std::array::from_fn(|at| if fine[at] == found[at] { 0.0 } else { (fine[at] / found[at] - 1.0).abs() });
    let [sommerfeld, attitude, flow, side_ratio, pressure_ratio] = found;
    (Core { sommerfeld, attitude, flow, side_ratio, pressure_ratio }, open)
}

fn on_grid(place: Place, steps: Steps, coarse: Option<&Film>) -> Result<OnGrid, Error> {
    let film = place.film(steps, coarse)?;
    let load = math::hypot(film.along_centres, film.across);
    if load.is_nan() || load <= 0.0 {
        return Err(Error::NotConverged { name: "load", last: load, residual: load, iterations: film.guesses });
    }
    let core = Core {
        sommerfeld: 1.0 / (6.0 * PI * load),
        attitude: math::atan2(film.across, film.along_centres),
        flow: PI * film.inlet,
        side_ratio: film.side / film.inlet,
        pressure_ratio: 0.5 * load / film.peak,
    };
    Ok(OnGrid { core, film })
}

/// The angles at which an arc begins and ends when the load on its middle lies at this attitude.
fn edges(attitude: f64, arc: f64) -> [f64; 2] {
    [PI - attitude - 0.5 * arc, PI - attitude + 0.5 * arc]
}

/// The film of an arc placed so that the load falls on its middle: the attitude at which that is so is sought.
fn under_load(gap: Gap, ratio: f64, arc: f64, steps: Steps, coarse: Option<&OnGrid>) -> Result<OnGrid, Error> {
    let at = |attitude: f64| {
        let [first, last] = edges(attitude, arc);
        let gamma = [gap.gamma(first.max(0.0)), gap.gamma(last).min(END)];
        on_grid(Place { gap, gamma, ratio }, steps, coarse.map(|coarse| &coarse.film))
    };
    let miss = |attitude: f64| at(attitude).map_or(f64::NAN, |found| found.core.attitude - attitude);
    let seek = |ends| root("attitude of the arc", ends, 1e-8, miss);
    let near = coarse.map(|coarse| coarse.core.attitude).map(|last| [(last - 0.01).max(0.0), last + 0.01]);
    let found = near.and_then(|near| seek(near).ok()).map_or_else(|| seek([0.0, FRAC_PI_2 + 0.1]), Ok)?;
    at(found.at)
}
