//! The project's text files as the rules see them, and the fault that a rule reports.

use std::fmt;
use std::fs;

use serde_json::Value;

use crate::run::{Run, root};

/// A place that breaks a rule, and what to do there.
#[derive(Debug, PartialEq)]
pub(crate) struct Fault {
    pub(crate) path: String,
    pub(crate) line: usize,
    pub(crate) says: String,
}

impl fmt::Display for Fault {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(formatter, "{}:{}: {}", self.path, self.line, self.says)
    }
}

/// One text file, its path counted from the root with forward slashes.
#[derive(Debug)]
pub(crate) struct TextFile {
    pub(crate) path: String,
    pub(crate) text: String,
}

impl TextFile {
    /// Whether the file's name has this extension, given without the dot.
    pub(crate) fn is(&self, extension: &str) -> bool {
        self.path.rsplit_once('.').is_some_and(|(_, found)| found == extension)
    }

    /// Whether the file lies somewhere below this folder, given without a slash at its end.
    pub(crate) fn is_below(&self, folder: &str) -> bool {
        self.path.strip_prefix(folder).is_some_and(|rest| rest.starts_with('/'))
    }

    /// Whether the text was written elsewhere and is kept as it came.
    pub(crate) fn is_vendored(&self) -> bool {
        self.path.split('/').any(|folder| folder == "vendor")
    }

    /// Every line with its number.
    pub(crate) fn lines(&self) -> impl Iterator<Item = (usize, &str)> {
        self.text.lines().enumerate().map(|(index, line)| (index + 1, line))
    }

    /// A fault in this file.
    pub(crate) fn fault(&self, line: usize, says: impl Into<String>) -> Fault {
        Fault { path: self.path.clone(), line, says: says.into() }
    }
}

/// Everything that a rule may look at.
#[derive(Debug, Default)]
pub(crate) struct Tree {
    pub(crate) files: Vec<TextFile>,
    /// What `cargo metadata --no-deps` prints.
    pub(crate) metadata: Value,
}

impl Tree {
    /// Reads the working tree; files that are no text are left out.
    pub(crate) fn read() -> Result<Tree, String> {
        let listed = Run::new("git", &["ls-files", "-z", "--cached", "--others", "--exclude-standard"]).text()?;
        let mut files = vec![];
        for path in listed.split('\0').filter(|path| !path.is_empty()) {
            // A file that git still lists may be gone from the disk, and a picture is no text.
            if let Ok(text) = fs::read_to_string(root().join(path)) {
                files.push(TextFile { path: path.to_owned(), text });
            }
        }
        let metadata = Run::cargo("metadata --format-version 1 --no-deps --locked").text()?;
        let metadata = serde_json::from_str(&metadata).map_err(|error| format!("cargo metadata: {error}."))?;
        Ok(Tree { files, metadata })
    }

    /// The file at this path.
    pub(crate) fn file(&self, path: &str) -> Option<&TextFile> {
        self.files.iter().find(|file| file.path == path)
    }

    /// All files with this extension.
    pub(crate) fn with_extension(&self, extension: &str) -> impl Iterator<Item = &TextFile> {
        self.files.iter().filter(move |file| file.is(extension))
    }
}

/// A tree with these files and nothing else, for the tests of the rules.
#[cfg(test)]
pub(crate) fn planted(files: &[(&str, &str)]) -> Tree {
    let files = files.iter().map(|(path, text)| TextFile { path: (*path).to_owned(), text: (*text).to_owned() });
    Tree { files: files.collect(), metadata: Value::Null }
}

/// The places of the faults, for the tests of the rules.
#[cfg(test)]
pub(crate) fn places(faults: &[Fault]) -> Vec<(&str, usize)> {
    faults.iter().map(|fault| (fault.path.as_str(), fault.line)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_folder_is_matched_whole() {
        let tree = planted(&[("crates/web/src/lib.rs", ""), ("crates/website/src/lib.rs", "")]);
        assert!(tree.files[0].is_below("crates/web"));
        assert!(!tree.files[1].is_below("crates/web"));
    }

    #[test]
    fn a_fault_prints_its_place_first() {
        let tree = planted(&[("a.rs", "x")]);
        assert_eq!(tree.files[0].fault(3, "mend this").to_string(), "a.rs:3: mend this");
    }
}
