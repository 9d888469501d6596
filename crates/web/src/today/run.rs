//! The form that ends a session: how long the machine ran, and at which job.

use shop::id::Id;

use super::Choice;
use super::choice::jobs;
use crate::FormKey;
use crate::parts::{Entry, Field, Form};
use crate::shop_state::View;

/// What is asked, what was answered so far, and what is wrong with it.
pub(crate) struct Ran {
    pub(crate) machine: Id,
    pub(crate) hours: String,
    pub(crate) job: String,
    pub(crate) planned: String,
    /// Further machines on the same page.
    pub(crate) with: String,
    pub(crate) hours_fault: Option<String>,
    pub(crate) job_fault: Option<String>,
}

impl Ran {
    /// As it was planned.
    pub(crate) fn planned(choice: &Choice) -> Self {
        Self {
            machine: choice.machine.clone(),
            hours: advice::words::hours(choice.hours),
            job: choice.job.as_ref().map_or_else(String::new, |job| job.to_string()),
            planned: choice.typed_hours().to_owned(),
            with: choice.with().to_owned(),
            hours_fault: None,
            job_fault: None,
        }
    }
}

/// The form.
///
/// `before` goes before its anchors, where several machines are on the page.
pub(crate) fn form(view: &View, ran: Ran, before: &str, key: FormKey) -> Form {
    let field = |name: &str, label: &str, entry, value, fault| Field {
        name: name.to_owned(),
        form: format!("{before}ran"),
        label: label.to_owned(),
        entry,
        value,
        fault,
        ..Field::default()
    };
    let mut hidden = vec![("machine".to_owned(), ran.machine.to_string())];
    if !ran.planned.is_empty() {
        hidden.push(("planned".to_owned(), ran.planned));
    }
    if !ran.with.is_empty() {
        hidden.push(("with".to_owned(), ran.with));
    }
    Form {
        to: "/log/runs".to_owned(),
        key,
        hidden,
        fields: vec![
            field("hours", "It ran for, like 3 h or 90 min", Entry::Quantity, ran.hours, ran.hours_fault),
            field("job", "At which job?", Entry::List(jobs(view)), ran.job, ran.job_fault),
        ],
        words: "Log the run".to_owned(),
        wrong: Vec::new(),
        back: None,
    }
}
