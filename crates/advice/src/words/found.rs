//! What a topic found, in words: `1080 mm²/s`, `none`.

use tribology::quantity::{Units, digits_of, said_si, usual_unit};

use crate::topic::{Item, Value};

/// Significant digits of a result: more than any of the formulas deserves, so that nothing is lost in comparing.
const DIGITS: usize = 4;
/// A text as long as this is a sentence.
const SENTENCE: usize = 70;

/// A result's value; rows are left to the caller.
#[must_use]
pub fn found(value: &Value, units: Units) -> String {
    match value {
        Value::Nothing => "none".to_owned(),
        Value::Number(number) => digits_of(*number, DIGITS),
        Value::Part(part) => format!("{} %", digits_of(100.0 * part, 2)),
        Value::Whole(number) => number.to_string(),
        Value::Quantity(si, unit) => said_si(*si, usual_unit(unit.kind, units, *si), DIGITS),
        Value::Text(text) => text.clone(),
        Value::Texts(texts) => texts.join("; "),
        Value::Rows(rows) => rows.iter().map(|row| row_line(row, units)).collect::<Vec<_>>().join("; "),
        Value::Named(named) => {
            let one = |(name, value): &(String, Value)| format!("{name} {}", found(value, units));
            named.iter().map(one).collect::<Vec<_>>().join("; ")
        }
    }
}

/// Results as lines, each a label and a value; the rows of a list are lines of their own.
#[must_use]
pub fn lines(items: &[Item], units: Units) -> Vec<[String; 2]> {
    let mut lines = Vec::new();
    for item in items {
        match &item.value {
            Value::Rows(rows) => {
                lines.extend(rows.iter().map(|row| [item.label.to_owned(), row_line(row, units)]));
            }
            Value::Named(named) => {
                lines.extend(named.iter().map(|(name, value)| [format!("{} {name}", item.label), found(value, units)]));
            }
            // Words stand in one line, sentences each in its own.
            Value::Texts(texts) if texts.iter().all(|text| text.len() < SENTENCE) => {
                if !texts.is_empty() {
                    lines.push([item.label.to_owned(), texts.join("; ")]);
                }
            }
            Value::Texts(texts) => lines.extend(texts.iter().map(|text| [item.label.to_owned(), text.clone()])),
            // What there is none of is told to programs only.
            Value::Nothing if item.key == "sort" => {}
            value => lines.push([item.label.to_owned(), found(value, units)]),
        }
    }
    lines
}

/// `218.4 mm²/s at 20 °C`, `68, fits 61 %`: a row that begins with where it holds is turned round.
fn row_line(row: &[Item], units: Units) -> String {
    let labelled = |item: &Item| format!("{} {}", item.label, found(&item.value, units));
    match row {
        [place, value] if place.label == "at" => format!("{} {}", found(&value.value, units), labelled(place)),
        [first, rest @ ..] => {
            let rest = rest.iter().map(|item| format!(", {}", labelled(item)));
            format!("{}{}", found(&first.value, units), rest.collect::<String>())
        }
        [] => String::new(),
    }
}
