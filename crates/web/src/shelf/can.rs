//! `GET /shelf/can`: a can or gun with its calibration: how many strokes fill a measured ten millilitres. `POST` to the same address keeps it.

use axum::extract::{Form, Query, State};
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect, Response};
use maud::{Markup, Render, html};
use serde::Deserialize;
use shop::id::Id;
use shop::shelf::{Can, Shelf, stroke_of};

use super::form::id_of;
use crate::hand::Hand;
use crate::parts::{Choice, Entry, Field, Form as Questions, Link, Page, Section, TitleBlock};
use crate::shop_state::Shop;
use crate::{Error, FormKey, address};

/// The form as it is sent; `can` is the id of one that is there already.
#[derive(Clone, Debug, Default, Deserialize)]
pub(crate) struct Asked {
    #[serde(default)]
    can: String,
    #[serde(default)]
    name: String,
    #[serde(default)]
    oil: String,
    /// How many strokes filled ten millilitres; empty where nobody has counted.
    #[serde(default)]
    strokes: String,
}

#[derive(Debug, Deserialize)]
pub(crate) struct Sent {
    key: FormKey,
    #[serde(flatten)]
    asked: Asked,
}

/// The form of a can; of a new one when none is named.
pub(crate) fn address(can: Option<&Id>) -> String {
    address::with_query("/shelf/can", &[("can", can.map_or("", |can| can.as_str()))])
}

/// `GET /shelf/can`
pub(crate) async fn show(State(shop): State<Shop>, hand: Hand, Query(asked): Query<Asked>) -> Result<Markup, Error> {
    let snapshot = shop.store.snapshot(shop.clock.now()).await?;
    let was = known(&snapshot.shelf, &asked.can)?;
    let asked = was.map_or(asked, |can| Asked {
        can: can.id.to_string(),
        name: can.called(),
        oil: can.oil.as_ref().map(Id::to_string).unwrap_or_default(),
        strokes: String::new(),
    });
    Ok(page(&hand, &snapshot.shelf, was, &asked, &[], FormKey::fresh()?).render())
}

/// `POST /shelf/can`
pub(crate) async fn write(State(shop): State<Shop>, hand: Hand, Form(sent): Form<Sent>) -> Result<Response, Error> {
    let snapshot = shop.store.snapshot(shop.clock.now()).await?;
    let asked = &sent.asked;
    let was = known(&snapshot.shelf, &asked.can)?;
    let mut wrong: Vec<(&str, String)> = Vec::new();
    let name = asked.name.trim();
    if name.is_empty() {
        wrong.push(("name", "Nothing was written. Write what people call it, like \"long spout\".".to_owned()));
    }
    let oil = snapshot.shelf.oils.iter().find(|oil| oil.id.as_str() == asked.oil).map(|oil| oil.id.clone());
    let stroke = match asked.strokes.trim() {
        "" => Ok(was.and_then(|can| can.stroke.clone())),
        strokes => stroke_of(strokes).map(Some),
    };
    let stroke = stroke.unwrap_or_else(|says| {
        wrong.push(("strokes", says));
        None
    });
    if !wrong.is_empty() {
        let page = page(&hand, &snapshot.shelf, was, asked, &wrong, sent.key);
        return Ok((StatusCode::UNPROCESSABLE_ENTITY, page.render()).into_response());
    }
    let can = match was {
        Some(can) => Can { name: Some(name.to_owned()), oil, stroke, ..can.clone() },
        None => {
            let id = id_of(name, |id| snapshot.shelf.cans.iter().any(|can| can.id.as_str() == id));
            let id = Id::new(&id).map_err(|_| Error::WrongForm)?;
            Can { id, name: Some(name.to_owned()), oil, stroke, note: None }
        }
    };
    shop.store.add_shelf(&Shelf { oils: Vec::new(), cans: vec![can] }, shop.clock.now(), hand.name()).await?;
    Ok(Redirect::to(&format!("{}#{CANS}", Section::Shelf.path())).into_response())
}

/// The anchor of the cans on the page of the shelf.
pub(super) const CANS: &str = "cans";

fn known<'s>(shelf: &'s Shelf, asked: &str) -> Result<Option<&'s Can>, Error> {
    if asked.is_empty() {
        return Ok(None);
    }
    let found = shelf.cans.iter().find(|can| can.id.as_str() == asked);
    found.map(Some).ok_or_else(|| Error::Unknown { what: "can", asked: asked.to_owned(), near: None })
}

fn page(hand: &Hand, shelf: &Shelf, was: Option<&Can>, asked: &Asked, wrong: &[(&str, String)], key: FormKey) -> Page {
    let field = |name: &str, label: &str, hint: &str, entry: Entry, value: &str| Field {
        name: name.into(),
        label: label.into(),
        hint: hint.into(),
        entry,
        value: value.into(),
        fault: wrong.iter().find(|(of, _)| *of == name).map(|(_, says)| says.clone()),
        ..Field::default()
    };
    let oils = shelf.oils.iter().map(|oil| Choice::new(oil.id.as_str(), &*oil.name));
    let oils = [Choice::new("", "Nothing yet")].into_iter().chain(oils).collect();
    let measured = was
        .and_then(|can| can.stroke.as_ref())
        .map(|stroke| format!(" One stroke is {} as it was measured last.", stroke.text));
    let hint = format!(
        "Pump into a measuring glass and count. Leave it empty when nobody has counted.{}",
        measured.unwrap_or_default()
    );
    let title = was.map_or_else(|| "A new can or gun".to_owned(), Can::called);
    Page {
        title: title.clone(),
        section: Some(Section::Shelf),
        today: Section::Today.path().into(),
        block: TitleBlock::new([("Can or gun", title.clone())]).and_link("By", Link::new("/hand", hand.name())),
        body: html! {
            h1 { (crate::phrase::capital(&title)) }
            (Questions {
                to: "/shelf/can".into(),
                key,
                hidden: vec![("can".to_owned(), asked.can.clone())],
                fields: vec![
                    field("name", "What is it called?", "Such as long spout.", Entry::Line, &asked.name),
                    field("oil", "What is in it?", "One can, one oil.", Entry::List(oils), &asked.oil),
                    field("strokes", "How many strokes fill 10 mL?", &hint, Entry::Quantity, &asked.strokes),
                ],
                wrong: Vec::new(),
                words: "Keep it".into(),
                back: Some(Link::new(Section::Shelf.path(), "Leave it")),
            })
        },
    }
}
