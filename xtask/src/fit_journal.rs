//! Writes the table of the fast journal bearing anew: an example of `tribology` solves the films and prints the table, which is laid out as
//! all other code is. To be run when the solver changes; the tests hold the table against the solver.

use std::fs;

use crate::run::{Run, root};

/// Where the table lies.
const TABLE: &str = "crates/tribology/src/contact/journal/fast/table.rs";

/// Solves, prints and lays out.
pub(crate) fn fit_journal() -> Result<(), String> {
    let table = Run::cargo("run --quiet --locked --release -p tribology --example fit_journal").text()?;
    fs::write(root().join(TABLE), table).map_err(|error| format!("{TABLE} could not be written: {error}."))?;
    Run::new("rustfmt", &["--edition", "2024", TABLE]).go()
}
