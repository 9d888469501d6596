//! `GET /log/stock`: what was bought, counted, used or thrown away of an oil, as a form; `POST` to the same address writes it down.

use axum::extract::{Form, Query, State};
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect, Response};
use maud::{Markup, Render, html};
use serde::Deserialize;
use shop::choice::Choice as _;
use shop::id::Id;
use shop::logbook::{Body, Kind, Subject};
use shop::shelf::Oil;
use shop::snapshot::ShopSnapshot;

use super::pen::Pen;
use super::writing::{self, Answers};
use crate::hand::Hand;
use crate::parts::{Choice, Entry, Field, Filter, Form as Questions, Link, Page, Section, TitleBlock};
use crate::shop_state::Shop;
use crate::{Error, FormKey, address, shelf};

/// What can be written down of an oil on the shelf.
const KINDS: [(Kind, &str); 4] = [
    (Kind::Bought, "Bought"),
    (Kind::Counted, "Counted"),
    (Kind::Used, "Used for something else"),
    (Kind::ThrownAway, "Thrown away"),
];

/// Which oil, and what.
#[derive(Debug, Deserialize)]
pub(crate) struct Asked {
    oil: String,
    #[serde(default)]
    kind: String,
}

/// The form as it is sent.
#[derive(Deserialize)]
pub(crate) struct Sent {
    key: FormKey,
    #[serde(flatten)]
    asked: Asked,
    #[serde(flatten)]
    answers: Answers,
}

/// The page for an oil.
pub(crate) fn address(oil: &Id) -> String {
    address::with_query("/log/stock", &[("oil", oil.as_str())])
}

/// `GET /log/stock`
pub(crate) async fn show(State(shop): State<Shop>, hand: Hand, Query(asked): Query<Asked>) -> Result<Markup, Error> {
    let snapshot = shop.store.snapshot(shop.clock.now()).await?;
    let oil = shelf::named(&snapshot.shelf, &asked.oil)?;
    let fields = questions(&snapshot, asked.kind());
    Ok(page(&hand, oil, asked.kind(), fields, FormKey::fresh()?).render())
}

/// `POST /log/stock`
pub(crate) async fn write(State(shop): State<Shop>, hand: Hand, Form(sent): Form<Sent>) -> Result<Response, Error> {
    let snapshot = shop.store.snapshot(shop.clock.now()).await?;
    let oil = shelf::named(&snapshot.shelf, &sent.asked.oil)?;
    let kind = sent.asked.kind();
    match writing::read(kind, &sent.answers, None, &snapshot.shelf) {
        Ok(body) => {
            let pen = Pen::new(&sent.key, &hand, &snapshot.moment);
            shop.store.record(&[pen.entry(0, Subject::Oil(oil.id.clone()), body)]).await?;
            Ok(Redirect::to(&address::oil(&oil.id)).into_response())
        }
        Err(wrong) => {
            let fields = writing::answered(questions(&snapshot, kind), &sent.answers, &wrong);
            let page = page(&hand, oil, kind, fields, sent.key);
            Ok((StatusCode::UNPROCESSABLE_ENTITY, page.render()).into_response())
        }
    }
}

impl Asked {
    fn kind(&self) -> Kind {
        let known = KINDS.iter().map(|(kind, _)| *kind);
        known.into_iter().find(|kind| kind.word() == self.kind).unwrap_or(KINDS[0].0)
    }
}

fn questions(snapshot: &ShopSnapshot, kind: Kind) -> Vec<Field> {
    let amount = String::new();
    let blank = match kind {
        Kind::Counted => Body::Counted { amount },
        Kind::Used => Body::Used { amount, note: None },
        Kind::ThrownAway => Body::ThrownAway { amount, note: None },
        _ => Body::Bought { amount, price: None },
    };
    writing::questions(&blank, None, &snapshot.shelf).unwrap_or_default()
}

fn page(hand: &Hand, oil: &Oil, kind: Kind, fields: Vec<Field>, key: FormKey) -> Page {
    let pair = |name: &str, value: &str| (name.to_owned(), value.to_owned());
    Page {
        title: format!("Stock of {}", oil.name),
        section: Some(Section::Shelf),
        today: Section::Today.path().to_owned(),
        block: TitleBlock::default()
            .and_link("Oil", Link::new(address::oil(&oil.id), oil.name.clone()))
            .and_link("By", Link::new("/hand", hand.name())),
        body: html! {
            h1 { (oil.name) }
            (Filter {
                to: "/log/stock".into(),
                hidden: vec![pair("oil", oil.id.as_str())],
                fields: vec![Field {
                    name: "kind".into(),
                    form: "which".into(),
                    label: "What happened?".into(),
                    entry: Entry::List(KINDS.map(|(kind, words)| Choice::new(kind.word(), words)).into()),
                    value: kind.word().into(),
                    ..Field::default()
                }],
                words: "Choose".into(),
            })
            @if kind == Kind::ThrownAway {
                p.quiet { "Old oil goes to a collecting place, never into a drain or the ground." }
            }
            (Questions {
                to: "/log/stock".into(),
                key,
                hidden: vec![pair("oil", oil.id.as_str()), pair("kind", kind.word())],
                fields,
                wrong: Vec::new(),
                words: "Write it down".into(),
                back: Some(Link::new(address::oil(&oil.id), "Leave it")),
            })
        },
    }
}
