//! What is asked of a finding, in the order of the chart's text: one table for mending a finding and for writing down a new one.

use shop::chart::{Chart, Finding, FindingKind};
use shop::choice::Choice as _;
use shop::document::Value;
use shop::id::Id;

use super::finding::kind;
use crate::machines::element::Element;
use crate::machines::question::Question;
use crate::machines::sent::{lines, text};
use crate::parts::{Choice, Entry};
use crate::phrase::{called, capital};

/// The questions, the kind first; what it is about is asked apart, for it may be about several things.
pub(super) const QUESTIONS: [Question<Finding>; 7] = [
    Question {
        key: "kind",
        label: "What kind is it?",
        hint: "",
        must: Some("Choose one of these."),
        now: |finding| finding.kind.word().to_owned(),
        entry: |_| Entry::Pick(FindingKind::WORDS.iter().map(|(word, of)| Choice::new(*word, kind(*of))).collect()),
        value: text,
    },
    Question {
        key: "note",
        label: "What did you find?",
        hint: "Where it is, how it looks, what you have tried.",
        must: Some("Nothing is written here. Say what you found, like \"The lid of the cup is lost.\""),
        now: |finding| finding.note.clone().unwrap_or_default(),
        entry: |_| Entry::Text,
        value: text,
    },
    Question {
        key: "thread",
        label: "Its thread",
        hint: "As in 1/8 in, 27 to the inch, or M10 x 1. Leave it empty where there is none.",
        must: None,
        now: |finding| finding.thread.clone().unwrap_or_default(),
        entry: |_| Entry::Line,
        value: text,
    },
    Question {
        key: "size",
        label: "Its size",
        hint: "Bore, depth, across flats: as in 9 mm bore, 62 mm deep.",
        must: None,
        now: |finding| finding.size.clone().unwrap_or_default(),
        entry: |_| Entry::Line,
        value: text,
    },
    Question {
        key: "equivalent",
        label: "What fits in its place, by dimension",
        hint: "As in turned brass lid, 38 mm across, with a 1 mm breathing hole.",
        must: None,
        now: |finding| finding.equivalent.clone().unwrap_or_default(),
        entry: |_| Entry::Line,
        value: text,
    },
    Question {
        key: "meanwhile",
        label: "What covers it meanwhile?",
        hint: "As in leather flap tied over the cup.",
        must: None,
        now: |finding| finding.meanwhile.clone().unwrap_or_default(),
        entry: |_| Entry::Line,
        value: text,
    },
    Question {
        key: "interval",
        label: "Until it is settled, how often?",
        hint: "As in 1 week, 1 use or 4 h; several stand one to a line. The round then calls for its oiling point this often.",
        must: None,
        now: |finding| finding.interval.iter().map(|every| every.typed.as_str()).collect::<Vec<_>>().join("\n"),
        entry: |_| Entry::Text,
        value: interval,
    },
];

/// What is asked about what it is about.
pub(super) const ABOUT: &str = "What is it about?";

/// What a finding can be about, and what it is about already, be it on this example or not.
pub(super) fn elements(machine: &Id, chart: &Chart, already: &[Id]) -> Vec<Choice> {
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
    for id in already {
        if all.iter().all(|choice| choice.value != id.as_str()) {
            all.push(named(id));
        }
    }
    all
}

/// One interval as people write it, several as a list.
fn interval(typed: &str) -> Value {
    if typed.lines().count() == 1 { text(typed) } else { lines(typed) }
}
