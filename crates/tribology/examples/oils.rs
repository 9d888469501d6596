//! Answers questions about oils a line each, so that another program can hold many answers against its own: the cross-check of the
//! project asks two thousand. A line is a question and numbers in mm²/s, °C and seconds; the answer is a number, or nothing where
//! there is none.
//!
//! `viscosity t1 v1 t2 v2 t`, `index v40 v100`, `v100 v40 index`, `sus v tF`, `of_sus s tF`, `r1 v`, `engler v`, `dynamic v rho`,
//! `million n` (the seconds that n viscosities take)

use std::io::{self, BufRead as _, Write as _};
use std::time::Instant;

use tribology::oil::{
    ViscosityLine, dynamic_viscosity, engler_degrees, redwood_1_seconds, saybolt_seconds, v100_of_index,
    viscosity_index, viscosity_of_saybolt,
};
use tribology::quantity::{Density, KinematicViscosity, Temperature};

fn main() -> io::Result<()> {
    let mut out = io::BufWriter::new(io::stdout().lock());
    for line in io::stdin().lock().lines() {
        match answer(&line?) {
            Some(number) => writeln!(out, "{number:e}")?,
            None => writeln!(out)?,
        }
    }
    out.flush()
}

fn answer(line: &str) -> Option<f64> {
    let mut words = line.split_whitespace();
    let question = words.next()?;
    let numbers: Vec<f64> = words.map(|word| word.parse().ok()).collect::<Option<_>>()?;
    let mm2_s = KinematicViscosity::from_mm2_s;
    let (celsius, fahrenheit) = (Temperature::from_celsius, Temperature::from_fahrenheit);
    match (question, numbers.as_slice()) {
        ("viscosity", [t1, v1, t2, v2, t]) => {
            let line = ViscosityLine::through((celsius(*t1), mm2_s(*v1)), (celsius(*t2), mm2_s(*v2))).ok()?.value;
            line.viscosity(celsius(*t)).ok().map(|found| found.value.mm2_s())
        }
        ("index", [v40, v100]) => viscosity_index(mm2_s(*v40), mm2_s(*v100)).ok().map(|found| found.value),
        ("v100", [v40, index]) => v100_of_index(mm2_s(*v40), *index).ok().map(|found| found.value.mm2_s()),
        ("sus", [viscosity, at]) => saybolt_seconds(mm2_s(*viscosity), fahrenheit(*at)).ok().map(|found| found.value),
        ("of_sus", [seconds, at]) => {
            viscosity_of_saybolt(*seconds, fahrenheit(*at)).ok().map(|found| found.value.mm2_s())
        }
        ("r1", [viscosity]) => redwood_1_seconds(mm2_s(*viscosity)).ok().map(|found| found.value),
        ("engler", [viscosity]) => engler_degrees(mm2_s(*viscosity)).ok().map(|found| found.value),
        ("dynamic", [viscosity, rho]) => {
            let found = dynamic_viscosity(mm2_s(*viscosity), Density::from_kg_m3(*rho));
            found.ok().map(|found| found.value.mpa_s())
        }
        ("million", [count]) => {
            let line = ViscosityLine::through((celsius(40.0), mm2_s(68.0)), (celsius(100.0), mm2_s(8.53))).ok()?.value;
            let began = Instant::now();
            let count = *count as u32;
            let sum: f64 =
                (0..count).map(|one| line.at(celsius(100.0 * f64::from(one) / f64::from(count))).mm2_s()).sum();
            std::hint::black_box(sum);
            Some(began.elapsed().as_secs_f64())
        }
        _ => None,
    }
}
