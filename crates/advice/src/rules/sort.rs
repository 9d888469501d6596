//! Rules about sorts of oil.

use shop::chart::PairKind;
use shop::shelf::{Family, Stated};
use tribology::Standing;

use super::{Holds, Look, Rule};
use crate::label::{Property, is_polyglycol};
use crate::verdict::Verdict;

pub(super) const R6: Rule = Rule {
    id: "R6",
    looks: &[Look::Family, Look::Kind],
    says: "what makes a multigrade engine oil thick when warm is torn apart in a spindle, and its SAE number says little at 40 °C",
    cap: Verdict::Stopgap,
    not_stated: None,
    standing: Standing::CommonPractice,
    source: "common practice, no source",
    holds: |case| {
        let spindle =
            case.place.pair.is_some_and(|pair| matches!(pair.kind, PairKind::Journal | PairKind::RollingBearing));
        if spindle && case.oil.family == Family::Engine { Holds::Yes } else { Holds::No }
    },
};

pub(super) const R8: Rule = Rule {
    id: "R8",
    looks: &[Look::Property(Property::Tackifier), Look::Property(Property::FrictionModifier), Look::Kind, Look::Speed],
    says: "an oil that is known to have neither tackifier nor friction modifier is no way oil: slow ways stick, slip and run dry under it",
    cap: Verdict::Stopgap,
    not_stated: None,
    standing: Standing::CommonPractice,
    source: "common practice, no source",
    holds: |case| {
        let quick = case.place.quick();
        let felt = case.place.point.method == shop::chart::Method::Felt;
        let plain = [Property::Tackifier, Property::FrictionModifier].iter().all(|of| case.stated(*of) == Stated::No);
        if !case.place.is_way() || quick >= 1.0 || felt || !plain || case.is_grease() {
            Holds::No
        } else if quick > 0.0 {
            Holds::Capped(Verdict::Serves, "a slide that is neither slow nor quick may stick and slip under it")
        } else {
            Holds::Yes
        }
    },
};

pub(super) const R14: Rule = Rule {
    id: "R14",
    looks: &[Look::Class, Look::Name],
    says: "a polyglycol does not mix with the mineral oil that is in the machine, and makes a jelly with it",
    cap: Verdict::Never,
    not_stated: None,
    standing: Standing::FromMemory,
    source: "from memory",
    holds: |case| if is_polyglycol(case.oil) { Holds::Yes } else { Holds::No },
};

pub(super) const R21: Rule = Rule {
    id: "R21",
    looks: &[Look::Family],
    says: "an oil of a sort that nobody knows may gum or do worse",
    cap: Verdict::Stopgap,
    not_stated: None,
    standing: Standing::CommonPractice,
    source: "common practice, no source",
    holds: |case| if case.oil.family == Family::Other { Holds::Yes } else { Holds::No },
};

pub(super) const R23: Rule = Rule {
    id: "R23",
    looks: &[Look::Steps, Look::Speed, Look::Clearance],
    says: "one grade off what is wanted serves, two are a stopgap, with heat or wear watched",
    cap: Verdict::Stopgap,
    not_stated: None,
    standing: Standing::CommonPractice,
    source: "common practice; the step between grades: ISO 3448",
    holds: |case| match case.steps {
        Some(steps) if steps > 0.0 && case.place.is_close_and_fast => Holds::Capped(
            Verdict::Stopgap,
            "it is thicker than a close, fast spindle wants, and there thicker does not serve",
        ),
        Some(0.0) => Holds::No,
        Some(steps) if steps.abs() <= ONE_STEP && steps > 0.0 => {
            Holds::Capped(Verdict::Serves, "it is up to one grade thicker than wanted")
        }
        Some(steps) if steps.abs() <= ONE_STEP => {
            Holds::Capped(Verdict::Serves, "it is up to one grade thinner than wanted")
        }
        Some(steps) if steps > 0.0 => {
            Holds::Capped(Verdict::Stopgap, "it is more than one grade thicker than wanted; watch the heat")
        }
        Some(_) => Holds::Capped(Verdict::Stopgap, "it is more than one grade thinner than wanted; watch the wear"),
        None => Holds::No,
    },
};

/// A grade is half as thick again as the one below; a little more is let through for the ± 10 % of a grade.
const ONE_STEP: f64 = 1.1;

pub(super) const S1: Rule = Rule {
    id: "S1",
    looks: &[Look::Steps, Look::Speed, Look::Clearance],
    says: "two grades too thick in a close, fast spindle: it heats, grows and seizes",
    cap: Verdict::Never,
    not_stated: None,
    standing: Standing::FromMemory,
    source: "trade practice on plain grinder spindles, from memory",
    holds: |case| match case.steps {
        Some(steps) if case.place.is_close_and_fast && steps > ONE_STEP => Holds::Yes,
        _ => Holds::No,
    },
};
