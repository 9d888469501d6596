//! `POST /machines/{id}/findings`: a new finding is written into the chart.

use axum::extract::{Form, Path, State};
use axum::response::{IntoResponse, Redirect, Response};
use maud::{Markup, Render, html};
use shop::chart::{Chart, FindingKind};
use shop::choice::Choice as _;
use shop::document::{Edit, Value};
use shop::id::Id;

use super::finding::{anchor, hole, kind};
use super::page;
use crate::hand::Hand;
use crate::machines::element::Element;
use crate::machines::ids::next_finding;
use crate::machines::revision::{Outcome, Revision};
use crate::machines::sent::{Answer, Sent, lines, text};
use crate::machines::wrong::Wrong;
use crate::parts::{Choice, Entry, Field, Fold, Form as Questions};
use crate::phrase::{called, capital};
use crate::shop_state::{Shop, View};
use crate::{Error, FormKey, address};

/// The line that opens the form.
pub(super) const LINE: &str = "Write down something new";

/// A question of the form, by the key of the chart that its answer becomes.
struct Question {
    key: &'static str,
    label: &'static str,
    hint: &'static str,
    entry: Entry,
    value: fn(&str) -> Value,
}

/// In the order of the form and of the chart's text.
const TYPED: [Question; 6] = [
    Question {
        key: "note",
        label: "What did you find?",
        hint: "Where it is, how it looks, what you have tried.",
        entry: Entry::Text,
        value: text,
    },
    Question {
        key: "thread",
        label: "Its thread",
        hint: "As in 1/8 in, 27 to the inch, or M10 x 1. Leave it empty where there is none.",
        entry: Entry::Line,
        value: text,
    },
    Question {
        key: "size",
        label: "Its size",
        hint: "Bore, depth, across flats: as in 9 mm bore, 62 mm deep.",
        entry: Entry::Line,
        value: text,
    },
    Question {
        key: "equivalent",
        label: "What fits in its place, by dimension",
        hint: "As in turned brass lid, 38 mm across, with a 1 mm breathing hole.",
        entry: Entry::Line,
        value: text,
    },
    Question {
        key: "meanwhile",
        label: "What covers it meanwhile?",
        hint: "As in leather flap tied over the cup.",
        entry: Entry::Line,
        value: text,
    },
    Question {
        key: "interval",
        label: "Until it is settled, how often?",
        hint: "As in 1 week, 1 use or 4 h; several stand one to a line. The round then calls for its oiling point this often.",
        entry: Entry::Text,
        value: interval,
    },
];

/// What was typed into the form, and what is wrong with it.
#[derive(Default)]
pub(super) struct Typed {
    /// Each key with what was typed for it and with its fault.
    answers: Vec<(&'static str, String, Option<String>)>,
    wrong: Vec<String>,
}

impl Typed {
    /// Nothing yet but what it is about.
    pub(super) fn about(id: &str) -> Self {
        Self { answers: vec![("of", id.to_owned(), None)], wrong: Vec::new() }
    }

    fn of(sent: &Sent) -> Self {
        let keys = ["kind", "of"].into_iter().chain(TYPED.iter().map(|question| question.key));
        Self { answers: keys.map(|key| (key, sent.typed(key), None)).collect(), wrong: Vec::new() }
    }

    fn said(&self, key: &str) -> &str {
        self.answers.iter().find(|(known, ..)| *known == key).map_or("", |(_, typed, _)| typed)
    }

    /// The faults that show before the chart is asked.
    fn look_over(&mut self) {
        for (key, typed, fault) in &mut self.answers {
            *fault = match *key {
                "kind" if FindingKind::from_word(typed).is_none() => Some("Choose one of these.".to_owned()),
                "note" if typed.is_empty() => {
                    Some("Nothing is written here. Say what you found, like \"The lid of the cup is lost.\"".to_owned())
                }
                _ => None,
            };
        }
    }

    fn is_right(&self) -> bool {
        self.answers.iter().all(|(_, _, fault)| fault.is_none())
    }

    /// The keys of the new finding.
    fn keys(&self, id: &Id) -> Vec<(String, Value)> {
        let own = |key: &str, value: Value| (key.to_owned(), value);
        let mut keys = vec![own("id", text(id.as_str())), own("kind", text(self.said("kind")))];
        if !self.said("of").is_empty() {
            keys.push(own("of", lines(self.said("of"))));
        }
        let said = TYPED.iter().map(|question| (question, self.said(question.key)));
        keys.extend(said.filter(|(_, said)| !said.is_empty()).map(|(q, said)| own(q.key, (q.value)(said))));
        keys
    }

    /// The finding that says all this already, as it does after a second press of the same button.
    fn already(&self, chart: &Chart) -> Option<Id> {
        let same = |finding: &&shop::chart::Finding| {
            let one = |kept: &Option<String>, key: &str| kept.as_deref().unwrap_or("").trim() == self.said(key);
            let of: Vec<&str> = finding.of.iter().map(Id::as_str).collect();
            finding.settled.is_none()
                && finding.kind.word() == self.said("kind")
                && of.join("\n") == self.said("of")
                && one(&finding.note, "note")
                && one(&finding.thread, "thread")
                && one(&finding.size, "size")
                && one(&finding.equivalent, "equivalent")
                && one(&finding.meanwhile, "meanwhile")
        };
        chart.findings.iter().find(same).map(|finding| finding.id.clone())
    }
}

/// `POST /machines/{machine}/findings`
pub(crate) async fn write(
    State(shop): State<Shop>,
    hand: Hand,
    Path(id): Path<String>,
    Form(sent): Form<Sent>,
) -> Result<Response, Error> {
    let view = shop.view(&id).await?;
    let machine = &view.machine.id;
    let turn = Revision::take(&shop, machine).await?;
    let chart = turn.revision.chart();
    let mut typed = Typed::of(&sent);
    typed.look_over();
    let next = next_finding(chart);
    let (new, mut outcome) = match typed.already(chart) {
        Some(there) => (there, Outcome::Written),
        None if typed.is_right() => {
            let add = Edit::Add { list: "finding".to_owned(), within: None, keys: typed.keys(&next) };
            let outcome = turn.write(&shop, machine, &hand, &sent, &[add]).await?;
            (next, outcome)
        }
        None => (next, Outcome::Refused(Wrong::default())),
    };
    if let Outcome::Written = outcome {
        let to = format!("{}#{}", address::findings(machine), address::escaped(&anchor(&new)));
        return Ok(Redirect::to(&to).into_response());
    }
    let status = outcome.status();
    if let Outcome::Refused(_) = &outcome {
        for (key, _, fault) in &mut typed.answers {
            let beside = outcome.beside(&new, key, &Answer::default());
            *fault = fault.take().or(beside);
        }
    }
    typed.wrong = outcome.above();
    let form = form(&view, &turn.revision, &typed, sent.key);
    let fold = Fold::open(LINE, told(&form));
    Ok((status, page(&view, &hand, &turn.revision, &fold, None)?.render()).into_response())
}

/// The form.
pub(super) fn form(view: &View, revision: &Revision, typed: &Typed, key: FormKey) -> Questions {
    let machine = &view.machine.id;
    let fault =
        |key: &str| typed.answers.iter().find(|(known, ..)| *known == key).and_then(|(.., fault)| fault.clone());
    let field = |key: &'static str, label: &str, hint: &str, entry: Entry| Field {
        name: key.to_owned(),
        form: "new".to_owned(),
        label: label.to_owned(),
        hint: hint.to_owned(),
        entry,
        value: typed.said(key).to_owned(),
        fault: fault(key),
    };
    let kinds = FindingKind::WORDS.iter().map(|(word, of)| Choice::new(*word, kind(*of))).collect();
    let mut fields = vec![
        field("kind", "What kind is it?", "", Entry::Pick(kinds)),
        field("of", "What is it about?", "", Entry::List(elements(machine, revision.chart()))),
    ];
    fields.extend(TYPED.iter().map(|q| field(q.key, q.label, q.hint, q.entry.clone())));
    Questions {
        to: address::findings(machine),
        key,
        hidden: revision.hidden(&[]),
        fields,
        wrong: typed.wrong.clone(),
        words: "Write it down".to_owned(),
        back: None,
    }
}

/// The form with the caution that stands before it.
pub(super) fn told(form: &Questions) -> Markup {
    html! { (hole()) (form) }
}

/// What a finding can be about.
fn elements(machine: &Id, chart: &Chart) -> Vec<Choice> {
    let named = |id: &Id| Choice::new(id.as_str(), capital(&Element::of(machine, chart, id).name));
    let as_a =
        |id: &Id, what: &str| Choice::new(id.as_str(), format!("{} ({what})", Element::of(machine, chart, id).name));
    let mut all = vec![Choice::new("", "The machine as a whole")];
    all.extend(chart.points_here().map(|point| named(&point.id)));
    all.extend(chart.assemblies.iter().map(|one| as_a(&one.id, "part of the machine")));
    all.extend(
        chart.reservoirs.iter().filter(|one| chart.applies(&one.when)).map(|one| as_a(&one.id, &one.kind.to_string())),
    );
    all.extend(chart.pairs.iter().filter(|one| chart.applies(&one.when)).map(|one| as_a(&one.id, "moving pair")));
    for circuit in chart.circuits.iter().filter(|one| chart.applies(&one.when)) {
        let nodes = circuit.nodes.iter().map(|node| {
            Choice::new(node.id.as_str(), format!("{} (in {})", called(node.name.as_ref(), &node.id), circuit.name))
        });
        all.extend([as_a(&circuit.id, "oil lines")].into_iter().chain(nodes));
    }
    all
}

/// One interval as people write it, several as a list.
fn interval(typed: &str) -> Value {
    if typed.lines().count() == 1 { text(typed) } else { lines(typed) }
}
