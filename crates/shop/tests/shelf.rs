//! The shelf, and what a chart's words find on it.

use shop::shelf::{Asked, Family, Shelf, Stated};

const SHELF: &str = r#"shelf = 1
[[oil]]
id = "way-68"
name = "Way 68"
family = "way"
v40 = "68 mm2/s"
tackifier = "yes"
[[oil]]
id = "way-220"
name = "Way 220"
family = "way"
v40 = "220 mm2/s"
[[oil]]
id = "grease-2"
name = "Grease"
family = "grease"
nlgi = "2"
stock = "400 g"
[[can]]
id = "short-can"
oil = "way-68"
stroke = "0.6 mL"
"#;

#[test]
fn a_chart_s_words_find_the_nearest_body_of_the_family() {
    let shelf = Shelf::read(SHELF).value.expect("the shelf is right");
    let found = |text: &str| Asked::read(text).and_then(|asked| shelf.nearest(&asked)).map(|oil| oil.id.to_string());
    assert_eq!(found("way 68").as_deref(), Some("way-68"));
    assert_eq!(found("way 150").as_deref(), Some("way-220"));
    assert_eq!(found("Grease 2").as_deref(), Some("grease-2"));
    assert_eq!(found("spindle 10"), None);
    assert_eq!(found("MEDIUM MACHINE OIL"), None);
}

#[test]
fn not_stated_is_not_no() {
    let shelf = Shelf::read(SHELF).value.expect("the shelf is right");
    assert_eq!(shelf.oils[0].tackifier, Stated::Yes);
    assert_eq!(shelf.oils[0].detergent, Stated::NotStated);
    assert_eq!(shelf.oils[2].family, Family::Grease);
    assert_eq!(shelf.oils[2].stock_mass.as_deref(), Some("400 g"));
}

#[test]
fn an_oil_that_thickens_as_it_warms_and_a_can_of_an_unknown_oil_are_faults() {
    let text =
        SHELF.replace("tackifier = \"yes\"", "v100 = \"70 mm2/s\"").replace("oil = \"way-68\"", "oil = \"way-86\"");
    let read = Shelf::read(&text);
    let lines: Vec<usize> = read.faults.iter().map(|fault| fault.place(&text).line).collect();
    assert_eq!(lines, [7, 21], "{:?}", read.faults);
    assert!(read.faults[1].says.contains("\"way-68\""));
}
