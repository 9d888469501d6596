//! Every spelling in the table of units leads to its own unit, however it is spaced and cased.

use tribology::quantity::{Kind, UNITS, Unit};

#[test]
fn every_spelling_leads_to_its_own_unit() {
    for unit in UNITS {
        for spelling in unit.spellings() {
            assert_eq!(Unit::find(unit.kind, spelling), Some(unit), "{spelling} for {:?}", unit.kind);
        }
    }
}

#[test]
fn spacing_dots_and_raised_digits_do_not_matter() {
    for unit in UNITS {
        for spelling in unit.spellings() {
            let spaced: String = spelling.chars().flat_map(|sign| [' ', sign]).collect();
            let flat = spelling.replace('²', "2").replace('³', "^3").replace('·', "*").replace('µ', "u");
            let greek = spelling.replace('µ', "\u{3bc}").replace('·', " ");
            for other in [spaced, flat, greek] {
                assert_eq!(Unit::find(unit.kind, &other), Some(unit), "{other} for {:?}", unit.kind);
            }
        }
    }
}

/// Capitals throughout, as old plates have them, and small letters throughout: the same unit or none, never another.
#[test]
fn case_never_leads_to_another_unit() {
    let milli_or_mega = |spelling: &str| ["mL", "mPa", "MPa", "mN"].iter().any(|prefixed| spelling.contains(prefixed));
    for unit in UNITS {
        for spelling in unit.spellings() {
            for other in [spelling.to_ascii_uppercase(), spelling.to_ascii_lowercase()] {
                match Unit::find(unit.kind, &other) {
                    Some(found) => assert_eq!(found, unit, "{other}"),
                    None => assert!(milli_or_mega(spelling), "{other} for {:?}", unit.kind),
                }
            }
        }
    }
}

#[test]
fn milli_is_not_mega() {
    let find = |kind, text| Unit::find(kind, text).map(|unit| unit.symbol);
    assert_eq!(find(Kind::Volume, "ml"), Some("mL"));
    assert_eq!(find(Kind::Volume, "ML"), None);
    assert_eq!(find(Kind::Pressure, "MPa"), Some("MPa"));
    assert_eq!(find(Kind::Pressure, "mPa"), None);
    assert_eq!(find(Kind::DynamicViscosity, "mPa s"), Some("mPa·s"));
    assert_eq!(find(Kind::DynamicViscosity, "MPa s"), None);
    assert_eq!(find(Kind::Length, "MM"), Some("mm"));
}

#[test]
fn the_first_unit_of_a_kind_is_its_base() {
    for kind in Kind::ALL {
        let base = Unit::of(*kind).next().expect("every kind has units");
        assert_eq!((base.symbol, base.factor(), base.offset()), (kind.si_symbol(), 1.0, 0.0));
    }
}
