//! Doses, intervals and speeds as people type them.

use shop::amount::{Clock, Dose, DoseAmount, Interval, IntervalFault, Speed, read_run};
use shop::reading::{says_dose, says_interval, says_run};
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
fn hours_of_a_run_are_read_as_people_type_them() {
    for (text, hours) in [("3", 3.0), (" 3 h ", 3.0), ("90 min", 1.5), ("24", 24.0), ("2,5 h", 2.5)] {
        let read = read_run(text).unwrap_or_else(|fault| panic!("{text}: {fault:?}"));
        assert!((read.hours() - hours).abs() < 1e-9, "{text}: {read:?}");
    }
    for text in ["", "two", "0", "-1", "25", "24.1 h", "3 L", "1,000", "3 h 20"] {
        let fault = read_run(text).expect_err(text);
        assert!(says_run("`hours`", &fault).contains("\"90 min\""), "{text}");
    }
}

#[test]
fn speeds_turn_or_slide() {
    assert!(matches!(Speed::read("94 rpm"), Ok(Speed::Turning(_))));
    assert!(matches!(Speed::read("40 strokes/min"), Ok(Speed::Turning(_))));
    assert!(matches!(Speed::read("400 ft/min"), Ok(Speed::Sliding(_))));
    assert!(matches!(Speed::read("12 mm"), Err(TypedFault::WrongKind { .. })));
}
