//! Statements that are known only by guess, element by element.

use std::collections::BTreeMap;

use crate::chart::{Chart, Evidence, How};
use crate::id::Id;

use super::{Remark, Rule};

pub(super) fn remarks(chart: &Chart) -> Vec<Remark> {
    let points = chart.points_here().map(|e| (&e.id, &e.evidence, format!("point {}", e.id)));
    let pairs =
        chart.pairs.iter().filter(|e| chart.applies(&e.when)).map(|e| (&e.id, &e.evidence, format!("\"{}\"", e.id)));
    let reservoirs = chart
        .reservoirs
        .iter()
        .filter(|e| chart.applies(&e.when))
        .map(|e| (&e.id, &e.evidence, format!("\"{}\"", e.id)));
    let circuits =
        chart.circuits.iter().filter(|e| chart.applies(&e.when)).map(|e| (&e.id, &e.evidence, format!("\"{}\"", e.id)));
    let guessed: Vec<(Id, String)> = points
        .chain(pairs)
        .chain(reservoirs)
        .chain(circuits)
        .filter_map(|(id, evidence, name)| {
            let statements = guessed(evidence);
            (!statements.is_empty()).then(|| (id.clone(), format!("{name} ({})", statements.join(", "))))
        })
        .collect();
    if guessed.is_empty() {
        return Vec::new();
    }
    let (of, said): (Vec<Id>, Vec<String>) = guessed.into_iter().unzip();
    vec![Remark {
        rule: Rule::Guess,
        of,
        says: format!("known only by guess: {}", said.join("; ")),
        next: "take the one look that would settle each, and write how it is known now".to_owned(),
    }]
}

/// The statements that nothing better than a guess speaks of.
fn guessed(evidence: &[Evidence]) -> Vec<&str> {
    let mut best: BTreeMap<&str, bool> = BTreeMap::new();
    for one in evidence {
        let firm = !matches!(one.how, How::Guess | How::Unknown);
        let of: Vec<&str> =
            if one.of.is_empty() { vec!["all of it"] } else { one.of.iter().map(String::as_str).collect() };
        for statement in of {
            *best.entry(statement).or_default() |= firm;
        }
    }
    let all_firm = best.get("all of it").copied().unwrap_or(false);
    best.into_iter().filter(|(_, firm)| !firm && !all_firm).map(|(statement, _)| statement).collect()
}
