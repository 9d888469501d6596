//! Where things stand in the text of a chart: every table that has a header of its own, with its keys, in the order of the text.

use std::ops::Range;

use toml_edit::{Document as Toml, Item, TableLike};

/// The tables of a text.
#[derive(Debug)]
pub(super) struct Layout {
    /// In the order of the text; the first is the root.
    pub(super) blocks: Vec<Block>,
}

/// A table with a header of its own: the header's line, the keys below it, and what it is.
#[derive(Debug)]
pub(super) struct Block {
    /// The names in its header: `["point", "evidence"]`; empty for the root.
    pub(super) path: Vec<String>,
    /// Its id, when it has one.
    pub(super) id: Option<String>,
    /// Where its own text begins: at the comments that lean on its header, or at the header.
    pub(super) begin: usize,
    /// Where its body begins: behind the header's line.
    pub(super) body: usize,
    /// Its keys with a value on the right.
    pub(super) keys: Vec<Line>,
}

/// A key with its value.
#[derive(Debug)]
pub(super) struct Line {
    pub(super) name: String,
    /// The whole line, or lines, with the newline.
    pub(super) lines: Range<usize>,
    pub(super) key: Range<usize>,
    pub(super) value: Range<usize>,
}

impl Layout {
    /// The layout of a text; nothing when it is no TOML.
    pub(super) fn of(text: &str) -> Option<Self> {
        let document = Toml::parse(text).ok()?;
        let mut found = Vec::new();
        let root = Found { path: Vec::new(), header: None, table: document.as_table() };
        walk(root, &mut found);
        found.sort_by_key(|found| found.header.as_ref().map(|header| header.start));
        let begins: Vec<usize> =
            found.iter().map(|found| found.header.as_ref().map_or(0, |h| leaning(text, h.start))).collect();
        let blocks = found
            .iter()
            .enumerate()
            .map(|(place, found)| {
                let header_end = found.header.as_ref().map_or(0, |header| line_end(text, header.end));
                Block {
                    path: found.path.clone(),
                    id: id_of(found.table),
                    begin: begins[place],
                    body: header_end,
                    keys: keys(text, found.table),
                }
            })
            .collect();
        Some(Self { blocks })
    }

    /// The place in the list of the element of this id.
    pub(super) fn element(&self, id: &str) -> Option<usize> {
        self.blocks.iter().position(|block| block.id.as_deref() == Some(id))
    }

    /// The places of the tables that belong to a block: itself and those below it, which follow it in the text.
    pub(super) fn family(&self, place: usize) -> Range<usize> {
        let depth = self.blocks[place].path.len();
        let more = self.blocks[place + 1..].iter().take_while(|block| block.path.len() > depth).count();
        place..place + 1 + more
    }
}

struct Found<'t> {
    path: Vec<String>,
    header: Option<Range<usize>>,
    table: &'t dyn TableLike,
}

fn walk<'t>(found: Found<'t>, all: &mut Vec<Found<'t>>) {
    for (name, item) in found.table.iter() {
        let mut path = found.path.clone();
        path.push(name.to_owned());
        match item {
            Item::Table(table) if !table.is_dotted() && !table.is_implicit() => {
                walk(Found { path, header: table.span(), table }, all);
            }
            Item::ArrayOfTables(list) => {
                for table in list.iter() {
                    walk(Found { path: path.clone(), header: table.span(), table }, all);
                }
            }
            _ => {}
        }
    }
    all.push(found);
}

fn id_of(table: &dyn TableLike) -> Option<String> {
    table.get("id").and_then(Item::as_str).map(str::to_owned)
}

fn keys(text: &str, table: &dyn TableLike) -> Vec<Line> {
    let mut keys: Vec<Line> = table
        .iter()
        .filter(|(_, item)| item.is_value())
        .filter_map(|(name, item)| {
            let key = table.key(name)?.span()?;
            let value = item.span()?;
            let lines = line_start(text, key.start)..line_end(text, value.end);
            Some(Line { name: name.to_owned(), lines, key, value })
        })
        .collect();
    keys.sort_by_key(|line| line.lines.start);
    keys
}

/// Where the comments that lean on a header begin: the comment lines right above it, without a blank line between.
fn leaning(text: &str, header: usize) -> usize {
    let mut begin = line_start(text, header);
    while begin > 0 {
        let above = line_start(text, begin - 1);
        if !text[above..begin].trim_start().starts_with('#') {
            break;
        }
        begin = above;
    }
    begin
}

fn line_start(text: &str, at: usize) -> usize {
    text[..at].rfind('\n').map_or(0, |newline| newline + 1)
}

/// Behind the newline that ends the line of `at`, or the end of the text.
pub(super) fn line_end(text: &str, at: usize) -> usize {
    text[at..].find('\n').map_or(text.len(), |newline| at + newline + 1)
}
