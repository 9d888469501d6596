//! The physics of lubrication: number in, number out.
//!
//! Start at [`quantity`] for the measures that every other file speaks in, then at
//! [`working`] for the shape of an answer; [`oil`] is what an oil is and does,
//! [`contact`] where surfaces meet, [`feed`] how it gets there, [`series`] what the counts of a logbook say. Nothing here knows a shop, a
//! date, a file or a network.

pub mod contact;
pub mod error;
pub mod feed;
pub mod math;
pub mod oil;
pub mod quantity;
pub mod root;
pub mod series;
pub mod working;

pub use error::Error;
pub use working::{Answer, Standing, Step, Symbol, Warning};
