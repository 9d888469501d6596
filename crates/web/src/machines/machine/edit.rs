//! `GET /machines/{id}/edit`: what the chart says of the machine itself, to be mended; `POST` to the machine's address writes it.

use axum::extract::{Form, Path, State};
use axum::response::{IntoResponse, Redirect, Response};
use maud::{Markup, Render, html};
use shop::chart::Machine;
use shop::document::Target;
use shop::id::Id;

use crate::hand::Hand;
use crate::machines::question::{self, Question};
use crate::machines::revision::{Outcome, Revision};
use crate::machines::sent::{Sent, text};
use crate::machines::wrong::Wrong;
use crate::parts::{Entry, Form as Questions, Link, Page, Section, TitleBlock};
use crate::shop_state::{Shop, View};
use crate::{Error, FormKey, address};

/// The usual kinds, offered but not asked for.
const KINDS: [&str; 7] = ["lathe", "mill", "shaper", "planer", "drill", "grinder", "saw"];

/// In the order of the form and of the chart's text.
const QUESTIONS: [Question<Machine>; 5] = [
    Question {
        key: "name",
        label: "What it is called",
        hint: "As people in the shop say it: as in 20-inch crank shaper.",
        must: Some("A machine has a name. Write what people call it, like \"20-inch crank shaper\"."),
        now: |machine| machine.name.clone(),
        entry: |_| Entry::Line,
        value: text,
    },
    Question {
        key: "kind",
        label: "Its kind, in one word",
        hint: "As in lathe, mill, shaper, planer, drill or grinder.",
        must: None,
        now: |machine| machine.kind.clone().unwrap_or_default(),
        entry: |_| Entry::Offered(KINDS.map(str::to_owned).to_vec()),
        value: text,
    },
    Question {
        key: "built",
        label: "When it was built",
        hint: "As far as is known: as in about 1940.",
        must: None,
        now: |machine| machine.built.clone().unwrap_or_default(),
        entry: |_| Entry::Line,
        value: text,
    },
    Question {
        key: "size",
        label: "Its size",
        hint: "As the trade says it: as in 20 in stroke.",
        must: None,
        now: |machine| machine.size.clone().unwrap_or_default(),
        entry: |_| Entry::Line,
        value: text,
    },
    Question {
        key: "note",
        label: "Note",
        hint: "What it does in the shop, and anything else worth saying.",
        must: None,
        now: |machine| machine.note.clone().unwrap_or_default(),
        entry: |_| Entry::Text,
        value: text,
    },
];

/// The address of the form.
pub(super) fn address(machine: &Id) -> String {
    format!("{}/edit", address::machine(machine))
}

/// `GET /machines/{machine}/edit`
pub(crate) async fn show(State(shop): State<Shop>, hand: Hand, Path(id): Path<String>) -> Result<Markup, Error> {
    let view = shop.view(&id).await?;
    let revision = Revision::in_force(&shop, &view.machine.id).await?;
    let form = form(&view, &revision, FormKey::fresh()?);
    Ok(page(&view, &hand, &form).render())
}

/// `POST /machines/{machine}`
pub(crate) async fn write(
    State(shop): State<Shop>,
    hand: Hand,
    Path(id): Path<String>,
    Form(sent): Form<Sent>,
) -> Result<Response, Error> {
    let view = shop.view(&id).await?;
    let turn = Revision::take(&shop, &view.machine.id).await?;
    let machine = &turn.revision.chart().machine;
    let mut outcome = if question::are_answered(&QUESTIONS, Some(machine), &sent) {
        let edits = question::edits(&QUESTIONS, &Target::Machine, machine, &sent);
        turn.write(&shop, &view.machine.id, &hand, &sent, &edits).await?
    } else {
        Outcome::Refused(Wrong::default())
    };
    if let Outcome::Written = outcome {
        return Ok(Redirect::to(&address::machine(&view.machine.id)).into_response());
    }
    let status = outcome.status();
    let mut form = form(&view, &turn.revision, sent.key.clone());
    question::mend(&mut form.fields, &QUESTIONS, (&view.machine.id, Some(machine)), &sent, &mut outcome);
    form.wrong = outcome.above();
    Ok((status, page(&view, &hand, &form).render()).into_response())
}

fn form(view: &View, revision: &Revision, key: FormKey) -> Questions {
    let here = address::machine(&view.machine.id);
    let fields = question::fields(&QUESTIONS, revision.chart(), Some(&revision.chart().machine));
    Questions {
        to: here.clone(),
        key,
        hidden: revision.hidden(&fields),
        fields,
        wrong: Vec::new(),
        words: "Keep this".to_owned(),
        back: Some(Link::new(here, "Leave it as it is")),
    }
}

fn page(view: &View, hand: &Hand, form: &Questions) -> Page {
    let machine = &view.machine.id;
    Page {
        title: format!("Mend what is said of {}", view.name()),
        section: Some(Section::Machines),
        today: address::with_query("/", &[("machine", machine.as_str())]),
        block: TitleBlock::default()
            .and_link("Machine", Link::new(address::machine(machine), view.name()))
            .and("In the shop as", machine.as_str())
            .and_link("By", Link::new("/hand", hand.name())),
        body: html! {
            h1 { "Mend what the chart says of the machine" }
            p { "What you leave as it is stays as it is; what you empty is taken out." }
            (form)
        },
    }
}
