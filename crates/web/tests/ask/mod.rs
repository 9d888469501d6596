//! Asks the shell, without a network, and holds its answer.

use axum::body::{Body, to_bytes};
use axum::extract::Form;
use axum::http::{HeaderName, Request, StatusCode};
use axum::response::Response;
use axum::routing::{get, post};
use axum::{Router, http::header::HOST};
use scraper::{Html, Selector};
use serde::Deserialize;
use tower::ServiceExt as _;
use web::{Error, FormKey, HostRule};

/// The port that the tests pretend to listen on.
pub(crate) const PORT: u16 = 4700;

/// What came back.
pub(crate) struct Answer {
    pub(crate) status: StatusCode,
    response: Response<()>,
    bytes: Vec<u8>,
}

impl Answer {
    pub(crate) fn of(parts: axum::http::response::Parts, bytes: Vec<u8>) -> Self {
        Self { status: parts.status, response: Response::from_parts(parts, ()), bytes }
    }

    pub(crate) fn header(&self, name: &str) -> &str {
        self.response.headers().get(name).map_or("", |value| value.to_str().expect("our headers are plain letters"))
    }

    pub(crate) fn bytes(&self) -> &[u8] {
        &self.bytes
    }

    pub(crate) fn text(&self) -> &str {
        std::str::from_utf8(&self.bytes).expect("our pages are UTF-8")
    }

    pub(crate) fn page(&self) -> Html {
        assert_eq!(self.header("content-type"), "text/html; charset=utf-8", "{}", self.text());
        Html::parse_document(self.text())
    }
}

/// Asks for a page on this computer.
pub(crate) async fn get_page(path: &str) -> Answer {
    ask(request("GET", path).body(Body::empty())).await
}

/// A request as a browser on this computer begins it.
pub(crate) fn request(method: &str, path: &str) -> axum::http::request::Builder {
    Request::builder().method(method).uri(path).header(HOST, format!("localhost:{PORT}"))
}

pub(crate) async fn ask(request: Result<Request<Body>, axum::http::Error>) -> Answer {
    ask_under(HostRule::this_computer(PORT), request).await
}

pub(crate) async fn ask_under(rule: HostRule, request: Result<Request<Body>, axum::http::Error>) -> Answer {
    let request = request.expect("the test wrote a well-formed request");
    let response = web::shell(inner(), rule).oneshot(request).await.expect("the shell answers every request");
    let (parts, body) = response.into_parts();
    let bytes = to_bytes(body, usize::MAX).await.expect("a body in memory");
    Answer::of(parts, bytes.into())
}

/// Everything that matches, in the order of the page.
pub(crate) fn all<'a>(page: &'a Html, selector: &str) -> Vec<scraper::ElementRef<'a>> {
    let selector = Selector::parse(selector).expect("the test wrote a selector");
    page.select(&selector).collect()
}

pub(crate) fn header(name: &'static str) -> HeaderName {
    HeaderName::from_static(name)
}

/// Routes that stand in for the shop's: one that takes a form, and some that fail.
fn inner() -> Router {
    Router::new()
        .route("/taken", post(take))
        .route("/broken", get(async || Error::broken("the disk is full")))
        .route("/fallen", get(fall))
        .route("/bare", get(async || StatusCode::SERVICE_UNAVAILABLE))
}

#[derive(Deserialize)]
struct Taken {
    key: FormKey,
}

async fn take(Form(taken): Form<Taken>) -> String {
    taken.key.as_str().to_owned()
}

async fn fall() -> StatusCode {
    panic!("a test of the net under a failing handler")
}
