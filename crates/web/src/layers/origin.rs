//! The guard before every act: a form must come from our own page.
//!
//! A page of another site can send a form here without being able to read the answer. Browsers say where a form comes
//! from; a request that says nothing does not come from a browser page and is let through.

use axum::extract::Request;
use axum::http::header::{HOST, ORIGIN};
use axum::http::{HeaderMap, Method};
use axum::middleware::Next;
use axum::response::Response;

use crate::Error;

pub(crate) async fn check(request: Request, next: Next) -> Result<Response, Error> {
    let only_reads = matches!(*request.method(), Method::GET | Method::HEAD | Method::OPTIONS);
    if only_reads || is_ours(request.headers()) { Ok(next.run(request).await) } else { Err(Error::ForeignForm) }
}

fn is_ours(headers: &HeaderMap) -> bool {
    let own = headers.get(HOST).and_then(|host| host.to_str().ok()).map(|host| format!("http://{host}"));
    let from_us = headers
        .get_all(ORIGIN)
        .iter()
        .all(|origin| own.as_deref().is_some_and(|own| origin.as_bytes().eq_ignore_ascii_case(own.as_bytes())));
    let said_so = headers.get_all("sec-fetch-site").iter().all(|site| site == "same-origin");
    from_us && said_so
}
