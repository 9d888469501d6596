//! Every error is a page with one sentence and a way onward. The statuses are those of RFC 9110, section 15.

use axum::body::Body;

use crate::ask::{Answer, all, ask, get_page, request};

fn check(answer: &Answer, status: u16, sentence: &str) {
    assert_eq!(answer.status, status);
    let page = answer.page();
    let heading: String = all(&page, "main h1")[0].text().collect();
    assert_eq!(heading, sentence);
    assert!(!all(&page, "main a[href='/']").is_empty(), "no way onward from {status}");
}

async fn posted(body: String) -> Answer {
    let form = request("POST", "/taken").header("content-type", "application/x-www-form-urlencoded");
    ask(form.body(Body::from(body))).await
}

#[tokio::test]
async fn an_unknown_address() {
    let answer = get_page("/nowhere").await;
    check(&answer, 404, "There is no such page here.");
}

#[tokio::test]
async fn a_way_of_asking_that_the_address_does_not_know() {
    let answer = get_page("/taken").await;
    check(&answer, 405, "This address cannot be used in that way.");
    // RFC 9110, section 15.5.6: the answer names the ways that are known.
    assert_eq!(answer.header("allow"), "POST");
}

#[tokio::test]
async fn a_form_that_cannot_be_read() {
    let sentence = "What was sent could not be read, so nothing was written down.";
    for body in ["", "key=short", "other=1"] {
        check(&posted(body.into()).await, 400, sentence);
    }
    check(&get_page("/pattern?section=none").await, 400, sentence);
}

#[tokio::test]
async fn a_form_that_is_too_large() {
    let key = "key=0123456789abcdef0123456789abcdef&note=";
    let room = web::layers::FORM_LIMIT - key.len();
    let full = posted(format!("{key}{}", "x".repeat(room))).await;
    assert_eq!(full.status, 200);
    let over = posted(format!("{key}{}", "x".repeat(room + 1))).await;
    check(&over, 413, "This is more than the form can hold, so nothing was written down.");
}

#[tokio::test]
async fn a_failure_inside() {
    let sentence = "Something in the program failed.";
    let told = get_page("/broken").await;
    check(&told, 500, sentence);
    assert!(told.text().contains("the disk is full"));
    check(&get_page("/fallen").await, 500, sentence);
    check(&get_page("/bare").await, 500, sentence);
}
