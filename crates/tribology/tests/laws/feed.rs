//! Laws of feeding that need no table: inverse pairs, monotony, powers, limits where two laws meet, and what is neither lost nor made.

use std::f64::consts::PI;

use proptest::prelude::*;
use tribology::feed::{
    Conductance, FEEDS, GRAVITY_M_S2, Gap, Liquid, Plunger, Screen, SlipCoefficient, Slot, Tube, check_leak_share,
    drip_flow, drip_rate, drip_rate_changed, drip_rate_through, drop_volume, film_flow, film_flow_curved,
    film_thickness, flow_with_losses, friction_factor, gap_flow, gap_pressure, gear_displacement, gear_pump_flow,
    gear_pump_flow_wilson_1949, gear_pump_slip_wilson_1949, head_of, limit, lip_flow, lip_head, orifice_flow,
    orifice_flow_inertial, orifice_flow_sampson_1891, orifice_pressure, plunger_flow, plunger_slip, pressure_of_head,
    pressure_with_losses, refill_time, shot_parts, shot_shares, slot_flow, slot_pressure, strainer_approach,
    strainer_pressure, tube_conductance, tube_flow, tube_pressure, tube_reynolds, wick_flow, wick_rise,
};
use tribology::quantity::{
    Angle, Area, Density, DynamicViscosity, KinematicViscosity, Length, Pressure, Rotation, SurfaceTension, Time,
    Velocity, Volume, VolumeFlow,
};
use tribology::{Answer, Error, math};

/// How near an inverse pair must come, relative.
const NEAR: f64 = 1e-9;

fn value<T>(answer: Result<Answer<T>, Error>) -> T {
    answer.expect("the law asks what can be answered").value
}

fn mm(number: f64) -> Length {
    Length::from_mm(number)
}

fn mpa_s(number: f64) -> DynamicViscosity {
    DynamicViscosity::from_mpa_s(number)
}

fn kpa(number: f64) -> Pressure {
    Pressure::from_kpa(number)
}

fn oil(mpa_s: f64) -> Liquid {
    Liquid::new(DynamicViscosity::from_mpa_s(mpa_s), Density::from_kg_m3(870.0)).expect("an oil")
}

fn tube(bore: f64, length: f64) -> Tube {
    Tube::new(mm(bore), mm(length)).expect("a tube")
}

fn name<T: std::fmt::Debug>(refused: Result<T, Error>) -> &'static str {
    match refused {
        Err(Error::OutOfRange { name, .. }) => name,
        other => panic!("{other:?} is no refusal"),
    }
}

#[track_caller]
fn same(found: f64, wanted: f64) {
    within(found, wanted, NEAR);
}

#[track_caller]
fn within(found: f64, wanted: f64, part: f64) {
    assert!((found / wanted - 1.0).abs() <= part, "{found}, not {wanted}");
}

proptest! {
    #[test]
    fn pressure_and_flow_are_pairs(bore in 0.3..20.0_f64, length in 1.0..5000.0_f64, eta in 1.0..5000.0_f64, p in 0.01..1000.0_f64, bends in 0..20_u32) {
        let (tube, liquid, pressure) = (tube(bore, length), oil(eta), kpa(p));
        same(value(tube_pressure(tube, mpa_s(eta), value(tube_flow(tube, mpa_s(eta), pressure)))).kpa(), p);
        let flow = value(flow_with_losses(tube, bends, liquid, pressure));
        same(value(pressure_with_losses(tube, bends, liquid, flow)).kpa(), p);
        same(value(orifice_pressure(mm(bore), liquid, value(orifice_flow(mm(bore), liquid, pressure)))).kpa(), p);
        let conductance: Conductance = value(tube_conductance(tube, mpa_s(eta)));
        same(conductance.pressure(conductance.flow(pressure)).kpa(), p);
        same(value(pressure_of_head(value(head_of(pressure, liquid.density())), liquid.density())).kpa(), p);
    }

    #[test]
    fn slots_and_gaps_are_pairs(wide in 1.0..100.0_f64, thin in 0.005..0.2_f64, length in 1.0..200.0_f64, off in 0.0..1.0_f64, p in 0.1..1000.0_f64) {
        let slot = Slot::new(mm(wide), mm(thin), mm(length)).expect("a slot");
        same(value(slot_pressure(slot, mpa_s(60.0), value(slot_flow(slot, mpa_s(60.0), kpa(p))))).kpa(), p);
        let gap = Gap::new(mm(wide), mm(thin), mm(length), off).expect("a gap");
        same(value(gap_pressure(gap, mpa_s(60.0), value(gap_flow(gap, mpa_s(60.0), kpa(p))))).kpa(), p);
    }

    #[test]
    fn films_and_lips_are_pairs(bore in 2.0..50.0_f64, part in 0.001..0.49_f64, nu in 1.0..3000.0_f64) {
        let (film, nu) = (mm(part * bore), KinematicViscosity::from_mm2_s(nu));
        same(value(film_thickness(mm(bore), value(film_flow(mm(bore), film, nu)), nu)).mm(), film.mm());
        same(value(lip_head(mm(bore), value(lip_flow(mm(bore), film, nu)), nu)).mm(), film.mm());
    }

    #[test]
    fn strainers_are_pairs(mesh in 10.0..200.0_f64, part in 0.05..0.7_f64, eta in 1.0..5000.0_f64, speed in 0.01..500.0_f64, blocked in 0.0..0.99_f64) {
        let screen = Screen::of_mesh(mesh, Length::from_inches(part / mesh)).expect("a screen");
        let pressure = value(strainer_pressure(screen, oil(eta), Velocity::from_mm_s(speed), blocked));
        same(value(strainer_approach(screen, oil(eta), pressure, blocked)).mm_s(), speed);
    }

    #[test]
    fn drops_and_flows_are_pairs(rate in 0.1..200.0_f64, drop in 5.0..200.0_f64) {
        let flow = value(drip_flow(Rotation::from_per_minute(rate), Volume::from_ul(drop)));
        same(value(drip_rate(flow, Volume::from_ul(drop))).per_minute(), rate);
    }

    #[test]
    fn slip_and_delivery_of_a_gear_pump_are_a_pair(efficiency in 0.01..0.99_f64, eta in 5.0..2000.0_f64, bar in 0.1..20.0_f64) {
        let (v, n, p) = (Volume::from_ml(3.0), Rotation::from_rpm(500.0), Pressure::from_bar(bar));
        let delivered = value(gear_pump_flow(v, n, efficiency));
        let slip: SlipCoefficient = value(gear_pump_slip_wilson_1949(v, n, delivered, mpa_s(eta), p));
        same(value(gear_pump_flow_wilson_1949(v, n, slip, mpa_s(eta), p)).m3_s(), delivered.m3_s());
        // Thinner oil slips more, and more pressure too.
        let less = |eta, p| value(gear_pump_flow_wilson_1949(v, n, slip, mpa_s(eta), p)) < delivered;
        prop_assert!(less(0.9 * eta, p) && less(eta, p * 1.1));
    }

    /// Twice the bore passes sixteen times as much; thicker oil and longer tubes pass less in proportion.
    #[test]
    fn a_tube_goes_by_the_fourth_power_of_its_bore(bore in 0.3..20.0_f64, eta in 1.0..5000.0_f64, times in 1.01..4.0_f64) {
        let flow = |bore, length, eta| value(tube_flow(tube(bore, length), mpa_s(eta), kpa(5.0))).m3_s();
        let one = flow(bore, 500.0, eta);
        same(flow(bore * times, 500.0, eta) / one, math::pow(times, 4.0));
        same(flow(bore, 500.0, eta * times) / one, 1.0 / times);
        same(flow(bore, 500.0 * times, eta) / one, 1.0 / times);
    }

    #[test]
    fn tubes_behind_one_another_are_one_long_tube(one in 10.0..1000.0_f64, other in 10.0..1000.0_f64, ml_min in 0.1..500.0_f64) {
        let pressure = |length| value(tube_pressure(tube(4.0, length), mpa_s(60.0), VolumeFlow::from_ml_min(ml_min))).pa();
        same(pressure(one) + pressure(other), pressure(one + other));
    }

    /// `Δp = f (L / d) ρ v² / 2`: the friction factor says the same as the law of flow.
    #[test]
    fn friction_factor_and_flow_agree(bore in 1.0..20.0_f64, ml_min in 0.1..500.0_f64) {
        let (tube, liquid, flow) = (tube(bore, 700.0), oil(60.0), VolumeFlow::from_ml_min(ml_min));
        let re = value(tube_reynolds(tube, liquid.kinematic(), flow));
        let speed = 4.0 * flow.m3_s() / (PI * tube.bore().m() * tube.bore().m());
        let pressure = value(friction_factor(re)) * (tube.length() / tube.bore()) * 870.0 * speed * speed / 2.0;
        same(pressure, value(tube_pressure(tube, liquid.dynamic(), flow)).pa());
    }

    #[test]
    fn ends_and_bends_only_take(bore in 0.3..20.0_f64, length in 1.0..5000.0_f64, eta in 1.0..5000.0_f64, bends in 0..20_u32) {
        let (tube, liquid) = (tube(bore, length), oil(eta));
        let bent = |bends| value(flow_with_losses(tube, bends, liquid, kpa(2.0)));
        prop_assert!(bent(0) < value(tube_flow(tube, mpa_s(eta), kpa(2.0))) && bent(bends + 1) < bent(bends));
    }

    #[test]
    fn a_sharp_hole_passes_less_than_either_law(bore in 0.1..10.0_f64, eta in 1.0..5000.0_f64, p in 0.01..1000.0_f64) {
        let flow = value(orifice_flow(mm(bore), oil(eta), kpa(p)));
        prop_assert!(flow < value(orifice_flow_sampson_1891(mm(bore), mpa_s(eta), kpa(p))));
        prop_assert!(flow < value(orifice_flow_inertial(mm(bore), Density::from_kg_m3(870.0), kpa(p))));
    }

    /// The curve of the wall takes from the film; it takes more, the thicker the film.
    #[test]
    fn a_curved_film_is_slower_than_a_flat_one(bore in 2.0..50.0_f64, part in 0.001..0.4_f64) {
        let nu = KinematicViscosity::from_mm2_s(150.0);
        let ratio = |part: f64| {
            let film = mm(part * bore);
            value(film_flow_curved(mm(bore), film, nu)) / value(film_flow(mm(bore), film, nu))
        };
        prop_assert!(ratio(part) < 1.0 && ratio(part * 1.1) < ratio(part));
    }

    #[test]
    fn a_drop_grows_with_tip_and_tension_and_shrinks_with_weight(tip in 0.2..6.0_f64, gamma in 20.0..40.0_f64, rho in 800.0..1000.0_f64, times in 1.01..1.1_f64) {
        let drop = |tip, gamma, rho| value(drop_volume(mm(tip), SurfaceTension::from_mn_m(gamma), Density::from_kg_m3(rho)));
        let one = drop(tip, gamma, rho);
        prop_assert!(drop(tip * times, gamma, rho) > one && drop(tip, gamma * times, rho) > one);
        prop_assert!(drop(tip, gamma, rho * times) < one);
        // Tate's law without its factor is the most that can hang.
        let tate = PI * tip * 1e-3 * gamma * 1e-3 / (rho * GRAVITY_M_S2);
        prop_assert!((0.59..1.0).contains(&(one.m3() / tate)));
        // Drops of one shape: a tip and a capillary length twice as long hang a drop eight times as large.
        same(drop(2.0 * tip, 4.0 * gamma, rho).m3(), 8.0 * one.m3());
    }

    #[test]
    fn a_strainer_takes_more_the_more_of_it_is_blocked(blocked in 0.0..0.9_f64, more in 0.001..0.09_f64) {
        let screen = Screen::of_mesh(60.0, mm(0.19)).expect("a screen");
        let pressure = |blocked| value(strainer_pressure(screen, oil(60.0), Velocity::from_mm_s(20.0), blocked)).pa();
        prop_assert!(pressure(blocked + more) > pressure(blocked));
        // The viscous part grows as the open area shrinks, the inertial part as its square.
        let ratio = pressure(blocked) / pressure(0.0) * (1.0 - blocked);
        prop_assert!((1.0..1.0 / (1.0 - blocked) + NEAR).contains(&ratio), "{ratio}");
    }

    #[test]
    fn shares_of_a_shot_sum_to_one_and_each_size_doubles(sizes in prop::collection::vec(-4..5_i32, 1..30), raised in -5..6_i32) {
        let shares = value(shot_shares(&sizes));
        same(shares.iter().sum(), 1.0);
        for (one, size) in shares.iter().zip(&sizes) {
            same(one / shares[0], math::pow(2.0, f64::from(size - sizes[0])));
        }
        // Only steps between sizes count, not what the list calls them.
        let renamed: Vec<i32> = sizes.iter().map(|size| size + raised).collect();
        for (one, other) in value(shot_shares(&renamed)).iter().zip(&shares) {
            same(*one, *other);
        }
        let parts = value(shot_parts(Volume::from_ml(4.0), &sizes));
        same(parts.iter().map(|part| part.ml()).sum(), 4.0);
    }

    /// A unit that is blocked leaves its part to the others, so that none of them shows it.
    #[test]
    fn a_blocked_unit_leaves_its_part_to_the_others(sizes in prop::collection::vec(-4..5_i32, 2..30)) {
        let all = value(shot_shares(&sizes));
        let open = value(shot_shares(&sizes[1..]));
        prop_assert!(open.iter().zip(&all[1..]).all(|(open, all)| open > all));
    }

    #[test]
    fn a_wick_delivers_less_the_higher_it_lifts(height in 0.0..60.0_f64, more in 0.1..9.0_f64) {
        let gamma = SurfaceTension::from_mn_m(31.0);
        let rise = value(wick_rise(gamma, Angle::from_degrees(0.0), Density::from_kg_m3(870.0), Length::from_um(100.0)));
        let (k, a) = (Area::from_mm2(1e-4), Area::from_mm2(20.0));
        let flow = |height, eta| value(wick_flow(k, a, oil(eta), rise, mm(height), mm(100.0)));
        prop_assert!(flow(height, 60.0) > flow(height + more, 60.0) && flow(height, 60.0) > flow(height, 61.0));
    }

    /// Nothing that can be typed makes a sum fall over.
    #[test]
    fn odd_numbers_are_refused_or_answered(bore in prop::num::f64::ANY, length in prop::num::f64::ANY, eta in prop::num::f64::ANY, p in prop::num::f64::ANY) {
        if let (Ok(tube), Ok(liquid)) = (Tube::new(mm(bore), mm(length)), Liquid::new(mpa_s(eta), Density::from_kg_m3(870.0))) {
            let found = [tube_flow(tube, mpa_s(eta), kpa(p)), flow_with_losses(tube, 1, liquid, kpa(p))];
            for flow in found.into_iter().flatten() {
                prop_assert!(flow.value.m3_s().is_finite() && flow.value.m3_s() >= 0.0);
            }
        }
        if let Ok(screen) = Screen::new(mm(bore), mm(length)) {
            let found = strainer_pressure(screen, oil(60.0), Velocity::from_mm_s(p), eta);
            prop_assert!(found.is_ok_and(|found| found.value.pa().is_finite()) || !(0.0..=0.99).contains(&eta) || !(0.0..1e100).contains(&p));
        }
        let _ = drop_volume(mm(bore), SurfaceTension::from_mn_m(length), Density::from_kg_m3(eta));
        let _ = film_flow_curved(mm(bore), mm(length), KinematicViscosity::from_mm2_s(eta));
    }
}

/// A tube without length is a hole: the ends of the one are the law of the other, and both are the work of different people.
#[test]
fn a_very_short_tube_is_a_sharp_hole_and_a_very_long_one_is_straight() {
    let thick = oil(5000.0);
    // So little pressure that the inertia, which the hole's law leaves out, is nothing.
    let hole = value(orifice_flow_sampson_1891(mm(1.0), thick.dynamic(), kpa(0.01)));
    within(value(flow_with_losses(tube(1.0, 1e-6), 0, thick, kpa(0.01))) / hole, 1.0, 1e-4);
    let long = tube(1.0, 1e6);
    within(
        value(flow_with_losses(long, 0, thick, kpa(1.0))) / value(tube_flow(long, thick.dynamic(), kpa(1.0))),
        1.0,
        1e-4,
    );
}

#[test]
fn a_sharp_hole_tends_to_both_laws_and_warns_between() {
    let (thick, thin) = (oil(5000.0), oil(0.1));
    let creeping = orifice_flow(mm(1.0), thick, kpa(0.1)).expect("a flow");
    within(creeping.value / value(orifice_flow_sampson_1891(mm(1.0), thick.dynamic(), kpa(0.1))), 1.0, 1e-3);
    let jet = orifice_flow(mm(5.0), thin, kpa(100.0)).expect("a flow");
    within(jet.value / value(orifice_flow_inertial(mm(5.0), thin.density(), kpa(100.0))), 1.0, 1e-3);
    let between = orifice_flow(mm(1.0), oil(60.0), kpa(100.0)).expect("a flow");
    assert_eq!([creeping, jet, between].map(|answer| answer.warnings.len()), [0, 0, 1]);
}

#[test]
fn a_ring_shaped_gap_is_a_slot_bent_round_and_passes_most_when_the_shaft_touches() {
    let slot = Slot::new(mm(50.0 * PI), mm(0.03), mm(40.0)).expect("a slot");
    let flow = |off| {
        let gap = Gap::new(mm(50.0), mm(0.06), mm(40.0), off).expect("a gap");
        value(gap_flow(gap, mpa_s(60.0), kpa(100.0)))
    };
    same(flow(0.0) / value(slot_flow(slot, mpa_s(60.0), kpa(100.0))), 1.0);
    same(flow(1.0) / flow(0.0), 2.5);
    assert_eq!(name(Gap::new(mm(50.0), mm(0.06), mm(40.0), 1.1)), "eccentricity");
    assert_eq!(name(Slot::new(mm(50.0), mm(0.0), mm(40.0))), "height");
}

/// A standpipe whose film meets in the middle is a tube that runs full by its own weight.
#[test]
fn a_film_that_fills_the_bore_is_hagen_and_poiseuille_and_a_thin_one_is_flat() {
    let liquid = oil(130.0);
    let full = value(film_flow_curved(mm(10.0), mm(5.0), liquid.kinematic()));
    let weight = value(pressure_of_head(mm(300.0), liquid.density()));
    same(full.m3_s(), value(tube_flow(tube(10.0, 300.0), liquid.dynamic(), weight)).m3_s());
    let ratio = |film| {
        value(film_flow_curved(mm(10.0), mm(film), liquid.kinematic()))
            / value(film_flow(mm(10.0), mm(film), liquid.kinematic()))
    };
    within(ratio(0.01), 1.0, 0.003);
    // The figures in the docs.
    assert!(
        (0.955..0.965).contains(&ratio(0.2)) && (0.80..0.82).contains(&ratio(1.0)),
        "{} {}",
        ratio(0.2),
        ratio(1.0)
    );
    assert_eq!(name(film_flow(mm(10.0), mm(5.1), liquid.kinematic())), "film");
}

#[test]
fn thick_oil_over_a_lip_is_warned_of_and_thin_is_not() {
    let warnings =
        |head, nu| lip_flow(mm(50.0), mm(head), KinematicViscosity::from_mm2_s(nu)).expect("a lip").warnings.len();
    assert_eq!((warnings(8.0, 1.0), warnings(8.0, 100.0), warnings(12.0, 100.0)), (0, 1, 2));
}

#[test]
fn a_strainer_that_is_blocked_refuses_and_oil_is_warned_of() {
    let screen = Screen::of_mesh(60.0, mm(0.19)).expect("a screen");
    let found = |liquid, speed, blocked| strainer_pressure(screen, liquid, Velocity::from_mm_s(speed), blocked);
    assert_eq!(name(found(oil(60.0), 20.0, 1.0)), "blocked part");
    assert_eq!(name(strainer_approach(screen, oil(60.0), kpa(1.0), 1.0)), "blocked part");
    assert_eq!(found(oil(60.0), 20.0, 0.3).expect("an oil").warnings.len(), 1, "below a Reynolds number of 0.1");
    // Water at a tenth of a metre a second lies within what was tried.
    assert_eq!(found(oil(1.0), 100.0, 0.0).expect("water").warnings.len(), 0);
}

#[test]
fn drops_follow_head_and_viscosity() {
    let opening = tube(0.8, 3.0);
    let liquid =
        |nu| Liquid::from_kinematic(KinematicViscosity::from_mm2_s(nu), Density::from_kg_m3(880.0)).expect("an oil");
    let rate = |head, nu| value(drip_rate_through(opening, mm(head), liquid(nu), Volume::from_ul(33.0))).per_minute();
    assert!(rate(40.0, 150.0) > rate(30.0, 150.0) && rate(40.0, 150.0) > rate(40.0, 160.0));
    // Where the oil creeps, the rule of three for a change says the same as the opening itself.
    let at = |head, nu| (mm(head), KinematicViscosity::from_mm2_s(nu));
    let changed = drip_rate_changed(Rotation::from_per_minute(rate(40.0, 150.0)), at(40.0, 150.0), at(20.0, 600.0));
    within(value(changed).per_minute(), rate(20.0, 600.0), 0.01);
    assert_eq!(rate(0.0, 150.0), 0.0);
}

#[test]
fn a_plunger_delivers_its_strokes_less_what_it_loses() {
    let plunger = Plunger::new(mm(8.0), mm(6.0)).expect("a plunger");
    let flow = |rate, part| value(plunger_flow(plunger, Rotation::from_per_minute(rate), part)).ml_min();
    same(flow(80.0, 0.8), 2.0 * flow(40.0, 0.8));
    same(flow(40.0, 0.8) + flow(40.0, 0.2), flow(40.0, 1.0));
    let slip = |clearance, eta| {
        let (bar, half) = (Pressure::from_bar(5.0), Time::from_seconds(0.5));
        value(plunger_slip(plunger, mm(clearance), mm(20.0), mpa_s(eta), bar, half))
    };
    same(slip(0.04, 60.0) / slip(0.02, 60.0), 8.0);
    same(slip(0.04, 120.0), slip(0.04, 60.0) / 2.0);
    assert_eq!(slip(2.0, 60.0), 1.0);
    let leak = |seconds| value(check_leak_share(plunger, VolumeFlow::from_ml_min(1.0), Time::from_seconds(seconds)));
    same(leak(2.0), 2.0 * leak(1.0));
}

#[test]
fn cold_oil_refills_a_barrel_as_much_later_as_it_is_thicker() {
    let plunger = Plunger::new(mm(8.0), mm(6.0)).expect("a plunger");
    let time = |bore, eta| value(refill_time(plunger, tube(bore, 200.0), mpa_s(eta), kpa(10.0))).seconds();
    same(time(3.0, 900.0) / time(3.0, 60.0), 15.0);
    same(time(1.5, 60.0) / time(3.0, 60.0), 16.0);
    // By conservation: the time that the suction line takes for one stroke.
    let flow = value(tube_flow(tube(3.0, 200.0), mpa_s(60.0), kpa(10.0)));
    same((flow * Time::from_seconds(time(3.0, 60.0))).ul(), PI / 4.0 * 8.0 * 8.0 * 6.0);
    assert_eq!(name(refill_time(plunger, tube(3.0, 200.0), mpa_s(60.0), kpa(0.0))), "pressure");
}

#[test]
fn a_gear_moves_in_proportion_to_its_width_and_teeth() {
    let moved = |teeth, width| value(gear_displacement(mm(2.0), teeth, mm(width))).ml();
    same(moved(24, 10.0), 2.0 * moved(12, 10.0));
    same(moved(12, 20.0), 2.0 * moved(12, 10.0));
    let (v, n) = (Volume::from_ml(3.0), Rotation::from_rpm(500.0));
    let more = gear_pump_slip_wilson_1949(v, n, VolumeFlow::from_l_min(1.6), mpa_s(60.0), kpa(100.0));
    assert_eq!(name(more), "delivery");
    let worn = SlipCoefficient::new(1.0).expect("a coefficient");
    assert_eq!(value(gear_pump_flow_wilson_1949(v, n, worn, mpa_s(60.0), kpa(100.0))).m3_s(), 0.0);
}

#[test]
fn every_way_of_feeding_stands_once_in_the_table() {
    for (at, feed) in FEEDS.iter().enumerate() {
        assert!(!FEEDS[..at].contains(feed), "{feed:?}");
        assert!(limit(*feed).easy.mm2_s() >= 60.0, "{feed:?}");
    }
}
