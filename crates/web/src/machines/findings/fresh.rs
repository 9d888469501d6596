//! `POST /machines/{id}/findings`: a new finding is written into the chart.

use axum::extract::{Form, Path, State};
use axum::response::{IntoResponse, Redirect, Response};
use maud::{Markup, Render, html};
use shop::chart::{Chart, Finding};
use shop::document::{Edit, Value};
use shop::id::Id;

use super::finding::{anchor, hole};
use super::page;
use super::questions::{ABOUT, QUESTIONS, elements};
use crate::hand::Hand;
use crate::machines::ids::next_finding;
use crate::machines::question::Question;
use crate::machines::revision::{Outcome, Revision};
use crate::machines::sent::{Answer, Sent, lines, text};
use crate::machines::wrong::Wrong;
use crate::parts::{Entry, Field, Fold, Form as Questions};
use crate::shop_state::{Shop, View};
use crate::{Error, FormKey, address};

/// The line that opens the form.
pub(super) const LINE: &str = "Write down something new";

/// What was typed into the form, and what is wrong with it.
#[derive(Default)]
pub(super) struct Typed {
    /// Each key with what was typed for it and with its fault.
    answers: Vec<(&'static str, String, Option<String>)>,
    wrong: Vec<String>,
}

impl Typed {
    /// Nothing yet but what it is about.
    pub(super) fn about(id: &str) -> Self {
        Self { answers: vec![("of", id.to_owned(), None)], wrong: Vec::new() }
    }

    fn of(sent: &Sent) -> Self {
        let keys = QUESTIONS.iter().map(|question| question.key).chain(["of"]);
        Self { answers: keys.map(|key| (key, sent.typed(key), None)).collect(), wrong: Vec::new() }
    }

    fn said(&self, key: &str) -> &str {
        self.answers.iter().find(|(known, ..)| *known == key).map_or("", |(_, typed, _)| typed)
    }

    /// The faults that show before the chart is asked.
    fn look_over(&mut self) {
        for (key, typed, fault) in &mut self.answers {
            let must = QUESTIONS.iter().find(|question| question.key == *key).and_then(|question| question.must);
            *fault = must.filter(|_| typed.is_empty()).map(str::to_owned);
        }
    }

    fn is_right(&self) -> bool {
        self.answers.iter().all(|(_, _, fault)| fault.is_none())
    }

    /// The keys of the new finding.
    fn keys(&self, id: &Id) -> Vec<(String, Value)> {
        let own = |key: &str, value: Value| (key.to_owned(), value);
        let mut keys = vec![own("id", text(id.as_str()))];
        let said = QUESTIONS.iter().map(|question| (question, self.said(question.key)));
        keys.extend(said.filter(|(_, said)| !said.is_empty()).map(|(q, said)| own(q.key, (q.value)(said))));
        if !self.said("of").is_empty() {
            // Behind its kind.
            keys.insert(2, own("of", lines(self.said("of"))));
        }
        keys
    }

    /// The finding that says all this already, as it does after a second press of the same button.
    fn already(&self, chart: &Chart) -> Option<Id> {
        let same = |finding: &&Finding| {
            let of: Vec<&str> = finding.of.iter().map(Id::as_str).collect();
            let is_said = |question: &Question<Finding>| (question.now)(finding).trim() == self.said(question.key);
            finding.settled.is_none() && of.join("\n") == self.said("of") && QUESTIONS.iter().all(is_said)
        };
        chart.findings.iter().find(same).map(|finding| finding.id.clone())
    }
}

/// `POST /machines/{machine}/findings`
pub(crate) async fn write(
    State(shop): State<Shop>,
    hand: Hand,
    Path(id): Path<String>,
    Form(sent): Form<Sent>,
) -> Result<Response, Error> {
    let view = shop.view(&id).await?;
    let machine = &view.machine.id;
    let turn = Revision::take(&shop, machine).await?;
    let chart = turn.revision.chart();
    let mut typed = Typed::of(&sent);
    typed.look_over();
    let next = next_finding(chart);
    let (new, mut outcome) = match typed.already(chart) {
        Some(there) => (there, Outcome::Written),
        None if typed.is_right() => {
            let add = Edit::Add { list: "finding".to_owned(), within: None, keys: typed.keys(&next) };
            let outcome = turn.write(&shop, machine, &hand, &sent, &[add]).await?;
            (next, outcome)
        }
        None => (next, Outcome::Refused(Wrong::default())),
    };
    if let Outcome::Written = outcome {
        let to = format!("{}#{}", address::findings(machine), address::escaped(&anchor(&new)));
        return Ok(Redirect::to(&to).into_response());
    }
    let status = outcome.status();
    if let Outcome::Refused(_) = &outcome {
        for (key, _, fault) in &mut typed.answers {
            let beside = outcome.beside(&new, key, &Answer::default());
            *fault = fault.take().or(beside);
        }
    }
    typed.wrong = outcome.above();
    let form = form(&view, &turn.revision, &typed, sent.key);
    let fold = Fold::open(LINE, told(&form));
    Ok((status, page(&view, &hand, &turn.revision, &fold, None)?.render()).into_response())
}

/// The form.
pub(super) fn form(view: &View, revision: &Revision, typed: &Typed, key: FormKey) -> Questions {
    let machine = &view.machine.id;
    let fault =
        |key: &str| typed.answers.iter().find(|(known, ..)| *known == key).and_then(|(.., fault)| fault.clone());
    let field = |key: &'static str, label: &str, hint: &str, entry: Entry| Field {
        name: key.to_owned(),
        form: "new".to_owned(),
        label: label.to_owned(),
        hint: hint.to_owned(),
        entry,
        value: typed.said(key).to_owned(),
        fault: fault(key),
    };
    let chart = revision.chart();
    let mut fields: Vec<Field> = QUESTIONS.iter().map(|q| field(q.key, q.label, q.hint, (q.entry)(chart))).collect();
    fields.insert(1, field("of", ABOUT, "", Entry::List(elements(machine, chart, &[]))));
    Questions {
        to: address::findings(machine),
        key,
        hidden: revision.hidden(&[]),
        fields,
        wrong: typed.wrong.clone(),
        words: "Write it down".to_owned(),
        back: None,
    }
}

/// The form with the caution that stands before it.
pub(super) fn told(form: &Questions) -> Markup {
    html! { (hole()) (form) }
}
