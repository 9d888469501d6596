//! A picture beside the chart file.

use jiff::civil::Date;

use crate::id::Id;
use crate::reading::{Element, Key, Sort, Table, Takes};

/// A picture of the machine, kept as a file beside the chart.
#[derive(Clone, Debug, PartialEq)]
pub struct Picture {
    /// Its id.
    pub id: Id,
    /// The file's name, beside the chart.
    pub file: String,
    /// What it shows.
    pub caption: Option<String>,
    /// When it was taken.
    pub taken: Option<Date>,
}

pub(super) static KEYS: Element = Element {
    name: "picture",
    says: "A picture of the machine, kept as a file beside the chart",
    keys: &[
        super::ID,
        Key::must("file", Takes::Text, "the file's name, beside the chart"),
        Key::may("caption", Takes::Text, "what it shows"),
        Key::may("taken", Takes::Date, "the day on which it was taken"),
    ],
};

pub(super) fn read(table: &Table<'_>) -> Option<Picture> {
    let id = table.id(Sort::Picture);
    let file = table.text("file");
    if file.as_ref().is_some_and(|file| file.contains(['/', '\\']) || file.starts_with('.')) {
        table.fault(
            "file",
            "leaves the chart's folder; write the name of a file that lies beside the chart, such as \"left.jpg\"",
        );
    }
    let caption = table.text("caption");
    let taken = table.date("taken");
    Some(Picture { id: id?, file: file?, caption, taken })
}
