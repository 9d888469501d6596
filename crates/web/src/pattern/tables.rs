//! The tables of the pattern page: an answer with its verdicts, and the working that unfolds below it.

use maud::{Markup, Render, html};

use super::folds;
use crate::parts::{Balloon, Cell, Column, Style, Table, Verdict};

pub(super) fn oils() -> Table {
    let because = [
        ("Circulating 68", "Thick enough warm, thin enough for the wick on a cold morning"),
        ("Circulating 46", "One grade thin at the slow speeds"),
        ("Way oil 68", "Its tackifier will not climb the wick"),
        ("Lithium grease 2", "Plugs the passage; the bearing starves"),
    ];
    let rows = Verdict::ALL
        .iter()
        .zip(because)
        .map(|(verdict, (oil, reason))| vec![oil.into(), Cell::Part(verdict.render()), reason.into()]);
    Table {
        caption: "Oils on the shelf for point 9".into(),
        columns: ["Oil", "Will it do?", "Because"].map(|heading| Column::Words(heading.into())).into(),
        rows: rows.collect(),
        style: Style::Answer,
    }
}

/// The same kind of table with more columns than a phone has room for.
pub(super) fn points() -> Table {
    let columns = ["Point", "How oiled", "Oil", "How much", "How often", "Last done"];
    let row = |[number, name, rest @ ..]: [&str; 7]| {
        let point = Balloon(number.to_owned()).named(name, "#working");
        [Cell::Part(point)].into_iter().chain(rest.map(Cell::from)).collect()
    };
    Table {
        caption: "Points of the ram".into(),
        columns: columns.map(|heading| Column::Words(heading.into())).into(),
        rows: vec![
            row(["3", "Ram way, rear left", "ball oiler", "way 68", "2 strokes", "1 use or 4 h", "today, 9:12"]),
            row(["24", "Ram screw", "oil hole", "circulating 68", "4 drops", "3 months", "not yet"]),
        ],
        style: Style::Wide,
    }
}

pub(super) fn workings() -> Markup {
    let steps = [
        ("Load", "charted", "2.50 kN"),
        ("Clearance", "assumed, common practice; moves the answer little", "0.09 mm"),
        ("Oil at the bearing", "heat balance, shop 18 °C", "about 25 °C"),
    ];
    let working = Table {
        caption: "From the chart to the answer".into(),
        columns: vec![Column::Words("Step".into()), Column::Figures("Result".into())],
        rows: steps.map(|(step, source, result)| vec![Cell::Note(step.into(), source.into()), result.into()]).into(),
        style: Style::Working,
    };
    html! { div { (folds(working.render())) } }
}
