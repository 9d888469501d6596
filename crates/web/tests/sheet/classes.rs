//! Every class that a page uses has a style, every style is used, and every file is served.

use std::collections::BTreeSet;

use super::{files, without_comments};
use crate::ask::{all, get_page};

/// The class names in the selectors of a stylesheet.
fn styled(css: &str) -> BTreeSet<String> {
    let is_name = |letter: char| letter.is_ascii_alphanumeric() || letter == '-';
    css.split('{')
        .filter_map(|piece| piece.rsplit(['}', ';']).next())
        .flat_map(|selector| selector.split('.').skip(1))
        .map(|rest| rest.chars().take_while(|letter| is_name(*letter)).collect())
        .filter(|name: &String| name.starts_with(|first: char| first.is_ascii_alphabetic()))
        .collect()
}

#[tokio::test]
async fn styles_and_pages_use_the_same_classes() {
    let mut used = BTreeSet::new();
    let mut css = String::new();
    for path in ["/pattern", "/nowhere", "/broken"] {
        let page = get_page(path).await.page();
        for element in all(&page, "[class]") {
            used.extend(element.value().classes().map(str::to_owned));
        }
        let sheet = all(&page, "link[rel=stylesheet]")[0].attr("href");
        css = get_page(sheet.expect("a stylesheet has an address")).await.text().to_owned();
    }
    assert_eq!(styled(&without_comments(&css)), used);
}

#[tokio::test]
async fn every_style_file_is_in_the_sheet_and_the_layers_come_first() {
    let page = get_page("/pattern").await.page();
    let link = all(&page, "link[rel=stylesheet]")[0].attr("href").expect("a stylesheet has an address");
    let answer = get_page(link).await;
    assert!(answer.text().starts_with("@layer reset, base, components, utilities;\n"));
    let sheet = without_comments(answer.text());
    for (name, css) in files() {
        assert!(sheet.contains(&css), "{name}.css is not served");
    }
}

#[test]
fn every_part_has_a_style_file_of_its_name() {
    let styles = files();
    let parts = concat!(env!("CARGO_MANIFEST_DIR"), "/src/parts");
    for entry in std::fs::read_dir(parts).expect("the folder of parts") {
        let path = entry.expect("a readable folder").path();
        let name = path.file_stem().expect("a file has a name");
        assert!(styles.contains_key(name.to_string_lossy().as_ref()), "{}", path.display());
    }
}
