//! Options that are not answered for this example, and options that no element asks about.

use crate::chart::{Chart, When};

use super::{Remark, Rule};

pub(super) fn remarks(chart: &Chart) -> Vec<Remark> {
    let whens: Vec<&When> = (chart.pairs.iter().map(|e| &e.when))
        .chain(chart.reservoirs.iter().map(|e| &e.when))
        .chain(chart.circuits.iter().map(|e| &e.when))
        .chain(chart.points.iter().map(|e| &e.when))
        .collect();
    let mut remarks = Vec::new();
    for option in &chart.options {
        let of = vec![option.id.clone()];
        if !whens.iter().any(|when| when.0.contains_key(&option.id)) {
            remarks.push(Remark {
                rule: Rule::OptionUnused,
                of,
                says: format!(
                    "the option \"{}\" changes nothing, for no element has a `when` that asks for it",
                    option.id
                ),
                next: "give the elements that it decides a `when`, or take the option out".to_owned(),
            });
        } else if option.here.is_none() {
            remarks.push(Remark {
                rule: Rule::OptionOpen,
                of,
                says: format!("it is not settled how this example is built: {}", option.question),
                next: "look at the machine and write the answer as `here`; until then the points of every choice are in the round"
                    .to_owned(),
            });
        }
    }
    remarks
}
