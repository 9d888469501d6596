//! What the commands print: lines, tables, JSON. All of it goes through one locked standard output, and a reader that stops
//! reading is no fault.

mod calculated;
mod faults;
mod film;
mod plan;
mod round;
mod round_rows;

pub(crate) use calculated::{calculated, calculated_json};
pub(crate) use faults::{Checked, check};
pub(crate) use film::{film, film_json, too_tight, too_tight_json};
pub(crate) use plan::{Planned, plan, plan_json};
pub(crate) use round::{Answered, How, answers};

use std::io::{self, Write as _};

use crate::failure::Failure;

/// One line.
pub(crate) fn line(text: &str) -> Result<(), Failure> {
    let mut out = io::stdout().lock();
    writeln!(out, "{text}")?;
    out.flush()?;
    Ok(())
}

/// A text as it is.
pub(crate) fn text(text: &str) -> Result<(), Failure> {
    let mut out = io::stdout().lock();
    out.write_all(text.as_bytes())?;
    out.flush()?;
    Ok(())
}

/// One JSON object, its keys in the order in which they were made.
pub(crate) fn json(value: &impl serde::Serialize) -> Result<(), Failure> {
    let text = serde_json::to_string_pretty(value).expect("our own values have text keys only");
    line(&text)
}

/// Rows with their columns in line; the last column runs on.
pub(crate) fn table<const N: usize>(rows: &[[String; N]]) -> Result<(), Failure> {
    let width = |column: usize| rows.iter().map(|row| row[column].chars().count()).max().unwrap_or(0);
    let widths: Vec<usize> = (0..N).map(width).collect();
    for row in rows {
        let mut text = String::new();
        for (column, (cell, width)) in row.iter().zip(&widths).enumerate() {
            text.push_str(cell);
            if column + 1 < N {
                text.push_str(&" ".repeat(width - cell.chars().count() + 2));
            }
        }
        line(text.trim_end())?;
    }
    Ok(())
}
