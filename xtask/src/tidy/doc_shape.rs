//! A public function of `tribology` that takes physical numbers says in which range it holds and where it comes from.
//!
//! Left out: the modules that hold no physics, accessors (they take nothing but `self`) and constructors.

use super::public_function::{PublicFunction, public_functions};
use super::tree::{Fault, TextFile, Tree};

const FOLDER: &str = "crates/tribology/src";
const NO_PHYSICS: [&str; 6] = ["lib", "quantity", "working", "error", "warning", "math"];

pub(crate) fn faults(tree: &Tree) -> Vec<Fault> {
    let physics = tree.with_extension("rs").filter(|file| file.is_below(FOLDER) && !holds_no_physics(&file.path));
    physics.flat_map(in_file).collect()
}

fn holds_no_physics(path: &str) -> bool {
    path.split(['/', '.']).any(|part| NO_PHYSICS.contains(&part))
}

fn in_file(file: &TextFile) -> Vec<Fault> {
    let quantities = quantities(&file.text);
    let functions = public_functions(&file.text).into_iter();
    functions
        .filter(|function| !is_constructor(function.name) && takes_numbers(function, &quantities))
        .filter_map(|function| {
            let missing = missing_sections(&function);
            let says = format!("the docs of `{}` want {}.", function.name, missing.join(" and "));
            (!missing.is_empty()).then(|| file.fault(function.line, says))
        })
        .collect()
}

fn missing_sections(function: &PublicFunction<'_>) -> Vec<&'static str> {
    let sections = [
        ("Range", true, "`# Range` (where it holds)"),
        ("Source", true, "`# Source` (a key of docs/sources.toml)"),
        ("Errors", function.returns.starts_with("Result<"), "`# Errors` (what makes it fail)"),
    ];
    let missing = sections.iter().filter(|(heading, wanted, _)| *wanted && !function.has_section(heading));
    missing.map(|(_, _, says)| *says).collect()
}

fn is_constructor(name: &str) -> bool {
    name == "new" || name.starts_with("from_") || name.starts_with("with_")
}

fn takes_numbers(function: &PublicFunction<'_>, quantities: &[&str]) -> bool {
    let words = function.parameters.split(|letter: char| !letter.is_alphanumeric() && letter != '_');
    words.into_iter().any(|word| word == "f64" || quantities.contains(&word))
}

/// The names that the file takes from the quantity module, by `use` or by a whole path.
fn quantities(text: &str) -> Vec<&str> {
    let after = text.match_indices("quantity::").map(|(index, found)| &text[index + found.len()..]);
    after
        .flat_map(|rest| {
            let list = match rest.strip_prefix('{') {
                Some(list) => list.split('}').next().unwrap_or_default(),
                None => rest.split(|letter: char| !letter.is_alphanumeric()).next().unwrap_or_default(),
            };
            list.split(',').map(str::trim)
        })
        .filter(|name| !name.is_empty())
        .collect()
}

#[cfg(test)]
mod tests {
    use super::super::tree::{places, planted};
    use super::*;

    const WHOLE: &str = "/// Film.\n///\n/// # Range\n/// All.\n///\n/// # Source\n/// `a-1`\n";

    #[test]
    fn a_correlation_without_range_or_source_is_a_fault() {
        let bare = "use crate::quantity::{Length, Speed};\n\n/// Film.\npub fn film(speed: Speed) -> Length {}\n";
        let whole = format!("use crate::quantity::Speed;\n{WHOLE}pub fn film(speed: Speed) -> f64 {{}}\n");
        let tree = planted(&[("crates/tribology/src/film.rs", bare), ("crates/tribology/src/whole.rs", &whole)]);
        let found = faults(&tree);
        assert_eq!(places(&found), [("crates/tribology/src/film.rs", 4)]);
        assert!(found[0].says.contains("# Range") && found[0].says.contains("# Source"), "{}", found[0]);
    }

    #[test]
    fn a_function_that_can_fail_says_when() {
        let text = format!("{WHOLE}pub fn film(load: f64) -> Result<f64, Error> {{}}\n");
        let found = faults(&planted(&[("crates/tribology/src/film.rs", &text)]));
        assert_eq!(places(&found), [("crates/tribology/src/film.rs", 8)]);
        assert!(found[0].says.contains("# Errors"), "{}", found[0]);
    }

    #[test]
    fn what_is_no_correlation_is_left_alone() {
        let tree = planted(&[
            ("crates/tribology/src/quantity.rs", "pub fn from_mm(x: f64) {}\npub fn half(x: f64) {}\n"),
            ("crates/tribology/src/math/root.rs", "pub fn cube(x: f64) {}\n"),
            (
                "crates/tribology/src/tube.rs",
                "pub fn new(bore: f64) {}\npub fn bore(&self) -> f64 {}\npub fn name(n: &str) {}\n",
            ),
            ("crates/shop/src/dose.rs", "pub fn dose(x: f64) {}\n"),
        ]);
        assert_eq!(faults(&tree), []);
    }
}
