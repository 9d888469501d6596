//! The edits that a chart's text can take, each against an id, and why one is refused.

use std::fmt;

use crate::chart::{ROOT, When};
use crate::fault::Fault;
use crate::id::Id;
use crate::reading::{Element, Takes};

use super::layout::{Block, Layout, Line};
use super::splice::Splice;
use super::written::{key as key_written, written};

/// One change of a chart's text.
#[derive(Clone, Debug, PartialEq)]
pub enum Edit {
    /// Writes a key of an element, new or over what stood there.
    Set {
        /// The element.
        of: Target,
        /// The key.
        key: String,
        /// What it is to be.
        to: Value,
    },
    /// Takes a key of an element out.
    Clear {
        /// The element.
        of: Target,
        /// The key.
        key: String,
    },
    /// Writes a new element behind the last of its list.
    Add {
        /// The list: `point`, `pair`, `circuit.node`, `point.evidence`.
        list: String,
        /// The element that it stands in, for lists inside an element.
        within: Option<Id>,
        /// Its keys in the order in which they are written.
        keys: Vec<(String, Value)>,
    },
    /// Takes an element out, with all that stands in it, and retires their ids.
    Remove {
        /// The element.
        of: Target,
    },
}

/// The element that an edit is about.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Target {
    /// The file itself.
    File,
    /// The machine.
    Machine,
    /// The element of this id.
    Element(Id),
    /// An evidence of an element, counted from nought.
    Evidence(Id, usize),
}

/// What a key is to be. Quantities, doses, intervals and days are texts, as people type them.
#[derive(Clone, Debug, PartialEq)]
pub enum Value {
    /// A text.
    Text(String),
    /// A list of texts.
    Texts(Vec<String>),
    /// A bare number.
    Number(f64),
    /// Two bare numbers.
    Numbers([f64; 2]),
    /// `true` or `false`.
    YesNo(bool),
    /// A condition on options.
    When(When),
}

/// Why an edit is refused. Nothing was changed.
#[derive(Clone, Debug, PartialEq)]
pub enum Refused {
    /// There is no such element.
    NoElement(String),
    /// The element has no such key, or none that can be set.
    NoKey {
        /// What the element is.
        element: &'static str,
        /// The key.
        key: String,
    },
    /// The element is written on one line inside another, where it cannot be edited piece by piece.
    Inline(String),
    /// The chart would have faults.
    Faulty {
        /// The text as it would be, for the places of the faults.
        text: String,
        /// The faults.
        faults: Vec<Fault>,
    },
    /// The text is not the one that is to be undone.
    Changed,
}

impl fmt::Display for Refused {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoElement(what) => write!(f, "the chart has no {what}; look at its ids"),
            Self::NoKey { element, key } => write!(f, "the {element} has no key `{key}` that can be set"),
            Self::Inline(what) => {
                write!(f, "{what} is written on one line inside another element; edit the file itself there")
            }
            Self::Faulty { faults, .. } => {
                let says: Vec<&str> = faults.iter().map(|fault| fault.says.as_str()).collect();
                write!(f, "the chart would no longer be right: {}", says.join("; "))
            }
            Self::Changed => f.write_str("the chart was changed meanwhile, so that this can no longer be taken back"),
        }
    }
}

impl Edit {
    /// The splices that make this edit, each to be made on the text that the one before it left.
    pub(super) fn splices(&self, text: &str) -> Result<Vec<Splice>, Refused> {
        let layout = Layout::of(text).ok_or(Refused::Changed)?;
        match self {
            Self::Set { of, key, to } => {
                let place = of.place(&layout)?;
                let block = &layout.blocks[place];
                let element = element(&block.path)?;
                if !settable(element, key) {
                    return Err(Refused::NoKey { element: element.name, key: key.clone() });
                }
                Ok(vec![set(text, block, element, key, &written(to))])
            }
            Self::Clear { of, key } => {
                let block = &layout.blocks[of.place(&layout)?];
                let element = element(&block.path)?;
                let line =
                    line(block, key).ok_or_else(|| Refused::NoKey { element: element.name, key: key.clone() })?;
                Ok(vec![Splice { range: line.lines.clone(), with: String::new() }])
            }
            Self::Add { list, within, keys } => add(text, &layout, list, within.as_ref(), keys),
            Self::Remove { of } => remove(text, &layout, of),
        }
    }
}

impl Target {
    /// The place of the target's block.
    fn place(&self, layout: &Layout) -> Result<usize, Refused> {
        let top = |name: &str| layout.blocks.iter().position(|block| block.path == [name]);
        match self {
            Self::File => Ok(0),
            Self::Machine => top("machine").ok_or_else(|| Refused::Inline("the machine".to_owned())),
            Self::Element(id) => {
                layout.element(id.as_str()).ok_or_else(|| Refused::NoElement(format!("element \"{id}\"")))
            }
            Self::Evidence(id, number) => {
                let of = layout.element(id.as_str()).ok_or_else(|| Refused::NoElement(format!("element \"{id}\"")))?;
                layout
                    .family(of)
                    .filter(|place| layout.blocks[*place].path.last().is_some_and(|name| name == "evidence"))
                    .nth(*number)
                    .ok_or_else(|| Refused::NoElement(format!("evidence number {} of \"{id}\"", number + 1)))
            }
        }
    }
}

/// The registry of the table with this path.
fn element(path: &[String]) -> Result<&'static Element, Refused> {
    path.iter().try_fold(&ROOT, |element, name| {
        let key = element.keys.iter().find(|key| key.name == name);
        match key.map(|key| &key.takes) {
            Some(Takes::Table(child) | Takes::Tables(child)) => Ok(*child),
            _ => Err(Refused::NoElement(format!("list \"{}\"", path.join(".")))),
        }
    })
}

/// Keys that hold a value; tables are added and removed, an id stays what it is, the format is the program's.
fn settable(element: &Element, key: &str) -> bool {
    let takes = element.keys.iter().find(|known| known.name == key).map(|known| &known.takes);
    !matches!(takes, None | Some(Takes::Table(_) | Takes::Tables(_) | Takes::Id | Takes::Format))
}

fn line<'b>(block: &'b Block, key: &str) -> Option<&'b Line> {
    block.keys.iter().find(|line| line.name == key)
}

/// Writes a key: over its value where it stands, or as a line of its own behind the key that comes before it in the registry.
fn set(text: &str, block: &Block, element: &Element, key: &str, value: &str) -> Splice {
    if let Some(line) = line(block, key) {
        return Splice { range: line.value.clone(), with: value.to_owned() };
    }
    let rank = |name: &str| element.keys.iter().position(|known| known.name == name).unwrap_or(usize::MAX);
    let before = block.keys.iter().filter(|line| rank(&line.name) < rank(key)).max_by_key(|line| line.lines.start);
    let at = before.map_or(block.body, |line| line.lines.end);
    let example = before.or(block.keys.first());
    Splice::insert(at, own_line(text, at, example, key, value))
}

/// A line for a key, its indent and its equals sign in line with those of its neighbour.
fn own_line(text: &str, at: usize, neighbour: Option<&Line>, key: &str, value: &str) -> String {
    let key = key_written(key);
    let (indent, width) = neighbour.map_or(("", 0), |line| {
        let indent = &text[line.lines.start..line.key.start];
        // Behind the key stand spaces, an equals sign and spaces; a multi-line neighbour has the same first line.
        let equals =
            text[line.key.end..line.value.start].find('=').map_or(0, |equals| line.key.end + equals - line.key.start);
        (indent, equals.saturating_sub(1))
    });
    let indent = if indent.trim().is_empty() { indent } else { "" };
    let newline = if at > 0 && !text[..at].ends_with('\n') { "\n" } else { "" };
    format!("{newline}{indent}{key:<width$} = {value}\n")
}

fn add(
    text: &str,
    layout: &Layout,
    list: &str,
    within: Option<&Id>,
    keys: &[(String, Value)],
) -> Result<Vec<Splice>, Refused> {
    let path: Vec<String> = list.split('.').map(str::to_owned).collect();
    let element = element(&path)?;
    for (key, _) in keys {
        if key != "id" && !settable(element, key) {
            return Err(Refused::NoKey { element: element.name, key: key.clone() });
        }
    }
    let parent = &path[..path.len() - 1];
    let of_list = |place: &usize| layout.blocks[*place].path == path;
    let last = match within {
        None if parent.is_empty() => {
            let last = (0..layout.blocks.len()).rfind(of_list);
            last.map_or(layout.blocks.len() - 1, |last| layout.family(last).end - 1)
        }
        None => return Err(Refused::NoElement(format!("place for a {} outside a {}", element.name, parent.join(".")))),
        Some(id) => {
            let of = layout.element(id.as_str()).filter(|of| layout.blocks[*of].path == parent);
            let of = of.ok_or_else(|| Refused::NoElement(format!("{} \"{id}\"", parent.join("."))))?;
            let family = layout.family(of);
            family.clone().rfind(of_list).unwrap_or(family.end - 1)
        }
    };
    let width = keys.iter().map(|(key, _)| key_written(key).chars().count()).max().unwrap_or(0);
    let mut block = format!("[[{}]]\n", path.join("."));
    for (key, value) in keys {
        block.push_str(&format!("{:<width$} = {}\n", key_written(key), written(value)));
    }
    let at = end_of_text(text, &layout.blocks[last]);
    let apart = match &text[..at] {
        "" => "",
        before if before.ends_with("\n") => "\n",
        _ => "\n\n",
    };
    Ok(vec![Splice::insert(at, format!("{apart}{block}"))])
}

/// Where the text of a block ends without the blank lines and the loose comments behind it, which belong to what follows.
fn end_of_text(text: &str, block: &Block) -> usize {
    block.keys.last().map_or(block.body, |line| line.lines.end).min(text.len())
}

fn remove(text: &str, layout: &Layout, of: &Target) -> Result<Vec<Splice>, Refused> {
    let place = of.place(layout)?;
    if layout.blocks[place].path.is_empty() || layout.blocks[place].path == ["machine"] {
        return Err(Refused::NoElement("element that could be taken out by that name".to_owned()));
    }
    let family = layout.family(place);
    let last = &layout.blocks[family.end - 1];
    // The blank line in front goes with the element; loose comments behind it stay.
    let begin = layout.blocks[place].begin;
    let begin = if text[..begin].ends_with("\n\n") { begin - 1 } else { begin };
    let mut splices = vec![Splice { range: begin..end_of_text(text, last), with: String::new() }];
    let retired: Vec<String> = layout.blocks[family].iter().filter_map(|block| block.id.clone()).collect();
    if !retired.is_empty() {
        let mut without = text.to_owned();
        let _ = splices[0].clone().on(&mut without);
        splices.push(retire(&without, retired));
    }
    Ok(splices)
}

/// Adds ids to `retired`.
fn retire(text: &str, ids: Vec<String>) -> Splice {
    let root = Layout::of(text).map(|layout| layout.blocks.into_iter().next());
    let root = root.flatten().expect("a text that was TOML is so without one of its tables");
    let mut all: Vec<String> = line(&root, "retired").map(|line| texts(&text[line.value.clone()])).unwrap_or_default();
    all.extend(ids);
    set(text, &root, &ROOT, "retired", &written(&Value::Texts(all)))
}

/// The texts of a written value, one or a list.
fn texts(written: &str) -> Vec<String> {
    let value: Option<toml_edit::Value> = written.trim().parse().ok();
    match value {
        Some(toml_edit::Value::Array(list)) => list.iter().filter_map(|v| v.as_str().map(str::to_owned)).collect(),
        Some(value) => value.as_str().map(str::to_owned).into_iter().collect(),
        None => Vec::new(),
    }
}
