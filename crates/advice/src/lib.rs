//! The reasoning: a snapshot goes in, an answer with its working out comes out. Pure: no clock, no database, no formula that
//! belongs in `tribology`. Start at [`round()`].

pub mod round;
pub mod words;
pub mod working;

pub use round::{Plan, Round, round};
pub use working::Reasoned;
