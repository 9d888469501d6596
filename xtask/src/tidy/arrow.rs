//! A crate may use only the crates above it in the list, and what draws or prints never knows the store.
//!
//! Dependencies of tests and build scripts count as well. `xtask` stands outside: it may use any crate, and none uses it.

use serde_json::Value;

use super::tree::{Fault, Tree};

/// From the physics down to the program; the same list stands in ARCHITECTURE.md.
const ORDER: [&str; 8] = ["tribology", "shop", "advice", "store", "draw", "print", "web", "oilwright"];

/// Pairs that the order would allow and the design does not.
const FORBIDDEN: [(&str, &str); 2] = [("draw", "store"), ("print", "store")];

pub(crate) fn faults(tree: &Tree) -> Vec<Fault> {
    let packages = tree.metadata["packages"].as_array().into_iter().flatten();
    let names = packages.clone().filter_map(|package| package["name"].as_str());
    let members: Vec<&str> = names.collect();
    packages.flat_map(|package| of_package(tree, package, &members)).collect()
}

fn of_package(tree: &Tree, package: &Value, members: &[&str]) -> Vec<Fault> {
    let name = package["name"].as_str().unwrap_or_default();
    if name == "xtask" {
        return vec![];
    }
    let manifest = format!("crates/{name}/Cargo.toml");
    let fault = |word: &str, says: String| Fault { line: line_of(tree, &manifest, word), path: manifest.clone(), says };
    if place(name).is_none() {
        return vec![fault(
            "name",
            format!("`{name}` has no place in the order of crates; give it one in xtask/src/tidy/arrow.rs."),
        )];
    }
    let used = package["dependencies"].as_array().into_iter().flatten().filter_map(|used| used["name"].as_str());
    used.filter(|used| members.contains(used) && !may_use(name, used))
        .map(|used| fault(used, format!("`{name}` may not use `{used}`; move what it needs upward, or pass it in.")))
        .collect()
}

fn may_use(user: &str, used: &str) -> bool {
    place(used).is_some() && place(used) < place(user) && !FORBIDDEN.contains(&(user, used))
}

fn place(name: &str) -> Option<usize> {
    ORDER.iter().position(|listed| *listed == name)
}

/// The first line of the manifest that starts with this word, for a person to look at.
fn line_of(tree: &Tree, manifest: &str, word: &str) -> usize {
    let found = tree.file(manifest).and_then(|file| file.lines().find(|(_, line)| line.starts_with(word)));
    found.map_or(1, |(number, _)| number)
}

#[cfg(test)]
mod tests {
    use super::super::tree::{places, planted};
    use super::*;
    use serde_json::json;

    fn package(name: &str, uses: &[&str]) -> Value {
        json!({"name": name, "dependencies": uses.iter().map(|used| json!({"name": used})).collect::<Vec<_>>()})
    }

    #[test]
    fn arrows_point_upward_only() {
        let mut tree = planted(&[(
            "crates/shop/Cargo.toml",
            "[package]\nname = \"shop\"\n[dependencies]\nstore.workspace = true\n",
        )]);
        tree.metadata = json!({"packages": [
            package("tribology", &[]),
            package("shop", &["tribology", "serde", "store"]),
            package("store", &["shop"]),
            package("draw", &["advice", "store"]),
            package("advice", &["shop"]),
            package("web", &["store", "draw", "xtask"]),
            package("xtask", &["web"]),
            package("stray", &[]),
        ]});
        assert_eq!(
            places(&faults(&tree)),
            [
                ("crates/shop/Cargo.toml", 4),
                ("crates/draw/Cargo.toml", 1),
                ("crates/web/Cargo.toml", 1),
                ("crates/stray/Cargo.toml", 1)
            ]
        );
    }
}
