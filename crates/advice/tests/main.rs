//! The reasoning, held against snapshots written by hand. Intervals and their clocks are those of the project's own rules: due
//! when the hours since plus the hours planned exceed the interval, or when its days have passed; once a round.

mod bench;
mod dose;
mod due;
mod laws;
mod minutes;
mod old_name;
mod order;
mod route;
mod words;
