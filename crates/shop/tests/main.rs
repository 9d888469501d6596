//! The files of a shop, read as a keeper would write them: rightly, wrongly, and by somebody of a later year.

mod amounts;
mod audit;
mod document;
mod every_key;
mod faults;
mod logbook;
mod newer;
mod oil_lines;
mod options;
mod shelf;
