//! The fuzz target of the file readers: twenty seconds in the check, ten minutes on demand. It finds texts by what they make the
//! readers do; one that panics, hangs for ten seconds or cannot be taken back ends the run and is kept under `fuzz/artifacts`.

use std::fs;

use crate::run::{Run, root};

/// The version of the runner, which setup installs where it is missing.
pub(crate) const RUNNER: &str = "0.13.2";

/// How long a run takes in the check.
const IN_THE_CHECK: u32 = 20;

/// How long a run takes on demand.
const ON_DEMAND: u32 = 600;

/// Ten minutes, or as many seconds as are asked for.
pub(crate) fn fuzz(options: &[&str]) -> Result<(), String> {
    match options {
        [] => run(ON_DEMAND),
        ["--seconds", seconds] => {
            run(seconds.parse().map_err(|_| format!("'{seconds}' is no number of seconds, such as 60."))?)
        }
        _ => Err("fuzz takes --seconds N and nothing else.".to_owned()),
    }
}

/// The part of the check.
pub(crate) fn briefly() -> Result<(), String> {
    run(IN_THE_CHECK)
}

fn run(seconds: u32) -> Result<(), String> {
    let found = "fuzz/corpus/reader";
    fs::create_dir_all(root().join(found)).map_err(|error| format!("{found} could not be made: {error}."))?;
    let words = format!(
        "fuzz run -s none reader {found} fuzz/seeds -- -max_total_time={seconds} -timeout=10 -max_len=6000 -print_final_stats=1"
    );
    // The coverage flags are the compiler's own but not yet declared stable; one toolchain has to do for everything here.
    Run::cargo(&words).env("RUSTC_BOOTSTRAP", "1").go()
}
