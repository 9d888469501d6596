//! Film ratio and clearance held against the rows `d-film` of `reference/contacts-and-circuits.csv`.

use tribology::contact::{film_ratio, usual_clearance};
use tribology::quantity::Length;

use super::contact_row::{Found, Given, hold};

fn found(given: &Given<'_>) -> Found {
    match given.row.id.as_str() {
        "d-film-01" => {
            let [film, first, second] = ["h_min", "Rq1", "Rq2"].map(|name| given.quantity::<Length>(name));
            Found::number(film_ratio(film, first, second), |found| found.lambda)
        }
        "d-film-02" => {
            let clearance = usual_clearance(given.quantity("shaft"));
            assert!(clearance.as_ref().is_ok_and(|found| (found.value.usual.inches() - 0.0015).abs() < 1e-9));
            Found::span(clearance, |found| (found.low.inches(), found.high.inches()))
        }
        other => panic!("{other}: nothing here answers it"),
    }
}

#[test]
fn films_and_clearances_agree_with_their_sources() {
    hold("d-film-", 2, found);
}
