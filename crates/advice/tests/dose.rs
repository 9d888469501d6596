//! Doses said in the can's strokes or in drops. Thirty drops to the millilitre: common practice, no source.

use crate::bench::{Bench, points};

#[track_caller]
fn said(dose: &str, oil: &str) -> Option<String> {
    let bench = Bench::new(&format!(
        "[[point]]\nid = \"1\"\nname = \"n\"\nmethod = \"ball oiler\"\n{dose}\noil = \"{oil}\"\nevery = \"1 use\"\n"
    ));
    let round = bench.round("2026-11-25T09:00", 1.0, None);
    points(round.value()).next().expect("never logged, so due").dose.clone()
}

#[test]
fn a_volume_is_said_in_strokes_of_the_can_that_holds_the_oil() {
    assert_eq!(said("dose = \"1.6 mL\"", "way 68").as_deref(), Some("2 strokes"));
    assert_eq!(said("dose = \"0.8 mL\"", "way 68").as_deref(), Some("1 stroke"));
    assert_eq!(said("dose = \"1.2 mL\"", "way 68").as_deref(), Some("1½ strokes"));
}

#[test]
fn many_strokes_are_said_with_their_volume() {
    assert_eq!(said("dose = \"8 mL\"", "way 68").as_deref(), Some("8 mL, about 10 strokes"));
}

#[test]
fn less_than_most_of_a_stroke_is_said_in_drops() {
    assert_eq!(said("dose = \"0.2 mL\"", "way 68").as_deref(), Some("6 drops"));
}

#[test]
fn without_a_can_small_volumes_are_drops_and_large_ones_stay_as_written() {
    assert_eq!(said("dose = \"0.1 mL\"", "spindle 10").as_deref(), Some("3 drops"));
    assert_eq!(said("dose = \"5 mL\"", "spindle 10").as_deref(), Some("5 mL"));
}

#[test]
fn strokes_drops_and_turns_stay_as_they_were_written() {
    assert_eq!(said("dose = \"2 strokes\"", "way 68").as_deref(), Some("2 strokes"));
    assert_eq!(said("dose = \"1/2 turn\"", "grease 2").as_deref(), Some("1/2 turn"));
    assert_eq!(said("", "way 68"), None);
}

#[test]
fn the_can_is_the_one_that_holds_the_oil() {
    let bench = Bench::new(
        "[[point]]\nid = \"1\"\nname = \"n\"\nmethod = \"cup\"\noil = \"way 100\"\nevery = \"1 use\"\n\
         [[point]]\nid = \"2\"\nname = \"n\"\nmethod = \"cup\"\noil = \"gear 220\"\nevery = \"1 use\"\n",
    );
    let round = bench.round("2026-11-25T09:00", 1.0, None);
    let cans: Vec<_> = points(round.value()).map(|p| p.can.as_ref().map(|c| c.id.to_string())).collect();
    assert_eq!(cans, [Some("short-can".to_owned()), None]);
}
