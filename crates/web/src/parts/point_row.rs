//! One oiling point in a list: which, what, how much, what to look for, and the word to press.
//!
//! That oil was given and that its sign was seen are two acts: "Oiled" is pressed first, "Seen" takes its place.

use maud::{Markup, Render, html};

use super::{Action, Balloon};

/// The row. What is left empty is left out.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct PointRow {
    /// The number in the balloon.
    pub number: Balloon,
    /// The name of the point.
    pub name: String,
    /// The page of the point.
    pub to: Option<String>,
    /// What must be moved before this row and those that follow it.
    pub first: String,
    /// What to take care of here.
    pub cautions: Vec<String>,
    /// How much, in strokes or drops of the can at hand.
    pub dose: String,
    /// Which can, where a stand needs more than one.
    pub can: String,
    /// What else helps: how it is oiled, where it hides, how long since.
    pub small: String,
    /// What shows that the oil got there.
    pub sign: String,
    /// What was already written down: "Oiled at 9:12".
    pub done: Option<String>,
    /// Why it could not be reached, while it still waits.
    pub hindered: Option<String>,
    /// The next word to press; none when there is nothing left to do.
    pub next: Option<Action>,
    /// The other answer to the same question, as a line under it: "Not seen".
    pub other: Option<Action>,
}

impl Render for PointRow {
    fn render(&self) -> Markup {
        html! {
            li.point-row.point-row-given[self.done.is_some()].point-row-past[self.next.is_none()].point-row-either[self.other.is_some()] {
                @if !self.first.is_empty() { p.point-row-first { b { "First: " } (self.first) } }
                @if !self.cautions.is_empty() { p.point-row-care { b { "Care: " } (self.cautions.join(" ")) } }
                (self.number)
                div.point-row-head {
                    p.point-row-name {
                        @match &self.to { Some(to) => { a href=(to) { (self.name) } }, None => { (self.name) } }
                    }
                    @if let Some(done) = &self.done { p.point-row-done { (done) } }
                    @if let Some(why) = &self.hindered { p.point-row-done { (why) } }
                    @if !self.dose.is_empty() || !self.can.is_empty() {
                        p.point-row-small { span.point-row-dose { (self.dose) } " " (self.can) }
                    }
                }
                @if self.next.is_some() || self.other.is_some() {
                    div.point-row-acts {
                        @if let Some(next) = &self.next { (next) }
                        @if let Some(other) = &self.other { (other.as_line()) }
                    }
                }
                @if !self.small.is_empty() || !self.sign.is_empty() {
                    div.point-row-more {
                        @if !self.small.is_empty() { p.point-row-small { (self.small) } }
                        @if !self.sign.is_empty() { p.point-row-sign { b { "Look for: " } (self.sign) } }
                    }
                }
            }
        }
    }
}
