//! Laws of slideways and of film against roughness that need no table.

use proptest::prelude::*;
use tribology::contact::slideway::{Renewal, Stribeck, bush_area, hersey_number, replacement, rolling_area};
use tribology::contact::{Regime, film_ratio, running_in_film, usual_clearance};
use tribology::quantity::{Area, DynamicViscosity, Length, LineLoad, Velocity};
use tribology::{Answer, Error};

fn value<T>(answer: Result<Answer<T>, Error>) -> T {
    answer.expect("the law asks what can be answered").value
}

fn near(found: f64, wanted: f64) -> bool {
    (found / wanted - 1.0).abs() < 1e-9
}

fn any_way() -> impl Strategy<Value = Stribeck> {
    (0.05..0.3_f64, 0.0..0.9_f64, 1e-7..1e-5_f64, 0.5..2.0_f64, 0.0..1e4_f64).prop_map(
        |(boundary, part, scale, sharpness, drag)| Stribeck {
            boundary,
            carried: part * boundary,
            scale,
            sharpness,
            drag,
        },
    )
}

proptest! {
    #[test]
    fn a_film_ratio_knows_no_units_and_no_order(film in 0.0..50.0_f64, first in 0.01..10.0_f64, second in 0.01..10.0_f64, scale in 0.01..100.0_f64) {
        let of = |film, first, second| value(film_ratio(Length::from_um(film), Length::from_um(first), Length::from_um(second)));
        let here = of(film, first, second);
        prop_assert!((of(film, second, first).lambda - here.lambda).abs() <= 1e-12 * here.lambda);
        prop_assert!((of(film * scale, first * scale, second * scale).lambda - here.lambda).abs() <= 1e-9 * here.lambda);
        prop_assert!(of(film + 1.0, first, second).lambda > here.lambda);
        prop_assert!(of(film + 1.0, first, second).regime >= here.regime);
        prop_assert!(of(film, first + 0.1, second).regime <= here.regime);
        let (from, to) = here.regime.span();
        prop_assert!(from <= here.lambda && to.is_none_or(|to| here.lambda <= to));
        // Of two equal faces both together are √2 as rough as one.
        prop_assert!(near(of(1.0, first, first).lambda * first, std::f64::consts::FRAC_1_SQRT_2));
    }

    /// Peaks are some three times the root mean square, so that a run-in film is nowhere near boundary.
    #[test]
    fn a_film_that_clears_the_peaks_is_more_than_boundary(rq in 0.05..5.0_f64, other in 0.05..5.0_f64) {
        let film = value(running_in_film(Length::from_um(3.0 * rq), Length::from_um(3.0 * other)));
        prop_assert!(value(film_ratio(film, Length::from_um(rq), Length::from_um(other))).regime == Regime::Full);
    }

    #[test]
    fn a_clearance_is_a_part_of_its_shaft(mm in 1.0..500.0_f64, times in 1.1..10.0_f64) {
        let of = |mm| value(usual_clearance(Length::from_mm(mm)));
        prop_assert!(near(of(mm * times).usual / of(mm).usual, times) && near(of(mm).usual.mm(), mm / 1000.0));
    }

    #[test]
    fn oil_that_renews_a_film_goes_by_the_face(cm2 in 0.1..1e5_f64, service in 1.0..8.0_f64, times in 1.1..5.0_f64) {
        let of = |cm2, service| value(replacement(Area::from_cm2(cm2), Renewal::OnceThrough, service)).ml_h();
        prop_assert!(near(of(cm2 * times, service), times * of(cm2, service)));
        prop_assert!(near(of(cm2, service), service * of(cm2, 1.0)));
        // A thousandth of an inch is 0.00254 cm, and a cubic centimetre a millilitre.
        prop_assert!(near(of(cm2, 1.0), 0.002_54 * cm2));
    }

    #[test]
    fn faces_of_round_things_go_by_the_square(mm in 1.0..500.0_f64, rows in 1..5_u32) {
        let bush = |mm| value(bush_area(Length::from_mm(mm), Length::from_mm(mm))).cm2();
        prop_assert!(near(bush(2.0 * mm), 4.0 * bush(mm)));
        let rolling = |mm, rows| value(rolling_area(Length::from_mm(mm), rows)).cm2();
        prop_assert!(near(rolling(2.0 * mm, rows), 4.0 * rolling(mm, rows)));
        prop_assert!(near(rolling(mm, rows), f64::from(rows) * rolling(mm, 1)));
        prop_assert!(near(bush(mm) / rolling(mm, 1), std::f64::consts::PI));
    }

    #[test]
    fn a_hersey_number_grows_with_oil_and_speed_and_falls_with_load(mpa_s in 1.0..1000.0_f64, mm_s in 0.01..1000.0_f64, load in 100.0..1e5_f64) {
        let of = |mpa_s, mm_s, load| {
            let (viscosity, speed) = (DynamicViscosity::from_mpa_s(mpa_s), Velocity::from_mm_s(mm_s));
            value(hersey_number(viscosity, speed, LineLoad::from_n_per_m(load)))
        };
        let here = of(mpa_s, mm_s, load);
        prop_assert!(near(of(2.0 * mpa_s, mm_s, load), 2.0 * here) && near(of(mpa_s, 2.0 * mm_s, load), 2.0 * here));
        prop_assert!(near(of(mpa_s, mm_s, 2.0 * load), here / 2.0));
    }

    #[test]
    fn friction_begins_at_rest_and_ends_as_drag(way in any_way(), far in 200.0..1000.0_f64) {
        let of = |hersey| value(way.friction(hersey));
        prop_assert!(near(of(0.0), way.boundary));
        let out = far * far * way.scale;
        let wanted = way.carried + way.drag * out;
        prop_assert!((of(out) - wanted).abs() <= 1e-6 * way.boundary + 1e-9 * wanted);
    }

    /// Without drag friction only falls; it never leaves the two levels between which it lies.
    #[test]
    fn peaks_alone_make_friction_fall(way in any_way(), hersey in 0.01..20.0_f64, more in 1.01..3.0_f64) {
        let way = Stribeck { drag: 0.0, ..way };
        let of = |hersey| value(way.friction(hersey * way.scale));
        prop_assert!(of(hersey) >= of(hersey * more) && of(hersey) <= way.boundary && of(hersey) >= way.carried);
        prop_assert!(value(way.slope(hersey * way.scale)) <= 0.0);
    }

    /// The slope is that of the curve, by the difference over a thousandth of the way either side.
    #[test]
    fn the_slope_is_that_of_the_curve(way in any_way(), hersey in 0.05..20.0_f64) {
        let at = hersey * way.scale;
        let of = |hersey| value(way.friction(hersey));
        let difference = (of(at * 1.001) - of(at * 0.999)) / (0.002 * at);
        let slope = value(way.slope(at));
        let size = (way.boundary / at).max(way.drag);
        prop_assert!((slope - difference).abs() <= 1e-5 * size, "{slope} {difference}");
    }
}
