//! Typed quantities: one newtype per kind of measure, in base SI units inside, the unit named at every door.
//!
//! Start at the file `table.rs`, where kinds, newtypes and units are born from one list; then [`typed`] for what a person types
//! and [`said`] for what a person reads. Old viscosity scales (Saybolt and kin) are not linear and are not units here.

mod arithmetic;
mod fault;
mod number;
mod said;
mod table;
mod typed;
mod unit;
mod usual;

pub use fault::TypedFault;
pub use number::number_and_unit;
pub use said::{digits_of, said, said_si};
pub use table::{
    Acceleration, Angle, Area, Density, DynamicViscosity, EventRate, Force, HeatTransfer, Kind, KinematicViscosity,
    Length, LineLoad, Mass, Power, Pressure, PressureViscosity, Rotation, SurfaceTension, Temperature,
    TemperatureDifference, Time, Torque, UNITS, Velocity, Volume, VolumeFlow,
};
pub use typed::{Typed, typed, typed_in};
pub use unit::Unit;
pub use usual::{Units, is_foreign, usual_unit};

/// What every newtype of this module can do: say its kind, and go in and out of base SI units.
pub trait Quantity: Copy + std::fmt::Debug + PartialOrd {
    /// The kind of measure.
    const KIND: Kind;

    /// The quantity whose size in the kind's base SI unit ([`Kind::si_symbol`]) is `si`.
    fn from_si(si: f64) -> Self;

    /// The size in the kind's base SI unit ([`Kind::si_symbol`]).
    fn si(self) -> f64;
}
