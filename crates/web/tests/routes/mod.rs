//! One file for each part of the shell that answers.

mod assets;
mod errors;
mod host;
mod origin;
mod pattern;
mod policy;
