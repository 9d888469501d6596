//! Rolling bearings held against the rows `d-rolling` of `reference/contacts-and-circuits.csv`.

use tribology::contact::rolling::{
    Class, Cleanliness, Reliability, Supply, contamination_factor, contamination_range, life_modification,
    load_free_torque, modified_life, reference_viscosity, viscosity_ratio,
};
use tribology::quantity::{Force, Length};

use super::contact_row::{Found, Given, hold};

fn found(given: &Given<'_>) -> Found {
    let class = |named: &str| {
        let spelled = named.rsplit(", ").next().unwrap_or(named).replace(' ', "-");
        Class::ALL.into_iter().find(|(_, spelling)| *spelling == spelled).expect("a class of bearings").0
    };
    match given.row.quantity.as_str() {
        "reference viscosity nu1" => {
            Found::number(reference_viscosity(given.quantity("n"), given.quantity("Dpw")), |found| found.mm2_s())
        }
        factor if factor.starts_with("a_ISO") => {
            let found = life_modification(class(factor), given.plain("kappa"), given.plain("eC*Cu/P"));
            Found::number(found, |found| found.expect("the ratio is in the method"))
        }
        "modified life L10mh, worked chain" => {
            assert_eq!(given.row.inputs.split(';').next(), Some("deep-groove ball"));
            let (n, d) = (given.quantity("n"), given.quantity("Dpw"));
            let [capacity, limit, load] = ["C", "Cu", "P"].map(|name| given.quantity::<Force>(name));
            let kappa = viscosity_ratio(given.quantity("nu"), n, d).expect("a bearing that runs").value;
            let dirt = given.plain("eC") * (limit / load);
            let factor = life_modification(Class::RadialBall, kappa, dirt).expect("a bearing that runs").value;
            let factor = factor.expect("the ratio is in the method");
            let life = modified_life(Class::RadialBall, capacity, load, factor, Reliability::Ninety, n);
            Found::number(life, |life| life.time.hours())
        }
        "eC guide range, normal cleanliness" => {
            assert_eq!(given.row.inputs, "Dpw < 100 mm");
            let ranges = [20.0, 60.0, 99.9].map(|mm| contamination_range(Cleanliness::Normal, Length::from_mm(mm)));
            let [first, second, third] = ranges.map(|range| range.expect("a bearing"));
            assert!(first.value == second.value && second.value == third.value);
            Found::span(Ok(first), |range| *range)
        }
        "eC, oil bath -/17/14" => {
            let found = contamination_factor(Supply::Bath17, given.plain("kappa"), given.quantity("Dpw"));
            Found::number(found, |found| *found)
        }
        torque if torque.starts_with("load-free friction torque M0") => {
            let (nu, n, d) = (given.quantity("nu"), given.quantity("n"), given.quantity("dm"));
            Found::number(load_free_torque(given.plain("f0"), nu, n, d), |found| found.n_mm())
        }
        other => panic!("{}: nothing here answers {other}", given.row.id),
    }
}

#[test]
fn rolling_bearings_agree_with_their_sources() {
    hold("d-rolling-", 14, found);
}
