//! `POST /log/dosings`: oil was given at these points. Nothing is said of their signs.

use std::collections::BTreeSet;

use advice::round::{Act, Serving, act, serving};
use axum::extract::{Form, State};
use axum::response::Redirect;
use serde::Deserialize;
use shop::chart::Point;
use shop::id::Id;
use shop::logbook::{Body, Subject};

use super::back::Back;
use super::pen::{self, Pen};
use super::points::Points;
use crate::hand::Hand;
use crate::shop_state::{Shop, View};
use crate::today::{self, Choice};
use crate::{Error, FormKey};

/// The form.
#[derive(Deserialize)]
pub(crate) struct Sent {
    key: FormKey,
    points: Points,
    #[serde(flatten)]
    back: Back,
}

/// `POST /log/dosings`
pub(crate) async fn write(State(shop): State<Shop>, hand: Hand, Form(sent): Form<Sent>) -> Result<Redirect, Error> {
    let view = shop.view(&sent.back.asked.machine).await?;
    let points = sent.points.on(&view)?;
    // A form counts once, even when what it wrote was taken back since.
    if !shop.store.batch(&pen::batch(&sent.key)).await?.is_empty() {
        return Ok(sent.back.redirect());
    }
    let given = if sent.back.is_today() { given_already(&view, &sent.back) } else { BTreeSet::new() };
    let pen = Pen::new(&sent.key, &hand, &view.moment);
    let mut entries = Vec::new();
    for (number, point) in points.into_iter().enumerate() {
        // No page of ours offers oil where there is only something to look at.
        if act(point) == Act::Look {
            return Err(Error::WrongForm);
        }
        if !given.contains(&point.id) {
            let subject = Subject::Point(view.machine.id.clone(), point.id.clone());
            entries.push(pen.entry(number, subject, dosed(&view, point)));
        }
    }
    shop.store.record(&entries).await?;
    Ok(sent.back.redirect())
}

/// The points that got their oil in this round: today's page asks for it once.
fn given_already(view: &View, back: &Back) -> BTreeSet<Id> {
    let choice = Choice::settled(view, &back.asked);
    let round = view.round(&choice.plan());
    let points = round.value().stands.iter().flat_map(|at| &at.points);
    points.filter(|point| today::is_given(point)).map(|point| point.id.clone()).collect()
}

/// What the round shows for the point, as an entry. A level that is topped up to its mark takes what it takes, which nobody
/// measured.
fn dosed(view: &View, point: &Point) -> Body {
    let Serving { oil, can, dose, .. } = serving(&view.machine.chart, point, &view.shelf);
    Body::Dosed {
        oil: oil.map(|oil| oil.id),
        can: can.map(|can| can.id),
        amount: dose.said.filter(|_| act(point) == Act::Give),
    }
}
