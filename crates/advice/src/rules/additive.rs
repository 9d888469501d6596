//! Rules about what is in an oil.

use shop::shelf::{Family, Stated};
use tribology::Standing;

use super::{Case, Holds, Look, Rule};
use crate::label::Property;
use crate::need::{Known, Way};
use crate::verdict::Verdict;

pub(super) const R1: Rule = Rule {
    id: "R1",
    looks: &[Look::Property(Property::EpSulphur), Look::CopperStrip, Look::Surfaces, Look::Warmth, Look::Irreplaceable],
    says: "active sulphur eats bronze, brass, copper and white metal, the faster the warmer; ask for the copper strip at 100 °C",
    cap: Verdict::Stopgap,
    not_stated: Some(Verdict::Serves),
    standing: Standing::Handbook,
    source: "trade articles on extreme pressure and bronze; the temperature from memory",
    holds: |case| {
        let metal = case.place.soft_metal();
        if case.is_grease() || metal == Known::No {
            return Holds::No;
        }
        let is_precious = case.place.is_irreplaceable || case.place.hot == Known::Yes;
        match (case.stated(Property::EpSulphur), case.copper_passes()) {
            (Stated::No, _) => Holds::No,
            (Stated::Yes, Some(true)) => Holds::Capped(
                Verdict::Serves,
                "there is sulphur in it, but the copper strip came out clean, so that it is not active",
            ),
            (Stated::Yes, _) if metal == Known::Unsaid => Holds::Capped(
                Verdict::Serves,
                "there is active sulphur in it, and nobody says whether there is bronze, brass or white metal here",
            ),
            (Stated::Yes, _) if case.place.hot == Known::Yes => Holds::Capped(
                Verdict::Never,
                "active sulphur eats bronze and white metal quickly where it is hot or loaded",
            ),
            (Stated::Yes, _) => Holds::Yes,
            (Stated::NotStated, Some(true)) => Holds::No,
            (Stated::NotStated, _) if metal == Known::Unsaid => Holds::No,
            (Stated::NotStated, _) if is_precious => Holds::Capped(
                Verdict::Stopgap,
                "nobody says whether there is active sulphur in it, and the part is hot or cannot be bought again; ask for the copper strip at 100 °C",
            ),
            (Stated::NotStated, _) => Holds::Unsaid,
        }
    },
};

pub(super) const R2: Rule = Rule {
    id: "R2",
    looks: &[Look::Class, Look::CopperStrip, Look::Surfaces],
    says: "an oil of class GL-5 without a clean copper strip is kept away from bronze, brass and copper",
    cap: Verdict::Never,
    not_stated: None,
    standing: Standing::CommonPractice,
    source: "common practice, disputed: the label alone neither clears nor damns it",
    holds: |case| {
        let is_gl5 = case.is_of_class(&["GL-5"]);
        match (is_gl5 && case.copper_passes() != Some(true), case.place.yellow) {
            (true, Known::Yes) => Holds::Yes,
            (true, Known::Unsaid) => Holds::Capped(
                Verdict::Stopgap,
                "nobody says whether there is bronze or brass here, and this is a GL-5 without a copper strip",
            ),
            _ => Holds::No,
        }
    },
};

pub(super) const R4: Rule = Rule {
    id: "R4",
    looks: &[Look::Property(Property::Detergent), Look::Way, Look::Strainer],
    says: "detergent keeps dirt and water floating where nothing filters them",
    cap: Verdict::Stopgap,
    not_stated: Some(Verdict::Serves),
    standing: Standing::CommonPractice,
    source: "common practice, disputed",
    holds: |case| {
        if !case.place.is_unfiltered || case.is_grease() {
            return Holds::No;
        }
        match case.stated(Property::Detergent) {
            Stated::Yes => Holds::Yes,
            Stated::NotStated if matches!(case.oil.family, Family::Engine | Family::Transmission) => Holds::Yes,
            Stated::NotStated if matches!(case.oil.family, Family::Hydraulic | Family::Other) => Holds::Unsaid,
            _ => Holds::No,
        }
    },
};

pub(super) const R7: Rule = Rule {
    id: "R7",
    looks: &[Look::Property(Property::Tackifier), Look::Way, Look::Speed, Look::Clearance],
    says: "a tackifier strings and clogs in wick and felt and on a ring, and does not climb",
    cap: Verdict::Stopgap,
    not_stated: Some(Verdict::Serves),
    standing: Standing::CommonPractice,
    source: "common practice, no source",
    holds: |case| {
        let tacky = case.stated(Property::Tackifier);
        if case.is_grease() || tacky == Stated::No {
            return Holds::No;
        }
        if case.place.is_close_and_fast && tacky == Stated::Yes {
            return Holds::Capped(Verdict::Never, "a tackifier drags and heats in a close, fast spindle");
        }
        if case.place.close_and_fast > 0.0 && tacky == Stated::Yes {
            return Holds::Capped(Verdict::Stopgap, "a tackifier drags in a spindle that is nearly close and fast");
        }
        let strings = case.place.way == Way::Thread || case.place.point.method == shop::chart::Method::Ring;
        match (strings, tacky) {
            (true, Stated::Yes) => Holds::Yes,
            (true, _) if case.oil.family == Family::Way => Holds::Yes,
            (true, _) => Holds::Unsaid,
            _ => Holds::No,
        }
    },
};

pub(super) const R9: Rule = Rule {
    id: "R9",
    looks: &[Look::Property(Property::FrictionModifier), Look::Clutch],
    says: "a friction modifier makes a friction clutch in the same oil slip or chatter; where that clutch is the only stop, do not run",
    cap: Verdict::Stopgap,
    not_stated: Some(Verdict::Serves),
    standing: Standing::CommonPractice,
    source: "common practice, no source",
    holds: |case| {
        if !case.place.clutch || case.is_grease() {
            return Holds::No;
        }
        match case.stated(Property::FrictionModifier) {
            Stated::Yes => Holds::Yes,
            Stated::No => Holds::No,
            Stated::NotStated if matches!(case.oil.family, Family::Engine | Family::Transmission) => Holds::Yes,
            Stated::NotStated => Holds::Unsaid,
        }
    },
};

pub(super) const R10: Rule = Rule {
    id: "R10",
    looks: &[Look::Kind, Look::Surfaces],
    says: "a dry clutch or a band brake must stay dry: with oil on it, it does not hold",
    cap: Verdict::Never,
    not_stated: None,
    standing: Standing::Handbook,
    source: "public-domain trade primer",
    holds: |case| if case.place.is_dry_clutch { Holds::Yes } else { Holds::No },
};

pub(super) const R16: Rule = Rule {
    id: "R16",
    looks: &[Look::Property(Property::Solids), Look::Kind, Look::Way],
    says: "graphite and other powders pack rolling bearings, wicks and meter units",
    cap: Verdict::Never,
    not_stated: None,
    standing: Standing::CommonPractice,
    source: "common practice, no source",
    holds: |case| {
        let fine = case.place.is_rolling || matches!(case.place.way, Way::Thread | Way::Meter);
        if fine && case.stated(Property::Solids) == Stated::Yes { Holds::Yes } else { Holds::No }
    },
};

pub(super) const W1: Rule = Rule {
    id: "W1",
    looks: &[Look::Property(Property::Fatty), Look::Kind],
    says: "fatty oil gums slowly and holds water; it is for worms and wet places",
    cap: Verdict::Serves,
    not_stated: None,
    standing: Standing::CommonPractice,
    source: "common practice, no source",
    holds: |case: &Case<'_, '_>| {
        let wanted =
            case.place.is_open() || case.place.pair.is_some_and(|pair| pair.kind == shop::chart::PairKind::Worm);
        if !wanted && !case.is_grease() && case.stated(Property::Fatty) == Stated::Yes { Holds::Yes } else { Holds::No }
    },
};
