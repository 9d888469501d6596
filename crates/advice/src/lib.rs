//! The reasoning: a snapshot goes in, an answer with its working out comes out. Pure: no clock, no database, no formula that
//! belongs in `tribology`. Start at [`round()`];
//! [`topic`] lists the sums that can be asked for by themselves.

pub mod blend;
pub mod contents;
pub mod data_sheet;
pub mod film;
pub mod judge;
pub mod label;
pub mod need;
pub mod oil_line;
pub mod old_name;
pub mod round;
pub mod rules;
pub mod shelf_plan;
pub mod stock;
pub mod topic;
pub mod verdict;
pub mod words;
pub mod working;

pub use round::{Plan, Round, round};
pub use shelf_plan::{ShelfPlan, shelf_plan};
pub use working::Reasoned;
