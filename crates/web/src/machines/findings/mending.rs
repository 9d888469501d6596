//! `POST /machines/{id}/findings/{finding}`: what the chart says of a finding is mended, be it open or settled.

use axum::extract::{Form, Path, State};
use axum::response::{IntoResponse, Redirect, Response};
use maud::Render;
use shop::chart::{Chart, Finding};
use shop::document::{Edit, Target, Value};
use shop::id::Id;

use super::finding::anchor;
use super::questions::{ABOUT, QUESTIONS, elements};
use super::{Returned, fresh, page};
use crate::hand::Hand;
use crate::machines::question;
use crate::machines::revision::{Outcome, Revision};
use crate::machines::sent::Sent;
use crate::machines::wrong::Wrong;
use crate::parts::{Choice, Entry, Field, Fold, Form as Questions};
use crate::shop_state::Shop;
use crate::{Error, FormKey, address};

/// The line that opens the form.
pub(super) const LINE: &str = "Mend what is said of it";

/// The key of what it is about.
const OF: &str = "of";
/// Where the fields of what it is about stand: behind the kind.
const PLACE: usize = 1;

/// The form.
pub(super) fn form(machine: &Id, revision: &Revision, finding: &Finding, key: FormKey) -> Questions {
    let chart = revision.chart();
    let mut fields = question::fields(&QUESTIONS, chart, Some(finding));
    fields.splice(PLACE..PLACE, about(machine, chart, finding));
    for field in &mut fields {
        field.form = format!("mend-{}", finding.id);
    }
    Questions {
        to: format!("{}/{}", address::findings(machine), address::escaped(finding.id.as_str())),
        key,
        hidden: revision.hidden(&fields),
        fields,
        wrong: Vec::new(),
        words: "Keep this".to_owned(),
        back: None,
    }
}

/// `POST /machines/{machine}/findings/{finding}`
pub(crate) async fn write(
    State(shop): State<Shop>,
    hand: Hand,
    Path((id, asked)): Path<(String, String)>,
    Form(sent): Form<Sent>,
) -> Result<Response, Error> {
    let view = shop.view(&id).await?;
    let machine = &view.machine.id;
    let turn = Revision::take(&shop, machine).await?;
    let found = turn.revision.chart().findings.iter().find(|finding| finding.id.as_str() == asked);
    let Some(finding) = found else {
        return Err(Error::Unknown { what: "finding", asked, near: None });
    };
    let mut outcome = if question::are_answered(&QUESTIONS, Some(finding), &sent) {
        let of = Target::Element(finding.id.clone());
        let mut edits = question::edits(&QUESTIONS, &of, finding, &sent);
        edits.extend(about_edit(of, finding, &sent));
        turn.write(&shop, machine, &hand, &sent, &edits).await?
    } else {
        Outcome::Refused(Wrong::default())
    };
    if let Outcome::Written = outcome {
        let to = format!("{}#{}", address::findings(machine), address::escaped(&anchor(&finding.id)));
        return Ok(Redirect::to(&to).into_response());
    }
    let status = outcome.status();
    let mut form = form(machine, &turn.revision, finding, sent.key.clone());
    for (place, name) in names(finding).enumerate() {
        let answer = sent.answer(&name, &said(finding, place));
        let field = &mut form.fields[PLACE + place];
        field.fault = outcome.beside(&finding.id, OF, &answer);
        field.value = answer.typed;
    }
    question::mend(&mut form.fields, &QUESTIONS, (&finding.id, Some(finding)), &sent, &mut outcome);
    form.wrong = outcome.above();
    let new = fresh::form(&view, &turn.revision, &fresh::Typed::default(), FormKey::fresh()?);
    let new = Fold::shut(fresh::LINE, fresh::told(&new));
    let page = page(&view, &hand, &turn.revision, &new, Some(&Returned::Mending(&asked, form)))?;
    Ok((status, page.render()).into_response())
}

/// The names of the fields of what it is about: one for each thing, and one for one more.
fn names(finding: &Finding) -> impl Iterator<Item = String> {
    (1..=finding.of.len() + 1).map(|place| if place == 1 { OF.to_owned() } else { format!("{OF}-{place}") })
}

/// What the chart says in a field of what it is about.
fn said(finding: &Finding, place: usize) -> String {
    finding.of.get(place).map(Id::to_string).unwrap_or_default()
}

fn about(machine: &Id, chart: &Chart, finding: &Finding) -> Vec<Field> {
    let field = |(place, name): (usize, String)| {
        let mut choices = elements(machine, chart, &finding.of);
        if place > 0 {
            choices[0] = Choice::new("", "Nothing more");
        }
        Field {
            name,
            label: if place == 0 { ABOUT } else { "And about" }.to_owned(),
            entry: Entry::List(choices),
            value: said(finding, place),
            ..Field::default()
        }
    };
    names(finding).enumerate().map(field).collect()
}

/// The edit that makes the chart say what it is about; none where it says so already.
fn about_edit(of: Target, finding: &Finding, sent: &Sent) -> Option<Edit> {
    let mut about: Vec<String> = Vec::new();
    for (place, name) in names(finding).enumerate() {
        let typed = sent.answer(&name, &said(finding, place)).typed;
        if !typed.is_empty() && !about.contains(&typed) {
            about.push(typed);
        }
    }
    let key = OF.to_owned();
    if finding.of.iter().map(Id::as_str).eq(about.iter().map(String::as_str)) {
        None
    } else if about.is_empty() {
        Some(Edit::Clear { of, key })
    } else {
        Some(Edit::Set { of, key, to: Value::Texts(about) })
    }
}
