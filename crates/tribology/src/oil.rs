//! What an oil is: its grade, its viscosity at a temperature, the old names of viscosity, its density, and blends.
//!
//! Start at [`ViscosityLine`]. Each file is one question; all are pure, and say with the answer where it left the range of its
//! source. What old plates meant, and which oil suits, is for the reasoning.

mod grade;
mod line;

mod index;

mod engler;
mod redwood;
mod saybolt;
mod scale;

mod agma;
mod nlgi;
mod sae_engine;
mod sae_gear;
mod saybolt_number;

mod blend;
mod density;
mod pressure_viscosity;

pub use agma::{AgmaBand, AgmaNumber, agma_band};
pub use blend::{Part, blend_d7152, blend_refutas, blend_wright, share_d7152, share_refutas};
pub use density::{
    density_at, density_at_60f, density_rule_of_thumb, dynamic_viscosity, kinematic_viscosity, relative_density,
    volume_correction_60f,
};
pub use engler::{engler_degrees, viscosity_of_engler};
pub use grade::{Classified, GRADES, IsoGrade, classified};
pub use index::{ReferenceOils, reference_oils, v40_of_index, v100_of_index, viscosity_index};
pub use line::ViscosityLine;
pub use nlgi::{NlgiNumber, penetration};
pub use pressure_viscosity::{pressure_viscosity_so_klaus_1980, pressure_viscosity_wooster, viscosity_under_pressure};
pub use redwood::{redwood_1_seconds, redwood_2_seconds, viscosity_of_redwood_1, viscosity_of_redwood_2};
pub use sae_engine::{EngineEdition, EngineGrade, EngineLimits, engine_limits};
pub use sae_gear::{GearEdition, GearGrade, GearLimits, gear_limits};
pub use saybolt::{saybolt_furol_seconds, saybolt_seconds, viscosity_of_saybolt, viscosity_of_saybolt_furol};
pub use saybolt_number::{SAYBOLT_NUMBERS, saybolt_number_grade};
pub use scale::Scale;

use crate::working::{Standing, Step, Symbol};

/// The viscosity index taken for an oil of which nothing is said: a solvent-refined paraffinic mineral oil.
///
/// Source: `common-practice`.
pub const USUAL_INDEX: f64 = 95.0;

/// The density at 15 °C in kg/m³ taken for an oil of which nothing is said.
///
/// Source: `common-practice`.
pub const USUAL_DENSITY_KG_M3: f64 = 880.0;

/// Base SI units of kinematic viscosity in one mm²/s.
const MM2_S: f64 = 1e-6;

/// A symbol with its value.
fn symbol(symbol: &'static str, si: f64, unit: &'static str) -> Symbol {
    Symbol { symbol, si, unit }
}

/// A kinematic viscosity as a symbol.
fn viscosity(name: &'static str, mm2_s: f64) -> Symbol {
    symbol(name, mm2_s * MM2_S, "m²/s")
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
