//! Laws of journal bearings that need no table: limits, inverse pairs, monotony, conservation, and the fit against what it was fitted to.

use proptest::prelude::*;
use tribology::contact::journal::{
    Arc, Bearing, FilmRegime, JournalState, Method, Oil, Surroundings, eccentricity_of, equilibrium, journal,
    journal_fast, journal_long, journal_reynolds, journal_short, journal_starved, petroff,
};
use tribology::math::{exp, ln, pow};
use tribology::oil::ViscosityLine;
use tribology::quantity::{
    Angle, Area, Density, DynamicViscosity, Force, HeatTransfer, KinematicViscosity, Length, Rotation, Temperature,
};
use tribology::{Answer, Error};

fn value<T>(answer: Result<Answer<T>, Error>) -> T {
    answer.expect("the law asks what can be answered").value
}

fn solved(ratio: f64, epsilon: f64) -> JournalState {
    value(journal_reynolds(ratio, epsilon, Arc::Whole)).state
}

#[track_caller]
fn same(found: f64, wanted: f64, part: f64, what: &str) {
    assert!((found / wanted - 1.0).abs() <= part, "{what}: {found}, not {wanted}");
}

fn numbers(state: &JournalState) -> [(&'static str, f64); 6] {
    let known = |number: Option<f64>| number.expect("the method gives it");
    [
        ("S", state.sommerfeld),
        ("φ", state.attitude.radians()),
        ("(R/C) f", state.friction_variable),
        ("Q", known(state.flow_variable)),
        ("Qs/Q", known(state.side_flow_ratio)),
        ("P/pmax", known(state.pressure_ratio)),
    ]
}

/// The fit against the solver where the solver was not asked for the fit: a grid of no round numbers over all that the fit is meant for.
/// The goal is 0.1 %; what was seen is printed.
#[test]
fn the_fit_is_the_solver() {
    let mut worst = (0.0, "", 0.0, 0.0);
    let (mut place, mut count) = (0.37_f64, 0);
    // Multiples of the golden ratio and of the square root of two fill the square evenly.
    while count < 80 {
        place += 1.0;
        count += 1;
        let (x, y) = ((place * 0.618_034).fract(), (place * std::f64::consts::SQRT_2).fract());
        // Half of the points are crowded towards the highest eccentricity.
        let epsilon = if count % 2 == 0 { 0.02 + 0.97 * x } else { 1.0 - exp(ln(0.98) + x * ln(0.01 / 0.98)) };
        let ratio = 0.1 * pow(40.0, y);
        let (exact, fit) = (solved(ratio, epsilon), value(journal_fast(ratio, epsilon)));
        for ((name, exact), (_, fit)) in numbers(&exact).into_iter().zip(numbers(&fit)) {
            let off = (fit / exact - 1.0).abs();
            assert!(off < 1e-3, "{name} at L/D {ratio}, ε {epsilon}: {fit}, not {exact}");
            if off > worst.0 {
                worst = (off, name, ratio, epsilon);
            }
        }
    }
    println!("worst of {count}: {:.4} % in {} at L/D {:.3}, ε {:.3}", 100.0 * worst.0, worst.1, worst.2, worst.3);
}

/// The doc of the fit says what it is worth outside: 0.1 % for lengths, 3 % above an eccentricity of 0.99.
#[test]
fn outside_the_fit_the_limits_lead_on() {
    for (ratio, epsilon, allowed) in [
        (0.012, 0.5, 1e-3),
        (0.008, 0.95, 1e-3),
        (12.0, 0.1, 1e-3),
        (25.0, 0.6, 1e-3),
        (60.0, 0.95, 1e-3),
        (f64::INFINITY, 0.4, 1e-3),
        (f64::INFINITY, 0.97, 1e-3),
        (0.1, 0.995, 0.03),
        (1.0, 0.998, 0.03),
        (4.0, 0.999, 0.03),
    ] {
        let (exact, fit) = (solved(ratio, epsilon), value(journal_fast(ratio, epsilon)));
        for ((name, exact), (_, fit)) in numbers(&exact).into_iter().zip(numbers(&fit)) {
            assert!((fit - exact).abs() <= allowed * exact, "{name} at L/D {ratio}, ε {epsilon}: {fit}, not {exact}");
        }
    }
}

#[test]
fn a_bearing_that_grows_short_becomes_ocvirks() {
    for epsilon in [0.2, 0.5, 0.8] {
        let short = |ratio| value(journal_short(ratio, epsilon)).sommerfeld;
        let off = |ratio| (solved(ratio, epsilon).sommerfeld / short(ratio) - 1.0).abs();
        // Halving the length takes the difference to a quarter or less.
        let [long, less, least] = [0.2, 0.1, 0.05].map(off);
        assert!(less < 0.4 * long && least < 0.4 * less && least < 0.01, "{epsilon}: {long} {less} {least}");
        let [(_, side), (_, wanted)] =
            [solved(0.05, epsilon), value(journal_short(0.05, epsilon))].map(|film| numbers(&film)[4]);
        same(side, wanted, 2e-3, "side flow");
    }
}

#[test]
fn a_bearing_that_grows_long_becomes_the_endless_one() {
    for epsilon in [0.2, 0.6, 0.9] {
        let endless = value(journal_long(epsilon));
        // The grid of one dimension against the closed form.
        for ((name, grid), (_, closed)) in numbers(&solved(f64::INFINITY, epsilon)).into_iter().zip(numbers(&endless)) {
            assert!((grid - closed).abs() <= 3e-5 * closed, "{name} at {epsilon}: {grid}, not {closed}");
        }
        // What the two ends lose of the load stays the same however long the bearing is.
        let lost = |ratio: f64| ratio * (1.0 - endless.sommerfeld / solved(ratio, epsilon).sommerfeld);
        same(lost(40.0), lost(20.0), 0.01, "load lost at the ends");
        assert!(lost(20.0) > 0.0);
    }
}

/// A film all round is the same whether the bearing goes all round or only so far as the film; and under vanishing eccentricity an
/// arc is even about its middle, so that the load lies across the line of centres.
#[test]
fn arcs_are_symmetrical_and_join_the_whole() {
    let arc = |degrees, epsilon| Arc::Part(Angle::from_degrees(degrees)).of(1.0, epsilon);
    let whole = solved(1.0, 0.6);
    for degrees in [300.0, 360.0] {
        same(arc(degrees, 0.6).sommerfeld, whole.sommerfeld, 1e-3, "S of the arc");
    }
    same(arc(360.0, 0.6).friction_variable, whole.friction_variable, 1e-3, "friction all round");
    assert!((arc(120.0, 1e-4).attitude.degrees() - 90.0).abs() < 0.05);
    // A narrower arc carries less.
    let carried: Vec<f64> = [60.0, 120.0, 180.0].map(|degrees| arc(degrees, 0.6).load_number).to_vec();
    assert!(carried.is_sorted() && carried[2] < whole.load_number, "{carried:?}");
}

/// A film by Reynolds' equation, for lines that ask for several.
trait Of {
    fn of(self, ratio: f64, epsilon: f64) -> JournalState;
}

impl Of for Arc {
    fn of(self, ratio: f64, epsilon: f64) -> JournalState {
        value(journal_reynolds(ratio, epsilon, self)).state
    }
}

/// What goes into the film leaves it by the ends or where it ruptures. Each is a sum over other cells of the grid.
#[test]
fn flow_in_is_flow_out() {
    for (ratio, epsilon) in [(1.0, 0.2), (1.0, 0.6), (0.25, 0.9), (4.0, 0.6), (f64::INFINITY, 0.5)] {
        let found = value(journal_reynolds(ratio, epsilon, Arc::Whole));
        assert!(found.balance.abs() < 3e-4, "{ratio} {epsilon}: {}", found.balance);
        assert!(found.bound < 2e-3 && found.grid[0] >= 256);
    }
}

/// No film drags less than Petroff's, in which nothing is out of centre. That friction takes what the film spends is held beside the
/// solver, which knows its cells.
#[test]
fn without_load_a_journal_drags_as_petroff_says() {
    let bearing = bearing();
    let oil = DynamicViscosity::from_mpa_s(25.0);
    let least = value(petroff(bearing.diameter, bearing.length, bearing.clearance, bearing.speed, oil));
    let drag = |load| value(Bearing { load, ..bearing }.running(oil, Method::Fast)).friction_torque;
    assert!(drag(Force::from_n(2000.0)) > least.torque);
    same(drag(Force::from_n(0.1)).n_m(), least.torque.n_m(), 1e-4, "drag without load");
}

#[test]
fn eccentricity_and_load_are_a_pair() {
    for method in [Method::Fast, Method::Short, Method::Approximation] {
        for epsilon in [0.01, 0.3, 0.7, 0.95, 0.99, 0.995] {
            let film = value(journal(0.5, epsilon, method));
            let back = value(eccentricity_of(0.5, film.sommerfeld, method));
            assert!((back.eccentricity - epsilon).abs() < 1e-9, "{method:?} {epsilon}: {}", back.eccentricity);
        }
    }
    for (arc, epsilon) in [(Arc::Whole, 0.6), (Arc::Whole, 0.97), (Arc::Part(Angle::from_degrees(120.0)), 0.5)] {
        let film = value(journal_reynolds(f64::INFINITY, epsilon, arc)).state;
        let back = value(eccentricity_of(f64::INFINITY, film.sommerfeld, Method::Reynolds(arc)));
        assert!((back.eccentricity - epsilon).abs() < 1e-6, "{arc:?} {epsilon}: {}", back.eccentricity);
    }
}

#[test]
fn less_oil_carries_less() {
    let starved = |supply| value(journal_starved(1.0, 0.6, supply));
    let loads: Vec<f64> = [0.5, 0.8, 1.1, 1.4, 1.6].map(|supply| starved(supply).state.load_number).to_vec();
    assert!(loads.is_sorted(), "{loads:?}");
    same(loads[4], solved(1.0, 0.6).load_number, 1e-9, "flooded");
    assert_eq!(starved(9.0).begins.radians(), 0.0);
    // 1 + 0.6 cos θ = 0.7 where cos θ = -1/2.
    same(starved(0.7).begins.degrees(), 120.0, 1e-9, "the beginning");
    assert!(matches!(journal_starved(1.0, 0.6, 0.4), Err(Error::OutOfRange { name: "supply over clearance", .. })));
}

proptest! {
    #[test]
    fn more_load_takes_the_journal_further(ratio in 0.01..50.0_f64, x in 0.0..11.0_f64, more in 0.001..0.3_f64) {
        let at = |x: f64| value(journal_fast(ratio, 1.0 - exp(-x - 0.001)));
        let (near, far) = (at(x), at(x + more));
        prop_assert!(far.sommerfeld < near.sommerfeld, "{ratio} {x}: {} {}", near.sommerfeld, far.sommerfeld);
        prop_assert!(far.attitude < near.attitude, "{ratio} {x}: {:?} {:?}", near.attitude, far.attitude);
    }

    #[test]
    fn a_longer_bearing_carries_more_on_each_part(ratio in 0.005..60.0_f64, x in 0.0..6.0_f64, more in 1.01..2.0_f64) {
        let at = |ratio: f64| value(journal_fast(ratio, 1.0 - exp(-x - 0.001)));
        prop_assert!(at(more * ratio).load_number > at(ratio).load_number, "{ratio} {x}");
        prop_assert!(at(f64::INFINITY).load_number > at(ratio).load_number, "{ratio} {x}");
    }

    #[test]
    fn part_of_the_flow_is_a_part(ratio in 0.005..60.0_f64, x in 0.0..11.0_f64) {
        let state = value(journal_fast(ratio, 1.0 - exp(-x - 0.001)));
        prop_assert!(state.side_flow_ratio.is_some_and(|part| (0.0..1.0).contains(&part)));
        prop_assert!(state.pressure_ratio.is_some_and(|part| (0.0..1.0).contains(&part)));
    }
}

fn bearing() -> Bearing {
    Bearing {
        diameter: Length::from_mm(50.0),
        length: Length::from_mm(50.0),
        clearance: Length::from_mm(0.05),
        load: Force::from_kn(2.0),
        speed: Rotation::from_rpm(1800.0),
    }
}

/// By hand: P = 2000 / 0.0025 = 0.8 MPa, ψ = 0.001, N = 30/s, so that S = 0.025 · 30 / 0.8 = 0.9375.
#[test]
fn measures_and_numbers_say_the_same() {
    let running = value(bearing().running(DynamicViscosity::from_mpa_s(25.0), Method::Fast));
    same(running.state.sommerfeld, 0.9375, 1e-9, "S");
    same(running.min_film.um(), 25.0 * (1.0 - running.state.eccentricity), 1e-9, "film");
    same(running.friction_torque.n_m(), running.friction_coefficient * 2000.0 * 0.025, 1e-9, "torque");
    same(running.power_loss.w(), running.friction_torque.n_m() * 188.495_559_2, 1e-6, "power");
    same(
        running.peak_pressure.expect("given").mpa() * running.state.pressure_ratio.expect("given"),
        0.8,
        1e-9,
        "pressure",
    );
}

#[test]
fn heat_made_is_heat_given_off() {
    let at = |celsius, mm2_s| (Temperature::from_celsius(celsius), KinematicViscosity::from_mm2_s(mm2_s));
    let line = value(ViscosityLine::through(at(40.0, 68.0), at(100.0, 8.6)));
    let oil = Oil { line, density: Density::from_kg_m3(870.0) };
    let warm = |celsius, area, coefficient| {
        let surroundings = Surroundings {
            ambient: Temperature::from_celsius(celsius),
            area: Area::from_m2(area),
            coefficient: HeatTransfer::from_w_m2_k(coefficient),
        };
        equilibrium(bearing(), oil, surroundings, Method::Fast)
    };
    let found = value(warm(20.0, 0.1, 18.0));
    let given_off = 18.0 * 0.1 * (found.temperature.celsius() - 20.0);
    same(found.running.power_loss.w(), given_off, 1e-6, "heat");
    assert!(value(warm(30.0, 0.1, 18.0)).temperature > found.temperature);
    assert!(value(warm(20.0, 0.2, 18.0)).temperature < found.temperature);
    let hopeless = warm(20.0, 1e-5, 18.0);
    let Err(Error::NotBracketed { name: "film temperature", low, high }) = hopeless else { panic!("{hopeless:?}") };
    assert!((low - 293.15).abs() < 1e-9 && high > 400.0);
    assert!(matches!(warm(20.0, 0.0, 18.0), Err(Error::OutOfRange { name: "area", .. })));
    assert!(matches!(warm(20.0, 0.1, -1.0), Err(Error::OutOfRange { name: "heat transfer coefficient", .. })));
}

#[test]
fn what_cannot_be_is_named() {
    let oil = DynamicViscosity::from_mpa_s(25.0);
    let right = bearing();
    let (none, nan) = (Length::from_m(0.0), Length::from_m(f64::NAN));
    for (bearing, wanted) in [
        (Bearing { diameter: none, ..right }, "diameter"),
        (Bearing { length: nan, ..right }, "length"),
        (Bearing { clearance: none, ..right }, "clearance"),
        (Bearing { clearance: right.diameter, ..right }, "clearance"),
        (Bearing { load: Force::from_n(0.0), ..right }, "load"),
        (Bearing { speed: Rotation::from_rpm(-5.0), ..right }, "speed"),
        (Bearing { speed: Rotation::from_rpm(0.0), ..right }, "speed"),
    ] {
        let refused = bearing.running(oil, Method::Fast);
        assert!(matches!(refused, Err(Error::OutOfRange { name, .. }) if name == wanted), "{wanted}: {refused:?}");
    }
    let dry = right.running(DynamicViscosity::from_mpa_s(0.0), Method::Fast);
    assert!(matches!(dry, Err(Error::OutOfRange { name: "viscosity", .. })));
    for method in [Method::Fast, Method::Reynolds(Arc::Whole), Method::Short, Method::Approximation] {
        for epsilon in [0.0, 1.0, -0.2, f64::NAN] {
            let refused = journal(1.0, epsilon, method);
            assert!(matches!(refused, Err(Error::OutOfRange { name: "eccentricity", .. })), "{refused:?}");
        }
        for ratio in [0.0, -1.0, f64::NAN] {
            let refused = journal(ratio, 0.5, method);
            assert!(matches!(refused, Err(Error::OutOfRange { name: "length/diameter", .. })), "{refused:?}");
        }
        let refused = eccentricity_of(1.0, -0.1, method);
        assert!(matches!(refused, Err(Error::OutOfRange { name: "Sommerfeld number", .. })), "{refused:?}");
    }
    let arc = journal_reynolds(1.0, 0.5, Arc::Part(Angle::from_degrees(5.0)));
    assert!(matches!(arc, Err(Error::OutOfRange { name: "arc", .. })));
}

/// A load that no finish can bear is answered and not refused.
#[test]
fn too_heavy_a_load_is_boundary_by_any_finish() {
    let slow = Bearing { speed: Rotation::from_rpm(0.2), load: Force::from_kn(20.0), ..bearing() };
    let found = slow.running(DynamicViscosity::from_mpa_s(25.0), Method::Fast).expect("an answer");
    assert_eq!(found.value.state.regime, FilmRegime::BoundaryByAnyFinish);
    assert_eq!(found.warnings.len(), 1);
    assert_eq!(value(journal(1.0, 0.98, Method::Fast)).regime, FilmRegime::ByFinish);
}

/// The pressures round the middle belong to the answer: the highest is the one that it names, none is below nothing, and there is none at the
/// beginning of the film.
#[test]
fn the_pressures_round_the_middle_are_those_of_the_answer() {
    for (ratio, eccentricity) in [(1.0, 0.3), (0.5, 0.8), (f64::INFINITY, 0.6)] {
        let solved = journal_reynolds(ratio, eccentricity, Arc::Whole).expect("a bearing of every day").value;
        let highest = solved.middle.iter().map(|(_, pressure)| *pressure).fold(0.0, f64::max);
        let named = 1.0 / solved.state.pressure_ratio.expect("the solver knows it");
        assert!((highest / named - 1.0).abs() < 5e-3, "{ratio} {eccentricity}: {highest}, not {named}");
        assert!(
            solved
                .middle
                .iter()
                .all(|(theta, pressure)| *pressure >= 0.0 && (0.0..=std::f64::consts::TAU).contains(theta))
        );
        assert!(solved.middle[0].1 < 0.05 * highest);
    }
}
