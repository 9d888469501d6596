//! `GET /machines/{id}/pictures/{number}`: the bytes of a picture; with `?small` those of the small one. A number never gets other
//! bytes, so a browser may keep them.

use std::collections::BTreeMap;

use axum::extract::{Path, Query, State};
use axum::http::header::{CACHE_CONTROL, CONTENT_TYPE};
use axum::response::{IntoResponse, Response};
use store::{PictureId, PictureKind};

use crate::Error;
use crate::shop_state::Shop;

/// A year, for one browser alone: the pictures are the shop's own.
const KEPT: &str = "private, max-age=31536000, immutable";

/// `GET /machines/{machine}/pictures/{picture}`
pub(crate) async fn show(
    State(shop): State<Shop>,
    Path((machine, number)): Path<(String, i64)>,
    Query(asked): Query<BTreeMap<String, String>>,
) -> Result<Response, Error> {
    let none = || Error::NotFound { what: "picture" };
    let picture = match shop.store.picture(PictureId(number)).await {
        Err(store::Error::NotFound(_)) => return Err(none()),
        other => other?,
    };
    if picture.given.machine.as_str() != machine {
        return Err(none());
    }
    let whole = picture.given.bytes;
    let bytes = if asked.contains_key("small") {
        // One that an older program kept and that cannot be made small is shown as it is.
        shop.store.thumbnail(PictureId(number)).await.unwrap_or(whole)
    } else {
        whole
    };
    let kind = PictureKind::of(&bytes).ok_or_else(none)?;
    Ok(([(CONTENT_TYPE, kind.media_type()), (CACHE_CONTROL, KEPT)], bytes).into_response())
}
