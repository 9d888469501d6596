//! A caution, set before the act that it concerns.

use maud::{Markup, Render, html};

use super::Link;

/// What can hurt a machine or a person. Anything milder is an ordinary sentence.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Note {
    /// The danger in a sentence.
    pub caution: String,
    /// What follows from it.
    pub rest: String,
    /// Where to read more.
    pub more: Option<Link>,
}

impl Render for Note {
    fn render(&self) -> Markup {
        html! {
            div.note role="note" aria-label="Caution" {
                p { strong { (self.caution) } @if !self.rest.is_empty() { " " (self.rest) } }
                @if let Some(more) = &self.more { (more) }
            }
        }
    }
}
