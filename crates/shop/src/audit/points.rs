//! Points that the round cannot call for, that feed nothing, or of which nobody can see that they work.

use crate::chart::{Chart, Point, State};
use crate::id::Id;

use super::{Remark, Rule, points_have};

/// What a point may lack.
struct Lack {
    rule: Rule,
    lacks: fn(&Point) -> bool,
    /// Behind "point 3 has".
    says: &'static str,
    next: &'static str,
}

const LACKS: [Lack; 3] = [
    Lack {
        rule: Rule::NoInterval,
        lacks: |point| point.every.is_empty(),
        says: "no interval, so the round never calls there",
        next: "write `every`; the usual for a hand point is [\"1 use\", \"4 h\"], for a bath a weekly look (common practice, no source)",
    },
    Lack {
        rule: Rule::FeedsNothing,
        lacks: |point| {
            point.feeds.is_empty() && point.reservoir.is_none() && point.circuit.is_none() && !looks_only(point)
        },
        says: "nothing in `feeds`, so nobody knows what the oil there is for",
        next: "follow the passage and name the pair, or write a finding of kind \"hole\"",
    },
    Lack {
        rule: Rule::NoSign,
        lacks: |point| point.sign.is_none() && point.reservoir.is_none(),
        says: "no sign, so nobody can see that oil gets there",
        next: "watch once where the oil shows and write it as `sign`",
    },
];

pub(super) fn remarks(chart: &Chart) -> Vec<Remark> {
    let remark = |lack: &Lack| {
        let of: Vec<Id> =
            chart.points_here().filter(|point| (lack.lacks)(point)).map(|point| point.id.clone()).collect();
        let says = format!("{} {}", points_have(&of), lack.says);
        (!of.is_empty()).then(|| Remark { rule: lack.rule, of, says, next: lack.next.to_owned() })
    };
    LACKS.iter().filter_map(remark).collect()
}

fn looks_only(point: &Point) -> bool {
    point.state == State::Running && point.dose.is_none()
}
