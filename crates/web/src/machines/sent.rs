//! What a form that changes a chart sends: beside each answer, what the form showed when it was opened. So a field that nobody touched
//! is told from one that was, and what somebody else wrote meanwhile is not undone by a form that only carried the old words along.

use std::collections::BTreeMap;

use serde::Deserialize;
use shop::document::{Edit, Target, Value};

use crate::FormKey;
use crate::parts::Field;

/// The form as it is sent.
#[derive(Debug, Deserialize)]
pub(crate) struct Sent {
    pub(crate) key: FormKey,
    pub(super) revision: String,
    #[serde(flatten)]
    typed: BTreeMap<String, String>,
}

/// The answer to one question, held against the chart.
#[derive(Default)]
pub(crate) struct Answer {
    /// What the form showed when it was opened.
    pub(crate) was: String,
    /// What the chart says now.
    pub(crate) now: String,
    /// What is to be: what was typed; where nobody touched the field, what the chart says now.
    pub(crate) typed: String,
}

/// What goes unseen with a form, so that its fields can be told from untouched ones.
pub(super) fn shown(fields: &[Field]) -> impl Iterator<Item = (String, String)> {
    fields.iter().map(|field| (was(&field.name), field.value.clone()))
}

fn was(name: &str) -> String {
    format!("was-{name}")
}

impl Sent {
    /// What was typed under this name, without the white space around it.
    pub(crate) fn typed(&self, name: &str) -> String {
        self.asked(name).unwrap_or_default()
    }

    /// The answer under this name, where the chart says `now`.
    pub(crate) fn answer(&self, name: &str, now: &str) -> Answer {
        let now = even(now);
        let was = self.asked(&was(name)).unwrap_or_else(|| now.clone());
        let typed = self.asked(name).filter(|typed| *typed != was).unwrap_or_else(|| now.clone());
        Answer { was, now, typed }
    }

    /// What came under this name; nothing where nothing did.
    fn asked(&self, name: &str) -> Option<String> {
        self.typed.get(name).map(|typed| even(typed))
    }
}

impl Answer {
    /// The edit that makes a key say what is to be; none where it says so already, so that the text around it stays as it is.
    pub(crate) fn edit(&self, of: &Target, key: &str, value: impl Fn(&str) -> Value) -> Option<Edit> {
        let (of, key) = (of.clone(), key.to_owned());
        if self.now == self.typed {
            None
        } else if self.typed.is_empty() {
            Some(Edit::Clear { of, key })
        } else {
            Some(Edit::Set { of, key, to: value(&self.typed) })
        }
    }

    /// What is to be said beside a field of which the chart says something else since the form was opened.
    pub(super) fn overtaken(&self) -> Option<String> {
        let quoted = |text: &str| if text.is_empty() { "nothing here".to_owned() } else { format!("\"{text}\"") };
        if self.was == self.now {
            None
        } else if self.typed == self.now {
            Some(format!("This was changed meanwhile. It said {} when you opened the form.", quoted(&self.was)))
        } else {
            Some(format!("The chart now says {}. Leave what you typed, or write that instead.", quoted(&self.now)))
        }
    }
}

/// One text as the chart keeps it.
pub(crate) fn text(typed: &str) -> Value {
    Value::Text(typed.to_owned())
}

/// Each line as one text.
pub(crate) fn lines(typed: &str) -> Value {
    Value::Texts(typed.lines().map(str::trim).filter(|line| !line.is_empty()).map(str::to_owned).collect())
}

/// Without the white space around it and with the line breaks that the chart has; a browser sends others.
fn even(text: &str) -> String {
    text.trim().replace("\r\n", "\n")
}
