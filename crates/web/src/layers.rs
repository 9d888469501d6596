//! What lies around every route, from the outside in: the policy headers, the two guards, the pages for bare errors, the
//! net under a failing handler, and the limit on what a form may hold.

use axum::Router;
use axum::extract::DefaultBodyLimit;
use axum::middleware::{from_fn, from_fn_with_state, map_response};
use axum::response::IntoResponse;
use tower_http::catch_panic::CatchPanicLayer;

use crate::Error;
use crate::error::dress;
use host::HostRule;

pub mod host;
mod origin;
mod policy;

/// The most that a form may hold, in bytes. A route that takes pictures sets its own `DefaultBodyLimit` inside this one.
pub const FORM_LIMIT: usize = 64 * 1024;

pub(crate) fn around(routes: Router, hosts: HostRule) -> Router {
    // The layer added last is the outermost: it sees the request first and the answer last.
    routes
        .layer(DefaultBodyLimit::max(FORM_LIMIT))
        .layer(CatchPanicLayer::custom(|_| Error::broken("A step that should never fail did.").into_response()))
        .layer(map_response(dress))
        .layer(from_fn(origin::check))
        .layer(from_fn_with_state(hosts, host::check))
        .layer(map_response(policy::set))
}
