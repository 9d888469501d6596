//! The sums of `calc`, run as other programs run them. Expected values are rows of `reference/oil-properties.csv` and
//! `reference/contacts-and-circuits.csv`, named beside each check; those tables name their sources.

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

/// Rows of `reference/contacts-and-circuits.csv`.
#[test]
fn journal_bearings_by_numbers() {
    // d-journal-05 to 10, 19, 24, 32, 33, 35, 26, 42, 16.
    let near =
        |line: &str, pointer: &str, expected, allowed| near(&format!("journal {line}"), pointer, expected, allowed);
    for method in ["", " --method fast", " --method reynolds"] {
        let line = format!("--ratio 1 --eccentricity 0.6{method}");
        near(&line, "/sommerfeld", 0.121, 0.0012);
        near(&line, "/attitude_deg", 50.58, 0.6);
        near(&line, "/friction_variable", 3.22, 0.0322);
        near(&line, "/flow_variable", 4.33, 0.0217);
        near(&line, "/side_flow_ratio", 0.68, 0.0136);
        near(&line, "/pressure_ratio", 0.415, 0.0042);
        near(&line, "/film_ratio", 0.4, 1e-9);
    }
    near("--ratio 1 --eccentricity 0.5", "/load_number", 0.8903, 0.0053);
    near("--ratio 1/2 --eccentricity 0.8", "/attitude_deg", 32.938, 0.1);
    near("--ratio inf --eccentricity 0.6", "/sommerfeld", 0.0389, 0.0004);
    near("--ratio 1 --eccentricity 0.6 --arc 180deg", "/sommerfeld", 0.12787, 0.0008);
    near("--ratio 1 --eccentricity 0.6 --arc 180", "/attitude_deg", 44.6, 0.2);
    near("--ratio 1 --sommerfeld 0.135", "/eccentricity", 0.5726, 0.003);
    near("--ratio 1 --eccentricity 0.6 --method approximation", "/load_number", 1.29702, 1.3e-4);
    near("--ratio 0.25 --eccentricity 0.6 --method short", "/sommerfeld", 1.00048, 1e-5);
    assert!(result("journal --ratio 1 --eccentricity 0.6 --method approximation")["pressure_ratio"].is_null());
    assert_eq!(result("journal --ratio 1 --eccentricity 0.995")["regime"], "boundary by any finish");
}

/// Rows of `reference/contacts-and-circuits.csv`.
#[test]
fn journal_bearings_by_measures() {
    // d-journal-36 to 40: 4·10⁻⁶ reyn are 27.579 mPa·s.
    let line = "journal --diameter 1.5in --length 1.5in --clearance 0.003in --load 500lbf --speed 30/s --viscosity 27.579mPa.s";
    near(line, "/sommerfeld", 0.135, 0.0007);
    near(line, "/min_film_um", 25.4 * 0.63, 25.4 * 0.019);
    near(line, "/friction_torque_n_m", 2.62 * 0.112_985, 0.0059);
    near(line, "/side_flow_ml_s", 0.142 * 16.387, 0.047);
    near(line, "/peak_pressure_mpa", 529.0 * 0.006_894_8, 0.091);
    // f = M / (W R), and power = M ω, by hand from the torque above.
    near(line, "/friction_coefficient", 2.62 / (500.0 * 0.75), 1.4e-4);
    near(line, "/power_loss_w", 2.62 * 0.112_985 * 188.496, 1.2);
    // d-heat-01 to 03.
    let warm = "journal --diameter 50mm --length 50mm --clearance 0.05mm --load 2000N --speed 600rpm --v40 68 --v100 8.7 --density 880 \
                --ambient 20C --area 0.05m2 --coefficient 20 --method approximation";
    near(warm, "/temperature_c", 50.3093, 0.2);
    near(warm, "/eccentricity", 0.264_524, 0.002);
    near(warm, "/min_film_um", 18.3869, 0.092);
    // d-journal-43: 7.25·10⁻⁶ reyn are 49.987 mPa·s, 17.173 lbf are 76.389 N.
    let drag = "petroff --diameter 3in --length 3in --clearance 0.0015in --speed 400rpm --viscosity 49.987mPa.s";
    near(drag, "/friction_force_n", 76.389, 0.077);
    near(drag, "/friction_torque_n_m", 76.389 * 0.0381, 0.003);
}

#[test]
fn films_and_rolling_bearings() {
    // d-film-01, d-rolling-01, 02, 03, 06, 07, 08, 09, 10, 13, 14.
    near("film-ratio --film 1.2um --rq 0.3um --rq 0.4um", "/lambda", 2.4, 2.4e-6);
    assert_eq!(result("film-ratio --film 1.2um --rq 0.3um --rq 0.4um")["regime"], "mixed");
    assert_eq!(result("film-ratio --film 0.4um --rq 0.3um --rq 0.4um")["regime"], "boundary");
    assert_eq!(result("film-ratio --film 2um --rq 0.3um --rq 0.4um")["regime"], "full");
    let slow = "rolling --pitch-diameter 60mm --speed 500rpm";
    near(slow, "/reference_mm2_s", 33.4189, 0.034);
    near("rolling --pitch-diameter 100mm --speed 1500rpm", "/reference_mm2_s", 11.619, 0.012);
    assert!(result(slow)["kappa"].is_null());
    near(&format!("{slow} --viscosity 33.4189mm2/s"), "/kappa", 1.0, 1e-3);
    let life = |class, kappa, load| format!("rolling-life --class {class} --kappa {kappa} --contamination-load {load}");
    near(&life("radial-ball", 0.25, 0.5), "/a_iso", 0.411_668, 0.000_82);
    near(&life("radial-roller", 2.0, 0.5), "/a_iso", 3.0813, 0.0062);
    near(&life("thrust-ball", 1.0, 0.4), "/a_iso", 3.594_13, 0.0072);
    near(&life("thrust-roller", 1.5, 0.4), "/a_iso", 0.659_804, 0.0013);
    near(&life("radial-ball", 4.0, 2.0), "/a_iso", 50.0, 1e-9);
    // The chain of row 10: reference viscosity 15.0 mm²/s, so a ratio of 2; 0.5 · 0.67 / 2.5 is 0.134.
    let chain = life("radial-ball", 2.0, 0.134);
    near(&format!("{chain} --capacity 29.6kN --load 2.5kN --speed 1500rpm"), "/life_h", 125_707.0, 629.0);
    let drag =
        |nu, rpm| format!("rolling-friction --f0 2 --viscosity {nu}mm2/s --speed {rpm}rpm --pitch-diameter 60mm");
    near(&drag(30, 1000), "/torque_n_mm", 41.7091, 0.042);
    near(&drag(15, 100), "/torque_n_mm", 6.912, 0.0069);
}

#[test]
fn gears_hard_contacts_and_ways() {
    // d-gear-01, 02, 08, 09, 10; d-way-03: 0.06 in³ is 0.983 mL.
    near("gear --pitch-line 400ft/min", "/v40_mm2_s", 350.0, 0.35);
    near("gear --pitch-line 5m/s", "/v40_mm2_s", 223.123, 0.22);
    assert_eq!(result("gear --pitch-line 5m/s")["iso_vg"], 220);
    let film = "film --speed 1m/s --viscosity 40mPa.s --pressure-viscosity 20/GPa --modulus 230.77GPa --radius-x 10mm";
    near(&format!("{film} --contact line --load 100N/mm"), "/minimum_um", 0.273_117, 0.000_27);
    near(&format!("{film} --contact point --load 50N"), "/minimum_um", 0.139_47, 0.000_14);
    near(&format!("{film} --contact point --radius-y 10mm --load 50N"), "/central_um", 0.245_562, 0.000_25);
    near("way-oil --area 60in2", "/ml_h", 0.983, 0.001);
    near("way-oil --area 180cm2", "/ml_h", 0.4572, 1e-6);
    let upright = result("way-oil --area 180cm2 --orientation vertical");
    assert_eq!((&upright["iso_vg_low"], &upright["iso_vg_high"]), (&Value::from(220), &Value::from(220)));
    assert!(result("way-oil --area 180cm2").get("iso_vg_low").is_none());
}

#[test]
fn feeding() {
    // d-feed-01 both ways; its Reynolds number by hand, 4 Q / (π d ν) with 870 kg/m³.
    let tube = "tube --bore 3mm --length 0.5m --viscosity 60mPa.s --density 870";
    near(&format!("{tube} --pressure 5kPa"), "/flow_ml_min", 19.8804, 0.002);
    near(&format!("{tube} --pressure 5kPa"), "/reynolds", 2.0391, 0.001);
    near(&format!("{tube} --flow 19.8804mL/min"), "/pressure_kpa", 5.0, 0.0005);
    // The same oil by its kinematic viscosity.
    let kinematic = tube.replace("60mPa.s", "68.9655mm2/s");
    near(&format!("{kinematic} --pressure 5kPa"), "/flow_ml_min", 19.8804, 0.002);
    // d-feed-05, d-feed-09, d-feed-10, d-feed-11.
    near("standpipe --bore 12mm --film 0.5mm --viscosity 100mm2/s", "/flow_ml_min", 9.24255, 0.0093);
    near("pump --plunger 8mm --stroke 6mm --rate 40/min --efficiency 0.85", "/flow_ml_min", 10.2542, 0.001);
    let screen = "strainer --mesh 100 --wire 0.114mm --approach 10mm/s --viscosity 100mPa.s --density 880";
    near(screen, "/pressure_pa", 958.419, 9.6);
    near(&format!("{screen} --blocked 50%"), "/pressure_pa", 1917.23, 19.2);
    near(&format!("{screen} --blocked 50%"), "/clean_pa", 958.419, 9.6);
    // d-feed-08, a pint of 473.176 mL in 14 115 drops; and d-feed-07, thirty to the millilitre.
    near("drip --rate 10/min --drop 33.523uL", "/ml_h", 1.02019 * 473.176 / 24.0, 0.2);
    near("drip --rate 10/min", "/ml_h", 20.0, 3.0);
}

/// Ends and bends are named only where they take more than two in a hundred.
#[test]
fn what_ends_and_bends_take_is_said_where_it_matters() {
    let tube = "tube --bore 3mm --length 0.5m --viscosity 60mPa.s --pressure 5kPa";
    assert!(result(tube).get("flow_with_losses_ml_min").is_none());
    let bent = result(&format!("{tube} --bends 3"));
    let flow = |key: &str| bent[key].as_f64().expect("a flow");
    // Three bends of 12.5 bores each are 112.5 mm more of tube: a flow less by 18 %.
    let ratio = flow("flow_with_losses_ml_min") / flow("flow_ml_min");
    assert!((ratio - 500.0 / 612.5).abs() < 0.01, "{ratio}");
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
        ("bore =", "borr =", "did you mean `bore`?"),
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
        ("journal", "nothing is asked"),
        ("journal --ratio 1", "--eccentricity is missing; add it, such as --eccentricity 0.6"),
        ("journal --eccentricity 0.6", "--ratio is missing"),
        ("journal --ratio 1 --eccentricity 1.2", "the eccentricity is 1.2; it must be"),
        ("journal --ratio -1 --eccentricity 0.5", "the length/diameter is -1; it must be"),
        ("journal --ratio 1 --eccentricity 0.5 --sommerfeld 0.2", "leave one out"),
        ("journal --ratio 1 --eccentricity 0.5 --load 2kN", "numbers and measures do not go together"),
        ("journal --ratio 1 --eccentricity 0.5 --method guess", "it is fast, reynolds, short or approximation"),
        ("journal --ratio 1 --eccentricity 0.5 --method short --arc 90deg", "knows whole bearings only"),
        (
            "journal --diameter 50mm --length 50mm --clearance 0mm --load 2kN --speed 60rpm --viscosity 25mPa.s",
            "the clearance is 0 µm; it must be above 0 µm",
        ),
        (
            "journal --diameter 50mm --length 50mm --clearance 0.05mm --load 0N --speed 60rpm --viscosity 25mPa.s",
            "the load is 0 N; it must be above 0 N",
        ),
        (
            "journal --diameter 50mm --length 50mm --clearance 0.05mm --load 2kN --speed -60rpm --viscosity 25mPa.s",
            "the speed is -60 rpm; it must be above 0 rpm",
        ),
        ("journal --diameter 50mm --length 50mm --clearance 0.05mm --load 2kN --speed 60rpm", "--viscosity is missing"),
        (
            "journal --diameter 50mm --length 50mm --clearance 0.05mm --load 2kN --speed 9000rpm --v40 68 --ambient 20C --area 1cm2",
            "friction makes more heat than the housing gives off at any temperature from 20 °C to",
        ),
        (
            "petroff --diameter 50mm --length 50mm --clearance 0mm --speed 60rpm --viscosity 25mPa.s",
            "the clearance is 0 µm; it must be above 0 µm",
        ),
        ("grade heavy", "is no grade that is known here"),
        ("film-ratio --film 1um --rq 0.3um", "give --rq twice"),
        ("film-ratio --film -1um --rq 0.3um --rq 0.3um", "the film is -1 µm; it must be at least 0 µm"),
        ("rolling --pitch-diameter 65mm --speed 0rpm", "the speed is 0 rpm; it must be above 0 rpm"),
        ("rolling --speed 100rpm", "--pitch-diameter is missing; add it, such as --pitch-diameter 65mm"),
        ("rolling-life --class ball --kappa 1 --contamination-load 0.3", "it is radial-ball, radial-roller"),
        (
            "rolling-life --class radial-ball --kappa 0 --contamination-load 0.3",
            "the viscosity ratio is 0; it must be above 0",
        ),
        ("rolling-life --class radial-ball --kappa 1 --contamination-load -1", "the contamination load is -1"),
        ("rolling-friction --f0 0 --viscosity 22 --speed 2800rpm --pitch-diameter 45mm", "the friction factor is 0"),
        ("gear --pitch-line 0m/s", "the pitch-line speed is 0 mm/s; it must be above 0 mm/s"),
        ("film --contact face --speed 1m/s", "--contact is \"face\"; it is line or point"),
        ("way-oil --area -2cm2", "the area is -2 cm²; it must be above 0 mm²"),
        ("way-oil --area 2cm2 --weight fat", "it is one of medium, light, heavy"),
        ("rate --events 2.5 --exposure 120h", "--events is \"2.5\", where a whole number is wanted"),
        ("rate --events 3 --exposure 0h", "the exposure is 0 s; it must be above 0 s"),
        ("rate --events 3 --exposure 9h --prior-shape 2", "--prior-exposure is missing"),
        ("two-rates --before 9 --after 2/70h --sense up", "such as 9/90h"),
        ("two-rates --before 9/9h --after 2/7h --sense both", "--sense is \"both\"; it is up or down"),
        ("cusum --k 0.5", "--h is missing"),
        ("cusum --k 0.5 --h 99", "the decision limit h is 99; it must be 0.01 to 50"),
        ("cusum-poisson --k 2.88539 --h 8 --rate 4", "it must be 1 to 2000; round --k, such as to 2.9"),
        ("cusum-poisson --k 5.5 --h 8 --rate 0", "the rate is 0; it must be above 0"),
        (
            "blend --thin 32 --thick 220 --target 300",
            "the target viscosity is 300 mm²/s; it must be 32 mm²/s to 220 mm²/s",
        ),
        ("tube --bore 0mm --length 1m --viscosity 60 --pressure 5kPa", "the bore is 0 µm; it must be above 0 µm"),
        ("tube --bore 3mm --length -1m --viscosity 60 --pressure 5kPa", "the length is -1 m; it must be above"),
        ("tube --bore 3mm --length 1m --viscosity 60", "one of two is wanted"),
        ("tube --bore 3mm --length 1m --pressure 5kPa", "--viscosity is missing; add it, such as --viscosity 60mPa.s"),
        ("tube --bore 3mm --length 1m --viscosity 60 --pressure 5kPa --bends 1.5", "write a whole number of bends"),
        (
            "strainer --mesh 60 --wire 0.19mm --approach 20mm/s --viscosity 60 --blocked 100%",
            "the blocked part is 1; it must be 0 to 0.99",
        ),
        ("strainer --mesh 60 --wire 0.6mm --approach 20mm/s --viscosity 60", "the wire is 0.6 mm"),
        ("standpipe --bore 10mm --film 6mm --viscosity 150", "the film is 6 mm"),
        ("pump --plunger 6mm --stroke 4.5mm --rate 90/min --efficiency 1.2", "write a share like 25% or 0.25"),
        (
            "pump --plunger 6mm --stroke 4.5mm --rate 90/min --efficiency 120%",
            "the efficiency is 1.2; it must be 0 to 1",
        ),
        ("drip --rate 10/min --glass brass", "--glass is \"brass\"; it is air or liquid"),
        ("drip --rate 10/min --drop 0uL", "the drop is 0 µL; it must be above"),
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
    let life = "calc rolling-life --class radial-ball --contamination-load 0.3 --json --kappa";
    for (kappa, is_null) in [("0.05", true), ("6", false)] {
        let words: Vec<&str> = life.split(' ').chain([kappa]).collect();
        let answer = run(&words).well().json();
        assert_eq!(answer["result"]["a_iso"].is_null(), is_null, "{answer}");
        assert_eq!(answer["warnings"].as_array().map(Vec::len), Some(1), "{answer}");
    }
    // Water through a hose: the flow is no longer surely laminar.
    let tube =
        ["calc", "tube", "--bore", "10mm", "--length", "5m", "--viscosity", "1mPa.s", "--flow", "2L/min", "--json"];
    let answer = run(&tube).well().json();
    assert!(answer["warnings"].to_string().contains("Reynolds number"), "{answer}");
}

#[test]
fn drops_and_strokes_are_counted_by_the_minute_in_the_working() {
    let text = run(&["calc", "drip", "--rate", "10/min", "--working"]).well().out;
    assert!(text.contains("n = 10 /min") && text.contains("V = 33 µL"), "{text}");
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
