//! One file for each address, in the tree of the addresses, and one for each part of the shell that answers.

mod assets;
mod calc;
mod errors;
mod every;
mod findings;
mod hand;
mod host;
mod log;
mod machines;
mod origin;
mod pattern;
mod policy;
mod settings;
mod shelf;
mod today;
