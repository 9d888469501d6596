//! Laws of gears and hard contacts that need no table: what rises and falls with what, likeness of large and small, and limits.

use proptest::prelude::*;
use tribology::contact::gear::{
    Elastic, Film, LineContact, PointContact, STEEL, Spur, ellipticity, force_speed_spur, force_speed_worm, line_film,
    point_film, recommended_viscosity, reduced_modulus, rolling_pressure,
};
use tribology::quantity::{
    DynamicViscosity, Force, Length, LineLoad, Pressure, PressureViscosity, Rotation, Torque, Velocity,
};
use tribology::{Answer, Error};

fn value<T>(answer: Result<Answer<T>, Error>) -> T {
    answer.expect("the law asks what can be answered").value
}

fn near(found: f64, wanted: f64) -> bool {
    (found / wanted - 1.0).abs() < 1e-9
}

fn any_line() -> impl Strategy<Value = LineContact> {
    (0.01..20.0_f64, 5.0..500.0_f64, 10.0..35.0_f64, 100.0..300.0_f64, 1.0..100.0_f64, 5.0..500.0_f64).prop_map(
        |(speed, viscosity, alpha, modulus, radius, load)| LineContact {
            speed: Velocity::from_m_s(speed),
            viscosity: DynamicViscosity::from_mpa_s(viscosity),
            pressure_viscosity: PressureViscosity::from_per_gpa(alpha),
            modulus: Pressure::from_gpa(modulus),
            radius: Length::from_mm(radius),
            load: LineLoad::from_n_per_mm(load),
        },
    )
}

fn any_point() -> impl Strategy<Value = PointContact> {
    (any_line(), 1.0..20.0_f64, 1.0..500.0_f64).prop_map(|(line, across, load)| PointContact {
        speed: line.speed,
        viscosity: line.viscosity,
        pressure_viscosity: line.pressure_viscosity,
        modulus: line.modulus,
        radius_x: line.radius,
        radius_y: line.radius * across,
        load: Force::from_n(load),
    })
}

/// Both films of one contact are thicker than those of another.
fn thicker(one: Film, other: Film) -> bool {
    one.minimum > other.minimum && one.central > other.central
}

/// Both films of one contact are so many times those of another.
fn times(one: Film, other: Film, factor: f64) -> bool {
    near(one.minimum / other.minimum, factor) && near(one.central / other.central, factor)
}

proptest! {
    #[test]
    fn faster_gears_want_thinner_oil(m_s in 0.05..25.0_f64, times in 1.001..10.0_f64) {
        let of = |m_s| value(recommended_viscosity(Velocity::from_m_s(m_s))).mm2_s();
        prop_assert!(of(m_s * times) < of(m_s) && near(of(4.0 * m_s), of(m_s) / 2.0));
    }

    #[test]
    fn a_line_film_grows_with_speed_and_oil_and_gives_way_to_load(contact in any_line(), more in 1.01..5.0_f64) {
        let of = |contact: LineContact| value(line_film(&contact));
        let here = of(contact);
        let faster = of(LineContact { speed: contact.speed * more, ..contact });
        let oilier = of(LineContact { viscosity: contact.viscosity * more, ..contact });
        let stiffening = of(LineContact { pressure_viscosity: contact.pressure_viscosity * more, ..contact });
        let flatter = of(LineContact { radius: contact.radius * more, ..contact });
        prop_assert!([faster, oilier, stiffening, flatter].into_iter().all(|film| thicker(film, here)));
        let pressed = of(LineContact { load: contact.load * more, ..contact });
        // A hard film hardly feels the load: five times as much takes less than a fifth of it.
        prop_assert!(thicker(here, pressed) && pressed.minimum / here.minimum > 0.8);
        prop_assert!(here.minimum.m() > 0.0);
    }

    #[test]
    fn a_point_film_grows_with_speed_and_oil_and_gives_way_to_load(contact in any_point(), more in 1.01..5.0_f64) {
        let of = |contact: PointContact| value(point_film(&contact));
        let here = of(contact);
        let faster = of(PointContact { speed: contact.speed * more, ..contact });
        let oilier = of(PointContact { viscosity: contact.viscosity * more, ..contact });
        let stiffening = of(PointContact { pressure_viscosity: contact.pressure_viscosity * more, ..contact });
        prop_assert!([faster, oilier, stiffening].into_iter().all(|film| thicker(film, here)));
        let pressed = of(PointContact { load: contact.load * more, ..contact });
        prop_assert!(thicker(here, pressed) && pressed.minimum / here.minimum > 0.8);
        let broader = of(PointContact { radius_y: contact.radius_y * more, ..contact });
        prop_assert!(broader.minimum >= here.minimum && broader.central >= here.central);
        prop_assert!(here.minimum < here.central);
    }

    /// A contact made larger throughout, turned faster by as much and pressed as hard, has a film larger by as much.
    #[test]
    fn large_and_small_contacts_are_alike(line in any_line(), point in any_point(), scale in 0.1..10.0_f64) {
        let large = LineContact { speed: line.speed * scale, radius: line.radius * scale, load: line.load * scale, ..line };
        prop_assert!(times(value(line_film(&large)), value(line_film(&line)), scale));
        let large = PointContact {
            speed: point.speed * scale,
            radius_x: point.radius_x * scale,
            radius_y: point.radius_y * scale,
            load: point.load * (scale * scale),
            ..point
        };
        prop_assert!(times(value(point_film(&large)), value(point_film(&point)), scale));
    }

    /// Speed and viscosity act only through their product.
    #[test]
    fn thick_and_slow_is_thin_and_fast(line in any_line(), point in any_point(), factor in 0.2..5.0_f64) {
        let swapped = LineContact { speed: line.speed * factor, viscosity: line.viscosity / factor, ..line };
        prop_assert!(times(value(line_film(&swapped)), value(line_film(&line)), 1.0));
        let swapped = PointContact { speed: point.speed * factor, viscosity: point.viscosity / factor, ..point };
        prop_assert!(times(value(point_film(&swapped)), value(point_film(&point)), 1.0));
    }

    #[test]
    fn two_bodies_together_are_between_what_each_would_be_with_its_like(e1 in 1.0..500.0_f64, e2 in 1.0..500.0_f64, nu1 in 0.0..0.5_f64, nu2 in 0.0..0.5_f64) {
        let body = |gpa, poisson| Elastic { modulus: Pressure::from_gpa(gpa), poisson };
        let (first, second) = (body(e1, nu1), body(e2, nu2));
        let of = |one, other| value(reduced_modulus(one, other)).gpa();
        let (low, high) = (of(first, first).min(of(second, second)), of(first, first).max(of(second, second)));
        prop_assert!((low * (1.0 - 1e-12)..=high * (1.0 + 1e-12)).contains(&of(first, second)));
        prop_assert!(near(of(first, second), of(second, first)));
        prop_assert!(near(of(first, first), e1 / (1.0 - nu1 * nu1)));
    }

    #[test]
    fn hard_and_slow_gears_have_the_greater_factor(newtons in 100.0..1e5_f64, mm in 5.0..100.0_f64, ratio in 1.0..10.0_f64, m_s in 0.1..20.0_f64) {
        let spur = Spur {
            force: Force::from_n(newtons),
            width: Length::from_mm(mm),
            pinion_diameter: Length::from_mm(3.0 * mm),
            ratio,
            zone_factor: 3.0,
            application_factor: 1.0,
        };
        let of = |spur: &Spur, m_s| value(force_speed_spur(spur, Velocity::from_m_s(m_s))).mpa_s_per_m();
        let here = of(&spur, m_s);
        prop_assert!(near(here, value(rolling_pressure(&spur)).mpa() / m_s));
        prop_assert!(near(of(&spur, 2.0 * m_s), here / 2.0));
        let (harder, wider) = (Spur { force: spur.force * 2.0, ..spur }, Spur { width: spur.width * 2.0, ..spur });
        prop_assert!(near(of(&harder, m_s), 2.0 * here) && near(of(&wider, m_s), here / 2.0));
        // Against a rack the pinion's own curvature is all there is.
        let rack = of(&Spur { ratio: 1e12, ..spur }, m_s);
        prop_assert!(rack < here && near(here / rack, (ratio + 1.0) / ratio));
    }

    #[test]
    fn a_larger_worm_works_easier_by_the_cube(torque in 10.0..5000.0_f64, mm in 30.0..400.0_f64, rpm in 50.0..3000.0_f64) {
        let of = |torque, mm, rpm| {
            let (torque, speed) = (Torque::from_n_m(torque), Rotation::from_rpm(rpm));
            value(force_speed_worm(torque, Length::from_mm(mm), speed, 1.0)).n_min_per_m2()
        };
        let here = of(torque, mm, rpm);
        prop_assert!(near(of(torque, 2.0 * mm, rpm), here / 8.0) && near(of(torque, mm, 2.0 * rpm), here / 2.0));
        prop_assert!(near(of(3.0 * torque, mm, rpm), 3.0 * here));
    }
}

#[test]
fn a_patch_grows_longer_with_the_radius_across() {
    let of = |across| value(ellipticity(Length::from_mm(6.0), Length::from_mm(6.0 * across)));
    let along: Vec<f64> = [1.0, 1.1, 1.5, 2.0, 5.0, 20.0].map(of).to_vec();
    assert!(along.is_sorted_by(|shorter, longer| shorter < longer), "{along:?}");
    // Beside the circle the fit is 3 % above it.
    assert!((of(1.0) - 1.0).abs() < 1e-15 && (of(1.000_001) - 1.03).abs() < 1e-4);
}

/// A body without give leaves the other's own: twice as stiff as with its like.
#[test]
fn against_a_body_without_give_stiffness_doubles() {
    let rigid = Elastic { modulus: Pressure::from_gpa(1e12), poisson: 0.3 };
    let doubled = value(reduced_modulus(STEEL, rigid)) / value(reduced_modulus(STEEL, STEEL));
    assert!((doubled - 2.0).abs() < 1e-8, "{doubled}");
}
