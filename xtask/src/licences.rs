//! Judges the licence of every package in the two lock files against a short list of what this project may use.
//!
//! What is built into the program is judged strictly; what only the tests run, and nobody receives, may have a few licences more.

mod expression;

use std::collections::{HashMap, HashSet};
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
    "MIT-0",
    "Unicode-3.0",
    "Unlicense",
    "Zlib",
];

/// What only the tests run may have these as well; its source is public, and nobody receives it from us.
const TEST_TOOLS: &[&str] = &["MPL-2.0"];

/// Fails when a package has a licence that is not on its list.
pub(crate) fn licences() -> Result<(), String> {
    let metadata = Run::cargo("metadata --format-version 1 --locked").text()?;
    let lock = fs::read_to_string(root().join("e2e/package-lock.json"))
        .map_err(|error| format!("e2e/package-lock.json cannot be read: {error}."))?;
    let mut packages = crates(&json(&metadata)?);
    packages.extend(npm_packages(&json(&lock)?));
    let tools = packages.iter().filter(|package| package.part == Part::TestTool);
    println!("Licences: {} packages judged, {} of them test tools.", packages.len(), tools.count());
    let offences: Vec<String> = packages.iter().filter_map(offence).collect();
    if offences.is_empty() { Ok(()) } else { Err(offences.join("\n")) }
}

#[derive(Debug, PartialEq)]
struct Package {
    name: String,
    licence: Option<String>,
    part: Part,
}

/// What a package is to this project.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Part {
    Shipped,
    TestTool,
}

fn json(text: &str) -> Result<Value, String> {
    serde_json::from_str(text).map_err(|error| format!("Not readable as JSON: {error}."))
}

fn crates(metadata: &Value) -> Vec<Package> {
    let shipped = shipped(metadata);
    let package = |package: &Value| Package {
        name: format!("crate {} {}", word(&package["name"]), word(&package["version"])),
        licence: package["license"].as_str().map(str::to_owned),
        part: if shipped.contains(word(&package["id"])) { Part::Shipped } else { Part::TestTool },
    };
    items(&metadata["packages"]).map(package).collect()
}

/// The ids of all crates that a build without tests reaches from our own.
fn shipped(metadata: &Value) -> HashSet<&str> {
    let mut uses: HashMap<&str, Vec<&str>> = HashMap::new();
    for node in items(&metadata["resolve"]["nodes"]) {
        let built = |used: &&Value| items(&used["dep_kinds"]).any(|kind| kind["kind"] != "dev");
        let used = items(&node["deps"]).filter(built).map(|used| word(&used["pkg"]));
        uses.insert(word(&node["id"]), used.collect());
    }
    let mut reached = HashSet::new();
    let mut open: Vec<&str> = items(&metadata["workspace_members"]).map(word).collect();
    while let Some(id) = open.pop() {
        if reached.insert(id) {
            open.extend(uses.get(id).into_iter().flatten());
        }
    }
    reached
}

fn items(list: &Value) -> impl Iterator<Item = &Value> {
    list.as_array().into_iter().flatten()
}

fn word(value: &Value) -> &str {
    value.as_str().unwrap_or("?")
}

/// The entry with the empty name is the folder `e2e` itself, which nobody publishes.
fn npm_packages(lock: &Value) -> Vec<Package> {
    let packages = lock["packages"].as_object().into_iter().flatten().filter(|(name, _)| !name.is_empty());
    let package = |(name, package): (&String, &Value)| Package {
        name: format!("npm package {name}"),
        licence: package["license"].as_str().map(str::to_owned),
        part: Part::TestTool,
    };
    packages.map(package).collect()
}

fn offence(Package { name, licence, part }: &Package) -> Option<String> {
    let Some(licence) = licence else {
        return Some(format!("{name} names no licence; read its files, and drop it unless they are clear."));
    };
    let allowed = match part {
        Part::Shipped => SHIPPED.to_vec(),
        Part::TestTool => [SHIPPED, TEST_TOOLS].concat(),
    };
    match allows(licence, &allowed) {
        Ok(true) => None,
        Ok(false) => Some(format!("{name} has the licence '{licence}'; allowed are {}.", allowed.join(", "))),
        Err(says) => Some(format!("{name} has the licence '{licence}', which cannot be read: {says}")),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    /// Our crate uses `built`, which uses `below`; only its tests use `tool`.
    fn metadata(built: &str, below: &str, tool: &str) -> Value {
        let package =
            |name: &str, licence: &str| json!({"id": name, "name": name, "version": "1.0.0", "license": licence});
        json!({
            "workspace_members": ["ours"],
            "packages": [package("ours", "MIT"), package("built", built), package("below", below), package("tool", tool)],
            "resolve": {"nodes": [
                {"id": "ours", "deps": [
                    {"pkg": "built", "dep_kinds": [{"kind": null}]},
                    {"pkg": "tool", "dep_kinds": [{"kind": "dev"}]},
                ]},
                {"id": "built", "deps": [{"pkg": "below", "dep_kinds": [{"kind": "dev"}, {"kind": "build"}]}]},
            ]},
        })
    }

    #[track_caller]
    fn check(packages: &[Package], offenders: &[&str]) {
        let found: Vec<String> = packages.iter().filter_map(offence).collect();
        assert_eq!(found.len(), offenders.len(), "{found:?}");
        assert!(found.iter().zip(offenders).all(|(found, name)| found.starts_with(name)), "{found:?}");
    }

    #[test]
    fn each_offender_is_named() {
        check(&crates(&metadata("MIT/Apache-2.0", "Zlib", "MIT")), &[]);
        check(&crates(&metadata("AGPL-3.0-only", "MIT OR", "MIT")), &["crate built 1.0.0", "crate below 1.0.0"]);
    }

    #[test]
    fn what_only_tests_use_may_have_a_licence_that_the_program_may_not() {
        check(&crates(&metadata("MIT", "MIT", "MPL-2.0")), &[]);
        check(&crates(&metadata("MPL-2.0", "MPL-2.0", "GPL-2.0-only")), &["crate built", "crate below", "crate tool"]);
        let lock = json!({"packages": {"": {}, "node_modules/a": {"license": "MPL-2.0"}, "node_modules/b": {}}});
        check(&npm_packages(&lock), &["npm package node_modules/b names no licence"]);
    }
}
