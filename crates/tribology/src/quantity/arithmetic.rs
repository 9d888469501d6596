//! Arithmetic between quantities, only where it makes sense.
//!
//! Like adds to like and takes a plain factor, but not a temperature, which is a point on a scale. Products of unlike
//! kinds stand in the short list below; a formula that needs more leaves by the door of a named unit.

use super::Quantity;
use super::table::{
    Acceleration, Angle, Area, Density, DynamicViscosity, EventRate, Force, HeatTransfer, KinematicViscosity, Length,
    LineLoad, Mass, Power, Pressure, PressureViscosity, Rotation, SurfaceTension, Temperature, TemperatureDifference,
    Time, Torque, Velocity, Volume, VolumeFlow,
};
use std::ops::{Add, Div, Mul, Sub};

macro_rules! like_adds_to_like {
    ($($kind:ident),+) => {$(
        impl Add for $kind {
            type Output = Self;
            fn add(self, other: Self) -> Self {
                Self::from_si(self.si() + other.si())
            }
        }
        impl Sub for $kind {
            type Output = Self;
            fn sub(self, other: Self) -> Self {
                Self::from_si(self.si() - other.si())
            }
        }
        impl Mul<f64> for $kind {
            type Output = Self;
            fn mul(self, factor: f64) -> Self {
                Self::from_si(self.si() * factor)
            }
        }
        impl Div<f64> for $kind {
            type Output = Self;
            fn div(self, divisor: f64) -> Self {
                Self::from_si(self.si() / divisor)
            }
        }
        impl Div for $kind {
            type Output = f64;
            fn div(self, other: Self) -> f64 {
                self.si() / other.si()
            }
        }
    )+};
}

like_adds_to_like!(
    Length,
    Area,
    Volume,
    Mass,
    Time,
    Rotation,
    Velocity,
    Acceleration,
    EventRate,
    Force,
    Torque,
    Pressure,
    TemperatureDifference,
    KinematicViscosity,
    DynamicViscosity,
    Density,
    VolumeFlow,
    LineLoad,
    SurfaceTension,
    PressureViscosity,
    Power,
    HeatTransfer,
    Angle
);

/// One product gives the three relations that follow from it.
macro_rules! products {
    ($($left:ident * $right:ident = $product:ident;)+) => {$(
        impl Mul<$right> for $left {
            type Output = $product;
            fn mul(self, other: $right) -> $product {
                $product::from_si(self.si() * other.si())
            }
        }
        impl Div<$right> for $product {
            type Output = $left;
            fn div(self, other: $right) -> $left {
                $left::from_si(self.si() / other.si())
            }
        }
    )+};
}

products! {
    Length * Length = Area;
    Area * Length = Volume;
    Velocity * Time = Length;
    VolumeFlow * Time = Volume;
    Velocity * Area = VolumeFlow;
    Force * Length = Torque;
    Pressure * Area = Force;
    LineLoad * Length = Force;
    Density * Volume = Mass;
    KinematicViscosity * Density = DynamicViscosity;
}

impl Sub for Temperature {
    type Output = TemperatureDifference;
    fn sub(self, other: Self) -> TemperatureDifference {
        TemperatureDifference::from_si(self.si() - other.si())
    }
}

impl Add<TemperatureDifference> for Temperature {
    type Output = Self;
    fn add(self, rise: TemperatureDifference) -> Self {
        Self::from_si(self.si() + rise.si())
    }
}

impl Sub<TemperatureDifference> for Temperature {
    type Output = Self;
    fn sub(self, fall: TemperatureDifference) -> Self {
        Self::from_si(self.si() - fall.si())
    }
}
