//! The headers that every answer carries, whatever it is.

use axum::http::HeaderValue;
use axum::http::header::{CACHE_CONTROL, CONTENT_SECURITY_POLICY, HeaderName, REFERRER_POLICY, X_CONTENT_TYPE_OPTIONS};
use axum::response::Response;

const RESOURCE_POLICY: HeaderName = HeaderName::from_static("cross-origin-resource-policy");

/// Nothing but our own files is loaded, run, framed or posted to.
const CONTENT: HeaderValue = HeaderValue::from_static(
    "default-src 'none'; style-src 'self'; font-src 'self'; img-src 'self'; script-src 'self'; \
     form-action 'self'; base-uri 'none'; frame-ancestors 'none'",
);

/// Tells other sites nothing. Not `no-referrer`: under that a browser sends our own forms with `Origin: null`, which
/// cannot be told from a stranger's (Fetch standard, "append a request Origin header").
const REFERRER: HeaderValue = HeaderValue::from_static("same-origin");

pub(crate) async fn set(mut answer: Response) -> Response {
    let headers = answer.headers_mut();
    headers.insert(CONTENT_SECURITY_POLICY, CONTENT);
    headers.insert(REFERRER_POLICY, REFERRER);
    headers.insert(X_CONTENT_TYPE_OPTIONS, HeaderValue::from_static("nosniff"));
    headers.insert(RESOURCE_POLICY, HeaderValue::from_static("same-origin"));
    // A page is true at the moment it is asked for; only what says otherwise itself is kept.
    headers.entry(CACHE_CONTROL).or_insert(HeaderValue::from_static("no-store"));
    answer
}
