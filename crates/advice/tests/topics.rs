//! Sums asked for as a person types them: what they assume, how they show, and what they refuse. Their numbers are held against tables by
//! the tests of the command line.

use advice::topic::{Calculated, Given, Item, Topic, Value};

/// The answer to a line such as `journal --ratio 1 --eccentricity 0.6`, or the sentence that refuses it.
fn answer(line: &str) -> Result<Calculated, String> {
    let (name, options) = line.split_once(' ').unwrap_or((line, ""));
    let topic = Topic::named(name).expect("a topic");
    let mut given = Given::new(topic);
    for option in options.split("--").filter(|option| !option.trim().is_empty()) {
        let (option, text) = option.trim().split_once(' ').expect("an option and a text");
        let asked = topic.options.iter().find(|asked| asked.name == option).expect("an option of the topic");
        given.add(asked.name, text);
    }
    given.answer().map_err(|refused| refused.to_string())
}

#[track_caller]
fn item(line: &str, key: &str) -> Item {
    let found = answer(line).unwrap_or_else(|says| panic!("{line}: {says}"));
    let item = found.items.into_iter().find(|item| item.key == key);
    item.unwrap_or_else(|| panic!("{line}: no {key}"))
}

#[track_caller]
fn number(line: &str, key: &str) -> f64 {
    match item(line, key).value {
        Value::Number(number) => number,
        Value::Quantity(si, unit) => unit.from_si(si),
        other => panic!("{line}: {key} is {other:?}"),
    }
}

const MEASURES: &str = "journal --diameter 50mm --length 50mm --clearance 0.05mm --load 2kN --speed 600rpm";

/// What stands open is assumed and said; what is given is not assumed.
#[test]
fn what_a_warm_bearing_assumes_is_said() {
    let line = format!("{MEASURES} --v40 68 --ambient 20C");
    let open = answer(&line).expect("an answer").assumed.join("; ");
    for said in ["viscosity index 95", "density 880", "438 cm² of housing", "still air: 17.5 W/m²K, between 15 and 20"]
    {
        assert!(open.contains(said), "{said}: {open}");
    }
    let given = answer(&format!("{line} --index 95 --density 880 --area 0.05m2 --coefficient 18")).expect("an answer");
    assert_eq!(given.assumed.len() + 4, answer(&line).expect("an answer").assumed.len(), "{:?}", given.assumed);
    assert_eq!(given.oils.len(), 1, "the oil can be drawn");
}

/// The warm bearing runs as one of the same bearing with the viscosity that its oil has at that temperature.
#[test]
fn a_warm_bearing_is_a_bearing_with_warm_oil() {
    let warm = format!("{MEASURES} --v40 68 --v100 8.6 --density 870 --ambient 20C --area 0.05m2 --coefficient 18");
    let at = number(&warm, "temperature_c");
    let thin = format!("viscosity --known 40C=68 --known 100C=8.6 --at {at}C");
    let Value::Rows(rows) = item(&thin, "viscosity").value else { panic!("rows") };
    let Value::Quantity(m2_s, _) = rows[0][1].value else { panic!("a viscosity") };
    let same = format!("{MEASURES} --viscosity {}mPa.s", m2_s * 870.0 * 1000.0);
    for key in ["eccentricity", "min_film_um", "friction_torque_n_m", "side_flow_ml_s", "peak_pressure_mpa"] {
        let (warm, same) = (number(&warm, key), number(&same, key));
        assert!((warm / same - 1.0).abs() < 1e-6, "{key}: {warm} {same}");
    }
}

#[test]
fn an_arc_is_solved_for_and_says_so() {
    let arc = answer("journal --ratio 1 --eccentricity 0.6 --arc 120deg").expect("an answer");
    assert!(arc.assumed.iter().any(|said| said.contains("Reynolds' equation")), "{:?}", arc.assumed);
    let whole = answer("journal --ratio 1 --eccentricity 0.6 --arc 360deg").expect("an answer");
    assert_eq!(Ok(whole), answer("journal --ratio 1 --eccentricity 0.6"));
}

#[test]
fn too_heavy_a_load_is_answered_with_a_warning() {
    let heavy = answer(&format!("{MEASURES} --viscosity 0.01mPa.s")).expect("an answer");
    assert_eq!(heavy.warnings.len(), 1);
    let regime = heavy.items.iter().find(|item| item.key == "regime").expect("it is said");
    assert_eq!(regime.value, Value::Text("boundary by any finish".to_owned()));
}

#[test]
fn forms_that_do_not_go_together_are_refused() {
    for (line, says) in [
        (format!("{MEASURES} --viscosity 20mPa.s --v40 68"), "give one of them"),
        (format!("{MEASURES} --v40 68 --v100 8.6 --index 95 --ambient 20C"), "say the same thing twice"),
        (format!("{MEASURES} --v40 68"), "--ambient is missing"),
        (format!("{MEASURES} --ratio 1"), "do not go together"),
        (
            "journal --ratio inf --eccentricity 0.6 --method short".to_owned(),
            "the length/diameter is beyond all numbers",
        ),
        (
            "petroff --diameter 50mm --length 50mm --clearance 0.05mm --speed 600rpm".to_owned(),
            "--viscosity is missing",
        ),
    ] {
        let refused = answer(&line);
        assert!(refused.as_ref().is_err_and(|refused| refused.contains(says)), "{line}: {refused:?}");
    }
}

#[test]
fn every_example_gives_an_answer() {
    for topic in ["journal", "petroff"].map(|name| Topic::named(name).expect("a topic")) {
        for example in topic.examples {
            assert!(answer(example).is_ok(), "{example}");
        }
    }
}
