//! Slideways: how hard they may press, where they stick and slip, which way oil they want, and how much.
//!
//! Start at [`way_oil`] and [`replacement`]; [`allowable_pressure`] holds figures that differ tenfold from text to text.

mod friction;
mod pressure;
mod replacement;
mod way_oil;

pub use friction::{Stribeck, hersey_number};
pub use pressure::{AllowablePressure, MORE_FOR_STEEL, Way, allowable_pressure, pressure_of_other_texts};
pub use replacement::{Renewal, bush_area, replacement, rolling_area};
pub use way_oil::{Orientation, Pace, Weight, hydraulic_way_oil, way_oil};
