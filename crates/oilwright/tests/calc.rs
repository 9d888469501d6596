//! The sums of `calc`, run as other programs run them. Expected values are rows of `reference/oil-properties.csv`, named beside each
//! check; that table names their sources.

use advice::topic::{Asked, Form};
use serde_json::Value;

use crate::run::run;

/// The `result` of a line.
#[track_caller]
fn result(line: &str) -> Value {
    result_of(&line.split(' ').collect::<Vec<_>>())
}

/// The `result` of the words behind `calc`.
#[track_caller]
fn result_of(line: &[&str]) -> Value {
    let words: Vec<&str> = ["calc"].iter().chain(line).chain(&["--json"]).copied().collect();
    let answer = run(&words).well().json();
    let line = line.join(" ");
    for key in ["topic", "result", "assumed", "warnings", "working", "sources"] {
        assert!(answer.get(key).is_some(), "{line}: no {key}");
    }
    answer["result"].clone()
}

#[track_caller]
fn near(line: &str, pointer: &str, expected: f64, allowed: f64) {
    let result = result(line);
    let found = result.pointer(pointer).and_then(Value::as_f64);
    let found = found.unwrap_or_else(|| panic!("{line}: no number at {pointer} in {result}"));
    assert!((found - expected).abs() <= allowed, "{line}: {found}, not {expected}");
}

#[test]
fn viscosities_and_indices() {
    // OP-S12, OP-S13, OP-S16, OP-S20, OP-S32.
    let known = "viscosity --known 40C=68 --known 100C=8.53";
    near(&format!("{known} --at 0C --at 20C"), "/viscosity/0/mm2_s", 1080.1, 2.2);
    near(&format!("{known} --at 0C --at 20C"), "/viscosity/1/mm2_s", 218.4, 0.44);
    near(&format!("{known} --at 0C --at 20C"), "/viscosity/1/t_c", 20.0, 1e-9);
    near("viscosity --known 40C=68 --index 95 --at 0C", "/viscosity/0/mm2_s", 1080.1, 3.0);
    near(&format!("{known} --reach 1000mm2/s"), "/temperature_c", 0.83, 0.1);
    near("index --v40 73.30 --v100 8.86", "/viscosity_index", 92.43, 0.01);
    assert_eq!(result("index --v40 73.30 --v100 8.86")["rounded"], 92);
    assert_eq!(result("index --v40 22.83 --v100 5.05")["rounded"], 156);
    near("index --v40 68 --index 95", "/v100_mm2_s", 8.530, 0.02);
}

#[test]
fn a_temperature_below_zero_is_no_option() {
    near("viscosity --known 40C=32 --known 100C=5.29 --at -0C", "/viscosity/0/mm2_s", 351.9, 0.7);
}

#[test]
fn old_units() {
    // OP-S33, OP-S36, OP-S37, OP-S41, OP-S43, OP-S44.
    near("convert 100 mm2/s --at 100F --to SUS", "/value", 463.2, 0.47);
    near("convert 150 SUS --at 100F --to mm2/s", "/value", 31.892, 0.064);
    near("convert 300SUS --at 100F --to cSt", "/value", 64.643, 0.13);
    near("convert 75 R1 --to mm2/s", "/value", 17.11, 0.02);
    near("convert 150 R2 --to mm2/s", "/value", 367.05, 0.1);
    near("convert 8.79 degE --to mm2/s", "/value", 65.0, 2.6);
}

#[test]
fn grades_and_numbers() {
    // OP-S01 to S06, S45 to S50, S52 to S58.
    let gap = result("grade 57.9");
    assert!(gap["iso_vg"].is_null());
    assert_eq!((&gap["nearest"], &result("grade 65")["iso_vg"]), (&Value::from(68), &Value::from(68)));
    near("grade VG 32", "/min_mm2_s", 28.8, 1e-9);
    near("grade VG 7", "/mid_mm2_s", 6.8, 1e-9);
    near("grade VG 220", "/max_mm2_s", 242.0, 1e-9);
    near("grade SAE 30", "/min_mm2_s", 9.3, 1e-9);
    near("grade SAE 20 --year 2000", "/min_mm2_s", 5.6, 1e-9);
    near("grade SAE 90 gear", "/max_mm2_s", 18.5, 1e-9);
    near("grade SAE 10W", "/cranking_max_mpa_s", 7000.0, 1e-6);
    near("grade SAE 15W", "/pumping_c", -25.0, 1e-9);
    near("grade SAE 15W", "/pumping_max_mpa_s", 60_000.0, 1e-5);
    assert!(result("grade SAE 250")["max_mm2_s"].is_null());
    assert_eq!(result("grade AGMA 2")["iso_vg"], 68);
    assert_eq!(result("grade AGMA 8A Comp")["iso_vg"], 1000);
    assert_eq!(result("grade Saybolt 315")["iso_vg"], 68);
    let grease = result("grade NLGI 2");
    assert_eq!((&grease["penetration_min"], &grease["penetration_max"]), (&Value::from(265), &Value::from(295)));
}

#[test]
fn blends_densities_and_pressure() {
    // OP-S63, S64, S65, S67, S68; S73 with its thirty percent.
    near("blend --part 32=50% --part 220=50% --method refutas", "/mm2_s", 75.94, 0.16);
    near("blend --part 32=0.5 --part 220=0.5", "/mm2_s", 75.88, 0.16);
    near("blend --thin 32 --thick 220 --target 68 --method d7152", "/thick_percent", 44.20, 0.1);
    near("density --api 30", "/specific_gravity", 0.8762, 1e-4);
    near("density --rho15 880 --at 40C", "/kg_m3", 864.22, 0.3);
    near("pressure-viscosity --v40 68 --at 60C", "/alpha_per_gpa", 19.4, 5.0);
}

/// The rows of case N1, N4 and N5 of `reference/contacts-and-circuits.csv`, d-net-01, 06, 07, 08 and 09.
#[test]
fn networks_from_a_file() {
    let bench = tempfile::tempdir().expect("a folder");
    let path = bench.path().join("lines.toml").display().to_string();
    let solve = |text: &str| {
        std::fs::write(&path, text).expect("the folder can be written");
        result_of(&["network", &path])
    };
    let near = |found: &Value, expected: f64, rel: f64| {
        let found = found.as_f64().unwrap_or_else(|| panic!("{found} is no number"));
        assert!((found - expected).abs() <= rel * expected.abs(), "{found}, not {expected}");
    };
    let node = |id: &str, what: &str| format!("[[node]]\nid = \"{id}\"\n{what}\n");
    let tube = |id: &str, from: &str, to: &str, m: f64, mm: f64| {
        format!("[[tube]]\nid = \"{id}\"\nfrom = \"{from}\"\nto = \"{to}\"\nlength = \"{m} m\"\nbore = \"{mm} mm\"\n")
    };
    let head = |m: f64| format!("head = \"{m} m\"");
    let draw = |ml_min: f64| format!("draw = \"{ml_min} mL/min\"");
    // The node and the tube that are both called X are no trouble: each kind has its own names.
    let series = ["viscosity = \"68 mm2/s\"\ngravity = 9.80665\n".to_owned()]
        .into_iter()
        .chain([node("T", &head(0.5)), node("O", &head(0.0)), node("X", "")])
        .chain([tube("p1", "T", "X", 0.8, 4.0), tube("X", "X", "O", 0.4, 3.0)]);
    let found = solve(&series.collect::<String>());
    near(&found["flows_ml_min"]["p1"], 13.1693, 1e-5);
    near(&found["flows_ml_min"]["X"], 13.1693, 1e-5);
    assert_eq!(found["heads_m"]["T"].as_f64(), Some(0.5));
    assert!(found["residual"].as_f64().is_some_and(|residual| residual <= 1e-9), "{found}");
    // 4e-7 and 6e-7 m³/s are 24 and 36 mL/min.
    let ring = ["viscosity = \"46 mm2/s\"\n".to_owned()]
        .into_iter()
        .chain([node("T", &head(2.0)), node("A", ""), node("B", ""), node("C", &draw(24.0)), node("D", &draw(36.0))])
        .chain([tube("f", "T", "A", 0.5, 6.0), tube("ab", "A", "B", 0.6, 4.0), tube("bc", "B", "C", 0.4, 4.0)])
        .chain([tube("ad", "A", "D", 0.9, 4.0), tube("dc", "D", "C", 0.5, 3.0)]);
    let found = solve(&ring.collect::<String>());
    near(&found["flows_ml_min"]["ab"], 26.4136, 1e-5);
    near(&found["flows_ml_min"]["dc"], -2.41362, 1e-5);
    let pump = ["viscosity = \"150 mm2/s\"\n".to_owned()]
        .into_iter()
        .chain([node("P", &draw(-120.0)), node("M", "")])
        .chain([node("O1", &head(0.0)), node("O2", &head(0.0)), node("O3", &head(0.3)), node("O4", &head(0.1))])
        .chain([tube("d", "P", "M", 1.0, 6.0), tube("m1", "M", "O1", 0.5, 2.0), tube("m2", "M", "O2", 0.8, 2.0)])
        .chain([tube("m3", "M", "O3", 0.5, 3.0), tube("m4", "M", "O4", 1.5, 3.0)]);
    let found = solve(&pump.collect::<String>());
    near(&found["flows_ml_min"]["m1"], 14.9491, 1e-5);
    near(&found["heads_m"]["P"], 5.81401, 1e-4 / 5.8);
}

#[test]
fn a_file_of_oil_lines_that_cannot_be_is_told_by_line_and_name() {
    let bench = tempfile::tempdir().expect("a folder");
    let path = bench.path().join("lines.toml").display().to_string();
    let good = "viscosity = \"68 mm2/s\"\n[[node]]\nid = \"T\"\nhead = \"1 m\"\n[[node]]\nid = \"X\"\ndraw = \"1 mL/min\"\n\
                [[tube]]\nid = \"a\"\nfrom = \"T\"\nto = \"X\"\nlength = \"0.5 m\"\nbore = \"4 mm\"\n";
    for (from, to, says) in [
        ("head = \"1 m\"\n", "", "\"T\""),
        ("bore = \"4 mm\"\n", "", "the tube \"a\" has no `bore`"),
        ("0.5 m", "0 m", "`length` of the tube \"a\" is \"0 m\"; it must be above zero"),
        ("to = \"X\"", "to = \"Y\"", "line 11: `to` of the tube \"a\" is \"Y\", which is no node of this file"),
        ("id = \"X\"", "id = \"T\"", "as another node has it"),
        ("bore =", "boar =", "did you mean `bore`?"),
        ("68 mm2/s", "68", "without a unit"),
        ("[[node]]", "[[node]", "this line is not TOML"),
    ] {
        std::fs::write(&path, good.replacen(from, to, 1)).expect("the folder can be written");
        let refused = run(&["calc", "network", &path]);
        assert_eq!(refused.code, Some(2), "{to}: {}{}", refused.out, refused.err);
        assert!(refused.out.is_empty() && refused.err.contains(says), "{to}: {}", refused.err);
        assert_eq!(refused.err.trim_end().lines().count(), 1, "{to}: {}", refused.err);
    }
    let missing = run(&["calc", "network", "nowhere.toml"]);
    assert!(missing.code == Some(2) && missing.err.contains("nowhere.toml cannot be read"), "{}", missing.err);
}

/// d-stat-01, 04, 06, 08, 09, 10, 14 to 19 of `reference/contacts-and-circuits.csv`.
#[test]
fn series_of_counts() {
    near("rate --events 10 --exposure 120h", "/low_events", 4.795, 0.001);
    near("rate --events 10 --exposure 120h --confidence 95%", "/high_events", 18.39, 0.001);
    near("rate --events 10 --exposure 120", "/rate_per_h", 10.0 / 120.0, 1e-12);
    // 50 mL each time.
    near("rate --events 7 --exposure 120h", "/low_per_h", 1.1727 / 50.0, 0.001 * 1.1727 / 50.0);
    near("rate --events 7 --exposure 120h", "/high_per_h", 6.0094 / 50.0, 0.001 * 6.0094 / 50.0);
    let prior = "rate --events 7 --exposure 120h --prior-shape 2 --prior-exposure 100h";
    near(prior, "/rate_per_h", 0.0409091, 1e-6 * 0.0409091);
    near("two-rates --before 4/80h --after 12/100h --sense up", "/p_value", 0.0924569, 0.001 * 0.0924569);
    near("two-rates --before 4/80h --after 12/100h --sense up", "/log_glr", 1.2998, 1e-4 * 1.2998);
    near("cusum --k 0.5 --h 4", "/arl", 168.0, 0.006 * 168.0);
    near("cusum --k 0.5 --h 5 --shift 1", "/arl", 10.4, 0.006 * 10.4);
    near("cusum --k 0.5 --h 5 --shift 0 --one-sided", "/arl", 930.887, 0.931);
    near("cusum-poisson --k 3 --h 5 --rate 2", "/arl", 188.491, 0.0189);
    near("cusum-poisson --k 3 --h 5 --rate 4", "/arl", 5.20205, 5.3e-4);
    near("cusum-poisson --k 4 --h 6 --rate 6 --down", "/arl", 536.947, 0.0537);
}

#[test]
fn what_cannot_be_is_one_sentence_and_exit_2() {
    for (line, says) in [
        ("index --v40 8 --v100 9", "the viscosity at 40 °C is 8 mm²/s; it must be at least 9 mm²/s"),
        ("index --v40 68 --index -400", "the viscosity index is -400; it must be -200 to 500"),
        ("viscosity --known 40C=68 --known 100C=8.53 --at -400C", "the temperature is -400 °C"),
        ("blend --part 22=25% --part 100=85%", "the shares make 110 % together; they must make 100 %"),
        ("convert 300 --to mm2/s", "the reading is \"300\" without a unit; write it like 300 SUS"),
        ("convert 300 SUS --to mm2/s", "means nothing without its temperature"),
        ("viscosity --known 40=68 --at 0C", "without a unit"),
        ("viscosity --known 68 --at 0C", "such as 40C=68"),
        ("viscosity --known 40C=68", "nothing is asked"),
        ("viscosity --at 0C", "--known is missing; add it, such as --known 40C=68"),
        ("index --v40 68 --index high", "--index"),
        ("grade heavy", "is no grade that is known here"),
        ("rate --events 2.5 --exposure 120h", "--events is \"2.5\", where a whole number is wanted"),
        ("rate --events 3 --exposure 0h", "the exposure is 0 s; it must be above 0 s"),
        ("rate --events 3 --exposure 9h --prior-shape 2", "--prior-exposure is missing"),
        ("two-rates --before 9 --after 2/70h --sense up", "such as 9/90h"),
        ("two-rates --before 9/9h --after 2/7h --sense both", "--sense is \"both\"; it is up or down"),
        ("cusum --k 0.5", "--h is missing"),
        ("cusum --k 0.5 --h 99", "the decision limit h is 99; it must be 0.01 to 50"),
        ("cusum-poisson --k 5.5 --h 8 --rate 0", "the rate is 0; it must be above 0"),
        (
            "blend --thin 32 --thick 220 --target 300",
            "the target viscosity is 300 mm²/s; it must be 32 mm²/s to 220 mm²/s",
        ),
    ] {
        let mut words = vec!["calc"];
        words.extend(line.split(' '));
        let refused = run(&words);
        assert_eq!(refused.code, Some(2), "{line}: {}{}", refused.out, refused.err);
        assert!(refused.out.is_empty() && refused.err.contains(says), "{line}: {}", refused.err);
        assert_eq!(refused.err.trim_end().lines().count(), 1, "{line}: {}", refused.err);
    }
}

#[test]
fn outside_a_range_there_is_an_answer_with_a_warning() {
    let answer = run(&["calc", "convert", "30", "R1", "--to", "mm2/s", "--json"]).well().json();
    assert_eq!(answer["warnings"].as_array().map(Vec::len), Some(1), "{answer}");
    let text = run(&["calc", "convert", "30", "R1", "--to", "mm2/s", "--working"]).well().out;
    assert!(text.contains("Mind: ") && text.contains("How this was worked out:"), "{text}");
}

/// The examples in the help are lines that work.
#[test]
fn every_example_gives_an_answer() {
    for topic in advice::topic::TOPICS {
        assert!(!topic.examples.is_empty(), "{}", topic.name);
        let bench = tempfile::tempdir().expect("a folder");
        for example in topic.examples {
            let mut words: Vec<String> = example.split(' ').map(str::to_owned).collect();
            if let Some(Asked { example: name, form: Form::File(content), .. }) = topic.words {
                let path = bench.path().join(name).display().to_string();
                std::fs::write(&path, content).expect("the folder can be written");
                words.iter_mut().filter(|word| *word == name).for_each(|word| *word = path.clone());
            }
            result_of(&words.iter().map(String::as_str).collect::<Vec<_>>());
        }
        let help = run(&["calc", topic.name, "--help"]).well().out;
        for asked in topic.options {
            assert!(help.contains(&format!("--{}", asked.name)), "{}: {}", topic.name, asked.name);
        }
    }
}
