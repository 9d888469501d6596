//! Steps that are read and not pressed: what is wiped first, what is put back, what comes later.

use maud::{Markup, Render, html};

/// The steps under a heading. What is left empty is left out.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Steps {
    /// What they are: "First wipe".
    pub heading: String,
    /// Why, in a sentence.
    pub says: String,
    /// Each step: where or when, and what.
    pub lines: Vec<(String, String)>,
}

impl Render for Steps {
    fn render(&self) -> Markup {
        html! {
            section.steps {
                h2 { (self.heading) }
                @if !self.says.is_empty() { p { (self.says) } }
                @if !self.lines.is_empty() {
                    ul { @for (lead, what) in &self.lines { li { @if !lead.is_empty() { b { (lead) } " " } (what) } } }
                }
            }
        }
    }
}
