//! The numbered circle that stands for a point, the same on the drawing, in the list, on paper and on the tag.

use maud::{Markup, Render, html};

/// The circle around this number or letter.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Balloon(pub String);

impl Balloon {
    /// The circle with the name of its point, leading to the page of the point.
    pub fn named(&self, name: &str, to: &str) -> Markup {
        html! { a.balloon-named href=(to) { (self) span { (name) } } }
    }
}

impl Render for Balloon {
    fn render(&self) -> Markup {
        html! { span.balloon { (self.0) } }
    }
}
