//! `POST /log/signs`: the sign at a point was seen, or was looked for and not there. Says nothing of oil given.

use axum::extract::{Form, State};
use axum::response::Redirect;
use serde::Deserialize;
use shop::logbook::{Body, Subject};

use super::back::Back;
use super::pen::{self, Pen};
use super::points::Points;
use crate::hand::Hand;
use crate::shop_state::Shop;
use crate::{Error, FormKey};

/// The form.
#[derive(Deserialize)]
pub(crate) struct Sent {
    key: FormKey,
    points: Points,
    sign: Sign,
    #[serde(default)]
    note: String,
    #[serde(flatten)]
    back: Back,
}

/// What came of looking.
#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename_all = "lowercase")]
enum Sign {
    Seen,
    Missing,
}

/// `POST /log/signs`
pub(crate) async fn write(State(shop): State<Shop>, hand: Hand, Form(sent): Form<Sent>) -> Result<Redirect, Error> {
    let view = shop.view(&sent.back.asked.machine).await?;
    let points = sent.points.on(&view)?;
    if !shop.store.batch(&pen::batch(&sent.key)).await?.is_empty() {
        return Ok(sent.back.redirect());
    }
    let note = Some(sent.note.trim()).filter(|note| !note.is_empty()).map(str::to_owned);
    let pen = Pen::new(&sent.key, &hand, &view.moment);
    let entries: Vec<_> = points
        .into_iter()
        .enumerate()
        .map(|(number, point)| {
            let note = note.clone();
            let body = match sent.sign {
                Sign::Seen => Body::SignSeen { note },
                Sign::Missing => Body::SignMissing { note },
            };
            pen.entry(number, Subject::Point(view.machine.id.clone(), point.id.clone()), body)
        })
        .collect();
    shop.store.record(&entries).await?;
    Ok(sent.back.redirect())
}
