//! The headers that every answer carries: pages, errors, refusals and files alike.

use axum::body::Body;

use crate::ask::{Answer, all, ask, get_page, request};

/// The directives of W3C Content Security Policy Level 3 that shut out everything but our own files.
const POLICY: &str = "default-src 'none'; style-src 'self'; font-src 'self'; img-src 'self'; script-src 'self'; \
                      form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

fn check(answer: &Answer, what: &str) {
    assert_eq!(answer.header("content-security-policy"), POLICY, "{what}");
    assert_eq!(answer.header("x-content-type-options"), "nosniff", "{what}");
    // Under no-referrer a browser would send our own forms with "Origin: null" (Fetch standard, "append a request
    // `Origin` header"), and the origin guard would refuse them.
    assert_eq!(answer.header("referrer-policy"), "same-origin", "{what}");
    assert_eq!(answer.header("cross-origin-resource-policy"), "same-origin", "{what}");
}

#[tokio::test]
async fn every_answer_carries_the_policy() {
    let pattern = get_page("/pattern").await;
    let sheet =
        all(&pattern.page(), "link[rel=stylesheet]")[0].attr("href").expect("a stylesheet has an address").to_owned();
    for path in ["/pattern", "/nowhere", "/broken", "/fallen", "/bare", "/taken", &sheet] {
        check(&get_page(path).await, path);
    }
    let foreign_form = request("POST", "/taken").header("origin", "http://example.com");
    check(&ask(foreign_form.body(Body::empty())).await, "a foreign form");
    let foreign_name = axum::http::Request::get("/pattern").header("host", "example.com");
    check(&ask(foreign_name.body(Body::empty())).await, "a foreign name");
}

#[tokio::test]
async fn pages_and_errors_are_not_kept() {
    for path in ["/pattern", "/nowhere", "/broken"] {
        assert_eq!(get_page(path).await.header("cache-control"), "no-store", "{path}");
    }
}
