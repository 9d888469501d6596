//! What happens where two surfaces rub or roll: how thick the film is, and which oil they want.
//!
//! Start at [`film_ratio()`], which says what a film is worth; then [`rolling`], [`gear`] and [`slideway`], each a kind of pair, and
//! [`by_table`] for pairs of which no sum was found.

pub mod by_table;
pub mod gear;
pub mod rolling;
pub mod slideway;

mod clearance;
mod film_ratio;
mod line;
mod usual_oil;

pub use clearance::{Clearance, usual_clearance};
pub use film_ratio::{FULL_IN_EVERY_TEXT, FilmRatio, Regime, film_ratio, regime, running_in_film};
pub use usual_oil::{Additive, Amount, Dose, Family, Often, UsualOil};
