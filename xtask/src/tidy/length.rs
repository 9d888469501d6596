//! A Rust file over 800 lines has stopped being about one noun.
//!
//! Tables and generated code may be longer; they say so in their first line.

use super::tree::{Fault, Tree};

const LIMIT: usize = 800;
const EXCEPTED: [&str; 2] = ["//! Table.", "//! Generated."];

pub(crate) fn faults(tree: &Tree) -> Vec<Fault> {
    let long = tree.with_extension("rs").filter(|file| {
        file.text.lines().count() > LIMIT && !EXCEPTED.iter().any(|marker| file.text.starts_with(marker))
    });
    long.map(|file| {
        let says = format!(
            "{} lines; split it by nouns, or open a table with `{}` and generated code with `{}`.",
            file.text.lines().count(),
            EXCEPTED[0],
            EXCEPTED[1]
        );
        file.fault(LIMIT + 1, says)
    })
    .collect()
}

#[cfg(test)]
mod tests {
    use super::super::tree::{places, planted};
    use super::*;

    #[test]
    fn the_801st_line_is_one_too_many() {
        let tree = planted(&[("a.rs", &"x\n".repeat(800)), ("b.rs", &"x\n".repeat(801)), ("c.md", &"x\n".repeat(900))]);
        assert_eq!(places(&faults(&tree)), [("b.rs", 801)]);
    }

    #[test]
    fn a_table_may_be_longer() {
        let table = format!("//! Table. Widths.\n{}", "x\n".repeat(900));
        assert_eq!(faults(&planted(&[("a.rs", &table)])), []);
    }
}
