//! `GET /machines/{id}/points/{point}/edit`: what the chart says of a point, to be mended; `POST` to the point's own address writes it.

use axum::extract::{Form, Path, State};
use axum::response::{IntoResponse, Redirect, Response};
use maud::{Markup, Render, html};
use shop::chart::{Chart, Method, Point};
use shop::choice::Choice as _;
use shop::document::{Edit, Target, Value};
use shop::id::Id;

use crate::hand::Hand;
use crate::machines::revision::{Outcome, Revision, Sent, edit, lines, text};
use crate::machines::wrong::Wrong;
use crate::parts::{Balloon, Choice, Entry, Field, Form as Questions, Link, Page, Section, TitleBlock};
use crate::phrase::capital;
use crate::shop_state::{Shop, View};
use crate::{Error, FormKey, address};

/// A question of the form, by the key of the chart that its answer becomes.
struct Question {
    key: &'static str,
    label: &'static str,
    hint: &'static str,
    /// What the chart says now.
    now: fn(&Point) -> String,
    /// How it is answered.
    entry: fn(&Chart) -> Entry,
    value: fn(&str) -> Value,
}

/// In the order of the form.
const QUESTIONS: [Question; 9] = [
    Question {
        key: "name",
        label: "What it is called",
        hint: "As in Ram way, rear left.",
        now: |point| point.name.clone(),
        entry: |_| Entry::Line,
        value: text,
    },
    Question {
        key: "where",
        label: "How to find it",
        hint: "As in hole under the brass cap.",
        now: |point| point.place.clone().unwrap_or_default(),
        entry: |_| Entry::Text,
        value: text,
    },
    Question {
        key: "stand",
        label: "Stand here",
        hint: "The round goes from stand to stand.",
        now: |point| point.stand.as_ref().map(Id::to_string).unwrap_or_default(),
        entry: stands,
        value: text,
    },
    Question {
        key: "method",
        label: "How oiled",
        hint: "",
        now: |point| point.method.to_string(),
        entry: |_| methods(),
        value: text,
    },
    Question {
        key: "dose",
        label: "How much each time",
        hint: "With its unit, as in 2 strokes, 3 drops or 1.5 mL.",
        now: |point| point.dose.as_ref().map(|dose| dose.typed.clone()).unwrap_or_default(),
        entry: |_| Entry::Quantity,
        value: text,
    },
    Question {
        key: "every",
        label: "How often",
        hint: "One to a line, whichever comes first: as in 1 use, 4 h or 1 week.",
        now: |point| point.every.iter().map(|every| every.typed.as_str()).collect::<Vec<_>>().join("\n"),
        entry: |_| Entry::Text,
        value: lines,
    },
    Question {
        key: "oil",
        label: "Oil as charted",
        hint: "In words that are on any can, as in way 68 or circulating 46.",
        now: |point| point.oil.clone().unwrap_or_default(),
        entry: |_| Entry::Line,
        value: text,
    },
    Question {
        key: "sign",
        label: "Look for",
        hint: "What shows that oil got there, as in wet line along the way after ten strokes.",
        now: |point| point.sign.clone().unwrap_or_default(),
        entry: |_| Entry::Text,
        value: text,
    },
    Question {
        key: "note",
        label: "Note",
        hint: "Anything worth saying.",
        now: |point| point.note.clone().unwrap_or_default(),
        entry: |_| Entry::Text,
        value: text,
    },
];

/// The address of the form.
pub(crate) fn address(machine: &Id, point: &Id) -> String {
    format!("{}/edit", address::point(machine, point))
}

/// `GET /machines/{machine}/points/{point}/edit`
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

/// `POST /machines/{machine}/points/{point}`
pub(crate) async fn write(
    State(shop): State<Shop>,
    hand: Hand,
    Path((machine, asked)): Path<(String, String)>,
    Form(sent): Form<Sent>,
) -> Result<Response, Error> {
    let turn = Revision::take(&shop, &shop.view(&machine).await?.machine.id).await?;
    // Looked at in our turn, so that the point is the one of the chart in force.
    let view = shop.view(&machine).await?;
    let point = view.point(&asked)?;
    let of = Target::Element(point.id.clone());
    let typed = |question: &Question| sent.asked(question.key).unwrap_or_else(|| (question.now)(point));
    let nameless = typed(&QUESTIONS[0]).is_empty();
    let edits: Vec<Edit> = QUESTIONS
        .iter()
        .filter_map(|question| edit(&of, question.key, &(question.now)(point), &typed(question), question.value))
        .collect();
    let mut outcome = if nameless {
        Outcome::Refused(Wrong::default())
    } else {
        turn.write(&shop, &view.machine.id, &hand, &sent, &edits).await?
    };
    if let Outcome::Written = outcome {
        return Ok(Redirect::to(&address::point(&view.machine.id, &point.id)).into_response());
    }
    let status = outcome.status();
    let mut form = form(&view, &turn.revision, point, sent.key.clone());
    for (question, field) in QUESTIONS.iter().zip(&mut form.fields) {
        field.value = typed(question);
        field.fault = outcome.beside(&point.id, question.key, &(question.now)(point), &field.value);
    }
    if nameless {
        form.fields[0].fault =
            Some("A point has a name. Write what people call it, like \"Ram way, rear left\".".to_owned());
    }
    form.wrong = outcome.above();
    Ok((status, page(&view, &hand, point, &form).render()).into_response())
}

fn form(view: &View, revision: &Revision, point: &Point, key: FormKey) -> Questions {
    let field = |question: &Question| Field {
        name: question.key.to_owned(),
        label: question.label.to_owned(),
        hint: question.hint.to_owned(),
        entry: (question.entry)(revision.chart()),
        value: (question.now)(point),
        ..Field::default()
    };
    let here = address::point(&view.machine.id, &point.id);
    Questions {
        to: here.clone(),
        key,
        hidden: revision.hidden(),
        fields: QUESTIONS.iter().map(field).collect(),
        wrong: Vec::new(),
        words: "Keep this".to_owned(),
        back: Some(Link::new(here, "Leave it as it is")),
    }
}

fn page(view: &View, hand: &Hand, point: &Point, form: &Questions) -> Page {
    Page {
        title: format!("Mend {} {}, {}", point.id, point.name, view.name()),
        section: Some(Section::Machines),
        today: address::with_query("/", &[("machine", view.machine.id.as_str())]),
        block: TitleBlock::default()
            .and_link("Machine", Link::new(address::machine(&view.machine.id), view.name()))
            .and_link("Point", Link::new(address::point(&view.machine.id, &point.id), point.name.clone()))
            .and_link("By", Link::new("/hand", hand.name())),
        body: html! {
            h1.row { (Balloon(point.id.to_string())) span { "Mend what the chart says" } }
            p { "What you leave as it is stays as it is; what you empty is taken out." }
            (form)
        },
    }
}

fn stands(chart: &Chart) -> Entry {
    let all = chart.stands.iter().map(|stand| Choice::new(stand.id.as_str(), stand.name.clone()));
    Entry::List([Choice::new("", "Not said")].into_iter().chain(all).collect())
}

fn methods() -> Entry {
    let mut all: Vec<Method> = Method::WORDS.iter().map(|(_, method)| *method).collect();
    all.dedup();
    Entry::List(all.into_iter().map(|method| Choice::new(method.word(), capital(method.word()))).collect())
}
