//! Text can be read in daylight, in the dark and on paper: W3C WCAG 2.2, success criteria 1.4.3 (text, 4.5 to 1) and 1.4.11
//! (lines that carry meaning, 3 to 1).

use std::collections::BTreeMap;

use super::{declarations, files};

/// Which ink is used for words on which ground.
const WORDS: [(&str, &[&str]); 5] = [
    ("--ink", &["--paper", "--sheet", "--warn-paper"]),
    ("--ink-quiet", &["--paper", "--sheet"]),
    ("--act", &["--paper", "--sheet", "--warn-paper"]),
    ("--act-ink", &["--act"]),
    ("--warn", &["--paper", "--sheet", "--warn-paper"]),
];

/// Which line marks something that a reader must find: the edge of a field, a box, a part.
const LINES: [(&str, &[&str]); 2] = [("--rule", &["--paper", "--sheet"]), ("--rule-entry", &["--paper", "--sheet"])];

/// Relative luminance as defined in WCAG 2.2.
fn luminance(colour: &str) -> f64 {
    let hex = colour.strip_prefix('#').expect("a colour like #16263a");
    let number = u32::from_str_radix(hex, 16).expect("six hex figures");
    let channel = |shift: u32| {
        let share = f64::from((number >> shift) & 0xff) / 255.0;
        if share <= 0.04045 { share / 12.92 } else { ((share + 0.055) / 1.055).powf(2.4) }
    };
    0.2126 * channel(16) + 0.7152 * channel(8) + 0.0722 * channel(0)
}

fn contrast(one: &str, other: &str) -> f64 {
    let (one, other) = (luminance(one), luminance(other));
    (one.max(other) + 0.05) / (one.min(other) + 0.05)
}

fn colours(css: &str) -> BTreeMap<&str, &str> {
    declarations(css).filter(|(name, value)| name.starts_with("--") && value.starts_with('#')).collect()
}

#[test]
fn the_measure_agrees_with_published_contrasts() {
    // W3C, Understanding success criterion 1.4.3: black on white is 21 to 1; #777777 on white is 4.47 to 1.
    assert!((contrast("#000000", "#ffffff") - 21.0).abs() < 1e-9);
    assert!((contrast("#777777", "#ffffff") - 4.47).abs() < 0.01);
}

#[test]
fn words_and_lines_stand_out_in_every_dress() {
    let files = files();
    let (day, night) =
        files["tokens"].split_once("@media (prefers-color-scheme: dark)").expect("the tokens have a dark dress");
    for (dress, css) in [("day", day), ("night", night), ("paper", &files["print"])] {
        let colour = colours(css);
        for (pairs, least) in [(&WORDS[..], 4.5), (&LINES[..], 3.0)] {
            for (ink, grounds) in pairs {
                for ground in *grounds {
                    let found = contrast(colour[ink], colour[ground]);
                    assert!(found >= least, "{dress}: {ink} on {ground} is {found:.2}");
                }
            }
        }
    }
}

#[test]
fn every_dress_has_the_same_colours_and_each_is_judged() {
    let files = files();
    let (day, night) =
        files["tokens"].split_once("@media (prefers-color-scheme: dark)").expect("the tokens have a dark dress");
    let names = |css| colours(css).into_keys().collect::<Vec<_>>();
    assert_eq!(names(day), names(night));
    assert_eq!(names(day), names(&files["print"]));
    // The faint rule between rows only orders what the words already say.
    let ornament = "--rule-quiet";
    for name in names(day) {
        let judged = WORDS.iter().chain(&LINES).any(|(ink, grounds)| *ink == name || grounds.contains(&name));
        assert!(judged || name == ornament, "{name}");
    }
}
