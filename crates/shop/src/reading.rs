//! How a file of ours is read: [`Element`] lists the keys of each kind of table once, [`Table`] reads values by those keys and
//! notes every fault with its place. The schema is made from the same lists. What the values mean is left to the elements.

mod key;
mod links;
mod log;
mod says;
mod table;
mod value;

pub use key::{Element, Key, Need, Sort, Takes};
pub use links::Made;
pub use log::Log;
pub use says::{says_dose, says_interval, says_minutes, says_number, says_quantity, says_run, says_speed};
pub use table::Table;

use crate::fault::{Fault, Severity};
use toml_edit::Document;

/// What came of reading a file: the value when the file can be used, and all that was noted on the way.
#[derive(Clone, Debug, PartialEq)]
pub struct Read<T> {
    /// The value; nothing when there is a fault, for half a chart misleads.
    pub value: Option<T>,
    /// Faults and warnings in the order of their places.
    pub faults: Vec<Fault>,
}

/// The newest format that this program knows, for charts and shelves alike.
pub const FORMAT: i64 = 1;

/// Reads a file whose first key is `head` (`chart` or `shelf`) with the reader of its root table.
pub(crate) fn read_file<T>(
    text: &str,
    root: &'static Element,
    head: &'static str,
    read: impl FnOnce(&Table<'_>, &Log) -> Option<T>,
) -> Read<T> {
    read_plain(text, root, |table| {
        table.format(head);
        read(table, table.log)
    })
}

/// Reads a file that says no format: one that is asked about once and kept by nobody but its writer.
pub(crate) fn read_plain<T>(text: &str, root: &'static Element, read: impl FnOnce(&Table<'_>) -> Option<T>) -> Read<T> {
    let document = match Document::parse(text) {
        Ok(document) => document,
        Err(error) => return Read { value: None, faults: vec![syntax(text, &error)] },
    };
    let log = Log::new(text);
    let table = Table::root(document.as_table(), root, &log);
    let value = read(&table);
    table.finish();
    log.check_links();
    let faults = log.into_faults();
    let usable = faults.iter().all(|fault| fault.severity < Severity::Fault);
    Read { value: value.filter(|_| usable), faults }
}

/// The first fault of syntax. The parser's own words are kept, for they name the token; ours say what it means for the reader.
fn syntax(text: &str, error: &toml_edit::TomlError) -> Fault {
    let span = error.span().unwrap_or(0..text.len().min(1));
    let message = error.message().trim().replace('\n', ", ");
    let says = format!(
        "this line is not TOML ({message}); a line is a key, an equals sign and a value, such as name = \"Gear case\", \
         and nothing after it could be read"
    );
    Fault { severity: Severity::Fault, span, says }
}
