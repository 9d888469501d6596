//! What is doubtful about a chart that has no fault: each remark says what to do next, those that matter most first. One rule, one
//! file. The audit looks at this example as far as its options are answered.

mod circuits;
mod guesses;
mod missed;
mod options;
mod points;
mod reservoirs;
mod unfed;
mod usual;

use crate::chart::Chart;
use crate::id::Id;

/// How many remarks stand first; the rest are folded.
pub const FIRST: usize = 5;

/// Something doubtful about a chart.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Remark {
    /// Which rule it comes from, in the order in which the rules matter.
    pub rule: Rule,
    /// The elements that it is about.
    pub of: Vec<Id>,
    /// What is doubtful, as a sentence without its full stop.
    pub says: String,
    /// What to do next, as a sentence without its full stop.
    pub next: String,
}

/// The rules of the audit, those that matter most first: what lets a pair run dry stands before what only makes a chart harder to use.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Rule {
    /// A moving pair that nothing feeds.
    Unfed,
    /// Oil lines that lead nowhere.
    DeadEnd,
    /// A point that the round can never call for.
    NoInterval,
    /// A capacity or dose far from what is usual.
    Unusual,
    /// Points that are often missed on such a machine.
    Missed,
    /// A reservoir that cannot be judged, drained or breathe.
    Reservoir,
    /// A point that feeds nothing.
    FeedsNothing,
    /// A point of which nobody can see that it works.
    NoSign,
    /// Statements known only by guess.
    Guess,
    /// An option that is not answered.
    OptionOpen,
    /// An option that changes nothing.
    OptionUnused,
}

/// All remarks on a chart, those that matter most first.
#[must_use]
pub fn audit(chart: &Chart) -> Vec<Remark> {
    const RULES: [fn(&Chart) -> Vec<Remark>; 8] = [
        unfed::remarks,
        circuits::remarks,
        points::remarks,
        usual::remarks,
        missed::remarks,
        reservoirs::remarks,
        guesses::remarks,
        options::remarks,
    ];
    let mut remarks: Vec<Remark> = RULES.iter().flat_map(|rule| rule(chart)).collect();
    remarks.sort_by_key(|remark| remark.rule);
    remarks
}

/// What an element is called: its name, or its id read as words.
fn called(name: Option<&str>, id: &Id) -> String {
    name.map_or_else(|| id.as_str().replace('-', " "), str::to_owned)
}

/// One remark on several points: `points 3, 4 and 7 have`.
fn points_have(ids: &[Id]) -> String {
    let verb = if ids.len() == 1 { "has" } else { "have" };
    format!("{} {} {verb}", if ids.len() == 1 { "point" } else { "points" }, listed(ids))
}

/// `3, 4 and 7`.
fn listed(ids: &[Id]) -> String {
    let words: Vec<&str> = ids.iter().map(Id::as_str).collect();
    match words.as_slice() {
        [] => String::new(),
        [only] => (*only).to_owned(),
        [rest @ .., last] => format!("{} and {last}", rest.join(", ")),
    }
}
