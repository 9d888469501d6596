//! Prints the table of the fast journal bearing: solutions of Reynolds' equation at the nodes of Chebyshev polynomials, as logarithms of
//! what they are beside Ocvirk's short bearing, turned into coefficients. `cargo xtask fit-journal` puts it in its place; it takes a
//! minute or two in release.

use std::f64::consts::PI;

use tribology::Error;
use tribology::contact::journal::{Arc, JournalState, journal_reynolds, journal_short};
use tribology::math::{cos, exp, ln};

/// Polynomials of `−ln(1 − ε)`, from no eccentricity to [`HIGHEST`].
const BY_ECCENTRICITY: usize = 20;
/// Polynomials of `ln(L/D)`, over [`LENGTHS`].
const BY_LENGTH: usize = 24;
const HIGHEST: f64 = 0.99;
const LENGTHS: [f64; 2] = [0.02, 10.0];
const NAMES: [&str; 5] =
    ["Sommerfeld number", "attitude", "flow in", "part of it that leaves by the ends", "P / p_max"];

fn main() -> Result<(), Error> {
    let mut values = vec![[[0.0; BY_LENGTH]; BY_ECCENTRICITY]; NAMES.len()];
    for (m, x) in nodes::<BY_ECCENTRICITY>().into_iter().enumerate() {
        for (n, y) in nodes::<BY_LENGTH>().into_iter().enumerate() {
            let eccentricity = 1.0 - exp(0.5 * (x + 1.0) * ln(1.0 - HIGHEST));
            let [shortest, longest] = LENGTHS.map(ln);
            let ratio = exp(shortest + 0.5 * (y + 1.0) * (longest - shortest));
            let solved = numbers(&journal_reynolds(ratio, eccentricity, Arc::Whole)?.value.state);
            let short = numbers(&journal_short(ratio, eccentricity)?.value);
            for (name, values) in values.iter_mut().enumerate() {
                values[m][n] = ln(solved[name] / short[name]);
            }
        }
    }
    print(&values);
    Ok(())
}

/// What is fitted, in the order of [`NAMES`].
fn numbers(state: &JournalState) -> [f64; 5] {
    let known = |number: Option<f64>| number.expect("both methods give every number");
    let (flow, side) = (known(state.flow_variable), known(state.side_flow_ratio));
    [state.sommerfeld, state.attitude.radians(), flow, side, known(state.pressure_ratio)]
}

/// Where the next polynomial of Chebyshev is zero.
fn nodes<const COUNT: usize>() -> [f64; COUNT] {
    std::array::from_fn(|at| cos(PI * (at as f64 + 0.5) / COUNT as f64))
}

/// Coefficients from values at the nodes.
fn coefficients<const COUNT: usize>(values: [f64; COUNT]) -> [f64; COUNT] {
    std::array::from_fn(|order| {
        let turn = |at: usize| cos(PI * order as f64 * (at as f64 + 0.5) / COUNT as f64);
        let sum: f64 = values.iter().enumerate().map(|(at, value)| value * turn(at)).sum();
        sum * if order == 0 { 1.0 } else { 2.0 } / COUNT as f64
    })
}

fn print(values: &[[[f64; BY_LENGTH]; BY_ECCENTRICITY]]) {
    println!(
        "//! Generated. Coefficients of the fast journal bearing, by polynomials of `−ln(1 − ε)` and then of `ln(L/D)`, from our own"
    );
    println!("//! solutions of Reynolds' equation. `cargo xtask fit-journal` writes this file anew.");
    println!();
    println!("/// Polynomials of `ln(L/D)`.");
    println!("pub(super) const BY_LENGTH: usize = {BY_LENGTH};");
    println!("/// Polynomials of `−ln(1 − ε)`.");
    println!("const BY_ECCENTRICITY: usize = {BY_ECCENTRICITY};");
    println!("/// The shortest and the longest bearing of the fit, length over diameter.");
    println!("pub(super) const LENGTHS: [f64; 2] = [{:?}, {:?}];", LENGTHS[0], LENGTHS[1]);
    println!("/// Logarithms of what is, beside Ocvirk's short bearing: {}.", NAMES.join(", "));
    println!("pub(super) static TABLE: [[[f64; BY_LENGTH]; BY_ECCENTRICITY]; {}] = [", NAMES.len());
    for (name, values) in NAMES.iter().zip(values) {
        println!("// {name}");
        println!("[");
        let by_length = values.map(coefficients);
        let columns: [[f64; BY_ECCENTRICITY]; BY_LENGTH] =
            std::array::from_fn(|n| coefficients(by_length.map(|row| row[n])));
        for m in 0..BY_ECCENTRICITY {
            // Seven decimals of a logarithm are a tenth of a millionth of the number.
            let row: Vec<String> = columns.iter().map(|column| rounded(column[m])).collect();
            println!("[{}],", row.join(", "));
        }
        println!("],");
    }
    println!("];");
}

/// Seven decimals, as short as may be.
fn rounded(number: f64) -> String {
    let number = (number * 1e7).round() / 1e7;
    format!("{:?}", if number == 0.0 { 0.0 } else { number })
}
