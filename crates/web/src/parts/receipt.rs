//! What was just written down, with the way to take it back.

use maud::{Markup, Render, html};

use super::Action;

/// Shown once, at the top of the page that comes back after an act.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Receipt {
    /// What was written down: "Point 4 oiled at 9:12."
    pub says: String,
    /// Takes it back by an entry that supersedes it.
    pub undo: Option<Action>,
}

impl Render for Receipt {
    fn render(&self) -> Markup {
        html! {
            div.receipt role="status" {
                p { (self.says) }
                @if let Some(undo) = &self.undo { (undo.as_line()) }
            }
        }
    }
}
