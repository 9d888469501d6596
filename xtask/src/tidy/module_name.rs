//! A module is named after one thing; a drawer for everything has no name here.

use super::tree::{Fault, TextFile, Tree};

const DRAWERS: [&str; 8] = ["util", "utils", "helper", "helpers", "common", "manager", "managers", "misc"];

pub(crate) fn faults(tree: &Tree) -> Vec<Fault> {
    tree.with_extension("rs").filter(|file| !file.is_vendored()).flat_map(in_file).collect()
}

fn in_file(file: &TextFile) -> Vec<Fault> {
    let says = |name: &str| format!("`{name}` names no one thing; name the module after the noun that it holds.");
    let path = file.path.strip_suffix(".rs").unwrap_or(&file.path);
    let by_path = path.split('/').filter(|name| DRAWERS.contains(name)).map(|name| file.fault(1, says(name)));
    let by_block = file.lines().filter_map(|(number, line)| {
        let name = inline_module(line).filter(|name| DRAWERS.contains(name))?;
        Some(file.fault(number, says(name)))
    });
    by_path.chain(by_block).collect()
}

/// The name of a module whose body stands in the same file; a module in a file of its own is judged by its path.
fn inline_module(line: &str) -> Option<&str> {
    let (before, after) = line.split_once("mod ")?;
    let is_item = before.trim().is_empty() || before.trim_start().starts_with("pub");
    after.trim_end().strip_suffix('{').map(str::trim).filter(|_| is_item)
}

#[cfg(test)]
mod tests {
    use super::super::tree::{places, planted};
    use super::*;

    #[test]
    fn a_drawer_is_a_fault_as_file_folder_or_block() {
        let tree = planted(&[
            ("crates/a/src/bore.rs", "mod bore;\n"),
            ("crates/a/src/utils.rs", ""),
            ("crates/a/tests/common/mod.rs", ""),
            ("crates/a/src/tube.rs", "\npub(crate) mod helpers {\n}\n"),
            ("docs/common/page.md", ""),
        ]);
        assert_eq!(
            places(&faults(&tree)),
            [("crates/a/src/utils.rs", 1), ("crates/a/tests/common/mod.rs", 1), ("crates/a/src/tube.rs", 2)]
        );
    }
}
