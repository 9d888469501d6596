//! The rules of the house style that a program can judge; one rule a file in `tidy/`, all listed in [`RULES`].
//!
//! A rule is a pure function from the project's files to faults, so that its tests can plant bad text. To add one, write its file and
//! add its line. Rules read every file that git tracks or would track, so that a fault shows before the commit.

mod arrow;
mod check_table;
mod colour;
mod doc_shape;
mod leftover;
mod length;
mod machine_path;
mod markup;
mod module_name;
mod opening;
mod public_function;
mod script;
mod source_key;
mod tree;

use tree::{Fault, Tree};

struct Rule {
    says: &'static str,
    faults: fn(&Tree) -> Vec<Fault>,
}

const RULES: &[Rule] = &[
    Rule { says: "a Rust file has at most 800 lines", faults: length::faults },
    Rule { says: "a Rust file opens by saying what it is", faults: opening::faults },
    Rule { says: "a module is named after a thing", faults: module_name::faults },
    Rule { says: "crates use only the crates above them", faults: arrow::faults },
    Rule { says: "a correlation states its range and source", faults: doc_shape::faults },
    Rule { says: "a source that is named is in the list of sources", faults: source_key::faults },
    Rule { says: "a check value has a source and a kind", faults: check_table::faults },
    Rule { says: "nothing unfinished, skipped or asleep", faults: leftover::faults },
    Rule { says: "no path of one machine, no registry host", faults: machine_path::faults },
    Rule { says: "pages hold no inline style or script", faults: markup::faults },
    Rule { says: "colours stand in tokens.css only", faults: colour::faults },
    Rule { says: "a page script has under 60 lines", faults: script::faults },
];

/// Judges the working tree by every rule and prints each fault with its place.
pub(crate) fn tidy() -> Result<(), String> {
    let tree = Tree::read()?;
    let mut count = 0;
    for rule in RULES {
        let faults = (rule.faults)(&tree);
        count += faults.len();
        let mark = if faults.is_empty() { "ok " } else { "BAD" };
        println!("{mark} {}", rule.says);
        for fault in faults {
            println!("    {fault}");
        }
    }
    println!("Tidy: {} rules over {} files, {count} faults.", RULES.len(), tree.files.len());
    if count == 0 {
        Ok(())
    } else {
        Err(format!("The tidy rules found {count} faults; each line above says what to do."))
    }
}
