//! `GET /machines/{id}/points/{point}/evidence`: how something about a point is known, to be written down; `POST` to the same address
//! adds it to what is there, for what disagrees stands side by side.

use axum::extract::{Form, Path, State};
use axum::response::{IntoResponse, Redirect, Response};
use jiff::civil::Date;
use maud::{Markup, Render, html};
use shop::chart::{Evidence, How, Point};
use shop::choice::Choice as _;
use shop::document::{Edit, Value};
use shop::id::Id;

use super::{how, statement_in_words, table};
use crate::hand::Hand;
use crate::machines::revision::{Outcome, Revision};
use crate::machines::sent::{Sent, lines, text};
use crate::machines::wrong::Wrong;
use crate::parts::{Balloon, Choice, Entry, Field, Form as Questions, Link, Page, Section, TitleBlock};
use crate::phrase::capital;
use crate::shop_state::{Shop, View};
use crate::{Error, FormKey, address};

/// What can be known of a point: the keys of the chart that people ask about.
const STATEMENTS: [&str; 11] =
    ["feeds", "method", "where", "stand", "setup", "dose", "every", "oil", "sign", "baseline", "name"];

/// What is sent for all of them at once, which the chart says by naming none.
const ALL: &str = "all";

/// The names of the form's fields, which are the keys of the chart.
const OF: &str = "of";
const HOW: &str = "how";
const DATE: &str = "date";
const NOTE: &str = "note";

/// The address of the page.
pub(crate) fn address(machine: &Id, point: &Id) -> String {
    format!("{}/evidence", address::point(machine, point))
}

/// `GET /machines/{machine}/points/{point}/evidence`
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

/// `POST /machines/{machine}/points/{point}/evidence`
pub(crate) async fn write(
    State(shop): State<Shop>,
    hand: Hand,
    Path((machine, asked)): Path<(String, String)>,
    Form(sent): Form<Sent>,
) -> Result<Response, Error> {
    let turn = Revision::take(&shop, &shop.view(&machine).await?.machine.id).await?;
    let view = shop.view(&machine).await?;
    let point = view.point(&asked)?;
    let mut form = form(&view, &turn.revision, point, sent.key.clone());
    for field in &mut form.fields {
        field.value = sent.typed(&field.name);
        field.fault = fault(&field.name, &field.value);
    }
    let outcome = if form.fields.iter().any(|field| field.fault.is_some()) {
        Outcome::Refused(Wrong::default())
    } else if point.evidence.iter().any(|evidence| says_already(evidence, &form.fields)) {
        Outcome::Written
    } else {
        let add = Edit::Add {
            list: "point.evidence".to_owned(),
            within: Some(point.id.clone()),
            keys: form.fields.iter().filter_map(key).collect(),
        };
        turn.write(&shop, &view.machine.id, &hand, &sent, &[add]).await?
    };
    if let Outcome::Written = outcome {
        let to = format!("{}#evidence", address::point(&view.machine.id, &point.id));
        return Ok(Redirect::to(&to).into_response());
    }
    let status = outcome.status();
    form.wrong = outcome.above();
    Ok((status, page(&view, &hand, point, &form).render()).into_response())
}

/// What is wrong with an answer.
fn fault(name: &str, typed: &str) -> Option<String> {
    match name {
        OF if typed.is_empty() => Some("Choose one from the list.".to_owned()),
        OF if typed != ALL && !STATEMENTS.contains(&typed) => {
            Some(format!("A point states nothing that is called \"{typed}\". Choose one from the list."))
        }
        HOW if How::from_word(typed).is_none() => Some("Choose one of these.".to_owned()),
        DATE if !typed.is_empty() && typed.parse::<Date>().is_err() => {
            Some(format!("\"{typed}\" is no day. Write year, month and day, like 2026-03-14."))
        }
        _ => None,
    }
}

/// The key that an answer becomes; none where nothing is said, or all is meant.
fn key(field: &Field) -> Option<(String, Value)> {
    let value = match (field.name.as_str(), field.value.as_str()) {
        (_, "") | (OF, ALL) => return None,
        (OF, statement) => lines(statement),
        (_, typed) => text(typed),
    };
    Some((field.name.clone(), value))
}

/// Whether the point has it already, as it has after a second press of the same button.
fn says_already(evidence: &Evidence, fields: &[Field]) -> bool {
    fields.iter().all(|field| {
        let kept = match field.name.as_str() {
            OF if evidence.of.is_empty() => ALL.to_owned(),
            OF => evidence.of.join("\n"),
            HOW => evidence.how.word().to_owned(),
            DATE => evidence.date.map(|date| date.to_string()).unwrap_or_default(),
            _ => evidence.note.clone().unwrap_or_default(),
        };
        kept.trim() == field.value
    })
}

fn form(view: &View, revision: &Revision, point: &Point, key: FormKey) -> Questions {
    let field = |name: &str, label: &str, hint: &str, entry: Entry| Field {
        name: name.to_owned(),
        label: label.to_owned(),
        hint: hint.to_owned(),
        entry,
        ..Field::default()
    };
    let statements = STATEMENTS.iter().map(|statement| Choice::new(*statement, statement_in_words(statement)));
    let statements = [Choice::new("", "Choose one")].into_iter().chain(statements);
    let statements = statements.chain([Choice::new(ALL, statement_in_words(""))]);
    let hows = How::WORDS.iter().map(|(word, known)| Choice::new(*word, how(*known)).noted(means(*known)));
    Questions {
        to: address(&view.machine.id, &point.id),
        key,
        hidden: revision.hidden(&[]),
        fields: vec![
            field(OF, "What do you know?", "One statement: that a hole was traced says nothing of its oil.", {
                Entry::List(statements.collect())
            }),
            field(HOW, "How do you know it?", "", Entry::Pick(hows.collect())),
            field(DATE, "On which day?", "Leave it empty where nobody remembers.", Entry::Day),
            field(
                NOTE,
                "What was seen, read or heard?",
                "As in wire touched the bush, or page 12, line 4.",
                Entry::Text,
            ),
        ],
        wrong: Vec::new(),
        words: "Write it down".to_owned(),
        back: Some(Link::new(address::point(&view.machine.id, &point.id), "Leave it as it is")),
    }
}

/// What must have happened for a word to be true.
fn means(how: How) -> &'static str {
    match how {
        How::Plate => "You read it on this machine.",
        How::Handbook => "It stands in a book about this model.",
        How::Told => "Somebody who ought to know said so.",
        How::Guess => "Nobody knows better yet.",
        How::Traced => "The passage was followed to its end.",
        How::SeenWorking => "Oil was seen to come out where it should.",
        How::Unknown => "Somebody tried to find out and could not.",
    }
}

fn page(view: &View, hand: &Hand, point: &Point, form: &Questions) -> Page {
    Page {
        title: format!("How we know, {} {}, {}", point.id, point.name, view.name()),
        section: Some(Section::Machines),
        today: address::with_query("/", &[("machine", view.machine.id.as_str())]),
        block: TitleBlock::default()
            .and_link("Machine", Link::new(address::machine(&view.machine.id), view.name()))
            .and_link("Point", Link::new(address::point(&view.machine.id, &point.id), capital(&point.name)))
            .and_link("By", Link::new("/hand", hand.name())),
        body: html! {
            h1.row { (Balloon(point.id.to_string())) span { "How do we know?" } }
            p { "What is already written stays; where two disagree, both are kept side by side." }
            (form)
            @if let Some(known) = table(&point.evidence) { h2 { "Known so far" } (known) }
        },
    }
}
