//! How oil gets from where it is to where it is wanted. For now the limits of viscosity of each way, at [`limit`].

mod limit;

pub use limit::{FEEDS, Feed, Limit, POUR_MARGIN, limit};
