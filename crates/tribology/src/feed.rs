//! How oil gets from where it is to where it is wanted: the limits of viscosity of each way, at [`limit`], and what runs where in tubes that
//! branch and meet, at [`network`].

mod limit;
pub mod network;

pub use limit::{FEEDS, Feed, Limit, POUR_MARGIN, limit};
