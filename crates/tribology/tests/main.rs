//! The tests of the crate from outside: check values with their sources, and laws that need no numbers.

mod laws;
mod reference;
