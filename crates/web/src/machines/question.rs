//! The questions of a form about one element of a chart, each by the key of the chart that its answer becomes. Start at [`fields`] for
//! the form, at [`edits`] or [`keys`] for what was sent, and at [`mend`] for the form that comes back with its faults.

use shop::chart::Chart;
use shop::document::{Edit, Target, Value};
use shop::id::Id;

use super::revision::Outcome;
use super::sent::{Answer, Sent};
use crate::parts::{Entry, Field};

/// A question about an `E`.
pub(crate) struct Question<E: 'static> {
    pub(crate) key: &'static str,
    pub(crate) label: &'static str,
    pub(crate) hint: &'static str,
    /// What is said when it is left empty and the chart must have it.
    pub(crate) must: Option<&'static str>,
    /// What the chart says now.
    pub(crate) now: fn(&E) -> String,
    /// How it is answered.
    pub(crate) entry: fn(&Chart) -> Entry,
    /// The answer as the chart keeps it.
    pub(crate) value: fn(&str) -> Value,
}

impl<E> Question<E> {
    fn says(&self, element: Option<&E>) -> String {
        element.map(self.now).unwrap_or_default()
    }

    fn answer(&self, element: Option<&E>, sent: &Sent) -> Answer {
        sent.answer(self.key, &self.says(element))
    }
}

/// The fields of the form with what the chart says now; nothing yet for an element that is still to be written.
pub(crate) fn fields<E>(questions: &[Question<E>], chart: &Chart, element: Option<&E>) -> Vec<Field> {
    let field = |question: &Question<E>| Field {
        name: question.key.to_owned(),
        label: question.label.to_owned(),
        hint: question.hint.to_owned(),
        entry: (question.entry)(chart),
        value: question.says(element),
        ..Field::default()
    };
    questions.iter().map(field).collect()
}

/// Whether every answer that the chart must have is there.
pub(crate) fn are_answered<E>(questions: &[Question<E>], element: Option<&E>, sent: &Sent) -> bool {
    questions.iter().all(|question| question.must.is_none() || !question.answer(element, sent).typed.is_empty())
}

/// The edits that make the chart say what was sent; none for what it says already.
pub(crate) fn edits<E>(questions: &[Question<E>], of: &Target, element: &E, sent: &Sent) -> Vec<Edit> {
    let changed = |question: &Question<E>| question.answer(Some(element), sent).edit(of, question.key, question.value);
    questions.iter().filter_map(changed).collect()
}

/// The keys of a new element, as far as they were answered.
pub(crate) fn keys<E>(questions: &[Question<E>], sent: &Sent) -> Vec<(String, Value)> {
    let said = questions.iter().map(|question| (question, question.answer(None, sent).typed));
    said.filter(|(_, said)| !said.is_empty())
        .map(|(question, said)| (question.key.to_owned(), (question.value)(&said)))
        .collect()
}

/// Whether an element says all that was sent for a new one, as it does after a second press of the same button.
pub(crate) fn says_already<E>(questions: &[Question<E>], element: &E, sent: &Sent) -> bool {
    questions.iter().all(|question| question.says(Some(element)).trim() == sent.typed(question.key))
}

/// Puts what was sent into the fields, and what is wrong with it beside them.
pub(crate) fn mend<E>(
    fields: &mut [Field],
    questions: &[Question<E>],
    (id, element): (&Id, Option<&E>),
    sent: &Sent,
    outcome: &mut Outcome,
) {
    for question in questions {
        let Some(field) = fields.iter_mut().find(|field| field.name == question.key) else { continue };
        let answer = question.answer(element, sent);
        let missing = question.must.filter(|_| answer.typed.is_empty()).map(str::to_owned);
        field.fault = missing.or_else(|| outcome.beside(id, question.key, &answer));
        field.value = answer.typed;
    }
}
