//! The numbered circle that stands for a point, the same on the drawing, in the list, on paper and on the tag.

use maud::{Markup, Render, html};

/// The circle around this number or letter.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Balloon(pub String);

impl Render for Balloon {
    fn render(&self) -> Markup {
        html! { span.balloon { (self.0) } }
    }
}
