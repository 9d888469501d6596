//! A source key named in `tribology` or `advice` stands in `docs/sources.toml`, so that a reader can find the book and the page.
//!
//! Keys stand in backticks below `# Source`, after `Source:` in the doc of a constant, and in quotes after `source:` in a step of working.
//! What no book holds says so: "Common practice", "Own calculation", "From memory", or "None" and why.

use toml_edit::DocumentMut;

use super::tree::{Fault, TextFile, Tree};

const LIST: &str = "docs/sources.toml";
const NO_BOOK: [&str; 4] = ["Common practice", "Own calculation", "From memory", "None"];

pub(crate) fn faults(tree: &Tree) -> Vec<Fault> {
    let known = match tree.file(LIST).map(keys).transpose() {
        Ok(known) => known.unwrap_or_default(),
        Err(fault) => return vec![fault],
    };
    let physics = tree
        .with_extension("rs")
        .filter(|file| file.is_below("crates/tribology/src") || file.is_below("crates/advice/src"));
    physics.flat_map(|file| in_file(file, &known)).collect()
}

/// The keys of the list: one table a source.
fn keys(list: &TextFile) -> Result<Vec<String>, Fault> {
    let document: DocumentMut =
        list.text.parse().map_err(|error: toml_edit::TomlError| list.fault(1, error.to_string()))?;
    Ok(document.iter().map(|(key, _)| key.to_owned()).collect())
}

fn in_file(file: &TextFile, known: &[String]) -> Vec<Fault> {
    let mut faults = vec![];
    for (number, text) in named_sources(file) {
        let named: Vec<&str> = text.split('`').skip(1).step_by(2).filter(|word| is_key(word)).collect();
        if named.is_empty() && !NO_BOOK.iter().any(|words| text.starts_with(words)) {
            let words = NO_BOOK.join(", ");
            faults
                .push(file.fault(number, format!("name a key of {LIST} in backticks, or begin with one of: {words}.")));
        }
        let unknown = named.into_iter().filter(|key| !known.iter().any(|known| known == key) && !says_no_book(key));
        let says = |key: &str| format!("`{key}` is not in {LIST}; add it there, or mend its spelling.");
        faults.extend(unknown.map(|key| file.fault(number, says(key))));
    }
    faults
}

/// A step of working says it as a key: `common-practice`.
fn says_no_book(key: &str) -> bool {
    NO_BOOK.iter().any(|words| words.to_lowercase().replace(' ', "-") == key)
}

/// The text of each source section of the docs, with the number of its first line.
fn named_sources(file: &TextFile) -> Vec<(usize, String)> {
    let mut found: Vec<(usize, String)> = vec![];
    let mut inside = false;
    for (number, line) in file.lines() {
        let doc =
            line.trim_start().strip_prefix("///").or_else(|| line.trim_start().strip_prefix("//!")).map(str::trim);
        match doc {
            Some("# Source" | "# Sources") => {
                inside = true;
                found.push((number, String::new()));
            }
            Some(doc) if inside && !doc.starts_with("# ") => {
                if let Some((_, text)) = found.last_mut() {
                    text.push_str(doc);
                    text.push(' ');
                }
            }
            Some(doc) => {
                inside = false;
                if let Some(text) = doc.strip_prefix("Source: ") {
                    found.push((number, text.to_owned()));
                }
            }
            None => {
                inside = false;
                found.extend(step_source(line).map(|key| (number, format!("`{key}`"))));
            }
        }
    }
    found
}

/// The key that a step of working names in code.
fn step_source(line: &str) -> Option<&str> {
    let (_, rest) = line.split_once("source: \"")?;
    rest.split('"').next().filter(|word| is_key(word))
}

/// Keys are small words joined by hyphens; a formula in backticks is none.
fn is_key(word: &str) -> bool {
    let is_plain = |letter: char| letter.is_ascii_lowercase() || letter.is_ascii_digit();
    let parts = word.split('-');
    word.contains('-')
        && word.starts_with(|first: char| first.is_ascii_lowercase())
        && parts.into_iter().all(|part| !part.is_empty() && part.chars().all(is_plain))
}

#[cfg(test)]
mod tests {
    use super::super::tree::{places, planted};
    use super::*;

    const SOURCES: (&str, &str) = (LIST, "[petroff-1883]\nauthor = \"Petroff\"\n");

    #[test]
    fn an_unknown_key_is_a_fault() {
        let text =
            "/// Drag.\n///\n/// # Source\n/// `petroff-1883`, with `f = 2 / s`; also `petrov-1883`.\nfn drag() {}\n";
        let found = faults(&planted(&[SOURCES, ("crates/tribology/src/drag.rs", text)]));
        assert_eq!(places(&found), [("crates/tribology/src/drag.rs", 3)]);
        assert!(found[0].says.contains("petrov-1883"), "{}", found[0]);
    }

    #[test]
    fn a_section_without_a_key_says_that_no_book_has_it() {
        let text = "/// # Source\n/// A book.\nfn a() {}\n/// # Source\n/// None: a sum.\nfn b() {}\n";
        assert_eq!(
            places(&faults(&planted(&[SOURCES, ("crates/tribology/src/a.rs", text)]))),
            [("crates/tribology/src/a.rs", 1)]
        );
    }

    #[test]
    fn a_constant_names_its_source_in_one_line() {
        let text = "/// Gravity. \n/// Source: `si-brochure`.\nconst G: f64 = 9.8;\n";
        assert_eq!(
            places(&faults(&planted(&[("crates/tribology/src/g.rs", text)]))),
            [("crates/tribology/src/g.rs", 2)]
        );
    }

    #[test]
    fn a_step_of_working_names_a_known_source() {
        let text = "source: \"petroff-1883\",\nsource: \"common-practice\",\nsource: \"petrov-1883\",\n";
        let tree = planted(&[SOURCES, ("crates/advice/src/a.rs", text), ("crates/web/src/a.rs", text)]);
        assert_eq!(places(&faults(&tree)), [("crates/advice/src/a.rs", 3)]);
    }

    #[test]
    fn a_list_that_cannot_be_read_is_a_fault() {
        assert_eq!(places(&faults(&planted(&[(LIST, "[petroff")]))), [(LIST, 1)]);
    }
}
