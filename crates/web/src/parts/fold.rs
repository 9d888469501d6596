//! What unfolds under an answer: its working, or a form that is seldom wanted.

use maud::{Markup, Render, html};

/// A line that opens.
#[derive(Clone, Debug)]
pub struct Fold {
    line: String,
    body: Markup,
    state: State,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum State {
    Shut,
    Open,
}

impl Fold {
    /// Shut until it is asked for.
    pub fn shut(line: impl Into<String>, body: Markup) -> Self {
        Self { line: line.into(), body, state: State::Shut }
    }

    /// Already open, because the reader just acted inside or asked for it by address.
    pub fn open(line: impl Into<String>, body: Markup) -> Self {
        Self { state: State::Open, ..Self::shut(line, body) }
    }
}

impl Render for Fold {
    fn render(&self) -> Markup {
        html! {
            details.fold open[self.state == State::Open] {
                summary { (self.line) }
                div.fold-body { (self.body) }
            }
        }
    }
}
