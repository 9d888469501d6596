//! The parts of `cargo xtask test`, in order; each is timed, and the first that fails ends the run.
//!
//! No part uses the network: `setup` has brought everything.

use std::fs;
use std::time::Instant;

use crate::postgres::{self, Server};
use crate::run::{Run, root};
use crate::{fuzz, licences, tidy};

struct Part {
    name: &'static str,
    what: &'static str,
    run: fn() -> Result<(), String>,
}

/// Quick parts first, so that most faults show within seconds.
const PARTS: &[Part] = &[
    Part { name: "format", what: "Rust files are laid out by rustfmt", run: format },
    Part { name: "tidy", what: "rules of the house style", run: tidy::tidy },
    Part { name: "licences", what: "every package may be used", run: licences::licences },
    Part { name: "lints", what: "clippy, warnings as errors", run: lints },
    Part { name: "tests", what: "tests and examples in Rust", run: tests },
    Part { name: "docs", what: "rustdoc, warnings as errors", run: docs },
    Part { name: "cross-checks", what: "our numbers against other libraries", run: cross_checks },
    Part { name: "fuzz", what: "odd texts for the file readers", run: fuzz::briefly },
    Part { name: "browser", what: "the pages in a real browser", run: browser },
];

/// The names of the parts with what each does, a line each.
pub(crate) fn parts() -> String {
    let lines: Vec<String> = PARTS.iter().map(|part| format!("  {:<14}{}", part.name, part.what)).collect();
    lines.join("\n")
}

/// Runs the parts that the options ask for and prints how long each took.
pub(crate) fn test(options: &[&str]) -> Result<(), String> {
    let choice = Choice::read(options)?;
    let begun = Instant::now();
    let mut table = vec![];
    let mut failed = vec![];
    for part in PARTS.iter().filter(|part| choice.only.is_none_or(|name| name == part.name)) {
        println!("\n== {}: {}", part.name, part.what);
        let started = Instant::now();
        let result = (part.run)();
        let mark = if result.is_ok() { "" } else { "  failed" };
        table.push(format!("{:<14}{:>8.1}{mark}", part.name, started.elapsed().as_secs_f64()));
        if let Err(says) = result {
            println!("{says}");
            failed.push(part.name);
            if !choice.keep_going {
                break;
            }
        }
    }
    println!("\n{:<14}{:>8}\n{}", "part", "seconds", table.join("\n"));
    println!("{:<14}{:>8.1}", "total", begun.elapsed().as_secs_f64());
    if failed.is_empty() { Ok(()) } else { Err(format!("Failed: {}.", failed.join(", "))) }
}

/// Which parts to run, and whether a failure ends the run.
#[derive(Debug, Default, PartialEq)]
struct Choice<'a> {
    only: Option<&'a str>,
    keep_going: bool,
}

impl<'a> Choice<'a> {
    fn read(options: &[&'a str]) -> Result<Choice<'a>, String> {
        match options {
            [] => Ok(Choice::default()),
            ["--keep-going", rest @ ..] => Ok(Choice { keep_going: true, ..Choice::read(rest)? }),
            ["--only", name, rest @ ..] if PARTS.iter().any(|part| part.name == *name) => {
                Ok(Choice { only: Some(name), ..Choice::read(rest)? })
            }
            ["--only", ..] => Err(format!("--only wants one of these parts:\n{}", parts())),
            [word, ..] => Err(format!("'{word}' is no option of test; it takes --only PART and --keep-going.")),
        }
    }
}

fn format() -> Result<(), String> {
    Run::cargo("fmt --all --check").go()
}

fn lints() -> Result<(), String> {
    Run::cargo("clippy --workspace --all-targets --locked -- -D warnings").go()
}

fn tests() -> Result<(), String> {
    let server = Server::start()?;
    if Run::cargo("nextest --version").text().is_ok() {
        // A person who types `cargo nextest run` has no server, so what wants one is left out there by default.
        let words = "nextest run --workspace --locked --ignore-default-filter";
        Run::cargo(words).env(postgres::ADDRESS, &server.address()).go()?;
    } else {
        println!("cargo-nextest is not here; `cargo test` runs the same tests.");
        Run::cargo("test --workspace --all-targets --locked").env(postgres::ADDRESS, &server.address()).go()?;
    }
    Run::cargo("test --doc --workspace --locked").go()
}

fn docs() -> Result<(), String> {
    Run::cargo("doc --workspace --no-deps --locked").env("RUSTDOCFLAGS", "-D warnings").go()
}

fn cross_checks() -> Result<(), String> {
    for script in files_ending("reference/crosscheck", ".py")? {
        Run::new(".venv/bin/python", &[script]).go()?;
    }
    Ok(())
}

fn browser() -> Result<(), String> {
    let program = program()?;
    let mut arguments = vec!["--test".to_owned(), "--test-reporter=spec".to_owned()];
    // Only a guard against a run that hangs for ever: no test asserts a time.
    arguments.push("--test-timeout=600000".to_owned());
    arguments.extend(files_ending("e2e", ".test.js")?);
    Run::new("node", &arguments).env("OILWRIGHT_BIN", &program).go()
}

/// Builds the program that people use and gives its path.
///
/// All targets are asked for because the tests have built those already; the program alone would want every crate below it built again,
/// with features a little different.
fn program() -> Result<String, String> {
    Run::cargo("build --workspace --all-targets --locked").go()?;
    let metadata = Run::cargo("metadata --format-version 1 --no-deps --locked").text()?;
    let metadata: serde_json::Value = serde_json::from_str(&metadata).map_err(|error| error.to_string())?;
    let target = metadata["target_directory"].as_str().ok_or("cargo metadata names no target directory.")?;
    Ok(format!("{target}/debug/oilwright"))
}

/// The files of a folder with this ending, in order of name; having none is an error, so that no part passes by checking nothing.
fn files_ending(folder: &str, ending: &str) -> Result<Vec<String>, String> {
    let entries = fs::read_dir(root().join(folder)).map_err(|error| format!("{folder} cannot be read: {error}."))?;
    let names = entries.filter_map(|entry| entry.ok()?.file_name().into_string().ok());
    let mut found: Vec<String> =
        names.filter(|name| name.ends_with(ending)).map(|name| format!("{folder}/{name}")).collect();
    found.sort();
    if found.is_empty() { Err(format!("{folder} holds no file that ends in {ending}.")) } else { Ok(found) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn options_are_read_in_any_order() {
        let both = Choice { only: Some("tidy"), keep_going: true };
        assert_eq!(Choice::read(&["--only", "tidy", "--keep-going"]), Ok(both));
        assert_eq!(Choice::read(&[]), Ok(Choice::default()));
    }

    #[test]
    fn an_unknown_part_or_option_is_refused() {
        assert!(Choice::read(&["--only", "tidiness"]).is_err());
        assert!(Choice::read(&["--only"]).is_err());
        assert!(Choice::read(&["--quick"]).is_err());
    }

    #[test]
    fn a_folder_without_such_files_is_an_error() {
        assert_eq!(files_ending("xtask", ".toml"), Ok(vec!["xtask/Cargo.toml".to_owned()]));
        assert!(files_ending("xtask", ".no-such-ending").is_err());
    }
}
