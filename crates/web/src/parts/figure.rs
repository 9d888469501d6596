//! A drawing or a plot on its own ruled sheet.

use maud::{Markup, Render, html};

/// The drawing carries its own title and description; the caption says how to read it.
#[derive(Clone, Debug)]
pub struct Figure {
    /// An `svg` element.
    pub drawing: Markup,
    /// How to read it.
    pub caption: String,
}

impl Render for Figure {
    fn render(&self) -> Markup {
        html! {
            figure.figure {
                (self.drawing)
                @if !self.caption.is_empty() { figcaption { (self.caption) } }
            }
        }
    }
}
