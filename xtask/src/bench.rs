//! Benchmarks: each crate's own, printed one after the other, and our sums beside other libraries'. Nothing is asserted about a time.

use crate::postgres::{self, Server};
use crate::run::Run;

/// The crates that have benchmarks.
const CRATES: &[&str] = &["shop", "advice", "store"];
/// The cross-checks that also compare speeds.
const SCRIPTS: &[&str] = &["oils", "contacts", "networks", "shelf_plan"];

/// Runs them all, those of the store on a file and on a server.
pub(crate) fn bench() -> Result<(), String> {
    let server = Server::start()?;
    let run =
        |name| Run::cargo(&format!("bench --locked -p {name} --benches")).env(postgres::ADDRESS, &server.address());
    CRATES.iter().try_for_each(|name| run(name).go())?;
    let script = |name| Run::new(".venv/bin/python", &[&format!("reference/crosscheck/{name}.py"), "--bench"]);
    SCRIPTS.iter().try_for_each(|name| script(name).go())
}
