//! Answers questions about contacts a line each, so that another program can hold many answers against its own: the cross-check of the
//! project asks some hundreds. A line is a question and numbers; the answer is a line of numbers, or nothing where there is none.
//!
//! `reynolds L/D ε` and `fast L/D ε` (Sommerfeld number, attitude in degrees, side flow over R C N L), `adequate rpm mm` (mm²/s),
//! `life class κ s`, `line U μ α E R w` and `point U μ α E Rx Ry W` in SI units (thinnest film, film in the middle),
//! `time-reynolds L/D ε n` and `time-fast L/D ε n` (the seconds that one of n takes)

use std::hint::black_box;
use std::io::{self, BufRead as _, Write as _};
use std::time::Instant;

use tribology::contact::gear::{Film, LineContact, PointContact, line_film, point_film};
use tribology::contact::journal::{Arc, JournalState, journal_fast, journal_reynolds};
use tribology::contact::rolling::{Class, life_modification, reference_viscosity};
use tribology::quantity::{DynamicViscosity, Force, Length, LineLoad, Pressure, PressureViscosity, Rotation, Velocity};

fn main() -> io::Result<()> {
    let mut out = io::BufWriter::new(io::stdout().lock());
    for line in io::stdin().lock().lines() {
        let words: Vec<String> =
            answer(&line?).unwrap_or_default().iter().map(|number| format!("{number:e}")).collect();
        writeln!(out, "{}", words.join(" "))?;
    }
    out.flush()
}

fn answer(line: &str) -> Option<Vec<f64>> {
    let mut words = line.split_whitespace();
    let question = words.next()?;
    if question == "life" {
        let asked = words.next()?;
        let (class, _) = Class::ALL.into_iter().find(|(_, name)| *name == asked)?;
        let [kappa, load] = numbers(words)?.try_into().ok()?;
        return Some(vec![life_modification(class, kappa, load).ok()?.value?]);
    }
    match (question, numbers(words)?.as_slice()) {
        ("reynolds", [ratio, eccentricity]) => bearing(&reynolds(*ratio, *eccentricity)?),
        ("fast", [ratio, eccentricity]) => bearing(&journal_fast(*ratio, *eccentricity).ok()?.value),
        ("adequate", [rpm, mm]) => {
            let found = reference_viscosity(Rotation::from_rpm(*rpm), Length::from_mm(*mm)).ok()?;
            Some(vec![found.value.mm2_s()])
        }
        ("line", [speed, viscosity, pressure_viscosity, modulus, radius, load]) => {
            let contact = LineContact {
                speed: Velocity::from_m_s(*speed),
                viscosity: DynamicViscosity::from_pa_s(*viscosity),
                pressure_viscosity: PressureViscosity::from_per_pa(*pressure_viscosity),
                modulus: Pressure::from_pa(*modulus),
                radius: Length::from_m(*radius),
                load: LineLoad::from_n_per_m(*load),
            };
            film(line_film(&contact).ok()?.value)
        }
        ("point", [speed, viscosity, pressure_viscosity, modulus, radius_x, radius_y, load]) => {
            let contact = PointContact {
                speed: Velocity::from_m_s(*speed),
                viscosity: DynamicViscosity::from_pa_s(*viscosity),
                pressure_viscosity: PressureViscosity::from_per_pa(*pressure_viscosity),
                modulus: Pressure::from_pa(*modulus),
                radius_x: Length::from_m(*radius_x),
                radius_y: Length::from_m(*radius_y),
                load: Force::from_n(*load),
            };
            film(point_film(&contact).ok()?.value)
        }
        ("time-reynolds", [ratio, eccentricity, count]) => {
            seconds(*count, || reynolds(black_box(*ratio), *eccentricity).map(|state| state.sommerfeld))
        }
        ("time-fast", [ratio, eccentricity, count]) => {
            seconds(*count, || journal_fast(black_box(*ratio), *eccentricity).ok().map(|found| found.value.sommerfeld))
        }
        _ => None,
    }
}

fn numbers<'w>(words: impl Iterator<Item = &'w str>) -> Option<Vec<f64>> {
    words.map(|word| word.parse().ok()).collect()
}

fn reynolds(ratio: f64, eccentricity: f64) -> Option<JournalState> {
    journal_reynolds(ratio, eccentricity, Arc::Whole).ok().map(|solved| solved.value.state)
}

fn bearing(state: &JournalState) -> Option<Vec<f64>> {
    Some(vec![state.sommerfeld, state.attitude.radians().to_degrees(), state.side_flow_variable])
}

fn film(film: Film) -> Option<Vec<f64>> {
    Some(vec![film.minimum.m(), film.central.m()])
}

/// The mean of so many.
fn seconds(count: f64, once: impl Fn() -> Option<f64>) -> Option<Vec<f64>> {
    let began = Instant::now();
    for _ in 0..count as u32 {
        black_box(once()?);
    }
    Some(vec![began.elapsed().as_secs_f64() / count])
}
