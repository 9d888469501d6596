//! Who is at work. The cookie's attributes are those of RFC 6265 and of its successor's draft (`SameSite`).

use crate::ask::all;
use crate::bench::{Bench, form, led, words};

#[tokio::test]
async fn a_name_is_kept_and_stands_in_the_log() {
    let mut bench = Bench::new().await;
    let page = bench.page("/hand?machine=shaper&hours=2").await;
    let answer = bench.press(&form(&page, "Keep this name", ""), &[("name", " Änne O'Brien ")]).await;
    assert_eq!(led(&answer), "/?machine=shaper&hours=2");
    let cookie = answer.header("set-cookie").to_owned();
    let (pair, attributes) = cookie.split_once(';').expect("a cookie has attributes");
    assert_eq!(pair, "hand=%C3%84nne%20O%27Brien");
    for attribute in ["Path=/", "HttpOnly", "SameSite=Strict"] {
        assert!(attributes.contains(attribute), "{cookie}");
    }
    bench.is_known_by(pair);
    let page = bench.page("/?machine=shaper").await;
    assert_eq!(words(&page, ".title-block dd")[3], "Änne O'Brien");
    led(&bench.press(&form(&page, "Oiled", "point 1,"), &[]).await);
    assert_eq!(bench.entries().await[0].said.by, "Änne O'Brien");
}

#[tokio::test]
async fn whoever_says_nothing_is_called_so() {
    let bench = Bench::new().await;
    led(&bench.press(&form(&bench.page("/").await, "Oiled", "point 1,"), &[]).await);
    assert_eq!(bench.entries().await[0].said.by, "not said");
    let answer = bench.press(&form(&bench.page("/hand").await, "Keep this name", ""), &[("name", "  ")]).await;
    led(&answer);
    assert!(answer.header("set-cookie").contains("Max-Age=0"), "the cookie is taken away");
}

#[tokio::test]
async fn a_name_that_is_too_long_comes_back_as_it_was_typed() {
    let bench = Bench::new().await;
    let long = "x".repeat(41);
    let answer = bench.press(&form(&bench.page("/hand").await, "Keep this name", ""), &[("name", &long)]).await;
    assert_eq!(answer.status, 422);
    assert_eq!(answer.header("set-cookie"), "");
    let page = answer.page();
    assert_eq!(all(&page, "input#name[aria-invalid=true]")[0].attr("value"), Some(long.as_str()));
    assert!(words(&page, "#name-fault")[0].contains("40"));
}

#[tokio::test]
async fn a_cookie_written_by_hand_counts_as_nothing_said() {
    let mut bench = Bench::new().await;
    let table = [&*format!("hand={}", "x".repeat(41)), "hand=%FF", "hand=a%0Ab", "hand=", "band=Anna"];
    for cookie in table {
        bench.is_known_by(cookie);
        assert_eq!(words(&bench.page("/").await, ".title-block dd")[3], "not said", "{cookie}");
    }
    bench.is_known_by("other=1; hand=Anna");
    assert_eq!(words(&bench.page("/").await, ".title-block dd")[3], "Anna");
}
