//! How this example is built: the questions that a look at the machine settles, and their answers.

use shop::chart::Chart;

use crate::parts::{Cell, Column, Style, Table};
use crate::phrase::capital;

/// The table; nothing where every example of the model is alike.
pub(super) fn table(chart: &Chart) -> Option<Table> {
    let rows: Vec<Vec<Cell>> = chart
        .options
        .iter()
        .map(|option| {
            let choices = format!("{}?", option.choices.join(", or "));
            let here = option.here.as_deref().map_or_else(|| "not settled yet".to_owned(), capital);
            vec![Cell::Note(option.question.clone(), capital(&choices)), Cell::Text(here)]
        })
        .collect();
    (!rows.is_empty()).then(|| Table {
        caption: "Examples of one model differ; a look at the machine settles it".into(),
        columns: ["Question", "On this machine"].map(|heading| Column::Words(heading.into())).into(),
        rows,
        style: Style::Answer,
    })
}
