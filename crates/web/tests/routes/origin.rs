//! Forms are taken from our own pages only. The header values are those of the Fetch standard (`Origin`) and of W3C Fetch
//! Metadata Request Headers (`Sec-Fetch-Site`).

use axum::body::Body;

use crate::ask::{ask, get_page, header, request};

const KEY: &str = "key=0123456789abcdef0123456789abcdef";

async fn posted(headers: &[(&'static str, &str)]) -> u16 {
    let mut form = request("POST", "/taken").header("content-type", "application/x-www-form-urlencoded");
    for (name, value) in headers {
        form = form.header(header(name), *value);
    }
    ask(form.body(Body::from(KEY))).await.status.as_u16()
}

#[tokio::test]
async fn only_our_own_page_may_send_a_form() {
    let own = ("origin", "http://localhost:4700");
    let table: [(&[(&'static str, &str)], u16); 11] = [
        (&[], 200),
        (&[own], 200),
        (&[own, ("sec-fetch-site", "same-origin")], 200),
        (&[("sec-fetch-site", "same-origin")], 200),
        (&[("origin", "http://example.com")], 403),
        (&[("origin", "http://localhost:4701")], 403),
        (&[("origin", "https://localhost:4700")], 403),
        (&[("origin", "null")], 403),
        (&[own, ("sec-fetch-site", "cross-site")], 403),
        (&[("sec-fetch-site", "same-site")], 403),
        (&[own, ("origin", "http://example.com")], 403),
    ];
    for (headers, status) in table {
        assert_eq!(posted(headers).await, status, "{headers:?}");
    }
}

#[tokio::test]
async fn a_refused_form_is_answered_by_a_page_with_a_way_onward() {
    let foreign = request("POST", "/taken").header("origin", "http://example.com");
    let answer = ask(foreign.body(Body::empty())).await;
    assert!(!crate::ask::all(&answer.page(), "main a[href='/']").is_empty());
}

#[tokio::test]
async fn reading_needs_no_origin() {
    let link = request("GET", "/pattern").header("sec-fetch-site", "cross-site");
    assert_eq!(ask(link.body(Body::empty())).await.status, 200);
    assert_eq!(get_page("/pattern").await.status, 200);
}
