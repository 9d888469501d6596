//! Subjects and batch keys, there and back.

use shop::id::Id;
use shop::logbook::{BatchKey, Subject};

#[test]
fn a_subject_is_its_text() {
    let id = |text: &str| Id::new(text).expect("an id");
    for subject in [
        Subject::Machine(id("shaper")),
        Subject::Point(id("shaper"), id("9")),
        Subject::Reservoir(id("shaper"), id("gear-case")),
        Subject::Oil(id("way-68")),
        Subject::Can(id("short-can")),
    ] {
        assert_eq!(subject.to_string().parse(), Ok(subject));
    }
    assert!("machine/".parse::<Subject>().is_err());
    assert!("point/9".parse::<Subject>().is_err());
}

#[test]
fn entries_of_one_act_share_its_key() {
    let key = BatchKey::new("3f2a").expect("a key");
    assert_ne!(key.entry(0), key.entry(1));
    assert_eq!(BatchKey::of(&key.entry(12)), key);
    assert_eq!(BatchKey::new("a/b"), None);
    assert_eq!(BatchKey::new(""), None);
}
