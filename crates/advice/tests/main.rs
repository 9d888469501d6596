//! The reasoning, held against snapshots written by hand. Intervals and their clocks are those of the project's own rules: due
//! when the hours since plus the hours planned exceed the interval, or when its days have passed; once a round.

mod after;
mod bench;
mod care;
mod cold;
mod contents;
mod dose;
mod due;
mod films;
mod later;
mod lathe;
mod laws;
mod minutes;
mod old_name;
mod order;
mod pace;
mod route;
mod rules;
mod seen_working;
mod shelf_plan;
mod shopping;
mod topics;
mod unsuited;
mod verdicts;
mod words;
