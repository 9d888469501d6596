//! Rolling bearings: how thick an oil they ask for, what that does to their life, and what turning them costs.
//!
//! Start at [`reference_viscosity`] and [`viscosity_ratio`]; [`life_modification`] says what the ratio and the dirt do to the life,
//! [`warmed`] how warm the bearing runs.

mod class;
mod contamination;
mod heat;
mod life;
mod life_modification;
mod speed_factor;
mod torque;
mod viscosity_ratio;

pub use class::Class;
pub use contamination::{Cleanliness, Supply, contamination_factor, contamination_range};
pub use heat::{Warmed, film_ratio_of, warmed};
pub use life::{Life, Reliability, modified_life};
pub use life_modification::life_modification;
pub use speed_factor::{SpeedFactor, SpeedMethod, speed_factor};
pub use torque::{Bearing, Oiling, friction_factor, load_free_torque};
pub use viscosity_ratio::{reference_viscosity, viscosity_ratio};
