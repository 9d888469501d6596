//! `POST /log/obstacles`: a point could not be reached, and why. It stays due.

use axum::extract::{Form, State};
use axum::http::StatusCode;
use axum::response::{IntoResponse, Response};
use maud::{Render, html};
use serde::Deserialize;
use shop::id::Id;
use shop::logbook::{Body, Subject};

use super::back::Back;
use super::pen::Pen;
use crate::hand::Hand;
use crate::parts::{Choice, Entry, Field, Form as Questions, Link, Page, Section, TitleBlock};
use crate::shop_state::{Shop, View};
use crate::{Error, FormKey};

/// What usually is in the way.
const USUAL: [&str; 4] =
    ["A part of the machine is in the way", "The cover would not come off", "The hole takes no oil", "No time for it"];

/// The form.
#[derive(Deserialize)]
pub(crate) struct Sent {
    key: FormKey,
    point: String,
    reason: String,
    #[serde(flatten)]
    back: Back,
}

/// The form on a page: `form` goes before its anchors, `points` are those to choose from.
pub(crate) fn form(hidden: Vec<(String, String)>, form: &str, points: Vec<(&Id, &str)>, key: FormKey) -> Questions {
    let mut hidden = hidden;
    if form != PAGE {
        hidden.push(("stand".to_owned(), form.to_owned()));
    }
    questions(hidden, form, points, Typed::default(), key)
}

/// What stands before the anchors of the form on the page of a point.
pub(crate) const PAGE: &str = "obstacle";

/// What was typed, and what is wrong with it.
#[derive(Default)]
struct Typed {
    point: String,
    reason: String,
    point_fault: Option<String>,
    reason_fault: Option<String>,
}

/// `POST /log/obstacles`
pub(crate) async fn write(State(shop): State<Shop>, hand: Hand, Form(sent): Form<Sent>) -> Result<Response, Error> {
    let view = shop.view(&sent.back.asked.machine).await?;
    let reason = sent.reason.trim();
    let point = view.machine.chart.points_here().find(|point| point.id.as_str() == sent.point);
    let (Some(point), false) = (point, reason.is_empty()) else {
        let typed = Typed {
            point_fault: point
                .is_none()
                .then(|| format!("This machine has no oiling point \"{}\". Choose one from the list.", sent.point)),
            reason_fault: reason
                .is_empty()
                .then(|| format!("Nothing was written. Say what was in the way, like \"{}\".", USUAL[0])),
            point: sent.point.clone(),
            reason: sent.reason.clone(),
        };
        return Ok((StatusCode::UNPROCESSABLE_ENTITY, page(&view, &hand, &sent, typed).render()).into_response());
    };
    let pen = Pen::new(&sent.key, &hand, &view.moment);
    let subject = Subject::Point(view.machine.id.clone(), point.id.clone());
    shop.store.record(&[pen.entry(0, subject, Body::NotReached { reason: reason.to_owned() })]).await?;
    Ok(sent.back.redirect().into_response())
}

fn questions(
    hidden: Vec<(String, String)>,
    form: &str,
    points: Vec<(&Id, &str)>,
    typed: Typed,
    key: FormKey,
) -> Questions {
    let choices = points.into_iter().map(|(id, name)| Choice::new(id.as_str(), format!("{id} {name}"))).collect();
    let field = |name: &str, label: &str, entry, value, fault| Field {
        name: name.to_owned(),
        form: form.to_owned(),
        label: label.to_owned(),
        entry,
        value,
        fault,
        ..Field::default()
    };
    Questions {
        to: "/log/obstacles".to_owned(),
        key,
        hidden,
        fields: vec![
            field("point", "Which point?", Entry::List(choices), typed.point, typed.point_fault),
            field(
                "reason",
                "What was in the way?",
                Entry::Offered(USUAL.map(str::to_owned).into()),
                typed.reason,
                typed.reason_fault,
            ),
        ],
        words: "Not reached".to_owned(),
        wrong: Vec::new(),
        back: None,
    }
}

/// The form alone, with what is to be mended.
fn page(view: &View, hand: &Hand, sent: &Sent, typed: Typed) -> Page {
    let points = view.machine.chart.points_here().map(|point| (&point.id, point.name.as_str())).collect();
    let questions = questions(sent.back.pairs(), PAGE, points, typed, sent.key.clone());
    Page {
        title: "Could not reach one".into(),
        section: Some(Section::Today),
        today: sent.back.asked.today(),
        block: TitleBlock::new([("Machine", view.name()), ("By", hand.name())]),
        body: html! {
            h1 { "Could not reach one" }
            (Questions { back: Some(Link::new(sent.back.address(), "Leave it")), ..questions })
        },
    }
}
