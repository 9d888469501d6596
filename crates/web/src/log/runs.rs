//! `POST /log/runs`: the machine ran, for so long and at such a job. It ends the session: the next round counts from it.

use axum::extract::{Form, State};
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect, Response};
use maud::{Render, html};
use serde::Deserialize;
use shop::logbook::{Body, Subject};

use super::pen::Pen;
use crate::hand::Hand;
use crate::parts::{Form as Questions, Link, Page, Section, TitleBlock};
use crate::shop_state::{Shop, View};
use crate::today::{self, Asked, Ran};
use crate::{Error, FormKey, hours};

/// The form. `planned` are the hours that today's page was asked for.
#[derive(Deserialize)]
pub(crate) struct Sent {
    key: FormKey,
    machine: String,
    hours: String,
    #[serde(default)]
    job: String,
    #[serde(default)]
    planned: String,
    /// Further machines on the page on which it was pressed.
    #[serde(default)]
    with: String,
}

/// `POST /log/runs`
pub(crate) async fn write(State(shop): State<Shop>, hand: Hand, Form(sent): Form<Sent>) -> Result<Response, Error> {
    let view = shop.view(&sent.machine).await?;
    let jobs = &view.machine.chart.jobs;
    let job = jobs.iter().find(|job| job.id.as_str() == sent.job).map(|job| job.id.clone());
    let job_fault = (job.is_none() && !sent.job.is_empty()).then(|| today::no_such_job(&sent.job));
    let hours = match (hours::read(&sent.hours), &job_fault) {
        (Ok(hours), None) => hours,
        (hours, _) => {
            let page = page(&view, &hand, &sent, hours.err(), job_fault);
            return Ok((StatusCode::UNPROCESSABLE_ENTITY, page.render()).into_response());
        }
    };
    let pen = Pen::new(&sent.key, &hand, &view.moment);
    let subject = Subject::Machine(view.machine.id.clone());
    shop.store.record(&[pen.entry(0, subject, Body::Ran { hours, job })]).await?;
    Ok(Redirect::to(&sent.asked().today()).into_response())
}

impl Sent {
    /// The round to come back to: the job goes on, the hours are those that were planned.
    fn asked(&self) -> Asked {
        let (machine, job, hours) = (self.machine.clone(), self.job.clone(), self.planned.clone());
        Asked { machine, job, hours, with: self.with.clone(), ..Asked::default() }
    }
}

/// The form alone, with what is to be mended.
fn page(view: &View, hand: &Hand, sent: &Sent, hours_fault: Option<String>, job_fault: Option<String>) -> Page {
    let ran = Ran {
        machine: view.machine.id.clone(),
        hours: sent.hours.clone(),
        job: sent.job.clone(),
        planned: sent.planned.clone(),
        with: sent.with.clone(),
        hours_fault,
        job_fault,
    };
    let today = Asked { job: String::new(), ..sent.asked() }.today();
    let form = today::run_form(view, ran, "", sent.key.clone());
    Page {
        title: "Log a run".into(),
        section: Some(Section::Today),
        today: today.clone(),
        block: TitleBlock::new([("Machine", view.name()), ("By", hand.name())]),
        body: html! {
            h1 { "Log a run" }
            (Questions { back: Some(Link::new(today, "Leave it")), ..form })
        },
    }
}
