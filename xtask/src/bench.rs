//! Benchmarks: each crate's own, printed one after the other, and our sums beside another library's. Nothing is asserted about a time.

use crate::run::Run;

/// The crates that have benchmarks.
const CRATES: &[&str] = &["shop", "store"];

/// Runs them all.
pub(crate) fn bench() -> Result<(), String> {
    CRATES.iter().try_for_each(|name| Run::cargo(&format!("bench --locked -p {name} --benches")).go())?;
    Run::new(".venv/bin/python", &["reference/crosscheck/oils.py", "--bench"]).go()
}
