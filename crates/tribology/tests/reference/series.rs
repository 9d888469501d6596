//! Counts and charts held against `reference/contacts-and-circuits.csv`, where each row says how far to trust it.
//!
//! `check` and `found` are the only code that touches the crate.

use tribology::quantity::{Time, Volume};
use tribology::series::{
    Count, Prior, Sense, cusum_run_length, cusum_run_length_two_sided, event_rate, event_rate_with_prior,
    poisson_reference, poisson_run_length, two_rates,
};
use tribology::{Answer, Error};

use super::Row;

fn value<T>(answer: Result<Answer<T>, Error>) -> T {
    answer.expect("a row asks what can be answered").value
}

/// The number behind a name and an equals sign or a space.
fn named(row: &Row, name: &str) -> f64 {
    let parts = row.inputs.split([';', ',']).map(str::trim);
    let found = parts.filter_map(|part| part.strip_prefix(name)?.strip_prefix(['=', ' ']));
    let mut numbers = found.filter_map(|rest| rest.split(' ').next()?.parse().ok());
    numbers.next().unwrap_or_else(|| panic!("{}: no {name} in {}", row.id, row.inputs))
}

/// Every number of the inputs, in order.
fn numbers(row: &Row) -> Vec<f64> {
    row.inputs.split([' ', ';', ',']).filter_map(|word| word.parse().ok()).collect()
}

fn shift(row: &Row) -> f64 {
    if row.inputs.contains("no shift") { 0.0 } else { named(row, "shift") }
}

fn events(events: f64, hours: f64) -> Count {
    Count { events: events as u32, exposure: Time::from_hours(hours) }
}

fn found(row: &Row) -> Vec<f64> {
    let one = match row.quantity.as_str() {
        "two-sided CUSUM average run length" => {
            value(cusum_run_length_two_sided(named(row, "k"), named(row, "h"), shift(row)))
        }
        "one-sided CUSUM average run length" => {
            value(cusum_run_length(named(row, "k"), named(row, "h"), shift(row), 0.0))
        }
        "one-sided CUSUM average run length, head start 2.5" => {
            value(cusum_run_length(named(row, "k"), named(row, "h"), shift(row), 2.5))
        }
        "upward Poisson CUSUM average run length" => {
            value(poisson_run_length(named(row, "k"), named(row, "h"), named(row, "rate"), Sense::Up))
        }
        "downward Poisson CUSUM average run length" => {
            value(poisson_run_length(named(row, "k"), named(row, "h"), named(row, "rate"), Sense::Down))
        }
        "Poisson CUSUM reference value k=(l1-l0)/ln(l1/l0)" => {
            value(poisson_reference(named(row, "l0"), named(row, "l1")))
        }
        "exact 95 % Poisson limit, upper" => {
            value(event_rate(named(row, "count") as u32, Time::from_hours(1.0), 0.95)).high_events
        }
        "exact 95 % Poisson limit, lower" => {
            value(event_rate(named(row, "count") as u32, Time::from_hours(1.0), 0.95)).low_events
        }
        "top-up rate and 95 % limits" => {
            let [count, ml, hours] = numbers(row)[..] else { panic!("{}", row.id) };
            let time = Time::from_hours(hours);
            let found = value(event_rate(count as u32, time, 0.95));
            let used = |events: f64| (Volume::from_ml(ml * events) / time).ml_h();
            let rate = found.rate.per_hour() * hours;
            return [found.low_events, rate, found.high_events].map(used).to_vec();
        }
        "posterior mean rate, Gamma prior" => {
            let [shape, before, count, hours] = numbers(row)[..] else { panic!("{}", row.id) };
            let prior = Prior { shape, exposure: Time::from_hours(before) };
            value(event_rate_with_prior(count as u32, Time::from_hours(hours), prior, 0.95)).rate.per_hour()
        }
        "rate increase, one-sided conditional p-value" => {
            let [n1, t1, n2, t2] = numbers(row)[..] else { panic!("{}", row.id) };
            value(two_rates(events(n1, t1), events(n2, t2), Sense::Up)).p_value
        }
        "log generalised likelihood ratio of one change in a Poisson rate" => {
            let [n1, t1, n2, t2, ..] = numbers(row)[..] else { panic!("{}", row.id) };
            value(two_rates(events(n1, t1), events(n2, t2), Sense::Up)).log_glr
        }
        other => panic!("{}: nothing here answers {other}", row.id),
    };
    vec![one]
}

#[track_caller]
fn check(row: &Row) {
    let expected: Vec<f64> = row.expected.split(';').map(|number| number.trim().parse().expect("a number")).collect();
    let found = found(row);
    assert_eq!(found.len(), expected.len(), "{}", row.id);
    let (how, size) = row.tolerance.split_once(' ').expect("a tolerance is a word and a size");
    let size: f64 = size.parse().expect("the size of a tolerance is a number");
    for (found, expected) in found.into_iter().zip(expected) {
        let allowed = match how {
            "rel" => size * expected.abs(),
            "abs" => size,
            _ => panic!("{}: a tolerance is rel or abs", row.id),
        };
        assert!((found - expected).abs() <= allowed, "{}: {} gives {found}, not {expected}", row.id, row.inputs);
    }
}

#[test]
fn series_agree_with_their_sources() {
    let rows = super::rows("contacts-and-circuits.csv");
    let rows: Vec<_> = rows.iter().filter(|row| row.id.starts_with("d-stat-")).collect();
    assert_eq!(rows.len(), 19, "the table has lost rows");
    rows.into_iter().for_each(check);
}
