//! The local server's pages.
//!
//! Start at [`router`], the pages of a shop. Around them lies [`shell`]: it takes the routes that know machines and gives them what every answer needs: the assets, the
//! guards, the plain error pages and the pattern page. [`parts`] holds the components that pages are built from.

use axum::Router;

mod address;
pub mod assets;
mod calc;
mod error;
mod findings;
pub mod form_key;
mod hand;
mod hours;
pub mod layers;
mod log;
mod machines;
pub mod parts;
mod pattern;
mod phrase;
mod routes;
mod rules;
mod settings;
mod shelf;
mod shop_state;
mod today;

pub use error::Error;
pub use form_key::FormKey;
pub use layers::host::HostRule;
pub use routes::router;
pub use shop_state::{Clock, Shop};

/// Wraps the routes of the shop so that every answer, errors and assets too, passes the same guards.
pub fn shell(inner: Router, hosts: HostRule) -> Router {
    let routes = inner.merge(assets::routes()).merge(pattern::routes()).fallback(error::no_such_page);
    layers::around(routes, hosts)
}
