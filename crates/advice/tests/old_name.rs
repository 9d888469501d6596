//! Old specifications held against `reference/old-names.csv` and the rows of `reference/oil-properties.csv` about old names, where each row
//! says where it comes from.

use advice::old_name::{Ask, Country, Known, Meaning, meaning};
use serde::Deserialize;
use shop::choice::Choice as _;

#[derive(Deserialize)]
struct Row {
    id: String,
    quantity: String,
    inputs: String,
    expected: String,
    tolerance: String,
}

fn rows(table: &str) -> Vec<Row> {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../../reference/");
    let mut reader = csv::Reader::from_path(format!("{folder}{table}")).expect("the table lies in the repository");
    reader.deserialize().map(|row| row.expect("a row has the eight columns")).collect()
}

#[track_caller]
fn of(inputs: &str) -> Meaning {
    let (words, options) = inputs.split_once(';').unwrap_or((inputs, ""));
    let option = |name: &str| options.split(';').find_map(|option| option.trim().strip_prefix(name)?.strip_prefix('='));
    let known = Known {
        year: option("year").and_then(|year| year.parse().ok()),
        country: option("country").and_then(Country::from_word),
        index: option("index").and_then(|index| index.parse().ok()),
    };
    meaning(words, &known).unwrap_or_else(|| panic!("{words} says nothing"))
}

fn grades(meaning: &Meaning) -> Vec<String> {
    meaning.grades.iter().map(|one| one.grade.number().to_string()).collect()
}

#[track_caller]
fn check(row: &Row) {
    let found = of(&row.inputs);
    let says = || format!("{}: {} gives {:?}, {:?}", row.id, row.inputs, found.band, grades(&found));
    match (row.quantity.as_str(), row.tolerance.as_str()) {
        ("grades", "first") => assert_eq!(grades(&found).first(), Some(&row.expected), "{}", says()),
        ("grades", "among") => {
            // Every expected grade fits wholly or nearly, and none that is not expected fits wholly better.
            for grade in row.expected.split(' ') {
                let fit =
                    found.grades.iter().find(|one| one.grade.number().to_string() == grade).map_or(0.0, |one| one.fit);
                assert!(fit >= 0.5, "{grade} fits {fit}; {}", says());
            }
            assert!(row.expected.split(' ').any(|grade| grades(&found)[0] == grade), "{}", says());
        }
        ("band", tolerance) => {
            let part: f64 = tolerance.trim_start_matches("rel ").trim_end_matches('%').parse().expect("a percentage");
            let (low, high) = row.expected.split_once('-').expect("a band has two ends");
            let (found_low, found_high) = found.band.expect("a band");
            for (expected, found) in [(low, found_low), (high, found_high)] {
                let expected: f64 = expected.parse().expect("a number");
                assert!((found.mm2_s() / expected - 1.0).abs() <= part / 100.0, "{}", says());
            }
        }
        other => panic!("{}: nothing here answers {other:?}", row.id),
    }
}

#[test]
fn old_specifications_mean_what_their_rows_say() {
    let rows = rows("old-names.csv");
    assert!(rows.len() >= 30, "the table has lost rows");
    rows.iter().for_each(check);
}

#[test]
fn nearest_grades_of_old_names_are_as_practice_has_them() {
    let rows: Vec<Row> =
        rows("oil-properties.csv").into_iter().filter(|row| row.quantity == "nearest_iso_vg").collect();
    assert_eq!(rows.len(), 2);
    for row in rows {
        let words = row.inputs.trim_start_matches("old name=");
        assert_eq!(format!("VG {}", grades(&of(words))[0]), row.expected, "{}: {words}", row.id);
    }
    // Both are said where both fit.
    assert!(grades(&of("SAE 20 straight mineral")).contains(&"46".to_owned()));
}

#[test]
fn what_is_missing_is_asked_and_the_band_spreads_until_it_is_told() {
    let open = of("300 SUS");
    assert!(open.asks.contains(&Ask::Temperature), "{:?}", open.asks);
    let told = of("300 SUS at 100 F");
    assert!(!told.asks.contains(&Ask::Temperature));
    let width = |meaning: &Meaning| meaning.band.map(|(low, high)| high.mm2_s() / low.mm2_s()).expect("a band");
    assert!(width(&open) > 2.0 * width(&told), "{} {}", width(&open), width(&told));
    assert!(of("300 secs at 100 F").asks.contains(&Ask::Scale));
    assert!(!of("300 secs at 100 F;country=us").asks.contains(&Ask::Scale));
    assert!(of("SAE 40").asks.contains(&Ask::Year) && !of("SAE 40;year=1936").asks.contains(&Ask::Year));
    assert!(
        of("80 SUS at 210 F").asks.contains(&Ask::Index) && !of("80 SUS at 210 F;index=90").asks.contains(&Ask::Index)
    );
    assert!(of("medium machine oil").asks.contains(&Ask::Number));
}

/// Telling more never gives an oil that the less told answer left out.
#[test]
fn telling_more_narrows_the_band() {
    for (less, more) in [
        ("300 SUS", "300 SUS at 130 F"),
        ("SAE 30", "SAE 30;year=1940"),
        ("SAE 30", "SAE 30;year=1922"),
        ("SAE 30", "SAE 30;year=1990"),
        ("140 secs at 140 F", "Redwood 140 secs at 140 F"),
        ("130 SUS at 210 F", "130 SUS at 210 F;index=60"),
    ] {
        let (wide, narrow) = (of(less).band.expect("a band"), of(more).band.expect("a band"));
        let near = 1.0 + 1e-9;
        assert!(
            wide.0.mm2_s() <= narrow.0.mm2_s() * near && wide.1.mm2_s() * near >= narrow.1.mm2_s(),
            "{less} and {more}"
        );
    }
}

#[test]
fn the_words_are_kept_and_nonsense_is_refused() {
    let plate = "MEDIUM MACHINE OIL, S.U.V. 300 AT 100°";
    let found = of(plate);
    assert_eq!(found.words, plate);
    assert!(found.name.is_some_and(|name| name.says == "medium machine oil"));
    for nothing in ["", "300", "best quality", "at 100 F"] {
        assert_eq!(meaning(nothing, &Known::default()), None, "{nothing}");
    }
    let dangerous = of("wash out with gasoline and fill with heavy machine oil");
    assert_eq!((dangerous.cautions.len(), dangerous.band.is_some()), (1, true));
    assert!(of("cup grease No. 3").band.is_none());
}
