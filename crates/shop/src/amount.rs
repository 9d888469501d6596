//! Amounts that only the trade knows: a dose in strokes, drops or turns, an interval in uses, hours or calendar days, a
//! speed that turns or slides. Each keeps the text as it was typed.

mod dose;
mod interval;
mod run;
mod speed;

pub use dose::{DROP, Dose, DoseAmount};
pub use interval::{Clock, Interval, IntervalFault};
pub use run::{LONGEST_ROUND, LONGEST_RUN, RunFault, read_minutes, read_run};
pub use speed::Speed;
