//! A question on a form. What was typed is kept, and what is wrong with it stands beside it.

use maud::{Markup, Render, html};

/// The question, its answer so far, and its fault.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Field {
    /// The name under which it is sent; it also makes the anchor.
    pub name: String,
    /// Goes before the anchor where forms of one page ask for things of one name; empty where none do.
    pub form: String,
    /// The question.
    pub label: String,
    /// What a right answer looks like.
    pub hint: String,
    /// How it is answered.
    pub entry: Entry,
    /// What was typed or chosen.
    pub value: String,
    /// What is wrong with it.
    pub fault: Option<String>,
}

/// How a question is answered.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub enum Entry {
    /// A line of text.
    #[default]
    Line,
    /// A line of text, with the usual answers offered.
    Offered(Vec<String>),
    /// A quantity with its unit, as people type it.
    Quantity,
    /// Several lines of text.
    Text,
    /// A day.
    Day,
    /// One of a few, all in sight.
    Pick(Vec<Choice>),
    /// Any of a few, all in sight; their values stand behind one another with commas.
    Several(Vec<Choice>),
    /// One of many, in a list.
    List(Vec<Choice>),
}

/// One answer to choose.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Choice {
    /// What is sent.
    pub value: String,
    /// What is read.
    pub words: String,
    /// A smaller line under it, shown where all choices are in sight: what follows from it.
    pub note: String,
}

impl Choice {
    /// A choice that sends `value` and reads `words`.
    pub fn new(value: impl Into<String>, words: impl Into<String>) -> Self {
        Self { value: value.into(), words: words.into(), note: String::new() }
    }

    /// The choice with a smaller line under it.
    #[must_use]
    pub fn noted(self, note: impl Into<String>) -> Self {
        Self { note: note.into(), ..self }
    }
}

impl Field {
    /// The anchor of its entry.
    pub(super) fn anchor(&self) -> String {
        if self.form.is_empty() { self.name.clone() } else { format!("{}-{}", self.form, self.name) }
    }

    fn told(&self) -> Option<String> {
        let hint = (!self.hint.is_empty()).then(|| format!("{}-hint", self.anchor()));
        let fault = self.fault.as_ref().map(|_| format!("{}-fault", self.anchor()));
        let ids: Vec<String> = hint.into_iter().chain(fault).collect();
        (!ids.is_empty()).then(|| ids.join(" "))
    }

    fn about(&self) -> Markup {
        html! {
            @if !self.hint.is_empty() { p.field-hint id={ (self.anchor()) "-hint" } { (self.hint) } }
            @if let Some(fault) = &self.fault { p.field-fault id={ (self.anchor()) "-fault" } { (fault) } }
        }
    }

    fn picked(&self, choices: &[Choice], kind: &str) -> Markup {
        let is_chosen = |choice: &Choice| self.value.split(',').any(|value| value == choice.value);
        html! {
            fieldset.field.field-wrong[self.fault.is_some()] id=(self.anchor()) tabindex="-1" aria-describedby=[self.told()] {
                legend { (self.label) }
                (self.about())
                div {
                    @for choice in choices {
                        label.field-choice {
                            input type=(kind) name=(self.name) value=(choice.value) checked[is_chosen(choice)];
                            span { (choice.words) @if !choice.note.is_empty() { small { (choice.note) } } }
                        }
                    }
                }
            }
        }
    }

    fn typed(&self) -> Markup {
        let wrong = self.fault.as_ref().map(|_| "true");
        let (id, name, value, told) = (self.anchor(), &self.name, &self.value, self.told());
        html! {
            div.field.field-wrong[self.fault.is_some()] {
                label.field-label for=(id) { (self.label) }
                (self.about())
                @match &self.entry {
                    Entry::Text => {
                        // A browser drops the first line break of the field, so one is given to be dropped.
                        textarea.field-entry id=(id) name=(name) aria-invalid=[wrong] aria-describedby=[told] { "\n" (value) }
                    }
                    Entry::List(choices) => {
                        select.field-entry id=(id) name=(name) aria-invalid=[wrong] aria-describedby=[told] {
                            @for choice in choices {
                                option value=(choice.value) selected[choice.value == *value] { (choice.words) }
                            }
                        }
                    }
                    Entry::Day => {
                        input.field-entry.field-short type="date" id=(id) name=(name) value=(value)
                            aria-invalid=[wrong] aria-describedby=[told];
                    }
                    Entry::Quantity => {
                        input.field-entry.field-short type="text" id=(id) name=(name) value=(value) autocomplete="off"
                            autocapitalize="none" spellcheck="false" aria-invalid=[wrong] aria-describedby=[told];
                    }
                    Entry::Offered(usual) => {
                        input.field-entry type="text" id=(id) name=(name) value=(value) autocomplete="off"
                            list={ (id) "-usual" } aria-invalid=[wrong] aria-describedby=[told];
                        datalist id={ (id) "-usual" } { @for words in usual { option value=(words) {} } }
                    }
                    Entry::Line | Entry::Pick(_) | Entry::Several(_) => {
                        input.field-entry type="text" id=(id) name=(name) value=(value) autocomplete="off"
                            aria-invalid=[wrong] aria-describedby=[told];
                    }
                }
            }
        }
    }
}

impl Render for Field {
    fn render(&self) -> Markup {
        match &self.entry {
            Entry::Pick(choices) => self.picked(choices, "radio"),
            Entry::Several(choices) => self.picked(choices, "checkbox"),
            _ => self.typed(),
        }
    }
}
