//! Rules that go by what stands on the can, for things that are no lubricants and yet stand on shelves.

use shop::shelf::Family;
use tribology::Standing;

use super::{Case, Holds, Look, Rule};
use crate::verdict::Verdict;

pub(super) const R15: Rule = Rule {
    id: "R15",
    looks: &[Look::Name],
    says: "silicone leaves a poor film on metal and spoils paint for ever",
    cap: Verdict::Never,
    not_stated: None,
    standing: Standing::CommonPractice,
    source: "common practice, no source",
    holds: |case| if case.is_called(&["silicone"]) { Holds::Yes } else { Holds::No },
};

pub(super) const R18: Rule = Rule {
    id: "R18",
    looks: &[Look::Name, Look::Kind],
    says: "oil for saw chains clings, but hardly keeps off rust and wear on ways",
    cap: Verdict::Stopgap,
    not_stated: None,
    standing: Standing::CommonPractice,
    source: "common practice, no source",
    holds: |case| {
        let is_saw = case.is_called(&["chain saw", "chainsaw", "bar and chain", "saw chain"]);
        if is_saw && case.place.is_way() { Holds::Yes } else { Holds::No }
    },
};

pub(super) const R20: Rule = Rule {
    id: "R20",
    looks: &[Look::Name, Look::Family],
    says: "penetrating spray, kerosene, diesel fuel and petrol leave no film: they rinse and do not oil",
    cap: Verdict::Never,
    not_stated: None,
    standing: Standing::CommonPractice,
    source: "common practice, no source",
    holds: |case| {
        let rinses = case.is_called(&["penetrating", "kerosene", "paraffin", "diesel", "petrol", "white spirit"]);
        if case.oil.family == Family::Other && rinses { Holds::Yes } else { Holds::No }
    },
};

pub(super) const R22: Rule = Rule {
    id: "R22",
    looks: &[Look::Name],
    says: "used oil carries metal and acid into the machine, and harms the skin",
    cap: Verdict::Never,
    not_stated: None,
    standing: Standing::CommonPractice,
    source: "common practice; used oil is in the class of carcinogens",
    holds: |case| if case.is_called(&["used oil", "waste oil"]) { Holds::Yes } else { Holds::No },
};

impl Case<'_, '_> {
    /// Whether one of these words stands on the can.
    fn is_called(&self, words: &[&str]) -> bool {
        let name = self.oil.name.to_lowercase().replace('-', " ");
        words.iter().any(|word| name.contains(word))
    }
}
