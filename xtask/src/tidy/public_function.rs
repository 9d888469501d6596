//! Finds the public functions of a Rust file with their docs and signatures, as far as the doc rules need them.
//!
//! This reads lines laid out by rustfmt, not the whole language; functions made by macros are not seen.

/// A public function as it stands in the text.
#[derive(Debug)]
pub(crate) struct PublicFunction<'a> {
    pub(crate) name: &'a str,
    pub(crate) line: usize,
    pub(crate) docs: Vec<&'a str>,
    /// The text between the brackets of the signature.
    pub(crate) parameters: String,
    /// The text after the arrow, or nothing.
    pub(crate) returns: String,
}

impl PublicFunction<'_> {
    /// Whether the docs have this heading.
    pub(crate) fn has_section(&self, heading: &str) -> bool {
        self.docs.iter().any(|line| line.strip_prefix("# ") == Some(heading))
    }
}

/// Every `pub fn` of the text, in order.
pub(crate) fn public_functions(text: &str) -> Vec<PublicFunction<'_>> {
    let mut found = vec![];
    let mut docs = vec![];
    let mut in_attribute = false;
    let lines: Vec<&str> = text.lines().map(str::trim).collect();
    for (index, line) in lines.iter().enumerate() {
        if let Some(doc) = line.strip_prefix("///") {
            docs.push(doc.trim());
        } else if in_attribute || line.starts_with("#[") {
            in_attribute = !line.ends_with(']');
        } else {
            if let Some(name) = function_name(line) {
                let (parameters, returns) = signature(&lines[index..]);
                found.push(PublicFunction { name, line: index + 1, docs: docs.clone(), parameters, returns });
            }
            docs.clear();
        }
    }
    found
}

fn function_name(line: &str) -> Option<&str> {
    let rest = line.strip_prefix("pub ")?;
    let rest = rest.strip_prefix("const ").unwrap_or(rest).strip_prefix("fn ")?;
    rest.split(|letter: char| !letter.is_alphanumeric() && letter != '_').next()
}

/// Parameters and return type of the function that starts on the first of these lines.
fn signature(lines: &[&str]) -> (String, String) {
    let mut head = String::new();
    for line in lines {
        head.push_str(line);
        head.push(' ');
        if line.ends_with('{') || line.ends_with(';') || line.ends_with('}') {
            break;
        }
    }
    let head = head.split('{').next().unwrap_or_default();
    let opens = parameter_list(head).unwrap_or(head.len());
    let mut depth = 0;
    let length = head[opens..].find(|letter| {
        depth += match letter {
            '(' => 1,
            ')' => -1,
            _ => 0,
        };
        depth == 0
    });
    let closes = opens + length.unwrap_or(head.len() - opens);
    let parameters = head.get(opens + 1..closes).unwrap_or_default();
    let returns = head[closes..].split_once("->").map_or("", |(_, returns)| returns);
    (parameters.to_owned(), returns.trim().to_owned())
}

/// Where the bracket of the parameters opens; brackets inside the generics (`F: Fn(f64) -> f64`) come before it.
fn parameter_list(head: &str) -> Option<usize> {
    let mut depth = 0;
    let mut before = ' ';
    for (index, letter) in head.char_indices() {
        match letter {
            '<' => depth += 1,
            '>' if before != '-' => depth -= 1,
            '(' if depth == 0 && !head[..index].ends_with("pub") => return Some(index),
            _ => {}
        }
        before = letter;
    }
    None
}

#[cfg(test)]
mod tests {
    use super::*;

    const TEXT: &str = "\
//! File.

/// One line.
///
/// # Range
/// All.
#[must_use]
#[allow(
    clippy::too_many_arguments
)]
pub fn film(speed: Speed, load: f64) -> Result<Answer<f64>, Error> {
    1.0
}

pub(crate) fn hidden(x: f64) {}

impl Tube {
    /// Bore.
    pub const fn bore(&self) -> Length {
        self.bore
    }
}

/// Root.
pub fn root<F: Fn(f64) -> f64>(
    f: F,
    low: f64,
) -> f64
where
    F: Copy,
{
}
";

    #[test]
    fn functions_are_found_with_docs_and_signature() {
        let found = public_functions(TEXT);
        let names: Vec<(&str, usize)> = found.iter().map(|function| (function.name, function.line)).collect();
        assert_eq!(names, [("film", 11), ("bore", 19), ("root", 25)]);
        assert_eq!(found[0].docs, ["One line.", "", "# Range", "All."]);
        assert_eq!(found[0].parameters, "speed: Speed, load: f64");
        assert_eq!(found[0].returns, "Result<Answer<f64>, Error>");
        assert_eq!(found[1].parameters, "&self");
        assert_eq!(found[2].parameters.trim(), "f: F, low: f64,");
    }
}
