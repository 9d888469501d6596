//! A side of a machine with its balloons, in a window that is moved over it: whole, closer, closest, without any script.

use maud::{Markup, Render, html};

/// The side.
#[derive(Clone, Debug)]
pub struct Side {
    /// The only one of its name on the page.
    pub id: String,
    /// What it shows: "The shaper seen from the left".
    pub name: String,
    /// An `svg` element of the class `side`.
    pub drawing: Markup,
}

/// The three sizes: the class that the style sheet knows, and the word.
const SIZES: [(&str, &str); 3] = [("side-whole", "Whole"), ("side-closer", "Closer"), ("side-closest", "Closest")];

impl Render for Side {
    fn render(&self) -> Markup {
        let group = format!("{}-size", self.id);
        html! {
            div.side-sheet id=(self.id) {
                div.side-window tabindex="0" role="region" aria-label=(self.name) { (self.drawing) }
                fieldset.side-sizes {
                    legend { "How near" }
                    @for (class, word) in SIZES {
                        label { input class=(class) type="radio" name=(group) value=(word); span { (word) } }
                    }
                }
            }
        }
    }
}
