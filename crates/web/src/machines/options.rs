//! `GET /machines/{id}/options`: how this example is built. Each question says which points come or go by its answers; `POST` to the
//! same address writes the answers into the chart.

use axum::extract::{Form, Path, State};
use axum::response::{IntoResponse, Redirect, Response};
use maud::{Markup, Render, html};
use shop::chart::{Chart, ChartOption, Point};
use shop::document::Target;
use shop::id::Id;

use super::revision::{Outcome, Revision};
use super::sent::{Answer, Sent, text};
use crate::hand::Hand;
use crate::parts::{Choice, Empty, Entry, Field, Form as Questions, Link, Page, Section, TitleBlock};
use crate::phrase::capital;
use crate::shop_state::{Shop, View};
use crate::{Error, FormKey, address};

/// The name under which the answer to an option is sent; also its anchor.
pub(crate) fn field(option: &Id) -> String {
    format!("option-{option}")
}

/// `GET /machines/{machine}/options`
pub(crate) async fn show(State(shop): State<Shop>, hand: Hand, Path(id): Path<String>) -> Result<Markup, Error> {
    let view = shop.view(&id).await?;
    let revision = Revision::in_force(&shop, &view.machine.id).await?;
    let form = form(&view.machine.id, &revision, FormKey::fresh()?);
    Ok(page(&view, &hand, &revision, &form).render())
}

/// `POST /machines/{machine}/options`
pub(crate) async fn write(
    State(shop): State<Shop>,
    hand: Hand,
    Path(id): Path<String>,
    Form(sent): Form<Sent>,
) -> Result<Response, Error> {
    let view = shop.view(&id).await?;
    let machine = &view.machine.id;
    let turn = Revision::take(&shop, machine).await?;
    let options = &turn.revision.chart().options;
    let answer = |option: &ChartOption| sent.answer(&field(&option.id), option.here.as_deref().unwrap_or_default());
    let answers: Vec<Answer> = options.iter().map(answer).collect();
    let edits = options.iter().zip(&answers);
    let edits = edits.filter_map(|(option, answer)| answer.edit(&Target::Element(option.id.clone()), "here", text));
    let mut outcome = turn.write(&shop, machine, &hand, &sent, &edits.collect::<Vec<_>>()).await?;
    if let Outcome::Written = outcome {
        return Ok(Redirect::to(&address::machine(machine)).into_response());
    }
    let status = outcome.status();
    let mut form = form(machine, &turn.revision, sent.key.clone());
    for ((option, answer), field) in options.iter().zip(answers).zip(&mut form.fields) {
        field.fault = outcome.beside(&option.id, "here", &answer);
        field.value = answer.typed;
    }
    form.wrong = outcome.above();
    Ok((status, page(&view, &hand, &turn.revision, &form).render()).into_response())
}

fn form(machine: &Id, revision: &Revision, key: FormKey) -> Questions {
    let chart = revision.chart();
    let fields = chart.options.iter().map(|option| {
        let choices = option
            .choices
            .iter()
            .map(|choice| Choice::new(choice, capital(choice)).noted(comes_and_goes(chart, option, Some(choice))));
        let open = Choice::new("", "Not settled yet").noted(comes_and_goes(chart, option, None));
        Field {
            name: field(&option.id),
            label: option.question.clone(),
            hint: option.note.clone().unwrap_or_default(),
            entry: Entry::Pick(choices.chain([open]).collect()),
            value: option.here.clone().unwrap_or_default(),
            ..Field::default()
        }
    });
    let fields: Vec<Field> = fields.collect();
    Questions {
        to: address::options(machine),
        key,
        hidden: revision.hidden(&fields),
        fields,
        wrong: Vec::new(),
        words: "Keep these answers".to_owned(),
        back: Some(Link::new(address::machine(machine), "Leave it as it is")),
    }
}

/// What an answer changes about the points of this example, all other answers staying as they are.
fn comes_and_goes(chart: &Chart, option: &ChartOption, here: Option<&String>) -> String {
    if option.here.as_ref() == here {
        return "So the chart has it now.".to_owned();
    }
    let mut other = chart.clone();
    for one in other.options.iter_mut().filter(|one| one.id == option.id) {
        one.here = here.cloned();
    }
    let only = |these: &Chart, those: &Chart| -> Vec<String> {
        let there: Vec<&Id> = those.points_here().map(|point| &point.id).collect();
        let missing = these.points_here().filter(|point| !there.contains(&&point.id));
        missing.map(|Point { id, name, .. }| format!("{id} {name}")).collect()
    };
    let said =
        |word: &str, points: Vec<String>| (!points.is_empty()).then(|| format!("{word}: {}.", points.join(", ")));
    let all = [said("Come", only(&other, chart)), said("Go", only(chart, &other))];
    let all: Vec<String> = all.into_iter().flatten().collect();
    if all.is_empty() { "No oiling point comes or goes.".to_owned() } else { all.join(" ") }
}

fn page(view: &View, hand: &Hand, revision: &Revision, form: &Questions) -> Page {
    let machine = &view.machine.id;
    let open = revision.chart().options.iter().filter(|option| option.here.is_none()).count();
    Page {
        title: format!("How yours is built, {}", view.name()),
        section: Some(Section::Machines),
        today: address::with_query("/", &[("machine", machine.as_str())]),
        block: TitleBlock::default()
            .and_link("Machine", Link::new(address::machine(machine), view.name()))
            .and("Not settled yet", if open == 0 { "nothing".to_owned() } else { open.to_string() })
            .and_link("By", Link::new("/hand", hand.name())),
        body: html! {
            h1 { "How yours is built" }
            @if form.fields.is_empty() {
                (Empty { says: "This chart asks nothing: it knows of no way in which examples differ.".into(), first: None })
            } @else {
                p { "Examples of one model differ. A look at the machine settles it; points that yours does not have leave the round." }
                (form)
            }
        },
    }
}
