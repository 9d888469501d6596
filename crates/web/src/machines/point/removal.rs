//! `GET /machines/{id}/points/{point}/removal`: what taking a point out of the chart means; `POST` to the same address does it. Its id is
//! never used again, and a point that something else names stays until that no longer does.

use axum::extract::{Form, Path, State};
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect, Response};
use maud::{Markup, Render, html};
use shop::chart::{Chart, Point};
use shop::document::{Edit, Target};
use shop::id::Id;

use super::edit;
use crate::hand::Hand;
use crate::machines::findings::{Finding, anchor};
use crate::machines::revision::{Outcome, Revision};
use crate::machines::sent::Sent;
use crate::parts::{Balloon, Form as Questions, Link, Note, Page, Section, TitleBlock};
use crate::shop_state::{Shop, View};
use crate::{Error, FormKey, address};

/// The address of the page.
pub(crate) fn address(machine: &Id, point: &Id) -> String {
    format!("{}/removal", address::point(machine, point))
}

/// `GET /machines/{machine}/points/{point}/removal`
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

/// `POST /machines/{machine}/points/{point}/removal`
pub(crate) async fn write(
    State(shop): State<Shop>,
    hand: Hand,
    Path((machine, asked)): Path<(String, String)>,
    Form(sent): Form<Sent>,
) -> Result<Response, Error> {
    let turn = Revision::take(&shop, &shop.view(&machine).await?.machine.id).await?;
    let view = shop.view(&machine).await?;
    let gone = Redirect::to(&address::machine(&view.machine.id)).into_response();
    if view.machine.chart.retired.iter().any(|id| id.as_str() == asked) {
        return Ok(gone); // A second press of the same button.
    }
    let point = view.point(&asked)?;
    let mut form = form(&view, &turn.revision, point, sent.key.clone());
    if !named_by(&view, point).is_empty() {
        form.wrong = vec![format!("Point {} stays, because other parts of the chart name it.", point.id)];
        return Ok((StatusCode::UNPROCESSABLE_ENTITY, page(&view, &hand, point, &form).render()).into_response());
    }
    let removal = Edit::Remove { of: Target::Element(point.id.clone()) };
    let outcome = turn.write(&shop, &view.machine.id, &hand, &sent, &[removal]).await?;
    if let Outcome::Written = outcome {
        return Ok(gone);
    }
    let status = outcome.status();
    form.wrong = outcome.above();
    Ok((status, page(&view, &hand, point, &form).render()).into_response())
}

/// What names the point, each with where it is shown.
fn named_by(view: &View, point: &Point) -> Vec<Link> {
    let (machine, chart): (&Id, &Chart) = (&view.machine.id, &view.machine.chart);
    let findings = chart.findings.iter().filter(|finding| finding.of.contains(&point.id)).map(|finding| {
        let to = format!("{}#{}", address::findings(machine), address::escaped(&anchor(&finding.id)));
        Link::new(to, Finding::of(machine, chart, finding).heading)
    });
    let jobs = chart.jobs.iter().filter(|job| job.wakes.contains(&point.id)).map(|job| {
        let to = address::with_query("/", &[("machine", machine.as_str()), ("job", job.id.as_str())]);
        Link::new(to, format!("Today's job: {}", job.name))
    });
    findings.chain(jobs).collect()
}

fn form(view: &View, revision: &Revision, point: &Point, key: FormKey) -> Questions {
    Questions {
        to: address(&view.machine.id, &point.id),
        key,
        hidden: revision.hidden(&[]),
        fields: Vec::new(),
        wrong: Vec::new(),
        words: format!("Take point {} out", point.id),
        back: Some(Link::new(edit::address(&view.machine.id, &point.id), "Leave it in")),
    }
}

fn page(view: &View, hand: &Hand, point: &Point, form: &Questions) -> Page {
    let named_by = named_by(view, point);
    Page {
        title: format!("Take out {} {}, {}", point.id, point.name, view.name()),
        section: Some(Section::Machines),
        today: address::with_query("/", &[("machine", view.machine.id.as_str())]),
        block: TitleBlock::default()
            .and_link("Machine", Link::new(address::machine(&view.machine.id), view.name()))
            .and_link("Point", Link::new(address::point(&view.machine.id, &point.id), point.name.clone()))
            .and_link("By", Link::new("/hand", hand.name())),
        body: html! {
            h1.row { (Balloon(point.id.to_string())) span { "Take this point out of the chart?" } }
            (Note {
                caution: "Once it is out, nobody is told to oil there.".into(),
                rest: "Take it out only where there is no such place on the machine.".into(),
                more: None,
            })
            p { "Where the place is there and only nobody knows what it is for, leave it in and write a finding." }
            p { "What the log says of it stays. Its number is never given to another point." }
            @if named_by.is_empty() || !form.wrong.is_empty() { (form) }
            @if !named_by.is_empty() {
                h2 { "It is named elsewhere" }
                p {
                    "These name point " (point.id) ". Take it out of them first, in the file of the chart "
                    "(oilwright chart export), or leave it in and say in its note what you found."
                }
                ul { @for one in &named_by { li { (one) } } }
                @if form.wrong.is_empty() { @if let Some(back) = &form.back { (back) } }
            }
        },
    }
}
