//! `GET /machines/{id}/points/{point}/edit`: what the chart says of a point, to be mended; `POST` to the point's own address writes it.

use axum::extract::{Form, Path, State};
use axum::response::{IntoResponse, Redirect, Response};
use maud::{Markup, Render, html};
use shop::chart::Point;
use shop::document::Target;
use shop::id::Id;

use super::questions::QUESTIONS;
use super::removal;
use crate::hand::Hand;
use crate::machines::question;
use crate::machines::revision::{Outcome, Revision};
use crate::machines::sent::Sent;
use crate::machines::wrong::Wrong;
use crate::parts::{Balloon, Form as Questions, Link, Page, Section, TitleBlock};
use crate::shop_state::{Shop, View};
use crate::{Error, FormKey, address};

/// The address of the form.
pub(crate) fn address(machine: &Id, point: &Id) -> String {
    format!("{}/edit", address::point(machine, point))
}

/// `GET /machines/{machine}/points/{point}/edit`
pub(crate) async fn show(
    State(shop): State<Shop>,
    hand: Hand,
    Path((machine, point)): Path<(String, String)>,
) -> Result<Markup, Error> {
    let view = shop.view(&machine).await?;
    let point = view.point(&point)?;
    let revision = Revision::in_force(&shop, &view.machine.id).await?;
    let form = form(&view, &revision, point, FormKey::fresh()?);
    Ok(page(&view, &hand, point, &form).render())
}

/// `POST /machines/{machine}/points/{point}`
pub(crate) async fn write(
    State(shop): State<Shop>,
    hand: Hand,
    Path((machine, asked)): Path<(String, String)>,
    Form(sent): Form<Sent>,
) -> Result<Response, Error> {
    let turn = Revision::take(&shop, &shop.view(&machine).await?.machine.id).await?;
    // Looked at in our turn, so that the point is the one of the chart in force.
    let view = shop.view(&machine).await?;
    let point = view.point(&asked)?;
    let mut outcome = if question::are_answered(&QUESTIONS, Some(point), &sent) {
        let edits = question::edits(&QUESTIONS, &Target::Element(point.id.clone()), point, &sent);
        turn.write(&shop, &view.machine.id, &hand, &sent, &edits).await?
    } else {
        Outcome::Refused(Wrong::default())
    };
    if let Outcome::Written = outcome {
        return Ok(Redirect::to(&address::point(&view.machine.id, &point.id)).into_response());
    }
    let status = outcome.status();
    let mut form = form(&view, &turn.revision, point, sent.key.clone());
    question::mend(&mut form.fields, &QUESTIONS, (&point.id, Some(point)), &sent, &mut outcome);
    form.wrong = outcome.above();
    Ok((status, page(&view, &hand, point, &form).render()).into_response())
}

fn form(view: &View, revision: &Revision, point: &Point, key: FormKey) -> Questions {
    let here = address::point(&view.machine.id, &point.id);
    let fields = question::fields(&QUESTIONS, revision.chart(), Some(point));
    Questions {
        to: here.clone(),
        key,
        hidden: revision.hidden(&fields),
        fields,
        wrong: Vec::new(),
        words: "Keep this".to_owned(),
        back: Some(Link::new(here, "Leave it as it is")),
    }
}

fn page(view: &View, hand: &Hand, point: &Point, form: &Questions) -> Page {
    Page {
        title: format!("Mend {} {}, {}", point.id, point.name, view.name()),
        section: Some(Section::Machines),
        today: address::with_query("/", &[("machine", view.machine.id.as_str())]),
        block: TitleBlock::default()
            .and_link("Machine", Link::new(address::machine(&view.machine.id), view.name()))
            .and_link("Point", Link::new(address::point(&view.machine.id, &point.id), point.name.clone()))
            .and_link("By", Link::new("/hand", hand.name())),
        body: html! {
            h1.row { (Balloon(point.id.to_string())) span { "Mend what the chart says" } }
            p { "What you leave as it is stays as it is; what you empty is taken out." }
            (form)
            h2 { "No such place?" }
            p { "Where this point is not on the machine at all, it can be taken out. Its number is then never used again." }
            (Link::new(removal::address(&view.machine.id, &point.id), "Take this point out of the chart"))
        },
    }
}
