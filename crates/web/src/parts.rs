//! The components that pages are built from, one a file, each named like its stylesheet in `assets/css`.
//!
//! They take text that is already formatted and know nothing of machines; `/pattern` shows them all in every state.
//! A page fills a struct and splices it into its markup.

mod page;
mod title_block;

mod balloon;
mod button;
mod empty;
mod facts;
mod field;
mod figure;
mod filter;
mod fold;
mod form;
mod note;
mod point_row;
mod quote;
mod receipt;
mod side;
mod stand;
mod steps;
mod table;
mod verdict;

pub use balloon::Balloon;
pub use button::{Action, Link, Press};
pub use empty::Empty;
pub use facts::Facts;
pub use field::{Choice, Entry, Field};
pub use figure::Figure;
pub use filter::Filter;
pub use fold::Fold;
pub use form::Form;
pub use note::Note;
pub use page::{Page, Section};
pub use point_row::PointRow;
pub use quote::Quote;
pub use receipt::Receipt;
pub use side::Side;
pub use stand::Stand;
pub use steps::Steps;
pub use table::{Cell, Column, Style, Table};
pub use title_block::TitleBlock;
pub use verdict::Verdict;
