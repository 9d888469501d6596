//! A chart as a text that people own: [`Document`] holds the text and the chart in it; typed [`Edit`]s change the text where they must
//! and nowhere else, so that comments, order and spacing stay. An edit that would break the chart is refused with its faults.
//!
//! Every edit is a splice of the text, so that an [`Undo`] gives the same bytes back.

mod edit;
mod layout;
mod splice;
mod written;

pub use edit::{Edit, Refused, Target, Value};
pub use splice::Undo;

use crate::chart::Chart;
use crate::fault::Fault;

/// The text of a chart that has no fault, with the chart in it.
#[derive(Clone, Debug, PartialEq)]
pub struct Document {
    text: String,
    chart: Chart,
}

/// A document after its edits, and the way back.
#[derive(Clone, Debug, PartialEq)]
pub struct Edited {
    /// The document as it is now.
    pub document: Document,
    /// Gives the text back as it was.
    pub undo: Undo,
}

impl Document {
    /// The document of a machine of which nothing is charted yet.
    ///
    /// # Errors
    /// The faults of a name or kind that cannot stand in a chart, such as an empty one.
    pub fn new(name: &str, kind: Option<&str>) -> Result<Self, Vec<Fault>> {
        let text = |text: &str| written::written(&Value::Text(text.to_owned()));
        let kind = kind.map(|kind| format!("kind = {}\n", text(kind))).unwrap_or_default();
        Self::read(format!("chart = 1\n\n[machine]\nname = {}\n{kind}", text(name)))
    }

    /// The document of this text.
    ///
    /// # Errors
    /// All its faults, when it has any. Warnings are no faults.
    pub fn read(text: impl Into<String>) -> Result<Self, Vec<Fault>> {
        let text = text.into();
        let read = Chart::read(&text);
        match read.value {
            Some(chart) => Ok(Self { text, chart }),
            None => Err(read.faults),
        }
    }

    /// The text, as it is written to the file.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.text
    }

    /// The chart in it.
    #[must_use]
    pub fn chart(&self) -> &Chart {
        &self.chart
    }

    /// The document after these edits, made one after the other and held against the rules of a chart once they are all made: so an
    /// element and what links to it can be taken out together.
    ///
    /// # Errors
    /// [`Refused`] when an edit names something that is not there, or when the chart would have faults; nothing is changed.
    pub fn edited(&self, edits: &[Edit]) -> Result<Edited, Refused> {
        let mut text = self.text.clone();
        let mut splices = Vec::new();
        for edit in edits {
            for splice in edit.splices(&text)? {
                splices.push(splice.on(&mut text));
            }
        }
        let document = Self::read(text.as_str()).map_err(|faults| Refused::Faulty { text, faults })?;
        Ok(Edited { document, undo: Undo::new(splices) })
    }

    /// The document before the edits that gave this undo.
    ///
    /// # Errors
    /// [`Refused::Changed`] when the text is no longer the one that those edits left.
    pub fn undone(&self, undo: &Undo) -> Result<Self, Refused> {
        let text = undo.on(&self.text).ok_or(Refused::Changed)?;
        Self::read(text.as_str()).map_err(|faults| Refused::Faulty { text, faults })
    }
}
