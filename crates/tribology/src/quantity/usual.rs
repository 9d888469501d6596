//! Which unit a person would use for a quantity of a given size, metric or US.
//!
//! Start at [`usual_unit`]. A shop's setting chooses the column; the size chooses the row.

use super::{Kind, Unit};

/// The two habits of measuring.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Units {
    /// Millimetres, litres, bar, °C.
    Metric,
    /// Inches, US gallons, psi, °F.
    Us,
}

/// The unit in which a quantity of this size is usually said.
///
/// - `kind`: what is measured.
/// - `units`: metric or US.
/// - `si`: its size in base SI units; the sign does not matter.
/// - returns: a unit of `kind`; viscosities are in mm²/s and mPa·s under both habits, as oils are sold by them.
///
/// # Range
/// Any number; one that is not a number gets the unit of the smallest sizes.
///
/// # Source
/// Common practice.
///
/// # Example
/// ```
/// use tribology::quantity::{Kind, Units, usual_unit};
/// assert_eq!(usual_unit(Kind::Length, Units::Metric, 0.012).symbol, "mm");
/// assert_eq!(usual_unit(Kind::Length, Units::Us, 0.012).symbol, "in");
/// ```
#[must_use]
pub fn usual_unit(kind: Kind, units: Units, si: f64) -> &'static Unit {
    let choices = match units {
        Units::Metric => metric(kind),
        Units::Us => us(kind).unwrap_or(metric(kind)),
    };
    let fits = choices.iter().rev().find(|(from, _)| si.abs() >= *from);
    let (_, symbol) = fits.unwrap_or(&choices[0]);
    Unit::find(kind, symbol).expect("a usual unit is spelled as in the table")
}

/// Whether a unit is one that people of this habit do not use, so that a quantity typed in it is better said in another too.
///
/// - `unit`: any unit of the table.
/// - `units`: metric or US.
/// - returns: false for every kind that both habits measure alike, and for millilitres, which both use.
///
/// # Source
/// Common practice.
///
/// # Example
/// ```
/// use tribology::quantity::{Kind, Unit, Units, is_foreign};
/// let inch = Unit::find(Kind::Length, "in").expect("a unit of the table");
/// assert!(is_foreign(inch, Units::Metric) && !is_foreign(inch, Units::Us));
/// ```
#[must_use]
pub fn is_foreign(unit: &Unit, units: Units) -> bool {
    const CUSTOMARY: [&str; 10] = ["in", "ft", "US", "UK", "oz", "lb", "lbf", "psi", "F", "inH"];
    let Some(usual) = us(unit.kind) else { return false };
    let is_customary =
        unit.symbol.split(|letter: char| !letter.is_ascii_alphabetic()).any(|word| CUSTOMARY.contains(&word));
    match units {
        Units::Metric => is_customary,
        Units::Us => !is_customary && usual.iter().all(|(_, symbol)| *symbol != unit.symbol),
    }
}

/// Sizes in base SI units from which a unit is used, smallest first.
type Choices = &'static [(f64, &'static str)];

fn metric(kind: Kind) -> Choices {
    match kind {
        Kind::Length => &[(0.0, "µm"), (1e-5, "mm"), (1.0, "m")],
        Kind::Area => &[(0.0, "mm²"), (1e-4, "cm²"), (1.0, "m²")],
        Kind::Volume => &[(0.0, "µL"), (1e-7, "mL"), (1e-3, "L")],
        Kind::Mass => &[(0.0, "g"), (1.0, "kg")],
        Kind::Time => &[(0.0, "s"), (60.0, "min"), (3600.0, "h"), (2.0 * 86400.0, "day")],
        Kind::Rotation => &[(0.0, "rpm")],
        Kind::Velocity => &[(0.0, "mm/s"), (0.1, "m/s")],
        Kind::Acceleration => &[(0.0, "m/s²")],
        Kind::EventRate => &[(0.0, "per h")],
        Kind::Force => &[(0.0, "N"), (1e3, "kN")],
        Kind::Torque => &[(0.0, "N·mm"), (1.0, "N·m")],
        Kind::Pressure => &[(0.0, "Pa"), (1e3, "kPa"), (2e4, "bar"), (1e6, "MPa"), (1e9, "GPa")],
        Kind::Temperature => &[(0.0, "°C")],
        Kind::TemperatureDifference => &[(0.0, "°C")],
        Kind::KinematicViscosity => &[(0.0, "mm²/s")],
        Kind::DynamicViscosity => &[(0.0, "mPa·s")],
        Kind::Density => &[(0.0, "kg/m³")],
        Kind::VolumeFlow => &[(0.0, "mL/h"), (1e-8, "mL/min"), (1e-3 / 60.0, "L/min")],
        Kind::LineLoad => &[(0.0, "N/mm")],
        Kind::SurfaceTension => &[(0.0, "mN/m")],
        Kind::PressureViscosity => &[(0.0, "/GPa")],
        Kind::Power => &[(0.0, "W"), (1e3, "kW")],
        Kind::HeatTransfer => &[(0.0, "W/(m²·K)")],
        Kind::Angle => &[(0.0, "°")],
    }
}

/// Where US habit differs from metric.
fn us(kind: Kind) -> Option<Choices> {
    Some(match kind {
        Kind::Length => &[(0.0, "in"), (1.0, "ft")],
        Kind::Area => &[(0.0, "in²"), (0.1, "ft²")],
        Kind::Volume => &[(0.0, "mL"), (1.4e-5, "US fl oz"), (4.7e-4, "US quart"), (3.7e-3, "US gallon")],
        Kind::Mass => &[(0.0, "oz"), (0.45, "lb")],
        Kind::Velocity => &[(0.0, "in/min"), (0.05, "ft/min")],
        Kind::Acceleration => &[(0.0, "ft/s²")],
        Kind::Force => &[(0.0, "lbf")],
        Kind::Torque => &[(0.0, "lbf·in"), (1.35, "lbf·ft")],
        Kind::Pressure => &[(0.0, "inH₂O"), (3e3, "psi")],
        Kind::Temperature | Kind::TemperatureDifference => &[(0.0, "°F")],
        Kind::LineLoad => &[(0.0, "lbf/in")],
        _ => return None,
    })
}
