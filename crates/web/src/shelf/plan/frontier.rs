//! How much harm how many oils do: the sentence, the plot, and the table of the same figures.

use advice::shelf_plan::Choice;
use advice::verdict::Verdict;
use advice::words;
use draw::{Across, Axis, Curve, Mark, Plot};
use maud::{Markup, PreEscaped, Render, html};

use super::View;
use crate::parts::{Cell, Column, Figure, Style, Table};
use crate::phrase::capital;

pub(super) fn section(view: &View<'_>) -> Markup {
    let side = &view.plan.oils;
    html! {
        h2 { "How many oils?" }
        @for few in &side.too_few { p { (capital(&words::count(few.k, "oil"))) " " (words::too_few(few)) "." } }
        @if side.choices.len() > 1 {
            (Figure {
                drawing: PreEscaped(plot(view).svg("harm")),
                caption: "Each oil more does less harm, up to where more of them are no better. What counts how much is told below.".into(),
            })
        }
        @if !side.choices.is_empty() { (table(view)) }
    }
}

fn plot(view: &View<'_>) -> Plot {
    let side = &view.plan.oils;
    let points: Vec<(f64, f64)> =
        side.choices.iter().map(|choice| (choice.oils.len() as f64, choice.harm as f64)).collect();
    let [first, last] = [points[0], points[points.len() - 1]];
    let named = side.choices.iter().map(|choice| (choice.oils.len() as f64, choice.oils.len().to_string()));
    let advised = side.advice().map(|choice| Mark { name: "advised".into(), at: Across::At(choice.oils.len() as f64) });
    Plot {
        title: "Harm by the number of oils".into(),
        description: format!(
            "It falls from {} with {} to {} with {}. The table beside it has the same figures.",
            first.1,
            words::count(first.0 as usize, "oil"),
            last.1,
            words::count(last.0 as usize, "oil")
        ),
        across: Axis::by("oils", [first.0, last.0], named.collect(), |count| count),
        up: Axis::even("harm", [0.0, first.1.max(1.0)], 5),
        bands: Vec::new(),
        marks: advised.into_iter().collect(),
        curves: vec![Curve { name: String::new(), points }],
    }
}

fn table(view: &View<'_>) -> Markup {
    let shown =
        view.chosen.first().filter(|choice| view.plan.oils.choices.contains(choice)).map(|choice| choice.oils.len());
    let advised = view.plan.oils.advice().map(|choice| choice.oils.len());
    let row = |choice: &Choice| {
        let k = choice.oils.len();
        let count = |verdict: Verdict| choice.given.iter().filter(|given| given.verdict == verdict).count().to_string();
        let state = match (shown == Some(k), advised == Some(k)) {
            (true, true) => "shown below, advised",
            (true, false) => "shown below",
            (false, true) => "advised",
            (false, false) => "",
        };
        let number = html! {
            a href=(view.with(k)) aria-label={ "Show " (words::count(k, "oil")) } { (k) }
            @if !state.is_empty() { small { (state) } }
        };
        vec![
            Cell::Part(number),
            Cell::Part(
                html! { @for (at, oil) in choice.oils.iter().enumerate() { @if at > 0 { "; " } (view.name(oil)) } },
            ),
            count(Verdict::Suits).into(),
            count(Verdict::Serves).into(),
            count(Verdict::Stopgap).into(),
            Cell::Note(choice.harm.to_string(), words::proof(choice)),
        ]
    };
    let words = |heading: &str| Column::Words(heading.into());
    let figures = |heading: &str| Column::Figures(heading.into());
    Table {
        caption: "The best choice for each number of oils: points that it suits, that it serves, and that get along with a stopgap".into(),
        columns: vec![
            words("Oils"),
            words("Which"),
            figures("Suits"),
            figures("Serves"),
            figures("Stopgap"),
            figures("Harm"),
        ],
        rows: view.plan.oils.choices.iter().map(row).collect(),
        style: Style::Wide,
    }
    .render()
}
