//! A place to stand at the machine, with its points and its one large act.

use maud::{Markup, Render, html};

use super::{Action, Fold, PointRow, Press};

/// The stand. `id` lets the page come back to it after an act.
#[derive(Clone, Debug, Default)]
pub struct Stand {
    /// The anchor in the page's address.
    pub id: String,
    /// Where to stand: "Left side".
    pub name: String,
    /// Its name for a reader who does not see what stands above it, where one stand is on the page twice.
    pub spoken: Option<String>,
    /// How much there is to do: "5 points".
    pub count: String,
    /// What must hold first, and which can to take.
    pub setup: String,
    /// The points in the order of the hand.
    pub points: Vec<PointRow>,
    /// The one large button.
    pub whole: Option<Action>,
    /// What is seldom wanted here.
    pub fold: Option<Fold>,
    /// What else can be done here, undoing last.
    pub under: Vec<Press>,
}

impl Render for Stand {
    fn render(&self) -> Markup {
        let heading = format!("{}-name", self.id);
        let by = self.spoken.is_none().then_some(&heading);
        html! {
            section.stand id=(self.id) aria-label=[&self.spoken] aria-labelledby=[by] {
                header.stand-head {
                    h2 id=(heading) { (self.name) }
                    span.stand-count { (self.count) }
                    @if !self.setup.is_empty() { p { (self.setup) } }
                }
                ul { @for point in &self.points { (point) } }
                @if let Some(whole) = &self.whole { (whole.as_whole()) }
                @if self.fold.is_some() || !self.under.is_empty() {
                    div.stand-under {
                        @if let Some(fold) = &self.fold { (fold) }
                        @for press in &self.under { (press.as_line()) }
                    }
                }
            }
        }
    }
}
