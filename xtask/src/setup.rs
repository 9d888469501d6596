//! Installs what the tests need on a machine with nothing but Rust, Node and Python; says what it does and skips what is there.
//!
//! This is the only part of the check that uses the network.

use std::fs;
use std::path::Path;

use crate::run::{Run, root};
use crate::{fuzz, postgres};

/// A package of the operating system.
struct Package {
    name: &'static str,
    why: &'static str,
    /// A line of shell that succeeds where the package, or something as good, is there.
    present: &'static str,
}

const PACKAGES: &[Package] = &[
    Package {
        name: "chromium",
        why: "the browser tests drive it",
        present: "test -x \"${CHROMIUM:-/usr/bin/chromium}\"",
    },
    Package {
        name: "python3-venv",
        why: "the cross-checks run in a Python environment of their own",
        present: "python3 -c 'import ensurepip, venv'",
    },
    Package { name: "g++", why: "the fuzz target's engine is built with it", present: "c++ --version" },
    Package {
        name: "postgresql",
        why: "the tests of the store run on a server of their own too",
        present: postgres::PRESENT,
    },
    Package { name: "git", why: "the tidy rules ask it which files belong to the project", present: "git --version" },
];

const REQUIREMENTS: &str = "reference/crosscheck/requirements.txt";

/// Installs everything that is missing.
pub(crate) fn setup() -> Result<(), String> {
    system_packages()?;
    Run::new("cargo", &["fetch", "--locked"]).go()?;
    Run::new("cargo", &["fetch", "--locked", "--manifest-path", "fuzz/Cargo.toml"]).go()?;
    fuzz_runner()?;
    browser_packages()?;
    python_packages()?;
    if Run::new("cargo", &["nextest", "--version"]).text().is_err() {
        println!("cargo-nextest is not here, so the tests will run by `cargo test`.");
    }
    Ok(())
}

fn fuzz_runner() -> Result<(), String> {
    if Run::new("cargo", &["fuzz", "--version"]).text().is_ok() {
        println!("The runner of the fuzz target: here.");
        return Ok(());
    }
    println!("The runner of the fuzz target is missing; building it takes half a minute.");
    Run::new("cargo", &["install", "cargo-fuzz", "--locked", "--quiet", "--version", fuzz::RUNNER]).go()
}

fn system_packages() -> Result<(), String> {
    let missing: Vec<&Package> =
        PACKAGES.iter().filter(|package| Run::new("sh", &["-c", package.present]).text().is_err()).collect();
    if missing.is_empty() {
        println!("System packages: all here.");
        return Ok(());
    }
    for package in &missing {
        println!("{} is missing: {}.", package.name, package.why);
    }
    let names: Vec<&str> = missing.iter().map(|package| package.name).collect();
    if Run::new("id", &["-u"]).text()?.trim() != "0" {
        return Err(format!(
            "Installing system packages needs root. Type this line, then run the check again:\n\
             sudo apt-get update && sudo apt-get install -y --no-install-recommends {}",
            names.join(" ")
        ));
    }
    Run::new("apt-get", &["update", "-q"]).go()?;
    let mut arguments = vec!["install", "-y", "-q", "--no-install-recommends"];
    arguments.extend(names);
    Run::new("apt-get", &arguments).env("DEBIAN_FRONTEND", "noninteractive").go()
}

fn browser_packages() -> Result<(), String> {
    when_changed("Browser packages", "e2e/package-lock.json", "e2e/node_modules/installed-from", || {
        Run::new("npm", &["ci", "--ignore-scripts", "--no-audit", "--no-fund"]).folder("e2e").go()
    })
}

fn python_packages() -> Result<(), String> {
    when_changed("Python packages", REQUIREMENTS, ".venv/installed-from", || {
        Run::new("python3", &["-m", "venv", "--clear", ".venv"]).go()?;
        let pip = "-m pip --disable-pip-version-check install --quiet --require-hashes --no-deps -r";
        let mut arguments: Vec<&str> = pip.split(' ').collect();
        arguments.push(REQUIREMENTS);
        Run::new(".venv/bin/python", &arguments).go()
    })
}

/// Installs from a list unless the stamp, a copy of the list last installed from, still equals it.
fn when_changed(
    what: &str,
    list: &str,
    stamp: &str,
    install: impl FnOnce() -> Result<(), String>,
) -> Result<(), String> {
    let wanted = fs::read_to_string(root().join(list))
        .map_err(|error| format!("{list} cannot be read ({error}); it names the packages that the tests use."))?;
    let stamp = root().join(stamp);
    if is_current(&wanted, &stamp) {
        println!("{what}: as {list} says.");
        return Ok(());
    }
    install()?;
    fs::write(&stamp, wanted).map_err(|error| format!("{} cannot be written: {error}.", stamp.display()))
}

fn is_current(wanted: &str, stamp: &Path) -> bool {
    fs::read_to_string(stamp).is_ok_and(|installed| installed == wanted)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_stamp_is_current_only_while_it_equals_the_list() {
        let this_file = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/setup.rs");
        assert!(is_current(include_str!("setup.rs"), &this_file));
        assert!(!is_current("another list", &this_file));
        assert!(!is_current("another list", Path::new("no/such/stamp")));
    }
}
