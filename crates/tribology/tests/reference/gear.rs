//! Gears and hard contacts held against the rows `d-gear` of `reference/contacts-and-circuits.csv`.

use tribology::contact::gear::{
    Casing, Elastic, LineContact, PointContact, Spur, dip_limit, ellipticity, force_speed_spur, force_speed_worm,
    line_film, point_film, recommended_viscosity, reduced_modulus, rolling_pressure,
};
use tribology::quantity::Length;

use super::contact_row::{Found, Given, hold};

fn spur(given: &Given<'_>) -> Spur {
    Spur {
        force: given.quantity("Ft"),
        width: given.quantity("b"),
        pinion_diameter: given.quantity("d1"),
        ratio: given.plain("u"),
        zone_factor: given.plain("ZH^2*Zeps^2"),
        application_factor: given.plain("KA"),
    }
}

fn point(given: &Given<'_>) -> PointContact {
    // "Rx=Ry=10 mm" stands for both; the row then takes the patch for a circle.
    let radius: Length = given.quantity("Rx");
    let circle = ellipticity(radius, radius).expect("a ball").value;
    assert_eq!(circle.to_bits(), given.plain("k").to_bits());
    PointContact {
        speed: given.quantity("U"),
        viscosity: given.quantity("mu"),
        pressure_viscosity: given.quantity("alpha"),
        modulus: given.quantity("E'"),
        radius_x: radius,
        radius_y: radius,
        load: given.quantity("W"),
    }
}

fn found(given: &Given<'_>) -> Found {
    match given.row.id.as_str() {
        "d-gear-01" | "d-gear-02" => {
            Found::number(recommended_viscosity(given.quantity("pitch-line velocity")), |found| found.mm2_s())
        }
        "d-gear-03" => Found::number(rolling_pressure(&spur(given)), |found| found.mpa()),
        "d-gear-04" => Found::number(force_speed_spur(&spur(given), given.quantity("v")), |found| found.mpa_s_per_m()),
        "d-gear-05" => {
            let (torque, distance, speed) = (given.quantity("T2"), given.quantity("a"), given.quantity("n1"));
            Found::number(force_speed_worm(torque, distance, speed, given.plain("KA")), |found| found.n_min_per_m2())
        }
        "d-gear-06" => {
            assert_eq!(given.row.inputs, "simple splash unit");
            Found::number(Ok(dip_limit(Casing::Simple)), |found| found.m_s())
        }
        "d-gear-07" => {
            let body = Elastic { modulus: given.quantity("E"), poisson: given.plain("nu") };
            Found::number(reduced_modulus(body, body), |found| found.pa())
        }
        "d-gear-08" => {
            let contact = LineContact {
                speed: given.quantity("U"),
                viscosity: given.quantity("mu"),
                pressure_viscosity: given.quantity("alpha"),
                modulus: given.quantity("E'"),
                radius: given.quantity("R"),
                load: given.quantity("load"),
            };
            Found::number(line_film(&contact), |film| film.minimum.um())
        }
        "d-gear-09" => Found::number(point_film(&point(given)), |film| film.minimum.um()),
        "d-gear-10" => Found::number(point_film(&point(given)), |film| film.central.um()),
        other => panic!("{other}: nothing here answers it"),
    }
}

#[test]
fn gears_and_hard_contacts_agree_with_their_sources() {
    hold("d-gear-", 10, found);
}
