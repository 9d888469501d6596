//! How each statement about a point is known. Where several speak of one statement they stand side by side, for they may
//! disagree.

pub(crate) mod fresh;

use maud::{Markup, html};
use shop::chart::{Evidence, How};

use crate::parts::{Cell, Column, Style, Table};
use crate::phrase::capital;

/// The table; nothing where nobody has said how anything is known.
pub(crate) fn table(evidence: &[Evidence]) -> Option<Table> {
    let mut statements: Vec<(&str, Vec<&Evidence>)> = Vec::new();
    for evidence in evidence {
        let of: Vec<&str> =
            if evidence.of.is_empty() { vec![""] } else { evidence.of.iter().map(String::as_str).collect() };
        for statement in of {
            match statements.iter_mut().find(|(known, _)| *known == statement) {
                Some((_, all)) => all.push(evidence),
                None => statements.push((statement, vec![evidence])),
            }
        }
    }
    let rows: Vec<Vec<Cell>> = statements
        .into_iter()
        .map(|(statement, all)| vec![statement_in_words(statement).into(), Cell::Part(side_by_side(&all))])
        .collect();
    (!rows.is_empty()).then(|| Table {
        caption: "Each statement is known for itself: a hole that was traced says nothing of its oil".into(),
        columns: ["Statement", "How it is known"].map(|heading| Column::Words(heading.into())).into(),
        rows,
        style: Style::Answer,
    })
}

fn side_by_side(all: &[&Evidence]) -> Markup {
    html! { div.two { @for evidence in all { (told(evidence)) } } }
}

fn told(evidence: &Evidence) -> Markup {
    let date = evidence.date.map(|date| date.strftime("%-d %B %Y").to_string());
    let more: Vec<&str> = [evidence.example.as_deref(), evidence.note.as_deref(), evidence.link.as_deref()]
        .into_iter()
        .flatten()
        .collect();
    html! {
        div {
            b { (how(evidence.how)) }
            @if let Some(date) = date { ", " (date) }
            @if !more.is_empty() { small { (capital(&more.join("; "))) } }
        }
    }
}

fn how(how: How) -> &'static str {
    match how {
        How::Plate => "On the plate",
        How::Handbook => "In a handbook",
        How::Told => "Told",
        How::Guess => "A guess",
        How::Traced => "Traced",
        How::SeenWorking => "Seen working",
        How::Unknown => "Nobody knows",
    }
}

/// A key of the chart file as a person would say it.
fn statement_in_words(statement: &str) -> String {
    const WORDS: [(&str, &str); 15] = [
        ("", "All of it"),
        ("assembly", "The part it belongs to"),
        ("name", "What it is called"),
        ("method", "How it is oiled"),
        ("reservoir", "What it fills"),
        ("circuit", "Its oil lines"),
        ("feeds", "What it feeds"),
        ("stand", "Where to stand"),
        ("where", "Where it is"),
        ("place", "Where it is"),
        ("setup", "How to set the machine"),
        ("dose", "How much"),
        ("every", "How often"),
        ("interval", "How often"),
        ("oil", "Which oil"),
    ];
    let known = WORDS.iter().find(|(key, _)| *key == statement);
    known.map_or_else(|| capital(&statement.replace('_', " ")), |(_, words)| (*words).to_owned())
}
