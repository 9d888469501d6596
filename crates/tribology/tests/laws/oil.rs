//! Laws of oils that need no table: inverse pairs, monotony, limits, and what mixing may not do.

use proptest::prelude::*;
use tribology::oil::{
    GRADES, Part, Scale, ViscosityLine, blend_d7152, blend_refutas, blend_wright, classified, density_at,
    dynamic_viscosity, kinematic_viscosity, pressure_viscosity_wooster, share_d7152, share_refutas, v40_of_index,
    v100_of_index, viscosity_index,
};
use tribology::quantity::{Density, DynamicViscosity, KinematicViscosity, Temperature};
use tribology::{Answer, Error, math};

/// How near an inverse pair must come, relative.
const NEAR: f64 = 1e-9;

fn mm2_s(number: f64) -> KinematicViscosity {
    KinematicViscosity::from_mm2_s(number)
}

fn celsius(number: f64) -> Temperature {
    Temperature::from_celsius(number)
}

fn value<T>(answer: Result<Answer<T>, Error>) -> T {
    answer.expect("the law asks what can be answered").value
}

/// Numbers from one to another, each so many times the one before.
fn log_grid(from: f64, to: f64, times: f64) -> impl Iterator<Item = f64> {
    std::iter::successors(Some(from), move |last| Some(last * times).filter(|next| *next <= to))
}

#[track_caller]
fn same(found: f64, wanted: f64, what: &str) {
    assert!((found / wanted - 1.0).abs() <= NEAR, "{what}: {found}, not {wanted}");
}

#[test]
fn temperature_and_viscosity_are_a_pair() {
    for v40 in log_grid(1.5, 1e4, 1.7) {
        let line = value(ViscosityLine::through(
            (celsius(40.0), mm2_s(v40)),
            (celsius(100.0), mm2_s(0.6 * math::pow(v40, 0.62))),
        ));
        for reach in log_grid(0.21, 2e7, 1.3) {
            let at = value(line.temperature(mm2_s(reach)));
            same(line.at(at).mm2_s(), reach, "a viscosity");
        }
        for at in [-20.0, 0.0, 40.0, 77.0, 100.0] {
            let back = value(line.temperature(line.at(celsius(at)))).kelvin();
            same(back, celsius(at).kelvin(), "a temperature");
        }
        same(line.at(celsius(40.0)).mm2_s(), v40, "the first point");
    }
}

#[test]
fn index_and_viscosities_are_pairs() {
    for v100 in log_grid(2.0, 300.0, 1.031) {
        for index in [-50.0, 0.0, 60.0, 95.0, 99.9, 100.0, 100.1, 150.0, 250.0] {
            let v40 = value(v40_of_index(mm2_s(v100), index));
            // One degree of index is the measure; of an index of nought no part can be taken.
            let back = value(viscosity_index(v40, mm2_s(v100)));
            assert!((back - index).abs() <= 1e-7 * (1.0 + index.abs()), "{v100} {index}: {back}");
            // Just above 70 mm²/s the index of the standard steps by 0.03, so that two viscosities have one index.
            if !(69.0..72.0).contains(&v100) {
                same(value(v100_of_index(v40, index)).mm2_s(), v100, "the viscosity at 100 °C");
            }
        }
    }
}

#[test]
fn scales_and_viscosities_are_pairs() {
    let f122 = Temperature::from_fahrenheit(122.0);
    for scale in Scale::ALL {
        let from = match scale {
            Scale::Kinematic => 0.5,
            Scale::SayboltUniversal => 1.81,
            Scale::SayboltFurol => 48.1,
            Scale::Redwood1 => 3.7,
            Scale::Redwood2 => 78.0,
            Scale::Engler => 4.0,
        };
        let mut before = 0.0;
        for viscosity in log_grid(from, 1e4, 1.013) {
            // The joins of the two Redwoods are the source's own and no pair.
            let join = match scale {
                Scale::Redwood1 => (24.19..24.22).contains(&viscosity),
                Scale::Redwood2 => (220.1..220.3).contains(&viscosity),
                _ => false,
            };
            let reading = value(scale.reading(mm2_s(viscosity), f122));
            if !join {
                same(value(scale.viscosity(reading, f122)).mm2_s(), viscosity, scale.sign());
                assert!(reading > before, "{}: {viscosity} gives {reading} after {before}", scale.sign());
            }
            before = reading;
        }
    }
}

#[test]
fn dynamic_and_kinematic_are_a_pair() {
    for eta in log_grid(1.0, 1e5, 1.9) {
        let density = Density::from_kg_m3(876.5);
        let kinematic = value(kinematic_viscosity(DynamicViscosity::from_mpa_s(eta), density));
        same(value(dynamic_viscosity(kinematic, density)).mpa_s(), eta, "dynamic viscosity");
    }
}

#[test]
fn shares_and_blends_are_pairs() {
    for thick in log_grid(40.0, 5000.0, 1.9) {
        for target in log_grid(32.5, thick, 1.2) {
            let (thin, thick, target) = (mm2_s(32.0), mm2_s(thick), mm2_s(target));
            let parts = |share: f64| [Part { share: 1.0 - share, oil: thin }, Part { share, oil: thick }];
            let share = value(share_d7152(thin, thick, target));
            same(value(blend_d7152(&parts(share))).mm2_s(), target.mm2_s(), "D7152");
            let share = value(share_refutas(thin, thick, target));
            same(value(blend_refutas(&parts(share))).mm2_s(), target.mm2_s(), "Refutas");
        }
    }
}

proptest! {
    #[test]
    fn viscosity_falls_with_temperature(v40 in 2.5..2000.0_f64, index in 0.0..200.0_f64, at in -30.0..120.0_f64, rise in 0.01..60.0_f64) {
        if let Ok(line) = ViscosityLine::with_index(mm2_s(v40), index) {
            prop_assert!(line.value.at(celsius(at)) > line.value.at(celsius(at + rise)));
        }
    }

    #[test]
    fn a_higher_index_is_thicker_when_hot_and_thinner_when_cold(v40 in 10.0..1000.0_f64, index in 0.0..180.0_f64, more in 1.0..60.0_f64) {
        let (low, high) = (ViscosityLine::with_index(mm2_s(v40), index), ViscosityLine::with_index(mm2_s(v40), index + more));
        if let (Ok(low), Ok(high)) = (low, high) {
            prop_assert!(low.value.at(celsius(100.0)) < high.value.at(celsius(100.0)));
            prop_assert!(low.value.at(celsius(0.0)) > high.value.at(celsius(0.0)));
        }
    }

    #[test]
    fn a_blend_lies_between_its_parts(oils in prop::collection::vec((1.0..1e4_f64, 0.01..1.0_f64), 1..6)) {
        let whole: f64 = oils.iter().map(|(_, share)| share).sum();
        let parts: Vec<_> = oils.iter().map(|(oil, share)| Part { share: share / whole, oil: mm2_s(*oil) }).collect();
        let least = oils.iter().map(|(oil, _)| *oil).fold(f64::MAX, f64::min) * (1.0 - NEAR);
        let most = oils.iter().map(|(oil, _)| *oil).fold(0.0, f64::max) * (1.0 + NEAR);
        for blend in [value(blend_d7152(&parts)), value(blend_refutas(&parts))] {
            prop_assert!((least..=most).contains(&blend.mm2_s()), "{blend:?} of {parts:?}");
        }
    }

    /// An oil blended with itself is itself, by every method.
    #[test]
    fn a_blend_of_one_oil_is_that_oil(v40 in 20.0..1000.0_f64, index in 20.0..160.0_f64, share in 0.0..1.0_f64) {
        let line = value(ViscosityLine::with_index(mm2_s(v40), index));
        let lines = [Part { share, oil: line }, Part { share: 1.0 - share, oil: line }];
        let blend = value(blend_wright(&lines, celsius(25.0))).mm2_s();
        prop_assert!((blend / line.at(celsius(25.0)).mm2_s() - 1.0).abs() < NEAR);
    }

    #[test]
    fn oil_is_lighter_when_warm(rho in 810.0..1000.0_f64, at in -20.0..120.0_f64, rise in 0.1..50.0_f64) {
        let density = Density::from_kg_m3(rho);
        prop_assert!(value(density_at(density, celsius(at))) > value(density_at(density, celsius(at + rise))));
    }

    #[test]
    fn thicker_oil_stiffens_faster_under_pressure(eta in 1.0..1e4_f64, times in 1.01..10.0_f64) {
        let of = |eta| value(pressure_viscosity_wooster(DynamicViscosity::from_mpa_s(eta)));
        prop_assert!(of(eta) < of(eta * times));
    }

    /// The nearest grade is nearer, by ratio, than any other.
    #[test]
    fn the_nearest_grade_is_nearest(v40 in 1.0..5000.0_f64) {
        let nearest = value(classified(mm2_s(v40))).nearest;
        let ratio = |middle: f64| (v40 / middle).max(middle / v40);
        for grade in GRADES {
            prop_assert!(ratio(nearest.middle().mm2_s()) <= ratio(grade.middle().mm2_s()) * (1.0 + NEAR));
        }
    }
}
