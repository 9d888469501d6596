//! Judges the licence of every package in the two lock files against a short list of what this project may use.
//!
//! What is built into the program is judged by the strict list; the browser test tools, which are never shipped, may also be MPL-2.0.

mod expression;

use std::fs;

use serde_json::Value;

use crate::run::{Run, root};
use expression::allows;

/// Licences of what is built into the program.
const SHIPPED: &[&str] = &[
    "0BSD",
    "Apache-2.0",
    "Apache-2.0 WITH LLVM-exception",
    "BSD-2-Clause",
    "BSD-3-Clause",
    "BSL-1.0",
    "CC0-1.0",
    "ISC",
    "MIT",
    "Unicode-3.0",
    "Unlicense",
    "Zlib",
];

/// Licences of tools that only the tests run.
const TEST_TOOLS: &[&str] = &["Apache-2.0", "MIT", "MPL-2.0"];

/// Fails when a package has a licence that is not on its list.
pub(crate) fn licences() -> Result<(), String> {
    let crates = Run::cargo("metadata --format-version 1 --locked").text()?;
    let lock = fs::read_to_string(root().join("e2e/package-lock.json"))
        .map_err(|error| format!("e2e/package-lock.json cannot be read: {error}."))?;
    let crates = crate_packages(&json(&crates)?);
    let tools = npm_packages(&json(&lock)?);
    let offenders = [offenders(&crates, SHIPPED), offenders(&tools, TEST_TOOLS)].concat();
    println!(
        "Licences: {} crates and {} test tools judged.",
        crates.len(),
        tools.len()
    );
    if offenders.is_empty() {
        Ok(())
    } else {
        Err(offenders.join("\n"))
    }
}

#[derive(Debug, PartialEq)]
struct Package {
    name: String,
    licence: Option<String>,
}

fn json(text: &str) -> Result<Value, String> {
    serde_json::from_str(text).map_err(|error| format!("Not readable as JSON: {error}."))
}

fn crate_packages(metadata: &Value) -> Vec<Package> {
    let packages = metadata["packages"].as_array().into_iter().flatten();
    packages
        .map(|package| Package {
            name: format!(
                "crate {} {}",
                package["name"].as_str().unwrap_or("?"),
                package["version"].as_str().unwrap_or("?")
            ),
            licence: package["license"].as_str().map(str::to_owned),
        })
        .collect()
}

/// The entry with the empty name is the folder `e2e` itself, which nobody publishes.
fn npm_packages(lock: &Value) -> Vec<Package> {
    let packages = lock["packages"].as_object().into_iter().flatten();
    packages
        .filter(|(name, _)| !name.is_empty())
        .map(|(name, package)| Package {
            name: format!("npm package {name}"),
            licence: package["license"].as_str().map(str::to_owned),
        })
        .collect()
}

fn offenders(packages: &[Package], allowed: &[&str]) -> Vec<String> {
    packages
        .iter()
        .filter_map(|package| offence(package, allowed))
        .collect()
}

fn offence(Package { name, licence }: &Package, allowed: &[&str]) -> Option<String> {
    let Some(licence) = licence else {
        return Some(format!(
            "{name} names no licence; read its files, and drop it unless they are clear."
        ));
    };
    match allows(licence, allowed) {
        Ok(true) => None,
        Ok(false) => Some(format!(
            "{name} has the licence '{licence}', which is not one of {}.",
            allowed.join(", ")
        )),
        Err(says) => Some(format!(
            "{name} has the licence '{licence}', which cannot be read: {says}"
        )),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    #[test]
    fn each_offender_is_named() {
        let metadata = json!({"packages": [
            {"name": "good", "version": "1.0.0", "license": "MIT/Apache-2.0"},
            {"name": "bad", "version": "2.0.0", "license": "AGPL-3.0-only"},
            {"name": "silent", "version": "3.0.0", "license": null},
        ]});
        let offenders = offenders(&crate_packages(&metadata), SHIPPED);
        assert_eq!(offenders.len(), 2);
        assert!(offenders[0].starts_with("crate bad 2.0.0"), "{offenders:?}");
        assert!(
            offenders[1].starts_with("crate silent 3.0.0"),
            "{offenders:?}"
        );
    }

    #[test]
    fn a_test_tool_may_have_a_licence_that_a_crate_may_not() {
        let lock =
            json!({"packages": {"": {"name": "e2e"}, "node_modules/tool": {"license": "MPL-2.0"}}});
        let tools = npm_packages(&lock);
        assert_eq!(tools.len(), 1);
        assert!(offenders(&tools, TEST_TOOLS).is_empty());
        assert_eq!(offenders(&tools, SHIPPED).len(), 1);
    }
}
