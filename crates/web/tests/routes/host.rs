//! Under which names the server answers. The names are those of RFC 6761 (localhost), RFC 6762 (.local), RFC 2606
//! (example.com) and the documentation numbers of RFC 5737 and RFC 3849.

use axum::body::Body;
use axum::http::Request;
use web::HostRule;

use crate::ask::{PORT, ask, ask_under, get_page, request};

#[test]
fn this_computer_answers_to_itself_only() {
    let rule = HostRule::this_computer(PORT);
    let table = [
        ("localhost:4700", true),
        ("LOCALHOST:4700", true),
        ("127.0.0.1:4700", true),
        ("[::1]:4700", true),
        ("localhost", false),
        ("localhost:4701", false),
        ("localhost:", false),
        ("localhost.example.com:4700", false),
        ("127.0.0.1.example.com:4700", false),
        ("example.com:4700", false),
        ("localhost@example.com:4700", false),
        ("example.com@localhost:4700", false),
        ("192.0.2.7:4700", false),
        ("[2001:db8::7]:4700", false),
        ("0.0.0.0:4700", false),
        ("shop:4700", false),
        (":4700", false),
        ("", false),
    ];
    for (host, admitted) in table {
        assert_eq!(rule.admits(host), admitted, "{host}");
    }
}

#[test]
fn the_network_reaches_it_by_number_and_by_its_own_name() {
    let rule = HostRule::network(PORT, "Mill-Shop");
    let table = [
        ("localhost:4700", true),
        ("192.0.2.7:4700", true),
        ("[2001:db8::7]:4700", true),
        ("mill-shop:4700", true),
        ("MILL-SHOP.local:4700", true),
        ("mill-shop.example.com:4700", false),
        ("other.local:4700", false),
        ("example.com:4700", false),
        ("192.0.2.7", false),
        ("0.0.0.0:4700", false),
        ("[::]:4700", false),
    ];
    for (host, admitted) in table {
        assert_eq!(rule.admits(host), admitted, "{host}");
    }
    assert_eq!(rule, HostRule::network(PORT, "mill-shop.local"));
    let nameless = HostRule::network(PORT, "");
    assert!(!nameless.admits(":4700"));
    assert!(!nameless.admits(".local:4700"));
}

#[test]
fn a_browser_leaves_out_the_port_of_plain_http() {
    // RFC 9110, section 4.2.1: the port of http is 80 when none is given.
    assert!(HostRule::this_computer(80).admits("localhost"));
}

#[tokio::test]
async fn a_foreign_name_is_refused_with_the_right_address_and_no_link() {
    let foreign = Request::get("/pattern").header("host", "example.com:4700");
    let answer = ask(foreign.body(Body::empty())).await;
    assert_eq!(answer.status, 403);
    assert!(answer.text().contains("http://localhost:4700/"));
    assert!(crate::ask::all(&answer.page(), "main a").is_empty());
    assert_eq!(get_page("/pattern").await.status, 200);
}

#[tokio::test]
async fn the_host_is_told_exactly_once() {
    // RFC 9112, section 3.2: a request without a Host, or with more than one, is answered with 400.
    let none = ask(Request::get("/pattern").body(Body::empty())).await;
    assert_eq!(none.status, 400);
    let two = request("GET", "/pattern").header("host", "localhost:4700");
    assert_eq!(ask(two.body(Body::empty())).await.status, 400);
}

#[tokio::test]
async fn a_foreign_name_in_the_request_line_counts() {
    // RFC 9112, section 3.2.2: a host in the request line goes before the Host header.
    let foreign = request("GET", "http://example.com/pattern").body(Body::empty());
    let answer = ask_under(HostRule::this_computer(PORT), foreign).await;
    assert_eq!(answer.status, 403);
}
