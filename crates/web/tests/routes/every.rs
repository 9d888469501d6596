//! What is true of every page of the shop, found by following every link from the first.

use std::collections::{BTreeMap, HashSet};

use scraper::Html;

use crate::ask::all;
use crate::bench::{Bench, form, led};

/// A shop in which something of each kind was written down.
async fn used() -> Bench {
    let bench = Bench::new().await;
    led(&bench.press(&form(&bench.page("/").await, "The left side is oiled", ""), &[]).await);
    let page = bench.pass(1).page("/").await;
    led(&bench.press(&form(&page, "Seen", "point 1,"), &[]).await);
    led(&bench.press(&form(&page, "Not seen", "point 2,"), &[]).await);
    let reason = [("point", "4"), ("reason", "the bench is in the way")];
    led(&bench.press(&form(&page, "Not reached", ""), &reason).await);
    bench
}

/// Every page that can be reached by links, by its address.
async fn pages(bench: &Bench) -> BTreeMap<String, String> {
    let mut pages = BTreeMap::new();
    let mut open = vec!["/".to_owned(), "/hand".to_owned(), "/?job=tapping&hours=2".to_owned()];
    while let Some(path) = open.pop() {
        if path.starts_with("/assets") || pages.contains_key(&path) {
            continue;
        }
        let answer = bench.get(&path).await;
        assert_eq!(answer.status, 200, "{path}");
        if path.starts_with("/log/csv") || answer.header("content-type").starts_with("image/") {
            continue;
        }
        for link in all(&answer.page(), "[href]") {
            let to = link.attr("href").expect("selected by it");
            let to = to.split('#').next().unwrap_or("");
            assert!(to.is_empty() || to.starts_with('/'), "{path} leads out of the shop: {to}");
            open.extend((!to.is_empty()).then(|| to.to_owned()));
        }
        pages.insert(path, answer.text().to_owned());
    }
    pages
}

#[tokio::test]
async fn every_link_leads_to_a_page_and_every_page_is_found() {
    let pages = pages(&used().await).await;
    for path in [
        "/",
        "/hand",
        "/machines",
        "/machines/drill",
        "/machines/drill/points/7",
        "/shelf",
        "/log",
        "/findings",
        "/settings",
    ] {
        assert!(pages.contains_key(path), "{path}");
    }
    for path in [
        "edit",
        "findings",
        "audit",
        "options",
        "points",
        "points/1/edit",
        "points/1/evidence",
        "points/1/place",
        "points/1/removal",
        "reservoirs/gear-box",
    ] {
        assert!(pages.contains_key(&format!("/machines/drill/{path}")), "{path}");
    }
    for (path, text) in &pages {
        for link in all(&Html::parse_document(text), "a[href*='#']") {
            let (to, anchor) = link.attr("href").and_then(|href| href.split_once('#')).expect("selected by it");
            let to = if to.is_empty() { text } else { &pages[to] };
            assert!(to.contains(&format!("id=\"{anchor}\"")), "{path}: a link leads to #{anchor}, which is not there");
        }
    }
    assert!(!pages.keys().any(|path| path.contains("points/8")), "point 8 is not on this example");
}

#[tokio::test]
async fn every_page_is_whole() {
    let bench = used().await;
    let sheet = {
        let page = bench.page("/").await;
        let link = all(&page, "link[rel=stylesheet]")[0].attr("href").expect("a stylesheet has an address").to_owned();
        bench.get(&link).await.text().to_owned()
    };
    for (path, text) in pages(&bench).await {
        let page = Html::parse_document(&text);
        assert_eq!(all(&page, "h1").len(), 1, "{path}");
        assert!(all(&page, "style, script, [style]").is_empty(), "{path}");
        let mut ids = HashSet::new();
        for element in all(&page, "[id]") {
            assert!(ids.insert(element.attr("id")), "{path}: {:?} stands twice", element.attr("id"));
        }
        for attribute in ["for", "list", "aria-describedby", "aria-labelledby"] {
            for element in all(&page, &format!("[{attribute}]")) {
                for id in element.attr(attribute).unwrap_or("").split_whitespace() {
                    assert!(ids.contains(&Some(id)), "{path}: {attribute} names {id}");
                }
            }
        }
        for link in all(&page, "a[href^='#']") {
            let id = link.attr("href").map(|href| href.trim_start_matches('#'));
            assert!(ids.contains(&id), "{path}: a link leads to {id:?}");
        }
        for form in all(&page, "form[method=post]") {
            let form = Html::parse_fragment(&form.html());
            assert_eq!(all(&form, "input[type=hidden][name=key]").len(), 1, "{path}");
        }
        for class in all(&page, "[class]").iter().flat_map(|element| element.value().classes()) {
            assert!(sheet.contains(&format!(".{class}")), "{path}: nothing styles {class}");
        }
    }
}

#[tokio::test]
async fn every_answer_of_the_shop_carries_the_policy() {
    let bench = Bench::new().await;
    let gets = [
        "/",
        "/hand",
        "/machines",
        "/machines/drill",
        "/machines/drill/points/1",
        "/shelf",
        "/log",
        "/log/csv",
        "/log/reservoirs?machine=drill",
        "/settings",
        "/machines/drill/points/1/place",
        "/machines/none",
        "/machines/drill/findings",
        "/machines/drill/audit",
        "/machines/drill/options",
        "/machines/drill/points/1/edit",
        "/findings",
        "/machines/drill/pictures",
        "/machines/drill/pictures/1",
        "/machines/drill/edit",
        "/machines/drill/points",
        "/machines/drill/points/1/evidence",
        "/machines/drill/points/1/removal",
        "/machines/drill/reservoirs/gear-box",
    ];
    let mut answers = Vec::new();
    for path in gets {
        answers.push((path, bench.get(path).await));
    }
    for path in [
        "/hand",
        "/log/dosings",
        "/log/signs",
        "/log/obstacles",
        "/log/runs",
        "/log/withdrawals",
        "/log/corrections",
        "/log/reservoirs",
        "/log/stock",
        "/shelf",
        "/shelf/can",
        "/settings",
        "/machines/drill/points/1/place",
        "/machines/drill/findings",
        "/machines/drill/findings/F1/settlement",
        "/machines/drill/options",
        "/machines/drill/points/1",
        "/machines/drill",
        "/machines/drill/points",
        "/machines/drill/points/1/evidence",
        "/machines/drill/points/1/removal",
    ] {
        let answer = bench.post(path, &[]).await;
        assert_eq!(answer.status, 400, "{path} without a key");
        answers.push((path, answer));
    }
    for (path, answer) in answers {
        // W3C Content Security Policy Level 3: nothing is loaded but what is allowed by name.
        assert!(answer.header("content-security-policy").starts_with("default-src 'none';"), "{path}");
        assert_eq!(answer.header("cache-control"), "no-store", "{path}");
    }
}
