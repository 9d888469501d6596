//! The pattern page holds every part; what is true of it is true of what is built from the parts.

use std::collections::HashSet;

use scraper::Html;

use crate::ask::{all, get_page};

async fn pattern() -> Html {
    get_page("/pattern").await.page()
}

#[tokio::test]
async fn no_style_and_no_script_stands_in_the_page() {
    let page = pattern().await;
    assert!(all(&page, "style, script, [style]").is_empty());
    for element in all(&page, "*") {
        let name = element.value().name();
        for (attribute, _) in element.value().attrs() {
            assert!(!attribute.starts_with("on"), "{name} {attribute}");
        }
    }
}

#[tokio::test]
async fn ids_are_unique_and_what_refers_to_them_finds_them() {
    let page = pattern().await;
    let mut ids = HashSet::new();
    for element in all(&page, "[id]") {
        let id = element.attr("id").expect("selected by it");
        assert!(ids.insert(id), "{id} stands twice");
    }
    for attribute in ["for", "list", "aria-describedby", "aria-labelledby"] {
        for element in all(&page, &format!("[{attribute}]")) {
            for id in element.attr(attribute).unwrap_or("").split_whitespace() {
                assert!(ids.contains(id), "{attribute} names {id}");
            }
        }
    }
    for link in all(&page, "a[href^='#']") {
        let id = link.attr("href").unwrap_or("").trim_start_matches('#');
        assert!(ids.contains(id), "a link leads to {id}");
    }
}

#[tokio::test]
async fn every_form_that_writes_is_sent_by_post_with_a_key() {
    let page = pattern().await;
    let forms = all(&page, "form:not([method=get])");
    assert!(!forms.is_empty());
    let keys = all(&page, "form[method=post] > input[type=hidden][name=key]:first-child");
    assert_eq!(keys.len(), forms.len());
    for key in keys {
        assert_eq!(key.attr("value").map(str::len), Some(32));
    }
}

#[tokio::test]
async fn a_button_is_called_by_what_it_shows() {
    // W3C WCAG 2.2, success criterion 2.5.3: the spoken name contains the visible words.
    for button in all(&pattern().await, "button") {
        let words: String = button.text().collect();
        assert!(!words.trim().is_empty());
        if let Some(spoken) = button.attr("aria-label") {
            assert!(spoken.starts_with(&words), "{spoken}");
        }
    }
}

#[tokio::test]
async fn what_was_typed_is_kept_and_its_fault_stands_beside_it() {
    let page = pattern().await;
    let entry = all(&page, "input#clearance[aria-invalid=true]")[0];
    assert_eq!(entry.attr("value"), Some("0.09"));
    assert_eq!(entry.attr("aria-describedby"), Some("clearance-hint clearance-fault"));
    assert_eq!(all(&page, ".form-mend a").len(), 2);
    assert_eq!(all(&page, "option[selected]")[0].attr("value"), Some("long"));
    assert_eq!(all(&page, "input[type=radio][checked]")[0].attr("value"), Some("not-stated"));
}

#[tokio::test]
async fn the_sheet_has_a_language_a_heading_and_a_way_past_the_foot() {
    let page = pattern().await;
    assert_eq!(all(&page, "html[lang=en]").len(), 1);
    assert_eq!(all(&page, "h1").len(), 1);
    assert_eq!(all(&page, "body > a:first-child[href='#sheet']").len(), 1);
    assert_eq!(all(&page, "meta[name=viewport]").len(), 1);
}

#[tokio::test]
async fn the_foot_marks_the_place() {
    for (at, name) in ["Today", "Machines", "Shelf", "Log"].iter().enumerate() {
        let page = get_page(&format!("/pattern?section={at}")).await.page();
        let marked = all(&page, "nav a[aria-current=page]");
        assert_eq!(marked.len(), 1);
        assert_eq!(marked[0].text().collect::<String>(), *name);
    }
}
