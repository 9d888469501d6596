//! The nouns of the trade and their rules: the chart of a machine, the shelf of oils, the entry in the logbook, and the
//! snapshot that the reasoning borrows. Start at [`chart::Chart`]. Nothing here reads a file, a clock or a database.

pub mod amount;
pub mod audit;
pub mod chart;
pub mod choice;
pub mod contents;
pub mod document;
pub mod fault;
pub mod id;
pub mod logbook;
pub mod oil_lines;
pub mod reading;
pub mod schema;
pub mod shelf;
pub mod snapshot;
