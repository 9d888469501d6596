//! The store on a file, tried from outside. One module a promise; `shop` makes the small invented shop that they all use. The same
//! modules run on a PostgreSQL server in `postgres.rs`.

mod server;
mod shop;

mod backup;
mod charts;
mod contents;
mod drawings;
mod due;
mod file;
mod idempotency;
mod laws;
mod logbook;
mod opening;
mod pictures;
mod replay;
mod settings;
mod shelf;
mod tables;
mod verify;
