//! Evidence: how a statement is known. It attaches to statements, not to elements: tracing proves where a hole leads, not which
//! oil it wants. Several may speak of one statement, and those that disagree are all kept.

use jiff::civil::Date;

use crate::choice;
use crate::choice::Choice as _;
use crate::reading::{Element, Key, Table, Takes};

choice! {
    /// How a statement is known.
    How {
        /// It stands on the machine's plate.
        Plate = "plate",
        /// It stands in a handbook.
        Handbook = "handbook",
        /// Somebody said so.
        Told = "told",
        /// It is guessed from machines like it.
        Guess = "guess",
        /// The passage was followed.
        Traced = "traced",
        /// It was seen working.
        SeenWorking = "seen working",
        /// Nobody knows.
        Unknown = "unknown",
    }
}

/// How some statements of an element are known.
#[derive(Clone, Debug, PartialEq)]
pub struct Evidence {
    /// The statements, by their keys; empty means all that the element says.
    pub of: Vec<String>,
    /// How they are known.
    pub how: How,
    /// Since when.
    pub date: Option<Date>,
    /// On which example of the model.
    pub example: Option<String>,
    /// What was seen, read or heard.
    pub note: Option<String>,
    /// Where to look it up.
    pub link: Option<String>,
    /// The picture that shows it: an id of a picture in the file.
    pub picture: Option<crate::id::Id>,
}

pub(super) static KEYS: Element = Element {
    name: "evidence",
    says: "How some statements of the element are known",
    keys: &[
        Key::may(
            "of",
            Takes::Texts,
            "the statements, by their keys or as place, interval, dimensions; left out: all of them",
        ),
        Key::must("how", Takes::Choice(How::words), "how they are known"),
        Key::may("date", Takes::Date, "the day on which it was seen, read or heard"),
        Key::may("example", Takes::Text, "on which example of the model"),
        Key::may("note", Takes::Text, "what was seen, read or heard"),
        Key::may("link", Takes::Text, "where to look it up"),
        Key::may("picture", Takes::Link(&[crate::reading::Sort::Picture]), "the picture that shows it"),
    ],
};

/// Statements that are not spelt like a key.
const STATEMENTS: [&str; 3] = ["place", "interval", "dimensions"];

/// Reads the evidence of an element whose statements are its keys.
pub(super) fn read_all(table: &Table<'_>, of_element: &'static Element) -> Vec<Evidence> {
    table.children("evidence", |child| read(child, of_element))
}

fn read(table: &Table<'_>, of_element: &'static Element) -> Option<Evidence> {
    let how = table.choice("how");
    for (statement, span) in table.strings("of") {
        let known = || of_element.keys.iter().map(|key| key.name).chain(STATEMENTS);
        if !known().any(|key| key == statement) {
            let hint = crate::fault::nearest(statement, known()).map_or_else(
                || "write a key of the element, or place, interval, dimensions".to_owned(),
                |near| format!("did you mean \"{near}\"?"),
            );
            table.log.unknown(
                span,
                format!("the evidence speaks of \"{statement}\", which the {} does not state: {hint}", of_element.name),
            );
        }
    }
    let evidence = (
        table.texts("of"),
        table.date("date"),
        table.text("example"),
        table.text("note"),
        table.text("link"),
        table.link("picture"),
    );
    let (of, date, example, note, link, picture) = evidence;
    Some(Evidence { of, how: how?, date, example, note, link, picture })
}
