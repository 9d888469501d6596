//! The condition under which an element exists: options and the choices that they must have.

use std::collections::BTreeMap;

use crate::fault::{either, nearest};
use crate::id::Id;
use crate::reading::Table;

use super::option::ChartOption;

/// Options with the choices under which the element exists; empty for an element that every example has.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct When(pub BTreeMap<Id, Vec<String>>);

impl When {
    /// Whether the condition holds, given the answer to each option. An option without an answer counts as holding.
    pub fn holds<'a>(&self, answer: impl Fn(&Id) -> Option<&'a str>) -> bool {
        self.0
            .iter()
            .all(|(option, choices)| answer(option).is_none_or(|here| choices.iter().any(|choice| choice == here)))
    }
}

/// Reads `when`, holding it against the chart's options.
pub(super) fn read(table: &Table<'_>, options: &[ChartOption]) -> When {
    let mut when = When::default();
    for (option, choices, span) in table.inline("when") {
        let Some(known) = options.iter().find(|known| known.id.as_str() == option) else {
            let hint = match nearest(option, options.iter().map(|known| known.id.as_str())) {
                Some(near) => format!("did you mean \"{near}\"?"),
                None => "add an [[option]] with that id, or leave the condition out".to_owned(),
            };
            table.log_unknown(
                span,
                &format!("{} names the option \"{option}\", which is not in the file: {hint}", table.what("when")),
            );
            continue;
        };
        for choice in &choices {
            if !known.choices.contains(choice) {
                let says = format!(
                    "{} asks that \"{option}\" be \"{choice}\", which is not among its choices; write {}",
                    table.what("when"),
                    either(known.choices.iter().map(String::as_str))
                );
                table.log_unknown(span.clone(), &says);
            }
        }
        when.0.insert(known.id.clone(), choices);
    }
    when
}
