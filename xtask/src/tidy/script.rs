//! A script of the pages does one thing, so it stays under 60 lines; it opens with a comment that says which.

use super::tree::{Fault, TextFile, Tree};

const LIMIT: usize = 60;

pub(crate) fn faults(tree: &Tree) -> Vec<Fault> {
    let scripts = tree.with_extension("js").filter(|file| file.is_below("crates/web") && !file.is_vendored());
    scripts.flat_map(in_file).collect()
}

fn in_file(file: &TextFile) -> Vec<Fault> {
    let mut faults = vec![];
    let count = file.text.lines().count();
    if count >= LIMIT {
        faults.push(file.fault(LIMIT, format!("{count} lines; split it by behaviour, or let the server do the work.")));
    }
    if !file.text.starts_with("//") && !file.text.starts_with("/*") {
        faults.push(file.fault(1, "open the script with a comment: what it does, and what the page does without it."));
    }
    faults
}

#[cfg(test)]
mod tests {
    use super::super::tree::{places, planted};
    use super::*;

    #[test]
    fn the_60th_line_is_one_too_many_and_the_first_says_what_it_is() {
        let tree = planted(&[
            ("crates/web/assets/js/a.js", &"// a\n".repeat(59)),
            ("crates/web/assets/js/b.js", &"// a\n".repeat(60)),
            ("crates/web/assets/js/c.js", "go();\n"),
            ("crates/web/assets/vendor/d.js", &"x\n".repeat(99)),
            ("e2e/e.js", &"x\n".repeat(99)),
        ]);
        assert_eq!(places(&faults(&tree)), [("crates/web/assets/js/b.js", 60), ("crates/web/assets/js/c.js", 1)]);
    }
}
