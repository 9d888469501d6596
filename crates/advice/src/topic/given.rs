//! What a person gave to a topic: words and options as they were typed, read as quantities on asking. A refusal is one sentence that
//! says what is wrong, where, and what a right one looks like.

use std::fmt;

use shop::reading::{says_number, says_quantity};
use tribology::Error;
use tribology::quantity::{Quantity, Unit, number_and_unit, typed, typed_in};

use super::{Asked, Topic};
use crate::words;

/// What was typed for a topic.
#[derive(Clone, Debug)]
pub struct Given<'t> {
    topic: &'t Topic,
    words: Vec<String>,
    options: Vec<(&'static str, String)>,
}

/// Why a topic gives no answer, in one sentence without its full stop.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Refused {
    says: String,
}

impl Refused {
    pub(crate) fn new(says: impl Into<String>) -> Self {
        Self { says: says.into() }
    }
}

impl fmt::Display for Refused {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.says)
    }
}

impl From<Error> for Refused {
    fn from(error: Error) -> Self {
        Self::new(words::no_answer(&error))
    }
}

impl<'t> Given<'t> {
    /// Nothing typed yet.
    #[must_use]
    pub fn new(topic: &'t Topic) -> Self {
        Self { topic, words: Vec::new(), options: Vec::new() }
    }

    /// Adds words typed without an option; they are set behind one another with spaces between.
    pub fn add_words(&mut self, words: &str) {
        self.words.push(words.to_owned());
    }

    /// Adds what was typed for an option; an empty text is as if nothing had been typed.
    pub fn add(&mut self, option: &'static str, text: &str) {
        if !text.trim().is_empty() {
            self.options.push((option, text.to_owned()));
        }
    }

    /// The answer of the topic.
    ///
    /// # Errors
    /// [`Refused`] when something is missing, cannot be read or cannot be.
    pub fn answer(&self) -> Result<super::Calculated, Refused> {
        (self.topic.answer)(self)
    }

    /// The words, or a refusal that says what is wanted.
    pub(super) fn words(&self) -> Result<String, Refused> {
        let words = self.words.join(" ").trim().to_owned();
        match self.topic.words {
            Some(asked) if words.is_empty() => {
                Err(Refused::new(format!("nothing was given; write {}, such as \"{}\"", asked.label, asked.example)))
            }
            _ => Ok(words),
        }
    }

    /// Everything that was typed for an option.
    pub(super) fn all(&self, name: &str) -> impl Iterator<Item = &str> {
        self.options.iter().filter(move |(option, _)| *option == name).map(|(_, text)| text.as_str())
    }

    /// Whether something was typed for an option.
    pub(super) fn has(&self, name: &str) -> bool {
        self.all(name).next().is_some()
    }

    /// The text of an option.
    pub(super) fn text(&self, name: &str) -> Option<&str> {
        self.all(name).last()
    }

    /// The quantity of an option; its unit may be left out when a unit is given here.
    pub(super) fn quantity<Q: Quantity>(&self, name: &str, bare: Option<&str>) -> Result<Option<Q>, Refused> {
        self.text(name).map(|text| read(&format!("--{name}"), text, bare)).transpose()
    }

    /// The quantity of an option that must be there.
    pub(super) fn must<Q: Quantity>(&self, name: &str, bare: Option<&str>) -> Result<Q, Refused> {
        self.quantity(name, bare)?.ok_or_else(|| self.missing(name))
    }

    /// The number of an option.
    pub(super) fn number(&self, name: &str) -> Result<Option<f64>, Refused> {
        self.text(name).map(|text| number(&format!("--{name}"), text)).transpose()
    }

    /// The number of an option that must be there.
    pub(super) fn must_number(&self, name: &str) -> Result<f64, Refused> {
        self.number(name)?.ok_or_else(|| self.missing(name))
    }

    /// The sentence for an option that is missing.
    pub(super) fn missing(&self, name: &str) -> Refused {
        let example = self.asked(name).map_or(name, |asked| asked.example);
        Refused::new(format!("--{name} is missing; add it, such as --{name} {example}"))
    }

    fn asked(&self, name: &str) -> Option<&Asked> {
        self.topic.options.iter().find(|asked| asked.name == name)
    }
}

/// A text as a quantity; its unit may be left out when a unit is given here.
pub(crate) fn read<Q: Quantity>(what: &str, text: &str, bare: Option<&str>) -> Result<Q, Refused> {
    let read = match bare.and_then(|unit| Unit::find(Q::KIND, unit)) {
        Some(unit) => typed_in(text, unit),
        None => typed(text),
    };
    read.map(|typed| typed.value).map_err(|fault| Refused::new(says_quantity(what, &fault, Q::KIND)))
}

/// A text as a number without a unit.
pub(crate) fn number(what: &str, text: &str) -> Result<f64, Refused> {
    match number_and_unit(text) {
        Ok((number, "")) => Ok(number),
        Ok(_) => {
            Err(Refused::new(format!("{what} is \"{text}\", where a number without a unit is wanted, such as 95")))
        }
        Err(fault) => Err(Refused::new(says_number(what, &fault))),
    }
}

/// A text as a count: a whole number, zero included.
pub(super) fn count(what: &str, text: &str) -> Result<u32, Refused> {
    let number = number(what, text)?;
    if number.fract() == 0.0 && (0.0..=f64::from(u32::MAX)).contains(&number) {
        Ok(number as u32)
    } else {
        Err(Refused::new(format!("{what} is \"{text}\", where a whole number is wanted, such as 3")))
    }
}

/// A text as a share: `25%` or `0.25`.
pub(super) fn share(what: &str, text: &str) -> Result<f64, Refused> {
    let (number, unit) = number_and_unit(text).map_err(|fault| Refused::new(says_number(what, &fault)))?;
    match unit {
        "%" => Ok(number / 100.0),
        "" if (0.0..=1.0).contains(&number) => Ok(number),
        _ => Err(Refused::new(format!("{what} is \"{text}\"; write a share like 25% or 0.25"))),
    }
}
