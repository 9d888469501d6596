//! The data file, tried from outside. One module a promise; `shop` makes the small invented shop that they all use.

mod shop;

mod backup;
mod charts;
mod due;
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
