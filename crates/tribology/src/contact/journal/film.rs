//! The pressure in a film on one grid: Reynolds' equation with the rupture of Swift and Stieber.
//!
//! Finite volumes on even steps of Sommerfeld's variable round the bearing, crowded towards the end face along it; round the bearing the
//! volumes are exact for a film without side flow. Pressure may nowhere fall below that of the air: an active set says which cells
//! hold a whole film, and each guess of it is one banded system.

use super::band::Band;
use super::gap::Gap;
use crate::{Error, math};

/// Guesses of the active set before giving up; a cold start needs about ten.
const GUESSES: u32 = 60;

/// The film to be solved for: where it may be, and how wide the bearing is.
#[derive(Clone, Copy, Debug)]
pub(super) struct Place {
    pub(super) gap: Gap,
    /// Where the film begins and where it must have ended, in Sommerfeld's variable.
    pub(super) gamma: [f64; 2],
    /// Length over diameter; infinite without side flow.
    pub(super) ratio: f64,
}

/// How many steps a grid has round the bearing and from its middle to the end face.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Steps {
    pub(super) round: usize,
    pub(super) along: usize,
}

/// A film that has been solved for.
#[derive(Clone, Debug)]
pub(super) struct Film {
    steps: Steps,
    /// Which cells hold a whole film, round by round.
    whole: Vec<bool>,
    /// Part of the load along the line of centres, in units of `6 μ ω (R/C)² R L`.
    pub(super) along_centres: f64,
    /// Part of the load across it.
    pub(super) across: f64,
    /// Highest pressure, in units of `6 μ ω (R/C)²`.
    pub(super) peak: f64,
    /// Flow into the film, in units of `π R C N L`.
    pub(super) inlet: f64,
    /// Flow carried out where the film ruptures or ends.
    pub(super) outlet: f64,
    /// Flow out of both end faces.
    pub(super) side: f64,
    /// Angle from the widest gap and pressure, in units of `6 μ ω (R/C)²`, along the middle of the bearing.
    pub(super) middle: Vec<(f64, f64)>,
    /// Guesses of the active set.
    pub(super) guesses: u32,
}

/// The grid and what the equation needs of it.
struct Cells {
    steps: Steps,
    columns: usize,
    /// Conductance round the bearing across each face.
    conductance: Vec<f64>,
    /// Flow that the moving surface drags across each face, less one.
    drag: Vec<f64>,
    /// Conductance along the bearing of each ring of cells.
    along: Vec<f64>,
    /// One over the distance between neighbouring columns.
    near: Vec<f64>,
    /// The width of each column.
    width: Vec<f64>,
}

impl Place {
    /// The film on a grid, begun from the film on one half as fine, where there is such.
    pub(super) fn film(&self, steps: Steps, from: Option<&Film>) -> Result<Film, Error> {
        let cells = self.cells(steps);
        let columns = cells.columns;
        let mut whole = match from {
            Some(coarse) => refined(coarse, steps, columns),
            None => vec![true; (steps.round - 1) * columns],
        };
        for guesses in 1..=GUESSES {
            let Some(pressure) = cells.pressure(&whole) else { break };
            let next = cells.corrected(&whole, &pressure);
            if next == whole {
                return Ok(self.measured(&cells, whole, &pressure, guesses));
            }
            whole = next;
        }
        let count = whole.iter().filter(|whole| **whole).count() as f64;
        Err(Error::NotConverged { name: "extent of the film", last: count, residual: f64::NAN, iterations: GUESSES })
    }

    fn step(&self, steps: Steps) -> f64 {
        (self.gamma[1] - self.gamma[0]) / steps.round as f64
    }

    fn gamma_at(&self, steps: Steps, node: usize) -> f64 {
        self.gamma[0] + self.step(steps) * node as f64
    }

    fn cells(&self, steps: Steps) -> Cells {
        let (gap, root, step) = (self.gap, self.gap.root(), self.step(steps));
        let scale = math::pow(root, 5.0);
        let (mut conductance, mut drag) = (Vec::new(), Vec::new());
        for face in 0..steps.round {
            let ends = [face, face + 1].map(|node| self.gamma_at(steps, node));
            let resistance = gap.resistance(ends[1]) - gap.resistance(ends[0]);
            conductance.push(scale / resistance);
            drag.push((gap.wedge(ends[1]) - gap.wedge(ends[0])) / resistance);
        }
        let slender = if self.ratio.is_finite() { 1.0 / (self.ratio * self.ratio) } else { 0.0 };
        let along = (1..steps.round).map(|node| {
            let h = gap.at_gamma(self.gamma_at(steps, node));
            slender * h * h * h * h / root * step
        });
        let along = along.collect();
        let z = self.columns(steps);
        let near: Vec<f64> = z.windows(2).map(|pair| 1.0 / (pair[1] - pair[0])).collect();
        let last = z.len() - 1;
        let middle = |at: usize| 0.5 * (z[at] + z[at + 1]);
        let width = (0..=last).map(|at| match at {
            0 if last == 0 => 1.0,
            0 => middle(0),
            _ if at == last => 1.0 - middle(last - 1),
            _ => middle(at) - middle(at - 1),
        });
        let width: Vec<f64> = width.collect();
        Cells { steps, columns: last.max(1), conductance, drag, along, near, width }
    }

    /// Distances from the middle in half lengths: even, or crowded towards the end face when pressure falls only near it.
    fn columns(&self, steps: Steps) -> Vec<f64> {
        if self.ratio.is_infinite() {
            return vec![0.0];
        }
        let e = self.gap.epsilon;
        let reach = math::sqrt((1.0 - e) / (1.0 + e)) / self.ratio;
        let bend = bend(3.0 * reach);
        let count = steps.along as f64;
        let from_end = |column: usize| {
            let s = 1.0 - column as f64 / count;
            if bend < 1e-3 { s } else { math::sinh(bend * s) / math::sinh(bend) }
        };
        (0..=steps.along).map(|column| 1.0 - from_end(column)).collect()
    }

    fn measured(&self, cells: &Cells, whole: Vec<bool>, pressure: &[f64], guesses: u32) -> Film {
        let (columns, step) = (cells.columns, self.step(cells.steps));
        let (mut along_centres, mut across, mut highest) = (0.0, 0.0, (0, 0.0));
        let mut middle = Vec::with_capacity(cells.steps.round);
        for (ring, row) in pressure.chunks_exact(columns).enumerate() {
            let gamma = self.gamma_at(cells.steps, ring + 1);
            let (h, theta) = (self.gap.at_gamma(gamma), self.gap.theta(gamma));
            let sum: f64 = row.iter().zip(&cells.width).map(|(pressure, width)| pressure * width).sum();
            let weight = step * h / self.gap.root();
            along_centres -= sum * math::cos(theta) * weight;
            across += sum * math::sin(theta) * weight;
            middle.push((theta, row[0]));
            if row[0] > highest.1 {
                highest = (ring, row[0]);
            }
        }
        let at = |ring: Option<usize>| ring.and_then(|ring| pressure.get(ring * columns)).copied().unwrap_or(0.0);
        let peak = top([at(highest.0.checked_sub(1)), highest.1, at(highest.0.checked_add(1))]);
        let [inlet, outlet, side] = cells.flows(&whole, pressure);
        Film { steps: cells.steps, whole, along_centres, across, peak, inlet, outlet, side, middle, guesses }
    }
}

impl Cells {
    /// The pressures when these cells hold a whole film and the others only air.
    fn pressure(&self, whole: &[bool]) -> Option<Vec<f64>> {
        let columns = self.columns;
        let used = whole.iter().rposition(|whole| *whole).map_or(0, |last| last + 1);
        let mut band = Band::new(used, columns);
        let mut pressure = vec![0.0; whole.len()];
        for cell in 0..used {
            if !whole[cell] {
                band.set(cell, 0, 1.0);
                continue;
            }
            let (ring, column) = (cell / columns, cell % columns);
            let width = self.width[column];
            let [inner, outer] = self.side_conductance(ring, column);
            let (before, after) = (self.conductance[ring] * width, self.conductance[ring + 1] * width);
            band.set(cell, 0, before + after + inner + outer);
            if column > 0 && whole[cell - 1] {
                band.set(cell, 1, -inner);
            }
            if ring > 0 && whole[cell - columns] {
                // With one column the neighbour round the bearing is the neighbour in the band.
                band.set(cell, columns, -before);
            }
            pressure[cell] = (self.drag[ring] - self.drag[ring + 1]) * width;
        }
        band.solve(&mut pressure[..used])?;
        Some(pressure)
    }

    /// Conductances of a cell to the columns before and after it.
    fn side_conductance(&self, ring: usize, column: usize) -> [f64; 2] {
        let towards =
            |at: Option<usize>| at.and_then(|at| self.near.get(at)).map_or(0.0, |near| near * self.along[ring]);
        [towards(column.checked_sub(1)), towards(Some(column))]
    }

    /// The cells that should hold a whole film: those with pressure, and those of air into which more flows than out.
    fn corrected(&self, whole: &[bool], pressure: &[f64]) -> Vec<bool> {
        let columns = self.columns;
        let highest = pressure.iter().fold(0.0, |highest: f64, here| highest.max(*here));
        let keeps = |cell: usize| {
            if whole[cell] {
                return pressure[cell] > -1e-14 * highest;
            }
            let (ring, column) = (cell / columns, cell % columns);
            let width = self.width[column];
            let at = |cell: Option<usize>| cell.and_then(|cell| pressure.get(cell)).copied().unwrap_or(0.0);
            let [inner, outer] = self.side_conductance(ring, column);
            let gathers = (self.drag[ring] - self.drag[ring + 1]) * width
                + self.conductance[ring] * width * at(cell.checked_sub(columns))
                + self.conductance[ring + 1] * width * at(Some(cell + columns))
                + if column > 0 { inner * pressure[cell - 1] } else { 0.0 }
                + if column + 1 < columns { outer * pressure[cell + 1] } else { 0.0 };
            gathers > 0.0
        };
        (0..whole.len()).map(keeps).collect()
    }

    /// Flow in, flow out round the bearing, and flow out of the end faces.
    fn flows(&self, whole: &[bool], pressure: &[f64]) -> [f64; 3] {
        let columns = self.columns;
        let across = |face: usize, column: usize| {
            let at = |ring: Option<usize>| {
                ring.and_then(|ring| pressure.get(ring * columns + column)).copied().unwrap_or(0.0)
            };
            1.0 + self.drag[face] + self.conductance[face] * (at(face.checked_sub(1)) - at(Some(face)))
        };
        let (mut inlet, mut outlet, mut side) = (0.0, 0.0, 0.0);
        for column in 0..columns {
            let rings = self.steps.round - 1;
            let is_whole = |ring: usize| whole[ring * columns + column];
            let Some(last) = (0..rings).rev().find(|ring| is_whole(*ring)) else { continue };
            inlet += self.width[column] * across(0, column);
            outlet += self.width[column] * across(last + 1, column);
        }
        if let (Some(near), true) = (self.near.last(), columns < self.width.len()) {
            // The half cell on the end face holds no pressure; what the gap sheds there leaves with the rest.
            let half = self.width[columns];
            let (mut first, mut last) = (None, 0);
            for ring in 0..self.steps.round - 1 {
                let beside = pressure[ring * columns + columns - 1];
                let leaves = self.along[ring] * near * beside + (self.drag[ring] - self.drag[ring + 1]) * half;
                if beside > 0.0 && leaves > 0.0 {
                    side += leaves;
                    first = first.or(Some(ring));
                    last = ring;
                }
            }
            if let Some(first) = first {
                inlet += half * (1.0 + self.drag[first]);
                outlet += half * (1.0 + self.drag[last + 1]);
            }
        }
        [inlet, outlet, side]
    }
}

/// The cells of a finer grid that hold a whole film, by the cells of a coarser one.
fn refined(coarse: &Film, steps: Steps, columns: usize) -> Vec<bool> {
    let rings = coarse.steps.round - 1;
    let coarse_columns = coarse.whole.len() / rings;
    let at = |ring: usize, column: usize| {
        // Node n of the finer grid lies on or behind node n/2 of the coarser one; node 0 is the inlet and holds no cell.
        let node = ((ring + 1) * coarse.steps.round / steps.round).clamp(1, rings);
        let beside = (column * coarse_columns / columns).min(coarse_columns - 1);
        coarse.whole[(node - 1) * coarse_columns + beside]
    };
    (0..(steps.round - 1) * columns).map(|cell| at(cell / columns, cell % columns)).collect()
}

/// How strongly columns crowd for steps at the end face to be this part of even ones: `b / sinh b`, solved by Newton's method.
fn bend(part: f64) -> f64 {
    if part >= 1.0 {
        return 0.0;
    }
    let mut b = 2.0 + 2.0 * math::ln(1.0 / part);
    for _ in 0..60 {
        let miss = math::ln(math::sinh(b) / b) + math::ln(part);
        b = (b - miss / (1.0 / math::tanh(b) - 1.0 / b)).max(1e-6);
    }
    b
}

/// The top of the parabola through three even steps of which the middle one is highest.
fn top([before, middle, after]: [f64; 3]) -> f64 {
    let (slope, bow) = (0.5 * (after - before), 2.0 * middle - before - after);
    if bow > 0.0 { middle + 0.5 * slope * slope / bow } else { middle }
}

#[cfg(test)]
mod tests {
    use super::*;

    const STEPS: Steps = Steps { round: 128, along: 16 };

    fn place(epsilon: f64, ratio: f64) -> Place {
        Place { gap: Gap { epsilon }, gamma: [0.0, 4.7], ratio }
    }

    /// What the moving surface spends on pressure, the load across the line of centres times the eccentricity, goes into driving
    /// oil through the gap.
    #[test]
    fn the_power_spent_on_pressure_drives_the_flow() {
        for (epsilon, ratio) in [(0.2, 1.0), (0.6, 0.5), (0.9, 1.0), (0.6, 4.0), (0.7, f64::INFINITY)] {
            let place = place(epsilon, ratio);
            let cells = place.cells(STEPS);
            let film = place.film(STEPS, None).expect("a film");
            let pressure = cells.pressure(&film.whole).expect("a film");
            let columns = cells.columns;
            let at = |ring: Option<usize>, column: usize| {
                let found = ring.and_then(|ring| pressure.get(ring * columns + column));
                found.copied().unwrap_or(0.0)
            };
            let mut spent = 0.0;
            for column in 0..columns {
                for face in 0..STEPS.round {
                    let fall = at(face.checked_sub(1), column) - at(Some(face), column);
                    spent += cells.conductance[face] * cells.width[column] * fall * fall;
                }
                for ring in 0..STEPS.round - 1 {
                    let beside = if column + 1 < columns { at(Some(ring), column + 1) } else { 0.0 };
                    let fall = at(Some(ring), column) - beside;
                    spent += cells.side_conductance(ring, column)[1] * fall * fall;
                }
            }
            let drawn = epsilon * film.across;
            assert!((spent / drawn - 1.0).abs() < 3e-3, "{epsilon} {ratio}: {spent} of {drawn}");
        }
    }

    /// No cell is below the pressure of the air, and none of air could hold more than it gets: the two sides of the problem.
    #[test]
    fn the_film_is_whole_where_it_presses_and_nowhere_else() {
        let (place, mut partly) = (place(0.6, 1.0), 0);
        let cells = place.cells(STEPS);
        let film = place.film(STEPS, None).expect("a film");
        let pressure = cells.pressure(&film.whole).expect("a film");
        for (whole, pressure) in film.whole.iter().zip(&pressure) {
            assert!(if *whole { *pressure > -1e-12 } else { *pressure == 0.0 }, "{whole} {pressure}");
            partly += u32::from(*whole);
        }
        assert!(partly > 500 && (partly as usize) < film.whole.len());
        assert_eq!(cells.corrected(&film.whole, &pressure), film.whole);
    }

    #[test]
    fn a_warm_start_ends_at_the_same_film() {
        let place = place(0.8, 0.5);
        let coarse = place.film(Steps { round: 64, along: 8 }, None).expect("a film");
        let (cold, warm) = (place.film(STEPS, None), place.film(STEPS, Some(&coarse)));
        let (cold, warm) = (cold.expect("a film"), warm.expect("a film"));
        assert!(warm.guesses < cold.guesses, "{} {}", warm.guesses, cold.guesses);
        assert_eq!((warm.across, warm.whole), (cold.across, cold.whole));
    }

    #[test]
    fn the_bend_of_the_columns_is_what_was_asked() {
        for part in [0.9, 0.3, 0.05, 1e-3] {
            let b = bend(part);
            assert!((b / math::sinh(b) / part - 1.0).abs() < 1e-9, "{part}: {b}");
        }
        assert_eq!(bend(2.0), 0.0);
    }

    #[test]
    fn the_top_of_a_parabola_is_found() {
        // 5 - (x - 0.2)² at -1, 0 and 1.
        assert!((top([3.56, 4.96, 4.36]) - 5.0).abs() < 1e-12);
    }
}
