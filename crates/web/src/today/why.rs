//! What unfolds under the round: why each point is in it, and what the answer rests on.

use advice::round::Round;
use advice::words;
use advice::working::Reasoned;
use maud::{Markup, Render, html};
use tribology::quantity::Units;

use crate::parts::{Cell, Column, Style, Table};
use crate::phrase::capital;

/// Each point with the reasons why it is due.
pub(super) fn points(round: &Round) -> Markup {
    let rows = round.stands.iter().flat_map(|at| &at.points).map(|point| {
        let because: Vec<String> = point.due.iter().map(words::due).collect();
        let because =
            if because.is_empty() { "not due; it was done all the same".to_owned() } else { because.join("; ") };
        vec![Cell::Text(format!("{} {}", point.id, point.name)), Cell::Text(capital(&because))]
    });
    let rows: Vec<Vec<Cell>> = rows.collect();
    if rows.is_empty() {
        return html! { p { "No point is due." } };
    }
    Table {
        caption: "Points of this round".into(),
        columns: ["Point", "Why"].map(|heading| Column::Words(heading.into())).into(),
        rows,
        style: Style::Working,
    }
    .render()
}

/// The warnings, the sums and the assumptions.
pub(super) fn working(reasoned: &Reasoned<Round>, units: Units) -> Markup {
    html! {
        @for warning in reasoned.warnings() { p { (capital(&words::warning(warning))) "." } }
        h3 { "Assumed" }
        ul { @for assumed in &reasoned.assumed { li { (capital(&words::assumption(assumed))) "." } } }
        h3 { "Sums" }
        ul { @for (sum, times) in sums(reasoned, units) { li { (sum) @if times > 1 { "; the same for " (times) " points" } } } }
    }
}

/// The sums, each once, with how often it was the same.
fn sums(reasoned: &Reasoned<Round>, units: Units) -> Vec<(String, usize)> {
    let mut sums: Vec<(String, usize)> = Vec::new();
    for step in reasoned.steps() {
        let said = words::step(step, units);
        match sums.iter_mut().find(|(known, _)| *known == said) {
            Some((_, times)) => *times += 1,
            None => sums.push((said, 1)),
        }
    }
    sums
}
