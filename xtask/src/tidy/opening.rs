//! A Rust file opens with one to five sentences (`//!`) that say what it is, where to start and what it leaves out.

use super::tree::{Fault, Tree};

pub(crate) fn faults(tree: &Tree) -> Vec<Fault> {
    let silent = tree.with_extension("rs").filter(|file| !file.is_vendored() && !opens(&file.text));
    silent
        .map(|file| {
            file.fault(1, "open the file with one to five whole sentences (`//!`): what it is, where to start.")
        })
        .collect()
}

/// Whether the first lines are a file comment that holds at least one finished sentence.
fn opens(text: &str) -> bool {
    let opening = text.lines().map_while(|line| line.strip_prefix("//!"));
    opening.map(str::trim_end).any(|line| line.contains(' ') && (line.contains(". ") || line.ends_with(['.', ':'])))
}

#[cfg(test)]
mod tests {
    use super::super::tree::{places, planted};
    use super::*;

    #[test]
    fn a_file_that_says_nothing_is_a_fault() {
        let tree = planted(&[
            ("good.rs", "//! The bore of a tube.\nstruct Bore;\n"),
            ("long.rs", "//! The bore of a tube, which may be\n//! guessed.\nstruct Bore;\n"),
            ("none.rs", "struct Bore;\n"),
            ("late.rs", "use std::fmt;\n//! The bore of a tube.\n"),
            ("stub.rs", "//! placeholder\n"),
            ("empty.rs", ""),
        ]);
        assert_eq!(places(&faults(&tree)), [("none.rs", 1), ("late.rs", 1), ("stub.rs", 1), ("empty.rs", 1)]);
    }
}
