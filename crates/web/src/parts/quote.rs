//! Words copied from a plate, letter for letter.

use maud::{Markup, Render, html};

/// The words, and where they stand.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Quote {
    /// The words as they stand there.
    pub words: String,
    /// Where they stand.
    pub stands: String,
}

impl Render for Quote {
    fn render(&self) -> Markup {
        html! {
            figure.quote {
                blockquote { (self.words) }
                figcaption { (self.stands) }
            }
        }
    }
}
