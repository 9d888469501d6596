//! Nothing here yet, and what to do first.

use maud::{Markup, Render, html};

use super::Press;

/// The empty place.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Empty {
    /// What is missing, in a sentence.
    pub says: String,
    /// The first thing to do.
    pub first: Option<Press>,
}

impl Render for Empty {
    fn render(&self) -> Markup {
        html! {
            div.empty { p { (self.says) } @if let Some(first) = &self.first { (first) } }
        }
    }
}
