//! What a topic found, in words: `1080 mm²/s`, `none`.

use tribology::quantity::{Units, digits_of, said_si, usual_unit};

use crate::topic::{Item, Value};

/// Significant digits of a result: more than any of the formulas deserves, so that nothing is lost in comparing.
const DIGITS: usize = 4;

/// A result's value; rows are left to the caller.
#[must_use]
pub fn found(value: &Value, units: Units) -> String {
    match value {
        Value::Nothing => "none".to_owned(),
        Value::Number(number) => digits_of(*number, DIGITS),
        Value::Whole(number) => number.to_string(),
        Value::Quantity(si, unit) => said_si(*si, usual_unit(unit.kind, units, *si), DIGITS),
        Value::Text(text) => text.clone(),
        Value::Rows(rows) => rows.iter().map(|row| row_line(row, units)).collect::<Vec<_>>().join("; "),
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
            value => lines.push([item.label.to_owned(), found(value, units)]),
        }
    }
    lines
}

/// `218.4 mm²/s at 20 °C`: the last of a row is what it is about, the others say where.
fn row_line(row: &[Item], units: Units) -> String {
    let Some((last, before)) = row.split_last() else { return String::new() };
    let mut text = found(&last.value, units);
    for item in before {
        text.push_str(&format!(" {} {}", item.label, found(&item.value, units)));
    }
    text
}
