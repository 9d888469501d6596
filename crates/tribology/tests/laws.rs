//! Laws of quantities that hold whatever the numbers: there and back, printed and read, every spelling its own unit.

mod feed;
mod gear;
mod journal;
mod network;
mod oil;
mod rolling;
mod series;
mod slideway;
mod spelling;

use proptest::prelude::*;
use tribology::math::pow;
use tribology::quantity::{
    Density, Force, Kind, KinematicViscosity, Length, Temperature, Time, TypedFault, UNITS, Unit, Units, VolumeFlow,
    number_and_unit, said, typed, usual_unit,
};

fn any_unit() -> impl Strategy<Value = &'static Unit> {
    (0..UNITS.len()).prop_map(|at| &UNITS[at])
}

proptest! {
    #[test]
    fn there_and_back_is_where_it_began(unit in any_unit(), number in -1e9..1e9f64) {
        let back = unit.from_si(unit.to_si(number));
        // A temperature loses what its distance from absolute zero takes of the figures.
        prop_assert!((back - number).abs() <= 4.0 * f64::EPSILON * (number.abs() + unit.offset()));
    }

    #[test]
    fn what_is_printed_is_read_back_within_its_digits(um in 0.001..1e9f64, digits in 1..12usize, at in 0..7usize) {
        let length = Length::from_um(um);
        let unit = Unit::of(Kind::Length).nth(at).expect("there are seven units of length");
        let text = said(length, unit, digits);
        let read = typed::<Length>(&text).expect("what we print can be read");
        prop_assert_eq!(read.unit, unit);
        // Rounding to d digits moves a number by at most five in the digit after the last.
        let allowed = 5.0 * pow(0.1, digits as f64) + 8.0 * f64::EPSILON;
        prop_assert!((read.value / length - 1.0).abs() <= allowed, "{text} for {um} µm");
    }

    #[test]
    fn a_temperature_is_read_back_too(celsius in -200.0..2000.0f64) {
        let unit = Unit::find(Kind::Temperature, "F").expect("Fahrenheit stands in the table");
        let read = typed::<Temperature>(&said(Temperature::from_celsius(celsius), unit, 7)).expect("it is a temperature");
        prop_assert!((read.value.celsius() - celsius).abs() < 0.001);
    }

    #[test]
    fn no_text_makes_the_reader_fall_over(text in "\\PC{0,12}") {
        if let Ok((number, rest)) = number_and_unit(&text) {
            prop_assert!(number.is_finite() && text.trim_end().ends_with(rest));
        }
        if let Ok(read) = typed::<Length>(&text) {
            prop_assert_eq!(read.text, text);
        }
    }

    #[test]
    fn decimals_read_as_the_standard_library_reads_them(number in -1e6..1e6f64) {
        let text = format!("{number} mm");
        prop_assert_eq!(number_and_unit(&text), Ok((number, "mm")));
        let comma = format!("{number:.4}").replace('.', ",");
        let point: f64 = format!("{number:.4}").parse().expect("it is a decimal");
        prop_assert_eq!(number_and_unit(&comma), Ok((point, "")));
    }

    #[test]
    fn sixteenths_are_exact(whole in 0..100u32, part in 1..16u32) {
        let exact = f64::from(whole) + f64::from(part) / 16.0;
        for between in [" ", "-"] {
            let text = format!("{whole}{between}{part}/16 in");
            prop_assert_eq!(number_and_unit(&text), Ok((exact, "in")));
        }
    }

    #[test]
    fn a_pair_of_rounded_conversions_agrees(celsius in -40..400i32) {
        let fahrenheit = f64::from(celsius) * 1.8 + 32.0;
        let agreed = format!("{celsius} °C ({fahrenheit:.0} °F)");
        prop_assert!(typed::<Temperature>(&agreed).is_ok(), "{agreed}");
        let apart = format!("{celsius} °C ({:.0} °F)", fahrenheit + 3.0);
        let fault = typed::<Temperature>(&apart);
        prop_assert!(matches!(fault, Err(TypedFault::PairDisagrees { .. })), "{apart}");
    }

    #[test]
    fn a_usual_unit_is_of_its_kind(at in 0..Kind::ALL.len(), power in -12.0..12.0f64) {
        let kind = Kind::ALL[at];
        for units in [Units::Metric, Units::Us] {
            prop_assert_eq!(usual_unit(kind, units, pow(10.0, power)).kind, kind);
        }
    }
}

/// By hand: 68 x 0.87 = 59.16; 12 mL/min for two hours is 1440 mL; 2 kN on 50 mm by 40 mm is 1 MPa.
#[test]
fn products_and_quotients_keep_their_units() {
    let dynamic = KinematicViscosity::from_mm2_s(68.0) * Density::from_kg_m3(870.0);
    assert!((dynamic.mpa_s() - 59.16).abs() < 1e-9);
    let given = VolumeFlow::from_ml_min(12.0) * Time::from_hours(2.0);
    assert!((given.ml() - 1440.0).abs() < 1e-9);
    let pressure = Force::from_kn(2.0) / (Length::from_mm(50.0) * Length::from_mm(40.0));
    assert!((pressure.mpa() - 1.0).abs() < 1e-12);
}

#[test]
fn temperatures_differ_by_a_difference() {
    let rise = Temperature::from_celsius(60.0) - Temperature::from_fahrenheit(104.0);
    assert!((rise.kelvin() - 20.0).abs() < 1e-9, "104 °F is 40 °C");
    assert!(((Temperature::from_celsius(40.0) + rise).celsius() - 60.0).abs() < 1e-9);
    assert!(((Temperature::from_celsius(40.0) - rise).celsius() - 20.0).abs() < 1e-9);
}

#[test]
fn every_example_is_of_its_kind() {
    for kind in Kind::ALL {
        let (_, unit) = number_and_unit(kind.example()).expect("an example begins with a number");
        assert!(Unit::find(*kind, unit).is_some(), "{}", kind.example());
    }
}
