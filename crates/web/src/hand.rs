//! Who is at work: `/hand` asks for a name, a cookie keeps it on this phone or computer, and each entry in the log bears it.

use axum::extract::{Form, FromRequestParts, Query};
use axum::http::header::{COOKIE, SET_COOKIE};
use axum::http::request::Parts;
use axum::http::{HeaderMap, StatusCode};
use axum::response::{IntoResponse, Redirect, Response};
use maud::{Markup, Render, html};
use percent_encoding::percent_decode_str;
use serde::Deserialize;
use std::convert::Infallible;

use crate::parts::{Field, Form as Questions, Link, Page, Section, TitleBlock};
use crate::today::Asked;
use crate::{Error, FormKey, address};

/// The longest name, in characters.
const LONGEST: usize = 40;
const COOKIE_NAME: &str = "hand";
/// A year in seconds; after that the shop asks again.
const KEPT_SECONDS: u32 = 365 * 24 * 60 * 60;

/// Who is at work.
pub(crate) struct Hand(Option<String>);

impl Hand {
    /// The name that goes into the log.
    pub(crate) fn name(&self) -> &str {
        self.0.as_deref().unwrap_or("not said")
    }

    fn of(headers: &HeaderMap) -> Self {
        let cookies = headers.get_all(COOKIE).iter().filter_map(|header| header.to_str().ok());
        let mut pairs = cookies.flat_map(|line| line.split(';')).filter_map(|pair| pair.trim().split_once('='));
        let kept = pairs.find(|(name, _)| *name == COOKIE_NAME).map(|(_, value)| value);
        // A cookie can be written by hand; what could not have come from our form counts as nothing said.
        let name = kept.and_then(|kept| percent_decode_str(kept).decode_utf8().ok());
        Self(name.map(|name| name.trim().to_owned()).filter(|name| !name.is_empty() && read(name).is_ok()))
    }
}

impl<S: Sync> FromRequestParts<S> for Hand {
    type Rejection = Infallible;

    async fn from_request_parts(parts: &mut Parts, _: &S) -> Result<Self, Infallible> {
        Ok(Self::of(&parts.headers))
    }
}

/// The form as it is sent, with the choice of today's round to go back to.
#[derive(Deserialize)]
pub(crate) struct Sent {
    key: FormKey,
    name: String,
    #[serde(flatten)]
    asked: Asked,
}

/// `GET /hand`
pub(crate) async fn show(hand: Hand, Query(asked): Query<Asked>) -> Result<Markup, Error> {
    let value = hand.0.clone().unwrap_or_default();
    Ok(page(&hand, &asked, value, None, FormKey::fresh()?).render())
}

/// `POST /hand`
pub(crate) async fn keep(hand: Hand, Form(sent): Form<Sent>) -> Response {
    let name = sent.name.trim();
    if let Err(fault) = read(name) {
        let page = page(&hand, &sent.asked, sent.name.clone(), Some(fault), sent.key);
        return (StatusCode::UNPROCESSABLE_ENTITY, page.render()).into_response();
    }
    let seconds = if name.is_empty() { 0 } else { KEPT_SECONDS };
    let value = address::escaped(name);
    let cookie = format!("{COOKIE_NAME}={value}; Path=/; Max-Age={seconds}; HttpOnly; SameSite=Strict");
    ([(SET_COOKIE, cookie)], Redirect::to(&sent.asked.today())).into_response()
}

fn read(name: &str) -> Result<(), String> {
    if name.chars().count() > LONGEST {
        return Err(format!(
            "This is longer than {LONGEST} letters. Write a shorter name, like \"Anna\" or \"A. Miller\"."
        ));
    }
    if name.chars().any(char::is_control) {
        return Err("A name stands on one line, like \"Anna\" or \"A. Miller\".".to_owned());
    }
    Ok(())
}

fn page(hand: &Hand, asked: &Asked, value: String, fault: Option<String>, key: FormKey) -> Page {
    let back = asked.today();
    Page {
        title: "Who is at work?".into(),
        section: Some(Section::Today),
        today: back.clone(),
        block: TitleBlock::new([("Sheet", "Who is at work"), ("By", hand.name())]),
        body: html! {
            h1 { "Who is at work?" }
            p { "The name goes into the log with everything that you press on this phone or computer." }
            (Questions {
                to: "/hand".into(),
                key,
                hidden: asked.pairs(),
                fields: vec![Field {
                    name: "name".into(),
                    label: "Your name".into(),
                    hint: "As the others in the shop know you. Leave it empty to say nothing.".into(),
                    value,
                    fault,
                    ..Field::default()
                }],
                words: "Keep this name".into(),
                wrong: Vec::new(),
                back: Some(Link::new(back, "Leave it as it is")),
            })
        },
    }
}
