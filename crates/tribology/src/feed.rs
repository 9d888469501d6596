//! How oil gets from where it is to where it is wanted: by its own weight, through tubes and slots, over a lip, drop by drop, up a
//! wick, through a strainer, from a pump or a shot. Start at [`Tube`] and [`Liquid`]; at [`limit`] for the oils that each way can
//! feed at all, and at [`network`] for what runs where in lines that branch and meet.

mod liquid;

mod gravity;
mod loss;
mod orifice;
mod slot;
mod tube;

mod drip;
mod drop;
mod standpipe;
mod wick;

mod gear_pump;
mod one_shot;
mod plunger;
mod strainer;

mod limit;
mod ring;

pub mod network;

pub use drip::{drip_flow, drip_rate, drip_rate_changed, drip_rate_through};
pub use drop::{Glass, drop_volume, usual_drop};
pub use gear_pump::{
    SlipCoefficient, gear_displacement, gear_pump_flow, gear_pump_flow_wilson_1949, gear_pump_slip_wilson_1949,
};
pub use gravity::{head_of, pressure_of_head};
pub use limit::{FEEDS, Feed, Limit, POUR_MARGIN, limit};
pub use liquid::Liquid;
pub use loss::{flow_with_losses, pressure_with_losses};
pub use one_shot::{shot_parts, shot_shares};
pub use orifice::{orifice_flow, orifice_flow_inertial, orifice_flow_sampson_1891, orifice_pressure};
pub use plunger::{Plunger, check_leak_share, plunger_flow, plunger_slip, refill_time, stroke_volume};
pub use ring::{RING_RULES, RingMeasure, RingRule};
pub use slot::{Gap, Slot, gap_flow, gap_pressure, slot_flow, slot_pressure};
pub use standpipe::{film_flow, film_flow_curved, film_thickness, lip_flow, lip_head};
pub use strainer::{Screen, strainer_approach, strainer_pressure};
pub use tube::{
    Conductance, Tube, entry_length, friction_factor, tube_conductance, tube_flow, tube_pressure, tube_reynolds,
};
pub use wick::{Lift, WICKS, Wick, WickMaterial, wick_flow, wick_rise};

use crate::quantity::{Quantity, Rotation};
use crate::working::{Standing, Step, Symbol};
use crate::{Error, math};

/// The standard acceleration of free fall in m/s².
///
/// Source: `nist-sp-811`, appendix B.8.
pub const GRAVITY_M_S2: f64 = 9.806_65;

/// The highest Reynolds number at which flow in a tube or slot is still taken for laminar.
const LAMINAR: f64 = 2000.0;

/// A symbol with its quantity.
fn sized<Q: Quantity>(symbol: &'static str, value: Q) -> Symbol {
    Symbol { symbol, si: value.si(), unit: Q::KIND.si_symbol() }
}

/// A symbol with a number that has no unit.
fn plain(symbol: &'static str, value: f64) -> Symbol {
    Symbol { symbol, si: value, unit: "" }
}

/// A symbol with a rate of drops or strokes; turning has the unit `/s`, which people read as turns a minute.
fn counted(symbol: &'static str, rate: Rotation) -> Symbol {
    Symbol { symbol, si: rate.per_second(), unit: "1/s" }
}

/// The acceleration of free fall as a symbol.
fn gravity() -> Symbol {
    Symbol { symbol: "g", si: GRAVITY_M_S2, unit: "m/s²" }
}

/// A line of working.
fn step(
    name: &'static str,
    formula: &'static str,
    symbols: Vec<Symbol>,
    result: Symbol,
    source: &'static str,
    standing: Standing,
) -> Step {
    Step { name, formula, symbols, result, source, standing }
}

/// The quantity, if it is finite and not below zero: for inputs of which there may be none, and for results.
fn not_negative<Q: Quantity>(name: &'static str, value: Q) -> Result<Q, Error> {
    Error::quantity_within(name, value, Q::from_si(0.0), Q::from_si(f64::MAX))
}

/// The root above zero of `a x + b x² = c`, for none of them below zero and `a` above; exact where `b` is small.
fn rising_root(a: f64, b: f64, c: f64) -> f64 {
    2.0 * c / (a + math::sqrt(a * a + 4.0 * b * c))
}
