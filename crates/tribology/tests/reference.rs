//! Conversions held against `reference/quantities.csv`, where each row names its source. The tables of other questions are held in
//! the files beside.
//!
//! `check` is the only code that touches the crate.

mod contact_row;
mod feed;
mod film;
mod gear;
mod journal;
mod network;
mod oil;
mod rolling;
mod series;
mod slideway;
mod trade_table;

use serde::Deserialize;
use tribology::quantity::{
    Acceleration, Angle, Area, Density, DynamicViscosity, EventRate, Force, HeatTransfer, Kind, KinematicViscosity,
    Length, LineLoad, Mass, Power, Pressure, PressureViscosity, Quantity, Rotation, SurfaceTension, Temperature,
    TemperatureDifference, Time, Torque, Unit, Velocity, Volume, VolumeFlow, typed,
};

#[derive(Deserialize)]
struct Row {
    id: String,
    quantity: String,
    inputs: String,
    expected: String,
    unit: String,
    tolerance: String,
    kind: String,
}

#[track_caller]
fn check<Q: Quantity>(row: &Row) {
    let unit = Unit::find(Q::KIND, &row.unit).unwrap_or_else(|| panic!("{}: no unit {}", row.id, row.unit));
    let typed = typed::<Q>(&row.inputs).unwrap_or_else(|fault| panic!("{}: {fault:?}", row.id));
    let found = unit.from_si(typed.value.si());
    let (how, size) = row.tolerance.split_once(' ').expect("a tolerance is a word and a size");
    let size: f64 = size.parse().expect("the size of a tolerance is a number");
    let expected: f64 = row.expected.parse().expect("a conversion gives a number");
    let allowed = match how {
        "rel" => size * expected.abs(),
        "abs" => size,
        _ => panic!("{}: a tolerance is rel or abs, not {how}", row.id),
    };
    let off = (found - expected).abs();
    assert!(off <= allowed, "{}: {} is {found} {}, not {}", row.id, row.inputs, row.unit, row.expected);
}

/// The rows of a table of check values.
fn rows(table: &str) -> Vec<Row> {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../../reference/");
    let mut reader = csv::Reader::from_path(format!("{folder}{table}")).expect("the table lies in the repository");
    reader.deserialize().map(|row| row.expect("a row has the eight columns")).collect()
}

#[test]
fn conversions_agree_with_their_sources() {
    let rows = rows("quantities.csv");
    assert!(rows.len() >= 40, "the table has lost rows");
    for row in &rows {
        let kind = Kind::ALL.iter().find(|kind| kind.name() == row.quantity);
        match kind.unwrap_or_else(|| panic!("{}: no kind {}", row.id, row.quantity)) {
            Kind::Length => check::<Length>(row),
            Kind::Area => check::<Area>(row),
            Kind::Volume => check::<Volume>(row),
            Kind::Mass => check::<Mass>(row),
            Kind::Time => check::<Time>(row),
            Kind::Rotation => check::<Rotation>(row),
            Kind::Velocity => check::<Velocity>(row),
            Kind::Acceleration => check::<Acceleration>(row),
            Kind::EventRate => check::<EventRate>(row),
            Kind::Force => check::<Force>(row),
            Kind::Torque => check::<Torque>(row),
            Kind::Pressure => check::<Pressure>(row),
            Kind::Temperature => check::<Temperature>(row),
            Kind::TemperatureDifference => check::<TemperatureDifference>(row),
            Kind::KinematicViscosity => check::<KinematicViscosity>(row),
            Kind::DynamicViscosity => check::<DynamicViscosity>(row),
            Kind::Density => check::<Density>(row),
            Kind::VolumeFlow => check::<VolumeFlow>(row),
            Kind::LineLoad => check::<LineLoad>(row),
            Kind::SurfaceTension => check::<SurfaceTension>(row),
            Kind::PressureViscosity => check::<PressureViscosity>(row),
            Kind::Power => check::<Power>(row),
            Kind::HeatTransfer => check::<HeatTransfer>(row),
            Kind::Angle => check::<Angle>(row),
        }
    }
    let missing: Vec<_> = Kind::ALL.iter().filter(|kind| rows.iter().all(|row| row.quantity != kind.name())).collect();
    assert!(missing.is_empty(), "no row for {missing:?}");
}
