//! What is asked of a point, in the order of the chart's text: one table for mending a point and for writing down a new one.

use shop::chart::{Chart, Method, Point, State};
use shop::choice::Choice as _;
use shop::document::Value;
use shop::id::Id;

use crate::machines::question::Question;
use crate::machines::sent::{lines, text};
use crate::parts::{Choice, Entry};
use crate::phrase::capital;

/// The questions.
pub(super) const QUESTIONS: [Question<Point>; 11] = [
    Question {
        key: "name",
        label: "What it is called",
        hint: "As in Ram way, rear left.",
        must: Some("A point has a name. Write what people call it, like \"Ram way, rear left\"."),
        now: |point| point.name.clone(),
        entry: |_| Entry::Line,
        value: text,
    },
    Question {
        key: "method",
        label: "How oiled",
        hint: "",
        must: Some("Choose one of these."),
        now: |point| point.method.to_string(),
        entry: |_| methods(),
        value: text,
    },
    Question {
        key: "stand",
        label: "Stand here",
        hint: "The round goes from stand to stand.",
        must: None,
        now: |point| point.stand.as_ref().map(Id::to_string).unwrap_or_default(),
        entry: stands,
        value: text,
    },
    Question {
        key: "where",
        label: "How to find it",
        hint: "As in hole under the brass cap.",
        must: None,
        now: |point| point.place.clone().unwrap_or_default(),
        entry: |_| Entry::Text,
        value: text,
    },
    Question {
        key: "setup",
        label: "Set the machine",
        hint: "What must be so to reach it, one to a line, as in belt guard off or ram drawn back. The machine stands still unless \
               you write running here, which is only for a look from outside the guards.",
        must: None,
        now: setup_now,
        entry: |_| Entry::Text,
        value: setup,
    },
    Question {
        key: "dose",
        label: "How much each time",
        hint: "With its unit, as in 2 strokes, 3 drops or 1.5 mL.",
        must: None,
        now: |point| point.dose.as_ref().map(|dose| dose.typed.clone()).unwrap_or_default(),
        entry: |_| Entry::Quantity,
        value: text,
    },
    Question {
        key: "every",
        label: "How often",
        hint: "One to a line, whichever comes first: as in 1 use, 4 h or 1 week.",
        must: None,
        now: |point| point.every.iter().map(|every| every.typed.as_str()).collect::<Vec<_>>().join("\n"),
        entry: |_| Entry::Text,
        value: lines,
    },
    Question {
        key: "oil",
        label: "Oil as charted",
        hint: "In words that are on any can, as in way 68 or circulating 46.",
        must: None,
        now: |point| point.oil.clone().unwrap_or_default(),
        entry: |_| Entry::Line,
        value: text,
    },
    Question {
        key: "sign",
        label: "Look for",
        hint: "What shows that oil got there, as in wet line along the way after ten strokes.",
        must: None,
        now: |point| point.sign.clone().unwrap_or_default(),
        entry: |_| Entry::Text,
        value: text,
    },
    Question {
        key: "baseline",
        label: "When all was well",
        hint: "How that sign was on this machine, as in one drop every four seconds at 16 °C.",
        must: None,
        now: |point| point.baseline.clone().unwrap_or_default(),
        entry: |_| Entry::Text,
        value: text,
    },
    Question {
        key: "note",
        label: "Note",
        hint: "Anything worth saying.",
        must: None,
        now: |point| point.note.clone().unwrap_or_default(),
        entry: |_| Entry::Text,
        value: text,
    },
];

/// A machine that stands still is not written out: it is so unless the chart says otherwise.
fn setup_now(point: &Point) -> String {
    let running = (point.state == State::Running).then(|| State::Running.word());
    let all: Vec<&str> = running.into_iter().chain(point.moves.iter().map(String::as_str)).collect();
    all.join("\n")
}

/// In the chart the state of the machine is written out, for people who read the file.
fn setup(typed: &str) -> Value {
    let says_state = typed.lines().any(|line| State::from_word(line.trim()).is_some());
    if says_state { lines(typed) } else { lines(&format!("{}\n{typed}", State::Stopped.word())) }
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
