//! One table of a file, read by the keys of its element. Every method notes its own faults and gives nothing where there is one,
//! so that a reader reads straight on and all faults are told at once.

use std::cell::RefCell;
use std::ops::Range;

use toml_edit::{Item, TableLike, Value};

use crate::chart::When;
use crate::fault::{either, nearest};
use crate::id::Id;

use super::key::{Element, Key, Need, Sort, Takes};
use super::links::Use;
use super::log::Log;

/// One pair of an inline condition: the option, its choices, and where they stand.
pub(crate) type Condition<'t> = (&'t str, Vec<String>, Option<Range<usize>>);

/// A table being read.
pub struct Table<'t> {
    pub(super) at: &'t dyn TableLike,
    pub(super) element: &'static Element,
    pub(crate) log: &'t Log,
    span: Option<Range<usize>>,
    /// The id once it is read, for the sentences.
    name: RefCell<Option<Id>>,
    /// The examples that have the element: its own condition and its parent's.
    when: When,
    /// The keys that the reader has asked for, so that a key in the registry that nobody reads is found by the first test.
    asked: RefCell<Vec<&'static str>>,
}

impl<'t> Table<'t> {
    pub(super) fn root(at: &'t toml_edit::Table, element: &'static Element, log: &'t Log) -> Self {
        Self {
            at,
            element,
            log,
            span: at.span(),
            name: RefCell::default(),
            when: When::default(),
            asked: RefCell::default(),
        }
    }

    /// Where the table begins.
    #[must_use]
    pub fn span(&self) -> Option<Range<usize>> {
        self.span.clone()
    }

    /// Where the value of a key stands.
    #[must_use]
    pub fn span_of(&self, key: &str) -> Option<Range<usize>> {
        self.at.get(key).and_then(Item::span).or_else(|| self.span())
    }

    /// Notes a fault at the value of a key; the sentence begins with the key and the element.
    pub fn fault(&self, key: &str, says: &str) {
        self.log.fault(self.span_of(key), format!("{} {says}", self.what(key)));
    }

    /// `the load of the pair "a"`.
    #[must_use]
    pub fn what(&self, key: &str) -> String {
        match &*self.name.borrow() {
            Some(id) => format!("`{key}` of the {} \"{id}\"", self.element.name),
            None => format!("`{key}` of the {}", self.element.name),
        }
    }

    /// The element's own id, noted as made.
    pub fn id(&self, sort: Sort) -> Option<Id> {
        let id = self.name()?;
        self.log.made(&id, sort, self.span_of("id"), &self.when);
        Some(id)
    }

    /// The element's own name, where the file's names are its reader's to hold apart.
    pub fn name(&self) -> Option<Id> {
        let (text, span) = self.string("id")?;
        match Id::new(text) {
            Ok(id) => {
                self.name.replace(Some(id.clone()));
                Some(id)
            }
            Err(fault) => {
                self.log.fault(span, fault.to_string());
                None
            }
        }
    }

    /// What kind of element it is, in sentences.
    #[must_use]
    pub fn kind(&self) -> &'static str {
        self.element.name
    }

    /// The link to another element.
    pub fn link(&self, key: &'static str) -> Option<Id> {
        let (text, span) = self.string(key)?;
        self.linked(key, text, span)
    }

    /// The links to other elements, one or a list.
    pub fn links(&self, key: &'static str) -> Vec<Id> {
        self.strings(key).into_iter().filter_map(|(text, span)| self.linked(key, text, span)).collect()
    }

    /// The pairs of an inline table such as `{ option = "choice" }`, each choice a text or a list of texts, with its place.
    pub(crate) fn inline(&self, key: &'static str) -> Vec<Condition<'t>> {
        let Some(item) = self.item(key) else { return Vec::new() };
        let Some(table) = item.as_table_like() else {
            self.fault(key, &format!("is not a condition; write it like {key} = {{ option = \"choice\" }}"));
            return Vec::new();
        };
        let texts = |item: &Item| match item.as_array() {
            Some(list) => list.iter().map(|value| value.as_str().map(str::to_owned)).collect::<Option<Vec<_>>>(),
            None => item.as_str().map(|text| vec![text.to_owned()]),
        };
        let mut pairs: Vec<Condition<'t>> = Vec::new();
        for (name, item) in table.iter() {
            match texts(item) {
                Some(choices) => pairs.push((name, choices, item.span())),
                None => self.log.fault(
                    item.span(),
                    format!("{} wants a text for `{name}`; write it like {{ {name} = \"choice\" }}", self.what(key)),
                ),
            }
        }
        pairs
    }

    /// Whether the element has such a key.
    pub(crate) fn takes(&self, key: &str) -> bool {
        self.element.keys.iter().any(|known| known.name == key)
    }

    /// The tables under a key, each read by `read`. Those that lack what they must have are left out, their faults noted.
    pub fn children<T>(&self, key: &'static str, read: impl Fn(&Table<'_>) -> Option<T>) -> Vec<T> {
        let Some(element) = self.element_of(key) else { return Vec::new() };
        let Some(item) = self.item(key) else { return Vec::new() };
        let mut tables: Vec<(&dyn TableLike, Option<Range<usize>>)> = Vec::new();
        if let Some(list) = item.as_array_of_tables() {
            tables.extend(list.iter().map(|table| (table as &dyn TableLike, table.span())));
        } else if let Some(table) = item.as_table_like().filter(|_| matches!(self.key(key).takes, Takes::Table(_))) {
            tables.push((table, item.span()));
        } else if let Some(list) = item.as_array().filter(|list| list.iter().all(Value::is_inline_table)) {
            tables.extend(list.iter().filter_map(|v| v.as_inline_table().map(|t| (t as &dyn TableLike, v.span()))));
        } else {
            let head =
                if matches!(self.key(key).takes, Takes::Table(_)) { format!("[{key}]") } else { format!("[[{key}]]") };
            self.fault(key, &format!("is not a table; begin each {} with a line {head}", element.name));
        }
        tables
            .into_iter()
            .filter_map(|(at, span)| {
                let child = self.child_table(at, element, span);
                let value = read(&child);
                child.finish();
                value
            })
            .collect()
    }

    fn child_table<'c>(
        &'c self,
        at: &'c dyn TableLike,
        element: &'static Element,
        span: Option<Range<usize>>,
    ) -> Table<'c> {
        let mut child = Table {
            at,
            element,
            log: self.log,
            span,
            name: RefCell::default(),
            when: When::default(),
            asked: RefCell::default(),
        };
        child.when = child.own_when().and(&self.when);
        child
    }

    /// The examples that have the element: its own condition and that of the element it stands in.
    #[must_use]
    pub fn when(&self) -> When {
        self.when.clone()
    }

    /// The one table under a key.
    pub fn child<T>(&self, key: &'static str, read: impl Fn(&Table<'_>) -> Option<T>) -> Option<T> {
        self.children(key, read).into_iter().next()
    }

    /// Notes every key that the element does not have, with the nearest that it has.
    pub fn finish(&self) {
        let asked = self.asked.borrow();
        debug_assert!(
            self.element.keys.iter().all(|key| asked.contains(&key.name)),
            "the reader of the {} asks for every key of its registry",
            self.element.name
        );
        for (key, item) in self.at.iter() {
            if self.element.keys.iter().any(|known| known.name == key) {
                continue;
            }
            let span = self.at.key(key).and_then(toml_edit::Key::span).or_else(|| item.span()).or_else(|| self.span());
            let names = self.element.keys.iter().map(|known| known.name);
            if self.log.is_newer() {
                self.log.warn(
                    span,
                    format!("`{key}` is not known here; the file is of a newer format, so it is kept as it is"),
                );
                continue;
            }
            let hint = match nearest(key, names.clone()) {
                Some(near) => format!("did you mean `{near}`?"),
                None => format!("it has {}", either(names)),
            };
            self.log.fault(span, format!("the {} has no key `{key}`: {hint}", self.element.name));
        }
    }

    /// Reads the number of the format and notes whether the file is newer than this program.
    pub(super) fn format(&self, head: &'static str) {
        let says = format!("write {head} = {} as the file's first line", super::FORMAT);
        self.asked.borrow_mut().push(head);
        match self.at.get(head) {
            None => self.log.fault(None, format!("the file does not say which format it has; {says}")),
            Some(item) => match item.as_integer() {
                Some(format) if format > super::FORMAT => {
                    self.log.set_newer();
                    self.log.warn(
                        item.span(),
                        format!("the file is of format {format}, this program knows {}; it is read as far as it is understood", super::FORMAT),
                    );
                }
                Some(format) if format >= 1 => {}
                _ => self.log.fault(item.span(), format!("`{head}` is the number of the file's format; {says}")),
            },
        }
    }

    /// The item under a key, noting its lack when it must be there.
    pub(super) fn item(&self, key: &'static str) -> Option<&'t Item> {
        let known = self.key(key);
        self.asked.borrow_mut().push(key);
        let item = self.at.get(key);
        if item.is_none() && known.need == Need::Must && !self.is_misspelt(key) {
            let of = match &*self.name.borrow() {
                Some(id) => format!("the {} \"{id}\"", self.element.name),
                None => format!("this {}", self.element.name),
            };
            self.log.fault(self.head(), format!("{of} has no `{key}`; add {}", known.example()));
        }
        item
    }

    /// Whether a key that is lacking stands there under a misspelt name, which is one fault and told at that name.
    fn is_misspelt(&self, key: &str) -> bool {
        let names = || self.element.keys.iter().map(|known| known.name);
        let unknown = self.at.iter().map(|(name, _)| name).filter(|name| !names().any(|known| known == *name));
        unknown.into_iter().any(|name| nearest(name, names()) == Some(key))
    }

    pub(super) fn key(&self, key: &'static str) -> &'static Key {
        self.element
            .keys
            .iter()
            .find(|known| known.name == key)
            .expect("a reader asks only for keys of its own registry: a test reads every key of every element")
    }

    /// The table's first line, for faults that have no value to point at.
    fn head(&self) -> Option<Range<usize>> {
        self.span.clone().map(|span| span.start..span.end)
    }

    fn element_of(&self, key: &'static str) -> Option<&'static Element> {
        match self.key(key).takes {
            Takes::Table(element) | Takes::Tables(element) => Some(element),
            _ => None,
        }
    }

    fn linked(&self, key: &'static str, text: &str, span: Option<Range<usize>>) -> Option<Id> {
        let (sorts, on_every_example): (&'static [Sort], bool) = match self.key(key).takes {
            Takes::Link(sorts) | Takes::Links(sorts) => (sorts, true),
            Takes::Mentions(sorts) => (sorts, false),
            _ => (&[], false),
        };
        let when = self.when.clone();
        self.log.link(Use { id: text.to_owned(), sorts, span, what: self.what(key), when, on_every_example });
        Id::new(text).ok()
    }
}

impl Key {
    /// What a line with this key looks like.
    fn example(&self) -> String {
        let name = self.name;
        match &self.takes {
            Takes::Id => format!("a short name of its own, such as {name} = \"9\""),
            Takes::Choice(words) => format!("{name} = one of {}", either(words())),
            Takes::Quantity(kind) | Takes::Quantities(kind) => format!("{name} = \"{}\"", kind.example()),
            Takes::Table(_) => format!("a table that begins with [{name}]"),
            Takes::Link(sorts) => {
                format!("{name} = the id of {}", sorts.first().map_or("an element", |sort| sort.name()))
            }
            _ => format!("{name} = \"…\" ({})", self.says),
        }
    }
}
