//! A ruled table. Each row begins with its own heading; figures stand one under another.

use maud::{Markup, Render, html};

/// The table, with a caption that says what it holds.
#[derive(Clone, Debug, Default)]
pub struct Table {
    /// What the table holds, in a few words.
    pub caption: String,
    /// The columns; the unit stands in the heading.
    pub columns: Vec<Column>,
    /// The rows, each with as many cells as there are columns.
    pub rows: Vec<Vec<Cell>>,
    /// How it is set.
    pub style: Style,
}

/// Whether the table is the answer or the working under it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Style {
    /// The answer itself.
    #[default]
    Answer,
    /// Set smaller, under the answer.
    Working,
    /// Of many columns: on a phone each row becomes lines, each with its heading before it.
    Wide,
}

/// A column and how its cells stand.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Column {
    /// Words, from the left.
    Words(String),
    /// Figures with equal decimals, to the right.
    Figures(String),
    /// What can be pressed; it needs no heading beside it.
    Acts(String),
}

/// What stands in a cell.
#[derive(Clone, Debug)]
pub enum Cell {
    /// Plain text.
    Text(String),
    /// Text with a smaller line under it: where a figure comes from.
    Note(String, String),
    /// A part, such as a verdict or a link.
    Part(Markup),
}

impl Column {
    fn heading(&self) -> &str {
        match self {
            Self::Words(text) | Self::Figures(text) | Self::Acts(text) => text,
        }
    }

    /// What stands before a cell where the columns have no room.
    fn before(&self) -> Option<&str> {
        (!matches!(self, Self::Acts(_))).then(|| self.heading())
    }

    fn class(&self) -> Option<&'static str> {
        matches!(self, Self::Figures(_)).then_some("table-figure")
    }
}

impl From<&str> for Cell {
    fn from(text: &str) -> Self {
        Self::Text(text.to_owned())
    }
}

impl From<String> for Cell {
    fn from(text: String) -> Self {
        Self::Text(text)
    }
}

impl Render for Cell {
    fn render(&self) -> Markup {
        match self {
            Self::Text(text) => text.render(),
            Self::Note(text, note) => html! { (text) small { (note) } },
            Self::Part(part) => part.clone(),
        }
    }
}

impl Render for Table {
    fn render(&self) -> Markup {
        html! {
            // The frame takes the focus so that a wide table can be moved by keyboard.
            div.table.table-working[self.style == Style::Working].table-wide[self.style == Style::Wide] role="group" aria-label=(self.caption) tabindex="0" {
                // The roles are said, because a table that is laid out as lines would lose them.
                table role="table" {
                    caption { (self.caption) }
                    thead role="rowgroup" {
                        tr role="row" {
                            @for column in &self.columns {
                                th class=[column.class()] scope="col" role="columnheader" { (column.heading()) }
                            }
                        }
                    }
                    tbody role="rowgroup" {
                        @for row in &self.rows {
                            tr role="row" {
                                @for (at, (column, cell)) in self.columns.iter().zip(row).enumerate() {
                                    @if at == 0 {
                                        th scope="row" role="rowheader" { (cell) }
                                    } @else {
                                        td class=[column.class()] role="cell" data-heading=[column.before()] { (cell) }
                                    }
                                }
                            }
                        }
                    }
                }
            }
        }
    }
}
