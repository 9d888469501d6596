//! Colours stand in `tokens.css` by their role; every other stylesheet uses the roles, so that dark mode and paper follow by themselves.
//!
//! `print.css` may give a role (`--ink: …`) another colour, because that is what it is for; it may use no colour directly.

use super::tree::{Fault, TextFile, Tree};

const TOKENS: &str = "tokens.css";
const FUNCTIONS: [&str; 10] = ["rgb(", "rgba(", "hsl(", "hsla(", "hwb(", "lab(", "lch(", "oklab(", "oklch(", "color("];
/// The named colours that people type; `transparent` and the system colours are no choice of ours and may be used.
const NAMES: [&str; 28] = [
    "aqua", "beige", "black", "blue", "brown", "crimson", "cyan", "fuchsia", "gold", "gray", "green", "grey", "indigo",
    "ivory", "lime", "magenta", "maroon", "navy", "olive", "orange", "pink", "purple", "red", "silver", "teal",
    "violet", "white", "yellow",
];

pub(crate) fn faults(tree: &Tree) -> Vec<Fault> {
    let sheets =
        tree.with_extension("css").filter(|file| !file.is_vendored() && file.path.rsplit('/').next() != Some(TOKENS));
    sheets.flat_map(in_sheet).collect()
}

fn in_sheet(file: &TextFile) -> Vec<Fault> {
    let is_paper = file.path.ends_with("/print.css");
    let found =
        declarations(&file.text).into_iter().filter_map(|(number, text)| {
            let (property, value) = text.split_once(':')?;
            let colour = colour_of(value).filter(|_| !(is_paper && property.trim().starts_with("--")))?;
            Some(file.fault(
                number,
                format!("`{colour}` is a colour; give it a role in {TOKENS} and use `var(--role)` here."),
            ))
        });
    found.collect()
}

/// What stands before each `;` or `}`, with its line number: a piece that ends in `{` is a selector, not a declaration.
fn declarations(text: &str) -> Vec<(usize, String)> {
    let mut found = vec![];
    let mut piece = String::new();
    let mut line = 1;
    for letter in without_comments(text).chars() {
        match letter {
            ';' | '}' => found.push((line, std::mem::take(&mut piece))),
            '{' => piece.clear(),
            letter => piece.push(letter),
        }
        line += usize::from(letter == '\n');
    }
    found
}

/// The same text with comments emptied; line breaks stay, so that line numbers hold.
fn without_comments(text: &str) -> String {
    let mut kept = String::new();
    let mut rest = text;
    while let Some((before, comment)) = rest.split_once("/*") {
        let (comment, after) = comment.split_once("*/").unwrap_or((comment, ""));
        kept.push_str(before);
        kept.extend(comment.chars().filter(|letter| *letter == '\n'));
        rest = after;
    }
    kept + rest
}

fn colour_of(value: &str) -> Option<&str> {
    let is_part = |letter: char| letter.is_ascii_alphanumeric() || "-_#(".contains(letter);
    let words = value.split(|letter| !is_part(letter)).flat_map(|word| word.split_inclusive('('));
    words.into_iter().find(|word| is_hex(word) || FUNCTIONS.contains(word) || NAMES.contains(word))
}

fn is_hex(word: &str) -> bool {
    word.strip_prefix('#').is_some_and(|digits| digits.chars().all(|digit| digit.is_ascii_hexdigit()))
}

#[cfg(test)]
mod tests {
    use super::super::tree::{places, planted};
    use super::*;

    #[test]
    fn a_colour_outside_the_tokens_is_a_fault() {
        for colour in
            ["#fff", "#A0B1C2", "rgb(1 2 3)", "oklch(50% 0.1 20)", "white", "1px solid red", "var(--ink, black)"]
        {
            let text = format!("@layer components;\n.card {{\n  color: var(--ink);\n  border: {colour};\n}}\n");
            let tree =
                planted(&[("crates/web/assets/css/card.css", &text), ("crates/web/assets/css/tokens.css", &text)]);
            assert_eq!(places(&faults(&tree)), [("crates/web/assets/css/card.css", 4)], "{colour}");
        }
    }

    #[test]
    fn the_sheet_for_paper_may_give_roles_other_colours() {
        let text = "@media print {\n  :root { --ink: #000; }\n  body { color: #000; }\n}\n";
        let tree = planted(&[("assets/css/print.css", text), ("assets/css/card.css", text)]);
        let paper = ("assets/css/print.css", 3);
        assert_eq!(places(&faults(&tree)), [paper, ("assets/css/card.css", 2), ("assets/css/card.css", 3)]);
    }

    #[test]
    fn roles_selectors_and_comments_are_fine() {
        let text = "/* white\n on #000 */\na:hover #bed { color: var(--red); white-space: nowrap }\n\
                    .x { background: color-mix(in oklab, var(--ink), transparent); outline-color: CanvasText; }\n";
        assert_eq!(faults(&planted(&[("crates/web/assets/css/card.css", text)])), []);
    }
}
