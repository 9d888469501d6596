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
        let holds = |(option, choices): (&Id, &Vec<String>)| {
            answer(option).is_none_or(|here| choices.iter().any(|choice| choice == here))
        };
        self.0.iter().all(holds)
    }

    /// Both conditions at once. Where both speak of one option, the choices that both allow remain.
    #[must_use]
    pub fn and(mut self, other: &Self) -> Self {
        for (option, choices) in &other.0 {
            let both = match self.0.get(option) {
                Some(own) => own.iter().filter(|choice| choices.contains(choice)).cloned().collect(),
                None => choices.clone(),
            };
            self.0.insert(option.clone(), both);
        }
        self
    }

    /// An example that satisfies this condition and not the other, as far as it needs to be told; nothing when there is none.
    ///
    /// Conditions are conjunctions, so it is enough to look for one option whose choices here are not all allowed there; that
    /// is exact, and every combination of options is covered without being listed.
    #[must_use]
    pub fn without(&self, other: &Self, options: &[ChartOption]) -> Option<BTreeMap<Id, String>> {
        let possible = |option: &Id| -> Vec<String> {
            let all =
                options.iter().find(|known| known.id == *option).map(|known| known.choices.clone()).unwrap_or_default();
            self.0.get(option).cloned().unwrap_or(all)
        };
        // A condition that no example satisfies misses nothing.
        let mut example: BTreeMap<Id, String> = self
            .0
            .iter()
            .map(|(option, choices)| Some((option.clone(), choices.first()?.clone())))
            .collect::<Option<_>>()?;
        let (option, choice) = other.0.iter().find_map(|(option, allowed)| {
            possible(option).into_iter().find(|choice| !allowed.contains(choice)).map(|choice| (option.clone(), choice))
        })?;
        example.insert(option, choice);
        Some(example)
    }
}

impl Table<'_> {
    /// The element's own `when`, held against the chart's options. Elements without the key have every example.
    pub(crate) fn own_when(&self) -> When {
        let mut when = When::default();
        if !self.takes("when") {
            return when;
        }
        let options = self.log.options();
        for (option, choices, span) in self.inline("when") {
            let Some(known) = options.iter().find(|known| known.id.as_str() == option) else {
                let hint = match nearest(option, options.iter().map(|known| known.id.as_str())) {
                    Some(near) => format!("did you mean \"{near}\"?"),
                    None => "add an [[option]] with that id, or leave the condition out".to_owned(),
                };
                let what = self.what("when");
                self.log
                    .unknown(span, format!("{what} names the option \"{option}\", which is not in the file: {hint}"));
                continue;
            };
            for choice in choices.iter().filter(|choice| !known.choices.contains(choice)) {
                let says = format!(
                    "{} asks that \"{option}\" be \"{choice}\", which is not among its choices; write {}",
                    self.what("when"),
                    either(known.choices.iter().map(String::as_str))
                );
                self.log.unknown(span.clone(), says);
            }
            when.0.insert(known.id.clone(), choices);
        }
        when
    }
}
