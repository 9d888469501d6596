//! Gears: the oil that a pitch-line speed asks for, how hard and fast they work, how fast they may dip, and the film between two teeth.
//!
//! Start at [`recommended_viscosity`]. The curve of viscosity over the force-speed factor was not found: the factor is given, and grades by
//! table at [`usual_oil`].

mod dip;
mod film;
mod force_speed;
mod modulus;
mod recommended;
mod table;

pub use dip::{Casing, IMMERSION_TOOTH_DEPTHS, Mesh, bath_speeds, dip_limit};
pub use film::{Film, LineContact, PointContact, ellipticity, line_film, point_film};
pub use force_speed::{
    ForceSpeed, Spur, USUAL_ZONE_FACTOR, WormForceSpeed, deciding_stage, force_speed_spur, force_speed_worm,
    rolling_pressure,
};
pub use modulus::{Elastic, STEEL, reduced_modulus};
pub use recommended::recommended_viscosity;
pub use table::{Gear, usual_oil};
