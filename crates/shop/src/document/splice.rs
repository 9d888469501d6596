//! A splice: a piece of text put where another stood. All edits are splices, and a splice turned round is its own undo.

use std::ops::Range;

/// A piece of text put where another stood.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Splice {
    pub(super) range: Range<usize>,
    pub(super) with: String,
}

/// The way back from edits to the text before them.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Undo {
    /// The splices that were made, turned round, the last one first; each with the text that it must find.
    back: Vec<Turned>,
}

/// A splice that was made: what stands there now, and what stood there before.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Turned {
    at: usize,
    now: String,
    before: String,
}

impl Splice {
    pub(super) fn insert(at: usize, with: String) -> Self {
        Self { range: at..at, with }
    }

    /// Makes the splice.
    pub(super) fn on(self, text: &mut String) -> Turned {
        let before = text[self.range.clone()].to_owned();
        text.replace_range(self.range.clone(), &self.with);
        Turned { at: self.range.start, now: self.with, before }
    }
}

impl Undo {
    pub(super) fn new(mut made: Vec<Turned>) -> Self {
        made.reverse();
        Self { back: made }
    }

    /// The text before the edits; nothing when the text is not the one that they left.
    pub(super) fn on(&self, text: &str) -> Option<String> {
        let mut text = text.to_owned();
        for Turned { at, now, before } in &self.back {
            let range = *at..at + now.len();
            if text.get(range.clone())? != now {
                return None;
            }
            text.replace_range(range, before);
        }
        Some(text)
    }
}
