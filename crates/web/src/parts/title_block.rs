//! The ruled cells at the top of a sheet: what it is, and the two or three facts that govern it.

use maud::{Markup, Render, html};

/// The cells; the first is the widest and says what the sheet is.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct TitleBlock {
    cells: Vec<(String, String)>,
}

impl TitleBlock {
    /// A block of cells, each a name and what stands in it.
    pub fn new<N: Into<String>, V: Into<String>>(cells: impl IntoIterator<Item = (N, V)>) -> Self {
        Self { cells: cells.into_iter().map(|(name, value)| (name.into(), value.into())).collect() }
    }
}

impl Render for TitleBlock {
    fn render(&self) -> Markup {
        html! {
            dl.title-block {
                @for (name, value) in &self.cells { div { dt { (name) } dd { (value) } } }
            }
        }
    }
}
