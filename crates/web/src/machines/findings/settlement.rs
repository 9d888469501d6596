//! `POST /machines/{id}/findings/{finding}/settlement`: how a finding was settled; emptied again, it is open again.

use axum::extract::{Form, Path, State};
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect, Response};
use maud::Render;
use shop::chart::Finding;
use shop::document::Target;
use shop::id::Id;

use super::finding::anchor;
use super::{Returned, fresh, page};
use crate::hand::Hand;
use crate::machines::revision::{Outcome, Revision};
use crate::machines::sent::{Sent, text};
use crate::parts::{Entry, Field, Fold, Form as Questions};
use crate::shop_state::Shop;
use crate::{Error, FormKey, address};

/// The line that opens the form of an open finding, and that of a settled one.
pub(super) const LINE: &str = "Settle it";
pub(super) const AGAIN: &str = "Say it otherwise, or open it again";

const KEY: &str = "settled";

/// The form.
pub(super) fn form(machine: &Id, revision: &Revision, finding: &Finding, key: FormKey) -> Questions {
    let hint = match finding.settled {
        None => "What you found and did, with the day. The interval that held meanwhile then ends.",
        Some(_) => "Leave it empty to open the finding again.",
    };
    let fields = vec![Field {
        name: KEY.to_owned(),
        form: format!("settle-{}", finding.id),
        label: "How was it settled?".to_owned(),
        hint: hint.to_owned(),
        entry: Entry::Text,
        value: finding.settled.clone().unwrap_or_default(),
        fault: None,
    }];
    Questions {
        to: format!("{}/{}/settlement", address::findings(machine), address::escaped(finding.id.as_str())),
        key,
        hidden: revision.hidden(&fields),
        fields,
        wrong: Vec::new(),
        words: if finding.settled.is_none() { "It is settled" } else { "Keep this" }.to_owned(),
        back: None,
    }
}

/// `POST /machines/{machine}/findings/{finding}/settlement`
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
    let answer = sent.answer(KEY, finding.settled.as_deref().unwrap_or_default());
    let mut form = form(machine, &turn.revision, finding, sent.key.clone());
    form.fields[0].value.clone_from(&answer.typed);
    let status = if answer.now.is_empty() && answer.typed.is_empty() {
        let fault = "Nothing is written here. Say how it was settled, like \"New lid turned and fitted.\"";
        form.fields[0].fault = Some(fault.to_owned());
        StatusCode::UNPROCESSABLE_ENTITY
    } else {
        let edits = answer.edit(&Target::Element(finding.id.clone()), KEY, text);
        let mut outcome = turn.write(&shop, machine, &hand, &sent, edits.as_slice()).await?;
        if let Outcome::Written = outcome {
            let to = format!("{}#{}", address::findings(machine), address::escaped(&anchor(&finding.id)));
            return Ok(Redirect::to(&to).into_response());
        }
        let status = outcome.status();
        form.fields[0].fault = outcome.beside(&finding.id, KEY, &answer);
        form.wrong = outcome.above();
        status
    };
    let new = fresh::form(&view, &turn.revision, &fresh::Typed::default(), FormKey::fresh()?);
    let new = Fold::shut(fresh::LINE, fresh::told(&new));
    let page = page(&view, &hand, &turn.revision, &new, Some(&Returned::Settlement(&asked, form)))?;
    Ok((status, page.render()).into_response())
}
