//! Feeding held against the rows `d-feed` of `reference/contacts-and-circuits.csv`, where each row names its source and how far to trust it.
//!
//! `check` is the only code that touches the crate.

use tribology::feed::{
    Glass, Liquid, Plunger, Screen, Tube, drip_flow, drop_volume, film_flow, friction_factor, lip_flow, plunger_flow,
    strainer_pressure, tube_flow, tube_pressure, usual_drop,
};
use tribology::quantity::{
    Density, DynamicViscosity, KinematicViscosity, Length, Pressure, Quantity, Rotation, SurfaceTension, Time, Unit,
    Velocity, Volume, VolumeFlow, number_and_unit, typed,
};
use tribology::{Answer, Error, Standing};

use super::Row;

/// A found number in the unit of the row, and how firmly the crate says that it stands.
struct Found {
    number: f64,
    standing: Standing,
}

#[track_caller]
fn check(row: &Row, all: &[Row]) {
    let found = found(row, all);
    let (how, size) = row.tolerance.split_once(' ').expect("a tolerance is a word and a size");
    assert_eq!(how, "rel", "{}", row.id);
    let size: f64 = size.parse().expect("the size of a tolerance is a number");
    let expected: f64 = row.expected.parse().expect("a row expects a number");
    let off = (found.number - expected).abs();
    assert!(off <= size * expected.abs(), "{}: {} {}, not {expected}", row.id, found.number, row.unit);
    // What the table has only from practice or memory may not be given out as firmer than that.
    let firmest = match row.kind.as_str() {
        "published" | "reference-library" | "own-numerical-solution" => Standing::Standard,
        "common-practice" => Standing::CommonPractice,
        "from-memory" => Standing::FromMemory,
        other => panic!("{}: {other} is no kind", row.id),
    };
    assert!(found.standing >= firmest, "{}: {:?} for {}", row.id, found.standing, row.kind);
}

/// The text behind a name in the inputs of a row, in `d=3 mm` as in `wire 0.114 mm`.
fn text<'r>(row: &'r Row, name: &str) -> &'r str {
    let part = row.inputs.split(';').find_map(|part| part.trim().strip_prefix(name)?.strip_prefix(['=', ' ']));
    let part = part.unwrap_or_else(|| panic!("{}: no {name}", row.id));
    part.split(" (").next().unwrap_or(part)
}

fn of<Q: Quantity>(row: &Row, name: &str) -> Q {
    typed(text(row, name)).unwrap_or_else(|fault| panic!("{}: {name}: {fault:?}", row.id)).value
}

fn number(row: &Row, name: &str) -> f64 {
    number_and_unit(text(row, name)).unwrap_or_else(|fault| panic!("{}: {name}: {fault:?}", row.id)).0
}

fn density(row: &Row) -> Density {
    Density::from_kg_m3(number(row, "rho"))
}

fn quantity<Q: Quantity>(row: &Row, answer: &Answer<Q>) -> Found {
    let unit = Unit::find(Q::KIND, &row.unit).unwrap_or_else(|| panic!("{}: no unit {}", row.id, row.unit));
    Found { number: unit.from_si(answer.value.si()), standing: standing(answer) }
}

fn standing<T>(answer: &Answer<T>) -> Standing {
    answer.steps.iter().map(|step| step.standing).max().expect("an answer has steps")
}

fn answered<T>(answer: Result<Answer<T>, Error>) -> Answer<T> {
    answer.expect("a row asks what can be answered")
}

fn found(row: &Row, all: &[Row]) -> Found {
    match row.id.as_str() {
        "d-feed-01" => {
            let tube = Tube::new(of(row, "d"), of(row, "L")).expect("a tube");
            quantity(row, &answered(tube_flow(tube, of::<DynamicViscosity>(row, "mu"), of::<Pressure>(row, "dp"))))
        }
        "d-feed-02" => {
            let tube = Tube::new(of(row, "D"), of(row, "L")).expect("a tube");
            let flow = VolumeFlow::from_m3_s(number(row, "m") / density(row).kg_m3());
            let mu = DynamicViscosity::from_pa_s(number(row, "mu"));
            quantity(row, &answered(tube_pressure(tube, mu, flow)))
        }
        "d-feed-03" => {
            let answer = answered(friction_factor(number(row, "Re")));
            Found { number: answer.value, standing: standing(&answer) }
        }
        "d-feed-04" => {
            assert!(row.inputs.ends_with("Cd=0.62"), "the crate has this coefficient and no other");
            let water = KinematicViscosity::from_mm2_s(1.0);
            quantity(row, &answered(lip_flow(of(row, "D"), of(row, "head over lip"), water)))
        }
        "d-feed-05" => {
            let nu: KinematicViscosity = of(row, "nu");
            quantity(row, &answered(film_flow(of(row, "D"), of(row, "film"), nu)))
        }
        "d-feed-06" => {
            let tip: Length = of(row, "tip outer radius");
            quantity(row, &answered(drop_volume(tip * 2.0, of::<SurfaceTension>(row, "gamma"), density(row))))
        }
        "d-feed-07" => quantity(row, &usual_drop(Glass::Air)),
        "d-feed-08" => {
            let (drips, size) = row.inputs.split_once("; ").expect("a rate and a size");
            let (rate, day) = drips.split_once(" drops/min for ").expect("drops and a time");
            let rate = Rotation::from_per_minute(rate.parse().expect("a rate"));
            let day: Time = typed(day).expect("a time").value;
            let per_pint = size.trim_end_matches(" drops per US pint").parse::<f64>().expect("a count of drops");
            let drop = typed::<Volume>("1 US pint").expect("a volume").value / per_pint;
            quantity(row, &answered(drip_flow(rate, drop)).map(|flow| flow * day))
        }
        "d-feed-09" => {
            let plunger = Plunger::new(of(row, "plunger"), of(row, "stroke")).expect("a plunger");
            let rate = row.inputs.split("; ").nth(2).expect("a rate");
            let rate: Rotation = typed(rate).expect("a rate of strokes").value;
            quantity(row, &answered(plunger_flow(plunger, rate, number(row, "volumetric efficiency"))))
        }
        "d-feed-10" => quantity(row, &screen(row, 0.0)),
        "d-feed-11" => {
            assert_eq!((row.quantity.as_str(), row.inputs.as_str()), HALF_BLOCKED);
            let clean = all.iter().find(|other| other.id == "d-feed-10").expect("the row before");
            quantity(row, &screen(clean, 0.5))
        }
        other => panic!("{other}: nothing here answers it"),
    }
}

const HALF_BLOCKED: (&str, &str) = ("screen pressure drop, half the area blocked", "same total flow");

fn screen(row: &Row, blocked: f64) -> Answer<Pressure> {
    let wires = row.inputs.split("; ").nth(1).and_then(|part| part.split(' ').next()?.parse::<f64>().ok());
    let pitch = Length::from_m(1.0 / wires.expect("a count of wires"));
    let screen = Screen::new(pitch, of(row, "wire")).expect("a screen");
    let oil = Liquid::new(of(row, "mu"), density(row)).expect("an oil");
    answered(strainer_pressure(screen, oil, of::<Velocity>(row, "approach u"), blocked))
}

#[test]
fn feeding_agrees_with_its_sources() {
    let all = super::rows("contacts-and-circuits.csv");
    let rows: Vec<_> = all.iter().filter(|row| row.id.starts_with("d-feed-")).collect();
    assert_eq!(rows.len(), 11, "the table has lost rows");
    rows.into_iter().for_each(|row| check(row, &all));
}
