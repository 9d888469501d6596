//! A handful of whole runs of the real program, as a person or a script would start it.

mod calc;
mod charts;
mod database;
mod demo;
mod files;
mod judge;
mod keeping;
mod round;
mod run;
#[path = "../../store/tests/server.rs"]
mod server;
mod shelf;
mod shelf_plan;
