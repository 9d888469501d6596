//! What to be wary of when one lubricant is put in on top of another: unlike additives (R24), polyglycol (R14), detergent on old sludge
//! (R5), synthetic oil on old paint and leather (R17), unlike greases (R13).

use shop::shelf::{Family, Oil, Stated};
use tribology::Standing;

use super::grease;
use crate::label::{Property, is_polyglycol, is_synthetic, stated};
use crate::verdict::{Reason, Verdict};

/// What can be said of putting an oil in where another one is: the strictest first.
#[must_use]
pub fn onto(inside: &Oil, fresh: &Oil) -> Vec<Reason> {
    if inside.id == fresh.id {
        return Vec::new();
    }
    let mut says = Vec::new();
    match (inside.family == Family::Grease, fresh.family == Family::Grease) {
        (true, true) => {
            says.extend(grease::unlike(inside.grease.thickener.as_deref(), fresh.grease.thickener.as_deref()));
        }
        (false, false) if is_polyglycol(inside) != is_polyglycol(fresh) => says.push(Reason {
            rule: "R14",
            cap: Verdict::Never,
            says: "a polyglycol does not mix with mineral oil, and makes a jelly with it".to_owned(),
            standing: Standing::FromMemory,
            source: "from memory",
            seen: Vec::new(),
        }),
        (false, false) => says.extend(unlike(inside, fresh)),
        // Grease in oil's place and oil in grease's are ruled on by themselves (R11, R12).
        _ => {}
    }
    says
}

/// What to be wary of whatever is in, as long as nobody has seen to it since the machine came.
///
/// - `floor`: whether somebody has seen what lies on the bottom.
#[must_use]
pub fn into_old(fresh: &Oil, floor: Floor) -> Vec<Reason> {
    let mut says = Vec::new();
    let is_detergent = match stated(fresh, Property::Detergent).stated {
        Stated::Yes => true,
        Stated::No => false,
        Stated::NotStated => matches!(fresh.family, Family::Engine | Family::Transmission),
    };
    if is_detergent && floor == Floor::Unseen {
        says.push(Reason {
            rule: "R5",
            cap: Verdict::Serves,
            says: "detergent loosens sludge of decades, which then blocks pipes and strainers: clean the floor of it first".to_owned(),
            standing: Standing::CommonPractice,
            source: "common practice, no source",
            seen: Vec::new(),
        });
    }
    if is_synthetic(fresh) {
        says.push(Reason {
            rule: "R17",
            cap: Verdict::Serves,
            says: "synthetic oil softens old paint and shellac and swells or shrinks old leather, cork and rubber, so that leaks begin".to_owned(),
            standing: Standing::CommonPractice,
            source: "common practice, no source",
            seen: Vec::new(),
        });
    }
    says
}

/// Whether somebody has seen the floor of a reservoir.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Floor {
    /// It was drained since the shop keeps a log.
    Seen,
    /// Nobody wrote down that it was.
    Unseen,
}

/// What rule R24 says of two oils; nothing where they are of one kind.
fn unlike(one: &Oil, other: &Oil) -> Option<Reason> {
    let differs = Property::ALL.into_iter().find(|of| {
        let [one, other] = [one, other].map(|oil| stated(oil, *of).stated);
        one != other && (one == Stated::Yes || other == Stated::Yes)
    });
    // A straight oil has no additives that another's could meet.
    let is_straight = [one, other].iter().any(|oil| oil.family == Family::Straight);
    if differs.is_none() && (one.family == other.family || is_straight) {
        return None;
    }
    Some(Reason {
        rule: "R24",
        cap: Verdict::Stopgap,
        says: format!(
            "{} and {} have not the same additives: mixed they may drop them or froth. Change it when you can; before that, keep a \
             jar of half and half warm for a week and look for haze or a layer",
            kind(one, other),
            kind(other, one)
        ),
        standing: Standing::CommonPractice,
        source: "common practice, no source",
        seen: Vec::new(),
    })
}

/// What an oil is called beside another: by its family where the two differ in it, else by its name.
fn kind(one: &Oil, other: &Oil) -> String {
    if one.family == other.family { one.name.clone() } else { format!("{} oil", one.family) }
}

#[cfg(test)]
mod tests {
    use shop::shelf::Shelf;

    use super::*;

    fn oil(id: &str, family: &str, more: &str) -> Oil {
        let text = format!("shelf = 1\n[[oil]]\nid = \"{id}\"\nname = \"{id}\"\nfamily = \"{family}\"\n{more}");
        Shelf::read(&text).value.expect("a shelf without faults").oils.remove(0)
    }

    fn rules(says: &[Reason]) -> Vec<&str> {
        says.iter().map(|reason| reason.rule).collect()
    }

    #[test]
    fn two_grades_of_one_oil_may_be_mixed_and_unlike_ones_are_told() {
        let drum = oil("drum", "circulating", "symbol = \"ISO-L-CKB 68\"");
        let thin = oil("thin", "circulating", "symbol = \"ISO-L-CKB 32\"");
        let red = oil("red", "gear", "symbol = \"ISO-L-CKC 220\"");
        let glycol = oil("glycol", "gear", "symbol = \"CLP PG 220\"");
        assert_eq!(onto(&drum, &drum), []);
        assert_eq!(onto(&drum, &thin), []);
        assert_eq!(rules(&onto(&drum, &red)), ["R24"]);
        assert_eq!(onto(&drum, &red)[0].cap, Verdict::Stopgap);
        assert_eq!((rules(&onto(&red, &glycol)), onto(&red, &glycol)[0].cap), (vec!["R14"], Verdict::Never));
        // Of one family, but only one of the two has sulphur in it.
        let plain = oil("plain", "gear", "symbol = \"API GL-1\"");
        assert_eq!(rules(&onto(&plain, &red)), ["R24"]);
    }

    #[test]
    fn detergent_goes_into_a_box_whose_floor_was_seen() {
        let engine = oil("engine", "engine", "");
        assert_eq!(rules(&into_old(&engine, Floor::Unseen)), ["R5"]);
        assert_eq!(into_old(&engine, Floor::Seen), []);
        assert_eq!(into_old(&oil("plain", "engine", "detergent = \"no\""), Floor::Unseen), []);
        assert_eq!(rules(&into_old(&oil("pao", "gear", "symbol = \"PAO 220\""), Floor::Seen)), ["R17"]);
    }
}
