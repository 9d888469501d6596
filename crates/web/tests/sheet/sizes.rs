//! Colours and sizes are stated once, in the tokens, and none is too small for the eye or the thumb.

use super::{declarations, files};

/// A length in rem as the pixels of a browser that was never set otherwise.
fn px(length: &str) -> f64 {
    let rem = length.strip_suffix("rem").expect("sizes are given in rem");
    rem.parse::<f64>().expect("a number before rem") * 16.0
}

#[test]
fn letters_and_targets_are_large_enough() {
    let files = files();
    let mut letters = 0;
    for (name, value) in declarations(&files["tokens"]) {
        if name.starts_with("--text-") {
            letters += 1;
            assert!(px(value) >= 15.0, "{name}");
        }
        match name {
            "--text-body" => assert!(px(value) >= 18.0),
            // Above the 44 px of W3C WCAG 2.2, success criterion 2.5.5, because hands here wear gloves.
            "--target" => assert!(px(value) >= 56.0),
            "--target-whole" => assert!(px(value) >= 64.0),
            _ => {}
        }
    }
    assert!(letters > 0);
}

#[test]
fn letters_take_their_size_from_the_tokens() {
    for (file, css) in files() {
        for (name, value) in declarations(&css) {
            let sized = matches!(name, "font" | "font-size") && value != "inherit";
            // Paper has its own measure: points.
            let on_paper = file == "print" && value.ends_with("pt");
            assert!(!sized || on_paper || value.contains("var(--text-"), "{file}.css {name}: {value}");
        }
    }
}

#[test]
fn colours_stand_in_the_tokens_alone() {
    for (file, css) in files() {
        if matches!(file.as_str(), "tokens" | "print") {
            continue;
        }
        for (name, value) in declarations(&css) {
            let stated = value.contains('#') || value.contains("rgb") || value.contains("hsl");
            assert!(!stated, "{file}.css {name}: {value}");
        }
    }
}
