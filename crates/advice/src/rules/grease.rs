//! Rules about grease and oil in each other's places.

use tribology::Standing;

use super::{Holds, Rule};
use crate::need::Way;
use crate::verdict::Verdict;

pub(super) const R11: Rule = Rule {
    id: "R11",
    says: "grease plugs a passage that is made for oil, and the plain bearing behind it runs dry",
    cap: Verdict::Never,
    not_stated: None,
    standing: Standing::CommonPractice,
    source: "common practice, the strongest rule of all",
    holds: |case| {
        if !case.is_grease() || case.place.takes_grease() {
            return Holds::No;
        }
        // On an open tooth or thread that is brushed there is no passage to plug.
        let is_open = case.place.point.method == shop::chart::Method::Brush && !case.place.is_way();
        if is_open && case.place.way == Way::Hand {
            return Holds::Capped(Verdict::Stopgap, "grease holds chips and grinds with them; a thin wipe at most");
        }
        Holds::Yes
    },
};

pub(super) const R12: Rule = Rule {
    id: "R12",
    says: "oil washes the grease out and leaks away",
    cap: Verdict::Stopgap,
    not_stated: None,
    standing: Standing::CommonPractice,
    source: "common practice, no source",
    holds: |case| if case.place.takes_grease() && !case.is_grease() { Holds::Yes } else { Holds::No },
};
