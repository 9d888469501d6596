//! The ruled cells at the top of a sheet: what it is, and the two or three facts that govern it.

use maud::{Markup, Render, html};

use super::Link;

/// The cells; the first is the widest and says what the sheet is.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct TitleBlock {
    cells: Vec<(String, Link)>,
}

impl TitleBlock {
    /// A block of cells, each a name and what stands in it.
    pub fn new<N: Into<String>, V: Into<String>>(cells: impl IntoIterator<Item = (N, V)>) -> Self {
        Self { cells: cells.into_iter().map(|(name, value)| (name.into(), Link::new("", value))).collect() }
    }

    /// One more cell.
    #[must_use]
    pub fn and(self, name: impl Into<String>, value: impl Into<String>) -> Self {
        self.and_link(name, Link::new("", value))
    }

    /// One more cell, which leads somewhere.
    #[must_use]
    pub fn and_link(mut self, name: impl Into<String>, link: Link) -> Self {
        self.cells.push((name.into(), link));
        self
    }
}

impl Render for TitleBlock {
    fn render(&self) -> Markup {
        html! {
            dl.title-block {
                @for (name, cell) in &self.cells {
                    div {
                        dt { (name) }
                        dd { @if cell.to.is_empty() { (cell.words) } @else { a href=(cell.to) { (cell.words) } } }
                    }
                }
            }
        }
    }
}
