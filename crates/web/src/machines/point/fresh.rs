//! `GET /machines/{id}/points`: an oiling point that was found, to be written into the chart; `POST` to the same address writes it. No
//! address of this form lies under that of the points, where it would hide a point of its name.

use axum::extract::{Form, Path, State};
use axum::response::{IntoResponse, Redirect, Response};
use maud::{Markup, Render, html};
use shop::chart::{Chart, Point};
use shop::document::{Edit, Value};
use shop::id::Id;

use super::questions::QUESTIONS;
use crate::hand::Hand;
use crate::machines::findings;
use crate::machines::ids::{is_used, next_point};
use crate::machines::question;
use crate::machines::revision::{Outcome, Revision};
use crate::machines::sent::{Answer, Sent, lines, text};
use crate::machines::wrong::Wrong;
use crate::parts::{Choice, Entry, Field, Form as Questions, Link, Page, Section, TitleBlock};
use crate::phrase::called;
use crate::shop_state::{Shop, View};
use crate::{Error, FormKey, address};

/// The names of the fields that only a new point has, which are the keys of the chart.
const ID: &str = "id";
const ASSEMBLY: &str = "assembly";
const FEEDS: &str = "feeds";
/// The field in which something must be chosen.
const METHOD: &str = "method";

/// The address of the page.
pub(crate) fn address(machine: &Id) -> String {
    format!("{}/points", address::machine(machine))
}

/// `GET /machines/{machine}/points`
pub(crate) async fn show(State(shop): State<Shop>, hand: Hand, Path(id): Path<String>) -> Result<Markup, Error> {
    let view = shop.view(&id).await?;
    let revision = Revision::in_force(&shop, &view.machine.id).await?;
    let form = form(&view, &revision, FormKey::fresh()?);
    Ok(page(&view, &hand, &form).render())
}

/// `POST /machines/{machine}/points`
pub(crate) async fn write(
    State(shop): State<Shop>,
    hand: Hand,
    Path(id): Path<String>,
    Form(sent): Form<Sent>,
) -> Result<Response, Error> {
    let view = shop.view(&id).await?;
    let turn = Revision::take(&shop, &view.machine.id).await?;
    let chart = turn.revision.chart();
    let number = Id::new(&sent.typed(ID));
    let there = number.as_ref().ok().and_then(|id| chart.point(id)).filter(|point| says_already(point, &sent));
    let number_fault = match &number {
        Err(fault) => Some(format!("{}.", crate::phrase::capital(&fault.to_string()))),
        Ok(id) if is_used(chart, id) => Some(taken(chart, id)),
        Ok(_) => None,
    };
    let (new, mut outcome) = match (number, there) {
        (_, Some(point)) => (point.id.clone(), Outcome::Written),
        (Ok(id), None) if number_fault.is_none() && question::are_answered(&QUESTIONS, None, &sent) => {
            let add = Edit::Add { list: "point".to_owned(), within: None, keys: keys(&sent) };
            (id, turn.write(&shop, &view.machine.id, &hand, &sent, &[add]).await?)
        }
        _ => (next_point(chart), Outcome::Refused(Wrong::default())),
    };
    if let Outcome::Written = outcome {
        return Ok(Redirect::to(&address::point(&view.machine.id, &new)).into_response());
    }
    let status = outcome.status();
    let mut form = form(&view, &turn.revision, sent.key.clone());
    for field in &mut form.fields[..OWN] {
        field.value = sent.typed(&field.name);
    }
    if let Outcome::Refused(_) = &outcome {
        for field in &mut form.fields[..OWN] {
            field.fault = outcome.beside(&new, &field.name, &Answer::default());
        }
        question::mend(&mut form.fields, &QUESTIONS, (&new, None), &sent, &mut outcome);
    } else {
        // There is nothing in the chart yet that what was typed could be held against.
        question::mend(&mut form.fields, &QUESTIONS, (&new, None), &sent, &mut Outcome::Written);
    }
    form.fields[0].fault = number_fault.or(form.fields[0].fault.take());
    form.wrong = outcome.above();
    Ok((status, page(&view, &hand, &form).render()).into_response())
}

/// How many fields come before those that every point has.
const OWN: usize = 3;

/// The keys of the new point in the order of the chart's text.
fn keys(sent: &Sent) -> Vec<(String, Value)> {
    let own = |key: &str, value: fn(&str) -> Value| {
        let typed = sent.typed(key);
        (!typed.is_empty()).then(|| (key.to_owned(), value(&typed)))
    };
    let mut keys = question::keys(&QUESTIONS, sent);
    // Behind its name and how it is oiled.
    let feeds = own(FEEDS, lines);
    let at = keys.iter().take_while(|(key, _)| matches!(key.as_str(), "name" | "method")).count();
    keys.splice(at..at, feeds);
    own(ID, text).into_iter().chain(own(ASSEMBLY, text)).chain(keys).collect()
}

fn says_already(point: &Point, sent: &Sent) -> bool {
    let feeds: Vec<&str> = point.feeds.iter().map(Id::as_str).collect();
    let assembly = point.assembly.as_ref().map(Id::as_str).unwrap_or_default();
    feeds.join("\n") == sent.typed(FEEDS)
        && assembly == sent.typed(ASSEMBLY)
        && question::says_already(&QUESTIONS, point, sent)
}

fn taken(chart: &Chart, id: &Id) -> String {
    let why = if chart.retired.contains(id) { "was used once and is never used again" } else { "is taken already" };
    format!("\"{id}\" {why}. The next free number is {}.", next_point(chart))
}

fn form(view: &View, revision: &Revision, key: FormKey) -> Questions {
    let chart = revision.chart();
    let own = |name: &str, label: &str, hint: &str, entry: Entry, value: String| Field {
        name: name.to_owned(),
        label: label.to_owned(),
        hint: hint.to_owned(),
        entry,
        value,
        ..Field::default()
    };
    let none = |words: &str| [Choice::new("", words)].into_iter();
    let parts = chart.assemblies.iter().map(|one| Choice::new(one.id.as_str(), one.name.clone()));
    let pairs = chart.pairs.iter().filter(|one| chart.applies(&one.when));
    let pairs =
        pairs.map(|one| Choice::new(one.id.as_str(), format!("{} ({})", called(one.name.as_ref(), &one.id), one.kind)));
    let mut fields = vec![
        own(ID, "Its number", "The number in the balloon and on the tag; it stays for good.", Entry::Quantity, {
            next_point(chart).to_string()
        }),
        own(
            ASSEMBLY,
            "The part it belongs to",
            "",
            Entry::List(none("Not said").chain(parts).collect()),
            String::new(),
        ),
        own(
            FEEDS,
            "What it feeds",
            "The moving pair that the oil reaches. Where nobody knows, it is no oiling point yet but something to settle.",
            Entry::List(none("Not known").chain(pairs).collect()),
            String::new(),
        ),
    ];
    fields.extend(question::fields(&QUESTIONS, chart, None));
    // Nothing is chosen until somebody has looked how it is oiled.
    for field in fields.iter_mut().filter(|field| field.name == METHOD) {
        if let Entry::List(methods) = &mut field.entry {
            methods.insert(0, Choice::new("", "Choose one"));
        }
    }
    Questions {
        to: address(&view.machine.id),
        key,
        hidden: revision.hidden(&[]),
        fields,
        wrong: Vec::new(),
        words: "Write it down".to_owned(),
        back: Some(Link::new(address::machine(&view.machine.id), "Leave it as it is")),
    }
}

fn page(view: &View, hand: &Hand, form: &Questions) -> Page {
    let machine = &view.machine.id;
    let unknown = Link::new(format!("{}#new", address::findings(machine)), "Write it down as something to settle");
    Page {
        title: format!("A new oiling point, {}", view.name()),
        section: Some(Section::Machines),
        today: address::with_query("/", &[("machine", machine.as_str())]),
        block: TitleBlock::default()
            .and_link("Machine", Link::new(address::machine(machine), view.name()))
            .and("Oiling points", view.machine.chart.points_here().count().to_string())
            .and_link("By", Link::new("/hand", hand.name())),
        body: html! {
            h1 { "A new oiling point" }
            p { "Only a place that is known to want oil. What is left empty can be said later." }
            (crate::parts::Note { more: Some(unknown), ..findings::hole() })
            (form)
        },
    }
}
