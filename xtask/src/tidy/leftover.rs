//! Nothing unfinished, skipped or asleep stays in the code: each mark here means work that is not done or a test that does not run.

use super::tree::{Fault, TextFile, Tree};

/// The marks are put together from halves, so that this file does not find itself.
const MARKS: [(&str, &str); 13] = [
    (concat!("#[ig", "nore"), "a test runs or is deleted"),
    (concat!("to", "do!("), "write it, or leave the whole thing out"),
    (concat!("unimple", "mented!("), "write it, or leave the whole thing out"),
    (concat!("db", "g!("), "take the debug print out"),
    (concat!("FIX", "ME"), "mend it, or file it as an issue"),
    (concat!("XX", "X"), "mend it, or file it as an issue"),
    (concat!("TO", "DO"), "do it, or file it as an issue"),
    (concat!("thread::", "sleep"), "wait for an event, not for time"),
    (concat!("waitFor", "Timeout("), "wait for an event, not for time"),
    (concat!("test.sk", "ip("), "a test runs or is deleted"),
    (concat!("test.to", "do("), "a test runs or is deleted"),
    (concat!("test.on", "ly("), "all tests run"),
    (concat!("debug", "ger;"), "take the breakpoint out"),
];

pub(crate) fn faults(tree: &Tree) -> Vec<Fault> {
    let code = tree.files.iter().filter(|file| (file.is("rs") || file.is("js")) && !file.is_vendored());
    code.flat_map(in_file).collect()
}

fn in_file(file: &TextFile) -> Vec<Fault> {
    let found = file.lines().flat_map(|(number, line)| {
        let marks = MARKS.iter().filter(|(mark, _)| line.contains(mark));
        marks.map(move |(mark, says)| file.fault(number, format!("`{mark}`: {says}.")))
    });
    found.collect()
}

#[cfg(test)]
mod tests {
    use super::super::tree::{places, planted};
    use super::*;

    #[test]
    fn every_mark_is_found_in_rust_and_script() {
        for (mark, _) in MARKS {
            let text = format!("fn a() {{}}\n    {mark}\n");
            let tree = planted(&[("a.rs", &text), ("b.js", &text), ("c.md", &text), ("assets/vendor/d.js", &text)]);
            assert_eq!(places(&faults(&tree)), [("a.rs", 2), ("b.js", 2)], "{mark}");
        }
    }

    #[test]
    fn plain_words_are_left_alone() {
        let text = "// The method to do this is to ignore the fix.\nlet todo = list.iter().skip(1);\n";
        assert_eq!(faults(&planted(&[("a.rs", text)])), []);
    }
}
