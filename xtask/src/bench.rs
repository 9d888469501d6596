//! Benchmarks: each crate's own, printed one after the other. Nothing is asserted about a time.

use crate::run::Run;

/// The crates that have benchmarks.
const CRATES: &[&str] = &["shop", "store"];

/// Runs them all.
pub(crate) fn bench() -> Result<(), String> {
    CRATES.iter().try_for_each(|name| Run::cargo(&format!("bench --locked -p {name} --benches")).go())
}
