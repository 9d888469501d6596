//! One file for each address, in the tree of the addresses, and one for each part of the shell that answers.

mod assets;
mod errors;
mod host;
mod origin;
mod pattern;
mod policy;
mod today;
