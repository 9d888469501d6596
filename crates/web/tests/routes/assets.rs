//! The stylesheet, the letters and the icon.

use crate::ask::{all, get_page};

/// What a page links to in its head, stylesheet first.
async fn linked() -> Vec<String> {
    let answer = get_page("/pattern").await;
    all(&answer.page(), "head link").iter().filter_map(|link| link.attr("href").map(str::to_owned)).collect()
}

#[tokio::test]
async fn what_a_page_links_to_is_there_and_kept_for_ever() {
    let links = linked().await;
    assert_eq!(links.len(), 2);
    for (link, content_type) in links.iter().zip(["text/css; charset=utf-8", "image/svg+xml"]) {
        let asset = get_page(link).await;
        assert_eq!(asset.status, 200, "{link}");
        assert_eq!(asset.header("content-type"), content_type);
        // RFC 8246: immutable, for an address whose content never changes.
        assert_eq!(asset.header("cache-control"), "public, max-age=31536000, immutable");
    }
}

#[tokio::test]
async fn every_letter_that_the_stylesheet_names_is_a_woff2_file() {
    let sheet_link = linked().await.remove(0);
    let (folder, _) = sheet_link.rsplit_once('/').expect("a path with a folder");
    let sheet = get_page(&sheet_link).await;
    let names: Vec<&str> = sheet.text().split("url(\"").skip(1).filter_map(|rest| rest.split('"').next()).collect();
    assert_eq!(names.len(), 4);
    for name in names {
        let font = get_page(&format!("{folder}/{name}")).await;
        assert_eq!(font.header("content-type"), "font/woff2", "{name}");
        // The signature of W3C WOFF File Format 2.0, section 4.1.
        assert_eq!(&font.bytes()[..4], b"wOF2", "{name}");
    }
}

#[tokio::test]
async fn an_old_or_foreign_address_is_not_found_and_not_kept() {
    for path in ["/assets/0000000000000000/sheet.css", "/assets/0000000000000000/../sheet.css"] {
        let answer = get_page(path).await;
        assert_eq!(answer.status, 404, "{path}");
        assert_eq!(answer.header("cache-control"), "no-store", "{path}");
    }
}
