//! Will it do? The word in a ruled box: double, single, dashed, or struck through.

use maud::{Markup, Render, html};

/// An oil held against what a point wants.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// What the point wants.
    Suits,
    /// Good enough for daily use.
    Serves,
    /// Better than none, for now.
    Stopgap,
    /// Worse than leaving the machine stopped.
    Never,
}

impl Verdict {
    /// From the best to the worst.
    pub const ALL: [Self; 4] = [Self::Suits, Self::Serves, Self::Stopgap, Self::Never];
}

impl Render for Verdict {
    fn render(&self) -> Markup {
        html! {
            @match self {
                Self::Suits => { span.verdict.verdict-suits { "suits" } }
                Self::Serves => { span.verdict.verdict-serves { "serves" } }
                Self::Stopgap => { span.verdict.verdict-stopgap { "stopgap" } }
                Self::Never => { span.verdict.verdict-never { "never" } }
            }
        }
    }
}
