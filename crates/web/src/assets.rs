//! The files that go with the pages: one stylesheet, the letters, the icon.
//!
//! They are part of the program. Their address carries a hash over all of them, so a browser may keep each for ever and
//! still never shows an old one; the stylesheet can name a letter beside it without knowing the hash.

use std::fmt::Write as _;
use std::sync::LazyLock;

use axum::Router;
use axum::extract::Path;
use axum::http::header::{CACHE_CONTROL, CONTENT_TYPE};
use axum::response::{IntoResponse, Response};
use axum::routing::get;
use sha2::{Digest, Sha256};

use crate::Error;

/// One file that is served as it stands.
#[derive(Debug)]
pub struct Asset {
    name: &'static str,
    content_type: &'static str,
    bytes: &'static [u8],
}

impl Asset {
    /// The address of this file, to be written into a page.
    pub fn href(&self) -> String {
        format!("/assets/{}/{}", *EDITION, self.name)
    }
}

/// The stylesheet: the files of `assets/css` in one, in the order in which they build on each other.
pub static SHEET: Asset = Asset {
    name: "sheet.css",
    content_type: "text/css; charset=utf-8",
    bytes: concat!(
        include_str!("../assets/css/layers.css"),
        include_str!("../assets/css/fonts.css"),
        include_str!("../assets/css/tokens.css"),
        include_str!("../assets/css/reset.css"),
        include_str!("../assets/css/base.css"),
        include_str!("../assets/css/page.css"),
        include_str!("../assets/css/title_block.css"),
        include_str!("../assets/css/receipt.css"),
        include_str!("../assets/css/note.css"),
        include_str!("../assets/css/button.css"),
        include_str!("../assets/css/balloon.css"),
        include_str!("../assets/css/point_row.css"),
        include_str!("../assets/css/stand.css"),
        include_str!("../assets/css/steps.css"),
        include_str!("../assets/css/verdict.css"),
        include_str!("../assets/css/table.css"),
        include_str!("../assets/css/fold.css"),
        include_str!("../assets/css/figure.css"),
        include_str!("../assets/css/plot.css"),
        include_str!("../assets/css/side.css"),
        include_str!("../assets/css/field.css"),
        include_str!("../assets/css/form.css"),
        include_str!("../assets/css/filter.css"),
        include_str!("../assets/css/facts.css"),
        include_str!("../assets/css/quote.css"),
        include_str!("../assets/css/empty.css"),
        include_str!("../assets/css/utilities.css"),
        include_str!("../assets/css/print.css"),
    )
    .as_bytes(),
};

/// The small picture that a browser shows beside the title.
pub static ICON: Asset =
    Asset { name: "icon.svg", content_type: "image/svg+xml", bytes: include_bytes!("../assets/icon.svg") };

static LETTERING: Asset = font("lettering.woff2", include_bytes!("../assets/fonts/lettering.woff2"));
static LETTERING_NARROW: Asset =
    font("lettering-narrow.woff2", include_bytes!("../assets/fonts/lettering-narrow.woff2"));
static READING: Asset = font("reading-400.woff2", include_bytes!("../assets/fonts/reading-400.woff2"));
static READING_BOLD: Asset = font("reading-700.woff2", include_bytes!("../assets/fonts/reading-700.woff2"));

/// All of them, the only list that is served and hashed.
static ALL: [&Asset; 6] = [&SHEET, &ICON, &LETTERING, &LETTERING_NARROW, &READING, &READING_BOLD];

/// The first sixteen hex figures of a hash over every name and every byte.
static EDITION: LazyLock<String> = LazyLock::new(|| {
    let mut hash = Sha256::new();
    for asset in ALL {
        hash.update(asset.name);
        hash.update(asset.bytes);
    }
    hash.finalize()[..8].iter().fold(String::new(), |mut hex, byte| {
        write!(hex, "{byte:02x}").expect("writing to a String cannot fail");
        hex
    })
});

pub(crate) fn routes() -> Router {
    Router::new().route("/assets/{edition}/{name}", get(serve))
}

async fn serve(Path((edition, name)): Path<(String, String)>) -> Result<Response, Error> {
    let asset =
        ALL.iter().find(|asset| edition == *EDITION && asset.name == name).ok_or(Error::NotFound { what: "file" })?;
    let kept = [(CONTENT_TYPE, asset.content_type), (CACHE_CONTROL, "public, max-age=31536000, immutable")];
    Ok((kept, asset.bytes).into_response())
}

const fn font(name: &'static str, bytes: &'static [u8]) -> Asset {
    Asset { name, content_type: "font/woff2", bytes }
}
