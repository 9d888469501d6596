//! The store on a PostgreSQL server: the modules of `main.rs`, word for word, and what only a server can suffer. They want the address of
//! a server; see `server`.

mod server;
mod shop;

mod backup;
mod charts;
mod contents;
mod due;
mod idempotency;
mod laws;
mod logbook;
mod pictures;
mod replay;
mod settings;
mod shelf;
mod tables;
mod verify;

mod alike;
mod database;
