//! Slideways held against the rows `d-way` of `reference/contacts-and-circuits.csv`.

use tribology::Answer;
use tribology::contact::slideway::{
    AllowablePressure, Renewal, Way, allowable_pressure, bush_area, hersey_number, replacement,
};
use tribology::quantity::{Force, Kind, Length, VolumeFlow};

use super::contact_row::{Found, Given, hold};

/// Cubic metres per second in a cubic inch per hour: an inch is 25.4 mm.
const IN3_PER_HOUR: f64 = 0.0254 * 0.0254 * 0.0254 / 3600.0;

fn pressure(given: &Given<'_>, answer: Answer<AllowablePressure>) -> Found {
    let said = |si| given.in_its_unit(Kind::Pressure, si);
    Found::span(Ok(answer), |found| (said(found.low.pa()), said(found.high.pa())))
}

fn flow(given: &Given<'_>, area: tribology::quantity::Area) -> Found {
    assert_eq!((given.text("0.001 in per"), given.row.unit.as_str()), ("hour", "in^3/h"));
    let answer = replacement(area, Renewal::OnceThrough, 1.0);
    Found::number(answer, |found: &VolumeFlow| found.m3_s() / IN3_PER_HOUR)
}

fn found(given: &Given<'_>) -> Found {
    match given.row.id.as_str() {
        "d-way-01" => {
            assert_eq!(given.row.inputs, "small and medium lathe or milling machine");
            pressure(given, allowable_pressure(Way::SmallAtFeed))
        }
        "d-way-02" => {
            assert_eq!(given.row.inputs, "planer");
            pressure(given, allowable_pressure(Way::SmallAtCutting))
        }
        "d-way-03" => {
            let (length, width) = given.text("largest contact face").split_once(" x ").expect("two sides");
            flow(given, given.read::<Length>(length) * given.read::<Length>(width))
        }
        "d-way-04" => {
            let (diameter, length) = given.text("plain bush").split_once(" dia x ").expect("two sizes");
            let length = length.trim_end_matches(" long");
            flow(given, bush_area(given.read(diameter), given.read(length)).expect("a bush").value)
        }
        "d-way-05" => {
            let (load, rest) =
                given.row.inputs.rsplit_once("load ").expect("a load").1.split_once(" on ").expect("a length");
            let (length, _) = rest.split_once(" way length").expect("a length");
            let load = given.read::<Force>(load) / given.read::<Length>(length);
            Found::number(hersey_number(given.quantity("mu"), given.quantity("U"), load), |found| *found)
        }
        other => panic!("{other}: nothing here answers it"),
    }
}

#[test]
fn slideways_agree_with_their_sources() {
    hold("d-way-", 5, found);
}
