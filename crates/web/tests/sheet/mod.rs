//! The stylesheet against its own rules and against the pages.

use std::collections::BTreeMap;
use std::path::PathBuf;

mod classes;
mod contrast;
mod sizes;

/// The style files by name, without their comments.
fn files() -> BTreeMap<String, String> {
    let folder = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("assets/css");
    std::fs::read_dir(folder)
        .expect("the folder of styles")
        .map(|entry| {
            let path = entry.expect("a readable folder").path();
            let name = path.file_stem().expect("a file has a name");
            let text = std::fs::read_to_string(&path).expect("a readable style file");
            (name.to_string_lossy().into_owned(), without_comments(&text))
        })
        .collect()
}

fn without_comments(css: &str) -> String {
    let mut kept = String::new();
    for (at, piece) in css.split("/*").enumerate() {
        let code = if at == 0 { piece } else { piece.split_once("*/").expect("a comment ends").1 };
        kept.push_str(code);
    }
    kept
}

/// The `name: value` pairs of a piece of style, wherever they stand.
fn declarations(css: &str) -> impl Iterator<Item = (&str, &str)> {
    css.split(['{', '}', ';'])
        .filter_map(|piece| piece.split_once(':'))
        .map(|(name, value)| (name.trim(), value.trim()))
}
