//! The values that a table can hold, each read with its faults: texts, numbers, choices, quantities, doses, intervals, dates.

use std::ops::Range;

use jiff::civil::Date;
use toml_edit::{Item, Value};
use tribology::quantity::{Quantity, Typed, TypedFault, Unit, typed, typed_in};

use crate::amount::{Dose, Interval, Speed};
use crate::choice::Choice;
use crate::fault::{either, nearest};

use super::says::{says_dose, says_interval, says_quantity, says_speed};
use super::table::Table;

type Spanned<'t> = (&'t str, Option<Range<usize>>);

impl<'t> Table<'t> {
    /// A text that is not blank.
    pub fn text(&self, key: &'static str) -> Option<String> {
        self.string(key).map(|(text, _)| text.to_owned())
    }

    /// A text, or a list of texts.
    pub fn texts(&self, key: &'static str) -> Vec<String> {
        self.strings(key).into_iter().map(|(text, _)| text.to_owned()).collect()
    }

    /// Texts with their places.
    pub(crate) fn strings(&self, key: &'static str) -> Vec<Spanned<'t>> {
        let Some(item) = self.item(key) else { return Vec::new() };
        match item.as_array() {
            Some(list) => list
                .iter()
                .filter_map(|value| match value.as_str() {
                    Some(text) if !text.trim().is_empty() => Some((text, value.span())),
                    _ => {
                        self.log.fault(
                            value.span(),
                            format!("{} holds {}; write a text in quotes", self.what(key), sort(value)),
                        );
                        None
                    }
                })
                .collect(),
            None => self.string(key).into_iter().collect(),
        }
    }

    /// A text with its place.
    pub(crate) fn string(&self, key: &'static str) -> Option<Spanned<'t>> {
        let item = self.item(key)?;
        match item.as_str() {
            Some(text) if text.trim().is_empty() => {
                self.fault(key, "is empty; write a text in the quotes, or leave the key out");
                None
            }
            Some(text) => Some((text, item.span())),
            None => {
                let is = item.as_value().map_or("a table", sort);
                let quoted = item.as_value().map(|value| value.to_string().trim().to_owned()).filter(|_| {
                    item.as_integer().is_some() || item.as_float().is_some() || item.as_datetime().is_some()
                });
                match quoted {
                    Some(bare) => self.fault(key, &format!("is {is}; put it in quotes: {key} = \"{bare}\"")),
                    None => self.fault(key, &format!("is {is}, where a text in quotes is wanted")),
                }
                None
            }
        }
    }

    /// One of a few words.
    pub fn choice<C: Choice>(&self, key: &'static str) -> Option<C> {
        let (word, span) = self.string(key)?;
        let choice = C::from_word(word.trim());
        if choice.is_none() {
            self.log.unknown(span, unknown_word(&self.what(key), word, &C::words()));
        }
        choice
    }

    /// Some of a few words.
    pub fn choices<C: Choice>(&self, key: &'static str) -> Vec<C> {
        self.strings(key)
            .into_iter()
            .filter_map(|(word, span)| {
                let choice = C::from_word(word.trim());
                if choice.is_none() {
                    self.log.unknown(span, unknown_word(&self.what(key), word, &C::words()));
                }
                choice
            })
            .collect()
    }

    /// A quantity with its unit.
    pub fn quantity<Q: Quantity>(&self, key: &'static str) -> Option<Typed<Q>> {
        let (text, span) = self.string(key)?;
        self.parsed(span, typed::<Q>(text), |fault| says_quantity(&self.what(key), fault, Q::KIND))
    }

    /// A quantity above zero; at or below it is a fault.
    pub fn positive<Q: Quantity>(&self, key: &'static str) -> Option<Typed<Q>> {
        let value = self.quantity::<Q>(key)?;
        if value.value.si() > 0.0 {
            return Some(value);
        }
        self.fault(key, &format!("is \"{}\"; it must be above zero, such as \"{}\"", value.text, Q::KIND.example()));
        None
    }

    /// Quantities above zero, one or a list.
    pub fn quantities<Q: Quantity>(&self, key: &'static str) -> Vec<Typed<Q>> {
        self.strings(key)
            .into_iter()
            .filter_map(|(text, span)| {
                let value = self
                    .parsed(span.clone(), typed::<Q>(text), |fault| says_quantity(&self.what(key), fault, Q::KIND))?;
                if value.value.si() > 0.0 {
                    return Some(value);
                }
                self.log.fault(
                    span,
                    format!(
                        "{} holds \"{text}\"; it must be above zero, such as \"{}\"",
                        self.what(key),
                        Q::KIND.example()
                    ),
                );
                None
            })
            .collect()
    }

    /// A quantity that may be a bare number, its unit then being the key's own.
    pub fn quantity_in<Q: Quantity>(&self, key: &'static str, unit: &'static Unit) -> Option<Typed<Q>> {
        let item = self.item(key)?;
        let (text, span) = match item.as_float().or_else(|| item.as_integer().map(|whole| whole as f64)) {
            Some(number) => (number.to_string(), item.span()),
            None => self.string(key).map(|(text, span)| (text.to_owned(), span))?,
        };
        self.parsed(span, typed_in::<Q>(&text, unit), |fault| says_quantity(&self.what(key), fault, Q::KIND))
    }

    /// A dose above zero.
    pub fn dose(&self, key: &'static str) -> Option<Dose> {
        let (text, span) = self.string(key)?;
        let dose = self.parsed(span, Dose::read(text), |fault| says_dose(&self.what(key), fault))?;
        if dose.is_positive() {
            return Some(dose);
        }
        self.fault(key, &format!("is \"{text}\"; a dose is above zero, such as \"2 strokes\" or \"4 drops\""));
        None
    }

    /// Intervals, one or a list.
    pub fn intervals(&self, key: &'static str) -> Vec<Interval> {
        self.strings(key)
            .into_iter()
            .filter_map(|(text, span)| {
                self.parsed(span, Interval::read(text), |fault| says_interval(&self.what(key), fault))
            })
            .collect()
    }

    /// Speeds above zero, one or a list.
    pub fn speeds(&self, key: &'static str) -> Vec<Speed> {
        self.strings(key)
            .into_iter()
            .filter_map(|(text, span)| {
                let speed = self
                    .parsed(span.clone(), Speed::read(text), |fault: &TypedFault| says_speed(&self.what(key), fault))?;
                if speed.is_positive() {
                    return Some(speed);
                }
                self.log.fault(
                    span,
                    format!("{} holds \"{text}\"; a speed is above zero, such as \"94 rpm\"", self.what(key)),
                );
                None
            })
            .collect()
    }

    /// A bare number.
    pub fn number(&self, key: &'static str) -> Option<f64> {
        let item = self.item(key)?;
        let number = as_number(item.as_value()).filter(|number| number.is_finite());
        if number.is_none() {
            self.fault(key, "is no number; write it without quotes and without a unit, such as 95");
        }
        number
    }

    /// Two bare numbers.
    pub fn two_numbers(&self, key: &'static str) -> Option<[f64; 2]> {
        let item = self.item(key)?;
        let pair =
            item.as_array().and_then(|list| match (as_number(list.get(0)), as_number(list.get(1)), list.len()) {
                (Some(x), Some(y), 2) if x.is_finite() && y.is_finite() => Some([x, y]),
                _ => None,
            });
        if pair.is_none() {
            self.fault(key, "is not two numbers; write it like [0.4, 0.7]");
        }
        pair
    }

    /// `true` or `false`.
    pub fn yes_no(&self, key: &'static str) -> Option<bool> {
        let item = self.item(key)?;
        let flag = item.as_bool();
        if flag.is_none() {
            self.fault(key, "is neither true nor false; write one of the two without quotes");
        }
        flag
    }

    /// A day, in quotes or bare.
    pub fn date(&self, key: &'static str) -> Option<Date> {
        let item = self.item(key)?;
        let text = match item {
            Item::Value(Value::Datetime(bare)) => bare.value().to_string(),
            _ => self.string(key)?.0.to_owned(),
        };
        let date = text.trim().parse::<Date>().ok();
        if date.is_none() {
            self.fault(
                key,
                &format!(
                    "is \"{text}\", which is no day of the calendar; write year, month and day like \"2026-03-14\""
                ),
            );
        }
        date
    }

    fn parsed<V, F>(
        &self,
        span: Option<Range<usize>>,
        read: Result<V, F>,
        says: impl FnOnce(&F) -> String,
    ) -> Option<V> {
        read.map_err(|fault| self.log.fault(span, says(&fault))).ok()
    }
}

fn unknown_word(what: &str, word: &str, words: &[&'static str]) -> String {
    match nearest(word, words.iter().copied()) {
        Some(near) => format!("{what} is \"{word}\", which is not known here; did you mean \"{near}\"?"),
        None => format!("{what} is \"{word}\", which is not known here; write {}", either(words.iter().copied())),
    }
}

fn as_number(value: Option<&Value>) -> Option<f64> {
    let value = value?;
    value.as_float().or_else(|| value.as_integer().map(|whole| whole as f64))
}

fn sort(value: &Value) -> &'static str {
    match value {
        Value::String(_) => "a text",
        Value::Integer(_) | Value::Float(_) => "a bare number",
        Value::Boolean(_) => "true or false",
        Value::Datetime(_) => "a bare date",
        Value::Array(_) => "a list",
        Value::InlineTable(_) => "an inline table",
    }
}
