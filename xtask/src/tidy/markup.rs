//! The pages run under a policy that forbids inline styles and scripts; markup that would be blocked is a fault before a browser sees it.

use super::tree::{Fault, TextFile, Tree};

pub(crate) fn faults(tree: &Tree) -> Vec<Fault> {
    tree.with_extension("rs").filter(|file| file.is_below("crates/web/src")).flat_map(in_file).collect()
}

fn in_file(file: &TextFile) -> Vec<Fault> {
    let code = file.lines().filter(|(_, line)| !line.trim_start().starts_with("//"));
    code.filter_map(|(number, line)| fault_of(line).map(|says| file.fault(number, says))).collect()
}

fn fault_of(line: &str) -> Option<&'static str> {
    if attributes(line).any(|name| name == "style") || line.contains("<style") || opens_element(line, "style") {
        Some("no inline style: give the element a class and write the rule in assets/css.")
    } else if line.contains("<script") || opens_element(line, "script") || line.contains("javascript:") {
        Some("no inline script: write a module in assets/js and attach it by a data attribute.")
    } else if attributes(line).any(is_handler) {
        Some("no handler in the markup: attach the behaviour by a data attribute.")
    } else {
        None
    }
}

/// The words directly before an equals sign with no space between, as markup writes attributes and rustfmt never writes code.
fn attributes(line: &str) -> impl Iterator<Item = &str> {
    line.match_indices('=').map(|(index, _)| {
        let before = &line[..index];
        let start = before
            .rfind(|letter: char| !letter.is_ascii_alphanumeric() && letter != '-' && letter != '_' && letter != ':');
        &before[start.map_or(0, |start| start + 1)..]
    })
}

fn is_handler(name: &str) -> bool {
    name.starts_with("hx-on")
        || name
            .strip_prefix("on")
            .is_some_and(|event| event.len() > 2 && event.chars().all(|letter| letter.is_ascii_lowercase()))
}

/// Whether the line opens this element with a body of its own, as the templates write it.
fn opens_element(line: &str, name: &str) -> bool {
    let line = line.trim_start();
    line.strip_prefix(name).is_some_and(|rest| rest.trim_start().starts_with('{'))
}

#[cfg(test)]
mod tests {
    use super::super::tree::{places, planted};
    use super::*;

    #[test]
    fn inline_style_script_and_handler_are_faults() {
        let bad = [
            "div style=\"color: red\" {",
            "    p.note style=(style) {}",
            "script { (code) }",
            "PreEscaped(\"<script>go()</script>\")",
            "button onclick=\"go()\" {}",
            "div hx-on:click=\"go()\" {}",
            "a href=\"javascript:go()\" {}",
            "style { \"p{}\" }",
        ];
        for line in bad {
            let tree = planted(&[("crates/web/src/page.rs", line), ("crates/draw/src/plot.rs", line)]);
            assert_eq!(places(&faults(&tree)), [("crates/web/src/page.rs", 1)], "{line}");
        }
    }

    #[test]
    fn links_to_files_and_plain_code_are_fine() {
        let good = [
            "script src=(asset) defer {}",
            "link rel=\"stylesheet\" href=(asset);",
            "let style = Style { wide: true };",
            "// no inline style=\"…\" here",
            "div data-once=\"1\" on=\"x\" {}",
            "if one == two {",
        ];
        for line in good {
            assert_eq!(faults(&planted(&[("crates/web/src/page.rs", line)])), [], "{line}");
        }
    }
}
