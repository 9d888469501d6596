//! Two surfaces with oil between them: how thick the film is, what it carries, what it drags, how warm it runs, and which oil they want.
//!
//! Start at [`film_ratio()`], which says what a film is worth; then [`journal`], [`rolling`], [`gear`] and [`slideway`], each a kind of
//! pair, and [`by_table`] for pairs of which no sum was found. How oil gets there is for [`crate::feed`]; what follows for a machine is for
//! the reasoning.

pub mod by_table;
pub mod gear;
pub mod journal;
pub mod rolling;
pub mod slideway;

mod clearance;
mod film_ratio;
mod line;
mod speed;
mod usual_oil;

pub use clearance::{Clearance, usual_clearance};
pub use film_ratio::{FULL_IN_EVERY_TEXT, FilmRatio, Regime, film_ratio, regime, running_in_film};
pub use speed::{rubbing_speed, stroking_speed};
pub use usual_oil::{Additive, Amount, Dose, Family, Often, UsualOil};
