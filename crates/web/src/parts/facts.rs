//! What is known of one thing: a name and what stands behind it, line by line.

use maud::{Markup, Render, html};

/// The lines. A line with nothing to say is left out when it is added.
#[derive(Clone, Debug, Default)]
pub struct Facts {
    lines: Vec<(String, Markup)>,
}

impl Facts {
    /// No lines yet.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// A line, when there is something to say.
    #[must_use]
    pub fn say<T: Render>(mut self, name: &str, what: Option<T>) -> Self {
        let said = what.map(|what| what.render()).filter(|said| !said.0.is_empty());
        self.lines.extend(said.map(|said| (name.to_owned(), said)));
        self
    }
}

impl Render for Facts {
    fn render(&self) -> Markup {
        html! {
            @if !self.lines.is_empty() {
                dl.facts { @for (name, said) in &self.lines { div { dt { (name) } dd { (said) } } } }
            }
        }
    }
}
