//! `GET /log/reservoirs`: what was read, filled, drained or noticed at a reservoir of a machine, as a form; `POST` to the same address
//! writes it down.

use axum::extract::{Form, Query, State};
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect, Response};
use maud::{Markup, Render, html};
use serde::Deserialize;
use shop::chart::Reservoir;
use shop::choice::Choice as _;
use shop::id::Id;
use shop::logbook::{Body, Kind, Subject};

use super::pen::Pen;
use super::writing::{self, Answers};
use super::{Chosen, address_of};
use crate::hand::Hand;
use crate::parts::{Choice, Entry, Field, Filter, Form as Questions, Link, Page, Section, TitleBlock};
use crate::phrase::called;
use crate::shop_state::{Shop, View};
use crate::{Error, FormKey, address};

/// What can be written down of a reservoir, the most usual first, with the words of the choice.
const KINDS: [(Kind, &str); 4] = [
    (Kind::Filled, "Filled or topped up"),
    (Kind::Level, "Level read"),
    (Kind::Drained, "Drained"),
    (Kind::Note, "Noticed"),
];

/// Which reservoir, and what.
#[derive(Debug, Deserialize)]
pub(crate) struct Asked {
    machine: String,
    #[serde(default)]
    reservoir: String,
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

/// The page for a reservoir.
pub(crate) fn address(machine: &Id, reservoir: &Id) -> String {
    address::with_query("/log/reservoirs", &[("machine", machine.as_str()), ("reservoir", reservoir.as_str())])
}

/// The page for a reservoir, with what was done or seen already chosen.
pub(crate) fn address_for(machine: &Id, reservoir: &Id, kind: Kind) -> String {
    let pairs = [("machine", machine.as_str()), ("reservoir", reservoir.as_str()), ("kind", kind.word())];
    address::with_query("/log/reservoirs", &pairs)
}

/// `GET /log/reservoirs`
pub(crate) async fn show(State(shop): State<Shop>, hand: Hand, Query(asked): Query<Asked>) -> Result<Markup, Error> {
    let view = shop.view(&asked.machine).await?;
    let reservoir = asked.reservoir(&view)?;
    let fields = questions(&view, reservoir, asked.kind());
    Ok(page(&view, &hand, reservoir, asked.kind(), fields, FormKey::fresh()?).render())
}

/// `POST /log/reservoirs`
pub(crate) async fn write(State(shop): State<Shop>, hand: Hand, Form(sent): Form<Sent>) -> Result<Response, Error> {
    let view = shop.view(&sent.asked.machine).await?;
    let reservoir = sent.asked.reservoir(&view)?;
    let kind = sent.asked.kind();
    let subject = Subject::Reservoir(view.machine.id.clone(), reservoir.id.clone());
    match writing::read(kind, &sent.answers, Some(&view.machine.chart), &view.shelf) {
        Ok(body) => {
            shop.store.record(&[Pen::new(&sent.key, &hand, &view.moment).entry(0, subject, body)]).await?;
            Ok(Redirect::to(&address_of(&Chosen::new(view.machine.id.as_str(), kind.word()))).into_response())
        }
        Err(wrong) => {
            let fields = writing::answered(questions(&view, reservoir, kind), &sent.answers, &wrong);
            let page = page(&view, &hand, reservoir, kind, fields, sent.key);
            Ok((StatusCode::UNPROCESSABLE_ENTITY, page.render()).into_response())
        }
    }
}

impl Asked {
    fn kind(&self) -> Kind {
        let known = KINDS.iter().map(|(kind, _)| *kind);
        known.into_iter().find(|kind| kind.word() == self.kind).unwrap_or(KINDS[0].0)
    }

    /// The reservoir of this id, or the first.
    fn reservoir<'v>(&self, view: &'v View) -> Result<&'v Reservoir, Error> {
        let mut here = reservoirs(view);
        let found =
            if self.reservoir.is_empty() { here.next() } else { here.find(|one| one.id.as_str() == self.reservoir) };
        found.ok_or_else(|| Error::Unknown { what: "reservoir", asked: self.reservoir.clone(), near: None })
    }
}

fn reservoirs(view: &View) -> impl Iterator<Item = &Reservoir> {
    let chart = &view.machine.chart;
    chart.reservoirs.iter().filter(|one| chart.applies(&one.when))
}

/// What is asked, with the oil that the chart states offered first.
fn questions(view: &View, reservoir: &Reservoir, kind: Kind) -> Vec<Field> {
    let chart = &view.machine.chart;
    let serving = chart.points_here().find(|point| point.reservoir.as_ref() == Some(&reservoir.id));
    let oil = serving.and_then(|point| advice::round::serving(chart, point, &view.shelf).oil).map(|oil| oil.id);
    let blank = match kind {
        Kind::Level => Body::Level { reading: String::new() },
        Kind::Drained => Body::Drained { note: None },
        Kind::Note => Body::Note { text: String::new() },
        _ => Body::Filled { oil, amount: None },
    };
    writing::questions(&blank, Some(chart), &view.shelf).unwrap_or_default()
}

fn page(view: &View, hand: &Hand, reservoir: &Reservoir, kind: Kind, fields: Vec<Field>, key: FormKey) -> Page {
    let machine = &view.machine.id;
    let name = called(reservoir.name.as_ref(), &reservoir.id);
    let list = |name: &str, label: &str, choices: Vec<Choice>, value: &str| Field {
        name: name.into(),
        form: "which".into(),
        label: label.into(),
        entry: Entry::List(choices),
        value: value.into(),
        ..Field::default()
    };
    let all = reservoirs(view).map(|one| Choice::new(one.id.as_str(), called(one.name.as_ref(), &one.id))).collect();
    let kinds = KINDS.map(|(kind, words)| Choice::new(kind.word(), words)).into();
    let pair = |name: &str, value: &str| (name.to_owned(), value.to_owned());
    Page {
        title: format!("{name}, {}", view.name()),
        section: Some(Section::Log),
        today: address::with_query("/", &[("machine", machine.as_str())]),
        block: TitleBlock::default()
            .and_link("Machine", Link::new(address::machine(machine), view.name()))
            .and("Right level", reservoir.level.clone().unwrap_or_else(|| "not charted".to_owned()))
            .and_link("By", Link::new("/hand", hand.name())),
        body: html! {
            h1 { (name) }
            (Filter {
                to: "/log/reservoirs".into(),
                hidden: vec![pair("machine", machine.as_str())],
                fields: vec![
                    list("reservoir", "Which sump, cup, tank or box?", all, reservoir.id.as_str()),
                    list("kind", "What was done or seen?", kinds, kind.word()),
                ],
                words: "Choose".into(),
            })
            (Questions {
                to: "/log/reservoirs".into(),
                key,
                hidden: vec![
                    pair("machine", machine.as_str()), pair("reservoir", reservoir.id.as_str()), pair("kind", kind.word()),
                ],
                fields,
                wrong: Vec::new(),
                words: "Write it down".into(),
                back: Some(Link::new(address::machine(machine), "Leave it")),
            })
        },
    }
}
