//! Doses, intervals and speeds as people type them.

use shop::amount::{Clock, Dose, DoseAmount, Interval, IntervalFault, Speed};
use shop::reading::{says_dose, says_interval};
use tribology::quantity::{Quantity as _, TypedFault};

#[track_caller]
fn dose(text: &str) -> DoseAmount {
    Dose::read(text).unwrap_or_else(|fault| panic!("{text}: {fault:?}")).amount
}

#[track_caller]
fn clock(text: &str) -> Clock {
    Interval::read(text).unwrap_or_else(|fault| panic!("{text}: {fault:?}")).clock
}

#[test]
fn doses() {
    assert_eq!(dose("2 strokes"), DoseAmount::Strokes(2.0));
    assert_eq!(dose("1 stroke"), DoseAmount::Strokes(1.0));
    assert_eq!(dose("3 drops each"), DoseAmount::Drops(3.0));
    assert_eq!(dose("1/2 turn"), DoseAmount::Turns(0.5));
    assert_eq!(dose("¼ turn"), DoseAmount::Turns(0.25));
    let DoseAmount::Volume(volume) = dose("1,5 mL") else { panic!("a volume") };
    assert!((volume.ml() - 1.5).abs() < 1e-12);
}

#[test]
fn a_dose_without_a_unit_or_in_pints_of_no_country_is_asked_back() {
    assert!(matches!(Dose::read("2"), Err(TypedFault::NoUnit { .. })));
    let fault = Dose::read("1 pint").expect_err("pints differ");
    assert!(says_dose("`dose`", &fault).contains("US"), "{}", says_dose("`dose`", &fault));
}

#[test]
fn intervals_by_their_own_clocks() {
    assert_eq!(clock("1 use"), Clock::Uses(1));
    assert_eq!(clock("3 uses"), Clock::Uses(3));
    assert_eq!(clock("1 week"), Clock::Days(7));
    assert_eq!(clock("2 days"), Clock::Days(2));
    assert_eq!(clock("6 months"), Clock::Months(6));
    assert_eq!(clock("1 year"), Clock::Months(12));
    let Clock::Running(time) = clock("4 h") else { panic!("hours") };
    assert_eq!(time.si(), 4.0 * 3600.0);
}

#[test]
fn half_a_use_is_refused_with_a_right_one_beside_it() {
    let fault = Interval::read("0.5 uses").expect_err("uses are whole");
    assert_eq!(fault, IntervalFault::NotWhole);
    assert!(says_interval("`every`", &fault).contains("\"1 use\""));
    assert!(Interval::read("0 h").is_err());
    assert!(Interval::read("often").is_err());
}

#[test]
fn speeds_turn_or_slide() {
    assert!(matches!(Speed::read("94 rpm"), Ok(Speed::Turning(_))));
    assert!(matches!(Speed::read("40 strokes/min"), Ok(Speed::Turning(_))));
    assert!(matches!(Speed::read("400 ft/min"), Ok(Speed::Sliding(_))));
    assert!(matches!(Speed::read("12 mm"), Err(TypedFault::WrongKind { .. })));
}
