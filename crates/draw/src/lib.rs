//! Plots and drawings as SVG text: an answer goes in, a picture comes out. Start at [`Plot`]; [`viscosity_chart`] is the one that oil
//! pages show, and [`Side`] a machine with its numbered balloons. Pure: no HTML, no file, no clock. Colours are classes that the style sheet fills, so that a drawing follows day and
//! night; without a style sheet it is black on white.

mod axis;
mod plot;
mod side;
mod spread;
mod svg;
mod viscosity;

pub use axis::Axis;
pub use plot::{Across, Band, Curve, Mark, Plot};
pub use side::{Ground, Place, Side};
pub use viscosity::{Oil, viscosity_chart};
