//! A fault in a file: where it is, and one plain sentence that says what is wrong and what a right one looks like.

use std::fmt::Write as _;
use std::ops::Range;

/// How bad a fault is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Severity {
    /// Worth a look; the file is read all the same.
    Warning,
    /// The file cannot be used until it is mended.
    Fault,
}

/// One fault, tied to a place in the text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fault {
    /// How bad it is.
    pub severity: Severity,
    /// The bytes of the text that it speaks of.
    pub span: Range<usize>,
    /// What is wrong and what to write instead, in one sentence.
    pub says: String,
}

/// A line and a column, both counted from one, the column in characters.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Place {
    /// The line.
    pub line: usize,
    /// The column.
    pub column: usize,
}

impl Fault {
    /// The place where the fault begins in its text.
    #[must_use]
    pub fn place(&self, text: &str) -> Place {
        let (start, line_start) = self.start(text);
        Place { line: text[..start].matches('\n').count() + 1, column: text[line_start..start].chars().count() + 1 }
    }

    /// `FILE:LINE:COLUMN: sentence`, the line of the text, and a caret under the place.
    #[must_use]
    pub fn shown(&self, file: &str, text: &str) -> String {
        let Place { line, column } = self.place(text);
        let (start, line_start) = self.start(text);
        let source = text[line_start..].lines().next().unwrap_or("");
        let end = text.floor_char_boundary(self.span.end.max(start).min(line_start + source.len()));
        let width = text.get(start..end).map_or(1, |under| under.chars().count().max(1));
        let number = line.to_string();
        let gutter = " ".repeat(number.len());
        // A tab before the place must stay a tab under it, or the caret drifts.
        let before: String = source.chars().take(column - 1).map(|c| if c == '\t' { '\t' } else { ' ' }).collect();
        let mut shown = format!("{file}:{line}:{column}: {}{}\n", self.prefix(), self.says);
        let _ = writeln!(shown, "  {number} | {source}");
        let _ = write!(shown, "  {gutter} | {before}{}", "^".repeat(width));
        shown
    }

    fn prefix(&self) -> &'static str {
        match self.severity {
            Severity::Warning => "note: ",
            Severity::Fault => "",
        }
    }

    fn start(&self, text: &str) -> (usize, usize) {
        let start = text.floor_char_boundary(self.span.start.min(text.len()));
        (start, text[..start].rfind('\n').map_or(0, |at| at + 1))
    }
}

/// The word of a list that is nearest to what was typed, when one is near enough to be what was meant.
#[must_use]
pub fn nearest<'w>(typed: &str, words: impl IntoIterator<Item = &'w str>) -> Option<&'w str> {
    let typed = typed.to_lowercase();
    words
        .into_iter()
        .map(|word| (strsim::damerau_levenshtein(&typed, &word.to_lowercase()), word))
        .filter(|(distance, word)| *distance <= (word.chars().count() / 3).max(1))
        .min_by_key(|(distance, _)| *distance)
        .map(|(_, word)| word)
}

/// Words set in quotes and joined for a sentence: `"a", "b" or "c"`.
#[must_use]
pub fn either<'w>(words: impl IntoIterator<Item = &'w str>) -> String {
    let quoted: Vec<String> = words.into_iter().map(|word| format!("\"{word}\"")).collect();
    match quoted.split_last() {
        None => String::new(),
        Some((only, [])) => only.clone(),
        Some((last, rest)) => format!("{} or {last}", rest.join(", ")),
    }
}
