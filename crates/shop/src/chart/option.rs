//! An option: a way in which examples of one model differ, with the answer for this example.

use crate::fault::either;
use crate::id::Id;
use crate::reading::{Element, Key, Sort, Table, Takes};

/// A question about how this example is built.
#[derive(Clone, Debug, PartialEq)]
pub struct ChartOption {
    /// Its id.
    pub id: Id,
    /// The question that a look at the machine settles.
    pub question: String,
    /// The answers that are possible.
    pub choices: Vec<String>,
    /// The answer for this example; nothing while it is not settled.
    pub here: Option<String>,
    /// Anything worth saying.
    pub note: Option<String>,
}

pub(super) static KEYS: Element = Element {
    name: "option",
    says: "A way in which examples of the model differ",
    keys: &[
        super::ID,
        Key::must("question", Takes::Text, "the question that a look at the machine settles"),
        Key::must("choices", Takes::Texts, "the answers that are possible"),
        Key::may("here", Takes::Text, "the answer for this example"),
        super::NOTE,
    ],
};

pub(super) fn read(table: &Table<'_>) -> Option<ChartOption> {
    let id = table.id(Sort::Option);
    let question = table.text("question");
    let choices = table.texts("choices");
    let here = table.text("here");
    if let Some(here) = here.as_ref().filter(|here| !choices.is_empty() && !choices.contains(here)) {
        let says = format!(
            "is \"{here}\", which is not among the choices; write {}",
            either(choices.iter().map(String::as_str))
        );
        table.fault("here", &says);
    }
    let note = table.text("note");
    Some(ChartOption { id: id?, question: question?, choices, here, note })
}
