//! Values as they are written in a chart file.

use std::fmt::Write as _;

use toml_edit::Value as Toml;

use super::edit::Value;

/// A value as it is written.
pub(super) fn written(value: &Value) -> String {
    match value {
        Value::Text(text) => quoted(text),
        Value::Texts(texts) => {
            let parts: Vec<String> = texts.iter().map(|text| quoted(text)).collect();
            format!("[{}]", parts.join(", "))
        }
        Value::Number(number) => number_written(*number),
        Value::Numbers([x, y]) => format!("[{}, {}]", number_written(*x), number_written(*y)),
        Value::YesNo(flag) => flag.to_string(),
        Value::When(when) => {
            let mut text = String::from("{ ");
            for (place, (option, choices)) in when.0.iter().enumerate() {
                let comma = if place == 0 { "" } else { ", " };
                let choices = match choices.as_slice() {
                    [only] => quoted(only),
                    several => written(&Value::Texts(several.to_vec())),
                };
                let _ = write!(text, "{comma}{} = {choices}", key(option.as_str()));
            }
            text + " }"
        }
    }
}

/// A key, in quotes only where it needs them.
pub(super) fn key(name: &str) -> String {
    let bare = !name.is_empty() && name.chars().all(|c| c.is_ascii_alphanumeric() || matches!(c, '-' | '_'));
    if bare { name.to_owned() } else { quoted(name) }
}

fn quoted(text: &str) -> String {
    // The library chooses between quotes by what the text holds; ours are always the double ones, as in every example.
    let mut out = String::with_capacity(text.len() + 2);
    out.push('"');
    for c in text.chars() {
        match c {
            '"' => out.push_str("\\\""),
            '\\' => out.push_str("\\\\"),
            '\n' => out.push_str("\\n"),
            '\t' => out.push_str("\\t"),
            '\r' => out.push_str("\\r"),
            c if c.is_control() => {
                let _ = write!(out, "\\u{:04X}", u32::from(c));
            }
            c => out.push(c),
        }
    }
    out.push('"');
    out
}

fn number_written(number: f64) -> String {
    let whole = number.fract() == 0.0 && number.abs() < 1e15;
    if whole { Toml::from(number as i64).to_string() } else { Toml::from(number).to_string() }
}
