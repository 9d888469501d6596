//! Rules about grease and oil in each other's places.

use shop::chart::PairKind;
use tribology::Standing;

use super::{Holds, Look, Rule};
use crate::verdict::Verdict;

pub(super) const R11: Rule = Rule {
    id: "R11",
    looks: &[Look::Family, Look::Way],
    says: "grease plugs a passage that is made for oil, and the plain bearing behind it runs dry",
    cap: Verdict::Never,
    not_stated: None,
    standing: Standing::CommonPractice,
    source: "common practice, the strongest rule of all",
    holds: |case| {
        if !case.is_grease() || case.place.takes_grease() {
            return Holds::No;
        }
        // What is brushed has no passage to plug.
        if !case.place.is_open() {
            return Holds::Yes;
        }
        match case.place.pair.map(|pair| pair.kind) {
            Some(PairKind::GearMesh) => {
                Holds::Capped(Verdict::Serves, "a thin wipe where no chips fly; disputed, both work")
            }
            _ => Holds::Capped(Verdict::Stopgap, "grease holds chips and grinds with them"),
        }
    },
};

pub(super) const R12: Rule = Rule {
    id: "R12",
    looks: &[Look::Family, Look::Way],
    says: "oil washes the grease out and leaks away",
    cap: Verdict::Stopgap,
    not_stated: None,
    standing: Standing::CommonPractice,
    source: "common practice, no source",
    holds: |case| if case.place.takes_grease() && !case.is_grease() { Holds::Yes } else { Holds::No },
};

pub(super) const G1: Rule = Rule {
    id: "G1",
    looks: &[Look::Soap, Look::Kind, Look::Speed],
    says: "a lime grease softens near 60 °C and is stiff: not for a ball bearing that turns fast",
    cap: Verdict::Stopgap,
    not_stated: None,
    standing: Standing::FromMemory,
    source: "from memory; compatibility with lithium: FIST 2-4, 1990",
    holds: |case| {
        let lime = case.oil.grease.thickener.as_deref().is_some_and(|soap| soap.to_lowercase().contains("calcium"));
        let fast = case.place.is_rolling
            && case.place.pair.is_some_and(|pair| {
                pair.speeds
                    .iter()
                    .any(|speed| matches!(speed, shop::amount::Speed::Turning(turning) if turning.rpm() >= 1000.0))
            });
        if lime && fast && case.place.takes_grease() { Holds::Yes } else { Holds::No }
    },
};
