//! Laws of rolling bearings that need no table: what rises and falls with what, where branches meet, and what scales how.

use proptest::prelude::*;
use tribology::contact::rolling::{
    Class, Cleanliness, Reliability, Supply, contamination_factor, contamination_range, life_modification,
    load_free_torque, modified_life, reference_viscosity, viscosity_ratio,
};
use tribology::quantity::{Force, KinematicViscosity, Length, Rotation};
use tribology::{Answer, Error};

fn value<T>(answer: Result<Answer<T>, Error>) -> T {
    answer.expect("the law asks what can be answered").value
}

fn nu1(rpm: f64, mm: f64) -> f64 {
    value(reference_viscosity(Rotation::from_rpm(rpm), Length::from_mm(mm))).mm2_s()
}

fn kappa(mm2_s: f64, rpm: f64, mm: f64) -> f64 {
    value(viscosity_ratio(KinematicViscosity::from_mm2_s(mm2_s), Rotation::from_rpm(rpm), Length::from_mm(mm)))
}

fn a(class: Class, kappa: f64, load: f64) -> f64 {
    value(life_modification(class, kappa, load)).expect("the ratio is in the method")
}

fn torque(f0: f64, mm2_s: f64, rpm: f64, mm: f64) -> f64 {
    let (nu, n) = (KinematicViscosity::from_mm2_s(mm2_s), Rotation::from_rpm(rpm));
    value(load_free_torque(f0, nu, n, Length::from_mm(mm))).n_mm()
}

fn any_class() -> impl Strategy<Value = Class> {
    (0..Class::ALL.len()).prop_map(|at| Class::ALL[at].0)
}

fn near(found: f64, wanted: f64) -> bool {
    (found / wanted - 1.0).abs() < 1e-9
}

proptest! {
    /// The faster and the larger a bearing, the thinner an oil it asks for, so that one oil serves it better.
    #[test]
    fn speed_and_size_ask_for_thinner_oil(rpm in 1.0..2e4_f64, mm in 5.0..500.0_f64, times in 1.001..10.0_f64) {
        prop_assert!(nu1(rpm * times, mm) < nu1(rpm, mm) && nu1(rpm, mm * times) < nu1(rpm, mm));
        prop_assert!(kappa(20.0, rpm * times, mm) > kappa(20.0, rpm, mm));
        prop_assert!(near(nu1(rpm, 4.0 * mm), nu1(rpm, mm) / 2.0));
    }

    #[test]
    fn a_ratio_is_a_ratio(rpm in 1.0..2e4_f64, mm in 5.0..500.0_f64, thick in 1.0..1000.0_f64, times in 1.01..9.0_f64) {
        prop_assert!(near(kappa(nu1(rpm, mm), rpm, mm), 1.0));
        prop_assert!(near(kappa(thick * times, rpm, mm), times * kappa(thick, rpm, mm)));
    }

    /// From where the printed digits of the roller form have left the bottom: see the next law for the rest.
    #[test]
    fn thicker_films_and_lighter_loads_never_shorten_a_life(class in any_class(), kappa in 0.1003..4.0_f64, more in 1.0..3.0_f64, load in 0.0..3.0_f64, less in 0.0..2.0_f64) {
        let here = a(class, kappa, load);
        prop_assert!((0.1 * (1.0 - 1e-12)..=50.0).contains(&here));
        prop_assert!(a(class, kappa, load + less) >= here);
        // Across a branch the printed digits leave 0.004 % of the inner term, and the power makes more of it.
        prop_assert!(a(class, kappa * more, load) >= here * (1.0 - 2e-3), "{kappa} {more} {load}");
    }

    #[test]
    fn a_thrust_bearing_counts_its_load_more(kappa in 0.1..4.0_f64, load in 0.0..1.0_f64) {
        prop_assert!(near(a(Class::ThrustBall, kappa, 3.0 * load), a(Class::RadialBall, kappa, load)));
        prop_assert!(near(a(Class::ThrustRoller, kappa, 2.5 * load), a(Class::RadialRoller, kappa, load)));
    }

    #[test]
    fn dirt_takes_less_where_film_or_bearing_is_thick(at in 0..Supply::ALL.len(), kappa in 0.1..4.0_f64, mm in 10.0..400.0_f64, times in 1.0..3.0_f64) {
        let of = |kappa, mm| value(contamination_factor(Supply::ALL[at], kappa, Length::from_mm(mm)));
        prop_assert!((0.0..=1.0).contains(&of(kappa, mm)));
        prop_assert!(of(kappa * times, mm) >= of(kappa, mm) && of(kappa, mm * times) >= of(kappa, mm));
    }

    #[test]
    fn a_cleaner_bath_is_never_worse(kappa in 0.1..4.0_f64, mm in 10.0..400.0_f64) {
        let of = |supply| value(contamination_factor(supply, kappa, Length::from_mm(mm)));
        prop_assert!(Supply::ALL[..5].is_sorted_by(|cleaner, dirtier| of(*cleaner) >= of(*dirtier)));
        prop_assert!(of(Supply::GreaseHigh) >= of(Supply::GreaseNormal));
    }

    /// Twice the load leaves an eighth of the turns with balls; eight times the load a 1024th with rollers.
    #[test]
    fn life_falls_by_the_power_of_the_load(kn in 0.1..5.0_f64, rpm in 10.0..3000.0_f64, factor in 0.1..50.0_f64) {
        let of = |class, kn, rpm, factor| {
            let (capacity, load) = (Force::from_kn(30.0), Force::from_kn(kn));
            value(modified_life(class, capacity, load, factor, Reliability::Ninety, Rotation::from_rpm(rpm)))
        };
        let ball = of(Class::RadialBall, kn, rpm, factor);
        prop_assert!(near(of(Class::ThrustBall, 2.0 * kn, rpm, factor).million_turns, ball.million_turns / 8.0));
        let (one, eight) = (of(Class::RadialRoller, kn, rpm, factor), of(Class::RadialRoller, 8.0 * kn, rpm, factor));
        prop_assert!(near(one.million_turns / eight.million_turns, 1024.0));
        prop_assert!(near(of(Class::RadialBall, kn, 2.0 * rpm, factor).time.hours(), ball.time.hours() / 2.0));
        prop_assert!(near(of(Class::RadialBall, kn, rpm, 2.0 * factor).million_turns, 2.0 * ball.million_turns));
        prop_assert!(near(ball.time.minutes() * rpm, 1e6 * ball.million_turns));
    }

    #[test]
    fn torque_grows_with_all_and_knows_only_the_product(f0 in 0.5..10.0_f64, nu in 2.0..500.0_f64, rpm in 5.0..5000.0_f64, mm in 10.0..300.0_f64) {
        let here = torque(f0, nu, rpm, mm);
        prop_assert!(near(torque(2.0 * f0, nu, rpm, mm), 2.0 * here) && near(torque(f0, nu, rpm, 2.0 * mm), 8.0 * here));
        // A hair off the branch, where rounding may fall to either side.
        if (nu * rpm / 2000.0 - 1.0).abs() > 1e-9 {
            prop_assert!(near(torque(f0, 2.0 * nu, rpm / 2.0, mm), here));
        }
        // Both branches are level or rise; where they meet the formula drops by 0.8 %.
        prop_assert!(torque(f0, 1.1 * nu, rpm, mm) >= here * 0.992);
        if nu * rpm >= 2000.0 {
            prop_assert!(near(torque(f0, 8.0 * nu, rpm, mm), 4.0 * here));
        } else {
            prop_assert!(torque(f0, nu / 3.0, rpm, mm).to_bits() == here.to_bits());
        }
    }
}

/// By hand 45000 · 10^−2.49 / (4500 / √1000) is 1.0233.
#[test]
fn the_branches_of_the_reference_viscosity_differ_by_the_known_step() {
    let step = nu1(1000.0_f64.next_down(), 60.0) / nu1(1000.0, 60.0);
    assert!((step - 1.0233).abs() < 1e-4, "{step}");
}

#[test]
fn the_branches_of_the_torque_differ_by_the_known_step() {
    // 160 against 2000^(2/3), which is 158.74.
    let step = torque(2.0, 20.0, 100.0 * (1.0 - 1e-12), 60.0) / torque(2.0, 20.0, 100.0 * (1.0 + 1e-12), 60.0);
    assert!((step - 160.0 / 158.740_105).abs() < 1e-6, "{step}");
}

/// The three rows of exponents were chosen to meet; a misprinted exponent (0.019087) would part them by more than a tenth.
#[test]
fn the_branches_of_life_modification_meet() {
    for (class, _) in Class::ALL {
        for edge in [0.4_f64, 1.0] {
            for load in [0.01, 0.1, 0.3, 0.5] {
                let (below, above) = (a(class, edge.next_down(), load), a(class, edge, load));
                assert!((below / above - 1.0).abs() < 1e-3, "{class:?} {edge} {load}: {below} {above}");
            }
        }
    }
}

/// At the thinnest film that the method knows nothing is left but a tenth, however clean the oil.
#[test]
fn the_thinnest_film_leaves_a_tenth() {
    for (class, _) in Class::ALL {
        for load in [0.0, 0.1, 1.0, 3.0] {
            assert!((a(class, 0.1, load) / 0.1 - 1.0).abs() < 0.01, "{class:?} {load}");
        }
    }
}

#[test]
fn the_cap_holds_and_is_reached_without_a_jump() {
    for (class, _) in Class::ALL {
        // Just above no load at all the root itself rises without limit.
        let mut before = a(class, 4.0, 200.0 * 5e-5);
        for step in 201..=100_000 {
            let here = a(class, 4.0, f64::from(step) * 5e-5);
            assert!(here >= before && here <= 50.0 && here < before * 1.3, "{class:?} {step}: {before} {here}");
            before = here;
        }
        assert!((before - 50.0).abs() < 1e-12, "{class:?}: {before}");
    }
}

#[test]
fn the_guide_falls_with_the_dirt_and_large_bearings_bear_it_better() {
    let of = |one, mm| value(contamination_range(one, Length::from_mm(mm)));
    for mm in [50.0, 200.0] {
        for pair in Cleanliness::ALL.windows(2) {
            let (cleaner, dirtier) = (of(pair[0], mm), of(pair[1], mm));
            assert!(dirtier.1 <= cleaner.1 && dirtier.0 <= cleaner.0 && dirtier.0 <= dirtier.1, "{pair:?} {mm}");
        }
    }
    for one in Cleanliness::ALL {
        assert!(of(one, 200.0).0 >= of(one, 50.0).0 && of(one, 200.0).1 >= of(one, 50.0).1, "{one:?}");
    }
}

#[test]
fn fewer_turns_are_reached_by_more_bearings() {
    let all = [Reliability::Ninety, Reliability::NinetyFive, Reliability::NinetyNine];
    assert!(all.is_sorted_by(|looser, stricter| looser.factor().0 > stricter.factor().0));
}
