//! Every key of every element, written from the registry, is read without a fault: what the registry promises, the reader takes.

use std::fmt::Write as _;

use shop::chart::{Chart, ROOT as CHART};
use shop::reading::{Element, Sort, Takes};
use shop::shelf::{ROOT as SHELF, Shelf};

#[test]
fn a_chart_with_every_key_is_read_without_a_fault() {
    let text = written(&CHART);
    let read = Chart::read(&text);
    let told: Vec<String> = read.faults.iter().map(|fault| fault.shown("chart.toml", &text)).collect();
    assert!(told.is_empty(), "{}\n{text}", told.join("\n"));
    assert!(read.value.is_some());
}

#[test]
fn a_shelf_with_every_key_is_read_without_a_fault() {
    let text = written(&SHELF);
    let read = Shelf::read(&text);
    let told: Vec<String> = read.faults.iter().map(|fault| fault.shown("shelf.toml", &text)).collect();
    assert!(told.is_empty(), "{}\n{text}", told.join("\n"));
}

#[test]
fn every_key_says_what_it_is_for_and_stands_once() {
    fn check(element: &Element) {
        let mut names: Vec<&str> = element.keys.iter().map(|key| key.name).collect();
        names.sort_unstable();
        assert!(names.windows(2).all(|pair| pair[0] != pair[1]), "{} has a key twice: {names:?}", element.name);
        for key in element.keys {
            assert!(!key.says.is_empty(), "{}.{} says nothing", element.name, key.name);
            if let Takes::Table(child) | Takes::Tables(child) = key.takes {
                check(child);
            }
        }
    }
    check(&CHART);
    check(&SHELF);
}

/// A file with every key of the registry, each with a value that fits it.
fn written(root: &Element) -> String {
    let mut text = String::new();
    table(root, "", "", &mut text);
    text
}

fn table(element: &Element, path: &str, own_sort: &str, text: &mut String) {
    for key in element.keys {
        if let Some(value) = value(&key.takes, own_sort) {
            // What a bearing cannot have together: the bore stays inside the outside, the dry fill above the capacity.
            let value = match (element.name, key.name) {
                (_, "outside") => "\"52 mm\"".to_owned(),
                (_, "clearance") => "\"0.05 mm\"".to_owned(),
                (_, "v100") => "\"8 mm2/s\"".to_owned(),
                (_, "file") => "\"left.jpg\"".to_owned(),
                ("tube", "to") => "\"id-node-2\"".to_owned(),
                (_, "of") if element.name == "evidence" => "[\"place\"]".to_owned(),
                (_, "retired") => "[\"gone\"]".to_owned(),
                (_, "setup") => "[\"stopped\", \"cover off\"]".to_owned(),
                (_, "at") => "[0.4, 0.7]".to_owned(),
                ("oil", "family") => "\"way\"".to_owned(),
                (_, "stock") => "\"14 L\"".to_owned(),
                (_, "packs") => "[\"20 L at 85 EUR\"]".to_owned(),
                _ => value,
            };
            let _ = writeln!(text, "{} = {value}", key.name);
        }
    }
    for key in element.keys {
        let (child, open, close) = match key.takes {
            Takes::Table(child) => (child, "[", "]"),
            Takes::Tables(child) => (child, "[[", "]]"),
            _ => continue,
        };
        let path = if path.is_empty() { key.name.to_owned() } else { format!("{path}.{}", key.name) };
        let _ = writeln!(text, "{open}{path}{close}");
        table(child, &path, key.name, text);
        if key.name == "node" {
            let _ = writeln!(text, "[[{path}]]\nid = \"id-node-2\"\nkind = \"outlet\"");
        }
    }
}

fn value(takes: &Takes, own: &str) -> Option<String> {
    Some(match takes {
        Takes::Format => "1".to_owned(),
        // Evidence stands under several elements; it has no id, so ids stay unique.
        Takes::Id => format!("\"id-{own}\""),
        Takes::Text | Takes::Texts => "\"a\"".to_owned(),
        Takes::Number => "95".to_owned(),
        Takes::TwoNumbers => "[0.5, 0.5]".to_owned(),
        Takes::YesNo => "true".to_owned(),
        Takes::Date => "2026-03-14".to_owned(),
        Takes::Choice(words) => format!("\"{}\"", words()[0]),
        Takes::Quantity(kind) | Takes::Quantities(kind) => format!("\"{}\"", kind.example()),
        Takes::Metres => "1.2".to_owned(),
        Takes::Speeds => "[\"94 rpm\", \"0.3 m/s\"]".to_owned(),
        Takes::Dose => "\"2 strokes\"".to_owned(),
        Takes::Intervals => "[\"1 use\", \"4 h\", \"1 week\", \"6 months\"]".to_owned(),
        Takes::Link(sorts) | Takes::Links(sorts) | Takes::Mentions(sorts) => format!("\"{}\"", first_of(sorts)),
        Takes::When => "{ id-option = \"a\" }".to_owned(),
        Takes::Table(_) | Takes::Tables(_) => return None,
    })
}

fn first_of(sorts: &[Sort]) -> String {
    let name = match sorts[0] {
        Sort::Option => "option",
        Sort::Assembly => "assembly",
        Sort::Pair => "pair",
        Sort::Reservoir => "reservoir",
        Sort::Circuit => "circuit",
        Sort::Node => "node",
        Sort::Tube => "tube",
        Sort::Point => "point",
        Sort::Stand => "stand",
        Sort::Job => "job",
        Sort::Picture => "picture",
        Sort::Finding => "finding",
        Sort::Oil => "oil",
        Sort::Can => "can",
    };
    format!("id-{name}")
}
