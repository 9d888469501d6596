//! The one check and the chores around it: `cargo xtask check` is `setup`, then `test`.
//!
//! Start with the list of parts in `test.rs`. Nothing here is part of the program that people use.

mod bench;
mod fit_journal;
mod fuzz;
mod kills;
mod licences;
mod postgres;
mod run;
mod setup;
mod test;
mod tidy;

use std::process::ExitCode;

const USAGE: &str = "\
cargo xtask check                  setup, then test: what the build server runs
cargo xtask setup                  installs what the tests need (uses the network)
cargo xtask test                   runs every part (never uses the network)
           --only PART             runs one part
           --keep-going            goes on after a part has failed
cargo xtask fuzz                   ten minutes of odd texts for the file readers
           --seconds N             as long as that
cargo xtask kills                  ten thousand kills of a program that writes a shop, in a file and in a database
           --count N               as many as that
cargo xtask fit-journal            the table of the fast journal bearing, written anew from our own solutions
cargo xtask bench                  the benchmarks, printed";

fn main() -> ExitCode {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let words: Vec<&str> = words.iter().map(String::as_str).collect();
    match dispatch(&words) {
        Ok(()) => ExitCode::SUCCESS,
        Err(says) => {
            println!("\n{says}");
            ExitCode::FAILURE
        }
    }
}

fn dispatch(words: &[&str]) -> Result<(), String> {
    match words {
        ["check"] => {
            setup::setup()?;
            test::test(&[])
        }
        ["setup"] => setup::setup(),
        ["test", options @ ..] => test::test(options),
        ["fuzz", options @ ..] => fuzz::fuzz(options),
        ["kills", options @ ..] => kills::kills(options),
        ["fit-journal"] => fit_journal::fit_journal(),
        ["bench"] => bench::bench(),
        _ => Err(format!("{USAGE}\n\nThe parts of the test, in order:\n{}", test::parts())),
    }
}
