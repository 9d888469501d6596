//! Oils held against `reference/oil-properties.csv`, where each row names its source and how far to trust it.
//!
//! `check` is the only code that touches the crate. Rows about old names are held where those are reasoned about; rows about the inner quantities `Z` and Refutas' number beside them in the crate.

use tribology::feed::{Feed, POUR_MARGIN, limit};
use tribology::oil::{
    AgmaBand, AgmaNumber, EngineEdition, EngineGrade, EngineLimits, GearEdition, GearGrade, GearLimits, IsoGrade,
    NlgiNumber, Part, ViscosityLine, agma_band, blend_d7152, blend_refutas, blend_wright, classified, density_at,
    density_rule_of_thumb, dynamic_viscosity, engine_limits, gear_limits, penetration,
    pressure_viscosity_so_klaus_1980, pressure_viscosity_wooster, reference_oils, relative_density,
    saybolt_furol_seconds, saybolt_number_grade, saybolt_seconds, share_d7152, v100_of_index, viscosity_index,
    viscosity_of_engler, viscosity_of_redwood_1, viscosity_of_redwood_2, viscosity_of_saybolt,
    viscosity_under_pressure, volume_correction_60f,
};
use tribology::quantity::{Density, DynamicViscosity, KinematicViscosity, Pressure, PressureViscosity, Temperature};
use tribology::root::root;
use tribology::{Answer, Error};

use super::Row;

/// Quantities that other tests hold: `Z` and Refutas' number in the crate, old names in the reasoning.
const ELSEWHERE: [&str; 3] = ["d341_Z_full", "refutas_vbn", "nearest_iso_vg"];

/// What a row asks and what it gives: a number, or words.
#[derive(Debug)]
enum Found {
    Number(f64),
    Words(String),
}

#[track_caller]
fn check(row: &Row) {
    let found = found(row);
    match (row.expected.parse::<f64>(), found) {
        (Ok(expected), Found::Number(found)) => {
            let (off, allowed) = ((found - expected).abs(), allowed(&row.tolerance, expected));
            assert!(off <= allowed, "{}: {} is {found} {}, not {expected}", row.id, row.inputs, row.unit);
        }
        (_, Found::Words(found)) => assert_eq!(found, row.expected, "{}: {}", row.id, row.inputs),
        (Err(_), Found::Number(found)) => panic!("{}: {found} for {}", row.id, row.expected),
    }
}

fn allowed(tolerance: &str, expected: f64) -> f64 {
    match tolerance.split_once(' ') {
        // The last digit of the decimal form of the expected value.
        None if tolerance == "exact" => 1e-12 * expected.abs(),
        Some(("abs", size)) => size.parse().expect("a size is a number"),
        Some(("rel", size)) => {
            let percent: f64 = size.trim_end_matches('%').parse().expect("a size is a percentage");
            percent / 100.0 * expected.abs()
        }
        _ => panic!("a tolerance is exact, abs or rel, not {tolerance}"),
    }
}

/// The inputs of a row: numbers by their names, units left off.
struct Inputs<'a>(&'a str);

impl Inputs<'_> {
    fn text(&self, name: &str) -> &str {
        let part = self.0.split(';').find_map(|part| part.trim().strip_prefix(name)?.strip_prefix('='));
        part.unwrap_or_else(|| panic!("no {name} in {}", self.0)).trim()
    }

    fn number(&self, name: &str) -> f64 {
        let text = self.text(name);
        let end = text.find(|sign: char| !(sign.is_ascii_digit() || "-.".contains(sign))).unwrap_or(text.len());
        text[..end].parse().unwrap_or_else(|_| panic!("{name} is no number in {}", self.0))
    }

    fn temperature(&self, name: &str) -> Temperature {
        let number = self.number(name);
        if self.text(name).ends_with('F') {
            Temperature::from_fahrenheit(number)
        } else {
            Temperature::from_celsius(number)
        }
    }

    fn kinematic(&self, name: &str) -> KinematicViscosity {
        KinematicViscosity::from_mm2_s(self.number(name))
    }

    /// The line through the two points of a row; two rows were published with 273 for 273.15.
    fn line(&self) -> ViscosityLine {
        let zero = if self.0.contains("zero=273 K") { 0.15 } else { 0.0 };
        let at = |name| Temperature::from_kelvin(self.temperature(name).kelvin() - zero);
        let points = ((at("t1"), self.kinematic("kv1")), (at("t2"), self.kinematic("kv2")));
        value(ViscosityLine::through(points.0, points.1))
    }

    /// Every number that stands between `before` and a sign that is no digit.
    fn all(&self, before: &str) -> Vec<f64> {
        let parts = self.0.split(before).skip(1);
        parts
            .map(|part| part.split([' ', ')', ';']).next().and_then(|text| text.parse().ok()).expect("a number"))
            .collect()
    }
}

fn value<T>(answer: Result<Answer<T>, Error>) -> T {
    answer.expect("a row asks what can be answered").value
}

fn engine(grade: &str, edition: EngineEdition) -> EngineLimits {
    let grade = EngineGrade::ALL.into_iter().find(|(_, spelled)| *spelled == grade).expect("a grade of the table");
    engine_limits(grade.0, edition).expect("the edition has the grade")
}

fn gear(grade: &str) -> GearLimits {
    let grade = GearGrade::ALL.into_iter().find(|(_, spelled)| *spelled == grade).expect("a grade of the table");
    gear_limits(grade.0, GearEdition::From2019).expect("the edition has the grade")
}

fn grade_words(grade: Option<IsoGrade>) -> Found {
    Found::Words(grade.map_or("no grade".to_owned(), |grade| format!("VG {}", grade.number())))
}

fn below(limit: Option<KinematicViscosity>) -> Found {
    // "12.5" and not "12.500000000000002": the limit has one decimal.
    Found::Words(format!("<{:.1}", limit.expect("the grade is closed above").mm2_s()))
}

fn found(row: &Row) -> Found {
    let of = Inputs(&row.inputs);
    let grade = |name: &str| IsoGrade::of(of.number(name) as u32).expect("a grade");
    let f100 = Temperature::from_fahrenheit(100.0);
    Found::Number(match row.quantity.as_str() {
        "iso_vg_min" => grade("vg").low().mm2_s(),
        "iso_vg_max" => grade("vg").high().mm2_s(),
        "iso_vg_midpoint" => grade("vg").middle().mm2_s(),
        "iso_vg_classify" => return grade_words(value(classified(of.kinematic("kv40"))).grade),
        "d341_viscosity" | "d341_viscosity_low" => value(of.line().viscosity(of.temperature("t"))).mm2_s(),
        "d341_constant_A" => of.line().a(),
        "d341_constant_B" => of.line().b(),
        "d341_temperature_for_viscosity" => value(of.line().temperature(of.kinematic("kv"))).celsius(),
        "viscosity_index" if row.expected == "undefined" => {
            let refused = viscosity_index(of.kinematic("kv40"), of.kinematic("kv100"));
            assert!(matches!(refused, Err(Error::OutOfRange { .. })), "{}: {refused:?}", row.id);
            return Found::Words("undefined".to_owned());
        }
        "viscosity_index" => {
            let index = value(viscosity_index(of.kinematic("kv40"), of.kinematic("kv100")));
            if row.inputs.contains("rounded") { index.round_ties_even() } else { index }
        }
        "vi_L" => value(reference_oils(of.kinematic("kv100"))).index_0.mm2_s(),
        "vi_H" => value(reference_oils(of.kinematic("kv100"))).index_100.mm2_s(),
        "kv100_from_vi" => value(v100_of_index(of.kinematic("kv40"), of.number("vi"))).mm2_s(),
        "sus_from_kv" => value(saybolt_seconds(of.kinematic("kv"), of.temperature("temp"))),
        "kv_from_sus" => value(viscosity_of_saybolt(of.number("sus"), of.temperature("temp"))).mm2_s(),
        "furol_from_kv" => value(saybolt_furol_seconds(of.kinematic("kv"), of.temperature("temp"))),
        "kv_from_redwood1" => value(viscosity_of_redwood_1(of.number("seconds"))).mm2_s(),
        "kv_from_redwood2" => value(viscosity_of_redwood_2(of.number("seconds"))).mm2_s(),
        "kv_from_engler" => value(viscosity_of_engler(of.number("degrees"))).mm2_s(),
        "sae_j300_kv100_min" if row.inputs.contains("before 2013") => {
            engine(&of.number("grade").to_string(), EngineEdition::Before2013).low.mm2_s()
        }
        "sae_j300_kv100_min" => engine(&of.number("grade").to_string(), EngineEdition::Since2013).low.mm2_s(),
        "sae_j300_kv100_max" => return below(engine(of.text("grade"), EngineEdition::Since2013).below),
        "sae_j300_cranking_max" => limit_at(engine(of.text("grade"), EngineEdition::Since2013).cranking, &of),
        "sae_j300_pumping_max" => limit_at(engine(of.text("grade"), EngineEdition::Since2013).pumping, &of),
        "sae_old_kv_min_210F" => engine(&of.number("grade").to_string(), EngineEdition::Before1980).low.mm2_s(),
        "sae_j306_kv100_min" => gear(of.text("grade")).low.mm2_s(),
        "sae_j306_kv100_max" => return below(gear(of.text("grade")).below),
        "sae_j306_temp_150000cP" => gear(of.text("grade")).thick_at.expect("a winter grade").celsius(),
        "agma_to_iso_vg" => {
            let wanted = of.text("agma").trim_end_matches(" Comp");
            let number = AgmaNumber::ALL.into_iter().find(|(_, spelled)| *spelled == wanted).expect("a number").0;
            let AgmaBand::Grade(grade) = agma_band(number).value else { panic!("{}: no grade", row.id) };
            return grade_words(Some(grade));
        }
        "nlgi_penetration_range" => {
            let wanted = of.text("grade");
            let number = NlgiNumber::ALL.into_iter().find(|(_, spelled)| *spelled == wanted).expect("a number").0;
            let (low, high) = penetration(number);
            return Found::Words(format!("{low}-{high}"));
        }
        "saybolt_number_to_iso_vg" => return grade_words(saybolt_number_grade(of.number("number") as u32)),
        "kv40_from_sus100F" => {
            let at_100f = value(viscosity_of_saybolt(of.number("sus"), f100)).mm2_s();
            let through = |v40: f64| {
                let line = value(ViscosityLine::with_index(KinematicViscosity::from_mm2_s(v40), of.number("vi")));
                line.at(f100).mm2_s() - at_100f
            };
            root("viscosity at 40 °C", [0.5 * at_100f, at_100f], 1e-9, through).expect("it lies between").at
        }
        "refutas_blend" => value(blend_refutas(&halves(&of))).mm2_s(),
        "d7152_astm_blend" => value(blend_d7152(&halves(&of))).mm2_s(),
        "d7152_astm_fraction" => {
            let (thin, thick, target) = (of.text("thin kv"), of.text("thick kv"), of.text("target kv"));
            let [thin, thick, target] = [thin, thick, target].map(|text| {
                let number = text.split(' ').next().and_then(|number| number.parse().ok()).expect("a number");
                KinematicViscosity::from_mm2_s(number)
            });
            100.0 * value(share_d7152(thin, thick, target))
        }
        "d7152_wright_blend" => {
            let at = |celsius, mm2_s| (Temperature::from_celsius(celsius), KinematicViscosity::from_mm2_s(mm2_s));
            let (cold, warm) = (of.all("("), of.all(" at 40 C; "));
            let lines = cold.into_iter().zip(warm).map(|(v40, v100)| Part {
                share: 0.5,
                oil: value(ViscosityLine::through(at(40.0, v40), at(100.0, v100))),
            });
            value(blend_wright(&lines.collect::<Vec<_>>(), Temperature::from_celsius(40.0))).mm2_s()
        }
        "sg_from_api" => value(relative_density(of.number("api"))),
        "density_at_t_api" => value(density_at(Density::from_kg_m3(of.number("rho15")), of.temperature("t"))).kg_m3(),
        "density_at_t_simple" => {
            value(density_rule_of_thumb(Density::from_kg_m3(of.number("rho15")), of.temperature("t"))).kg_m3()
        }
        "vcf_60F" => value(volume_correction_60f(Density::from_kg_m3(of.number("rho60")), of.temperature("t"))),
        "dynamic_from_kinematic" => {
            value(dynamic_viscosity(of.kinematic("kv"), Density::from_kg_m3(of.number("rho")))).mpa_s()
        }
        "pressure_viscosity_alpha" | "wooster_alpha" => {
            value(pressure_viscosity_wooster(DynamicViscosity::from_mpa_s(of.number("dynamic")))).per_gpa()
        }
        "so_klaus_alpha" => {
            let density = Density::from_kg_m3(1000.0 * of.number("rho"));
            value(pressure_viscosity_so_klaus_1980(of.kinematic("kv"), of.number("b"), density)).per_gpa()
        }
        "barus_viscosity" => {
            let (eta, alpha) = (of.number("eta0"), of.number("alpha"));
            let (eta, alpha) = (DynamicViscosity::from_mpa_s(eta), PressureViscosity::from_per_gpa(alpha));
            value(viscosity_under_pressure(eta, alpha, Pressure::from_gpa(of.number("p")))).mpa_s()
        }
        "gear_pump_start_max" => limit(Feed::PumpStart).most.mm2_s(),
        "pumped_system_caution_max" => limit(Feed::Pump).most.mm2_s(),
        "wick_feed_max" => limit(Feed::Wick).most.mm2_s(),
        "pour_point_margin" => POUR_MARGIN.kelvin(),
        other => panic!("{}: nothing here answers {other}", row.id),
    })
}

fn halves(of: &Inputs<'_>) -> Vec<Part<KinematicViscosity>> {
    let parts = of.all("kv=").into_iter();
    parts.map(|mm2_s| Part { share: 0.5, oil: KinematicViscosity::from_mm2_s(mm2_s) }).collect()
}

fn limit_at(limit: Option<(Temperature, DynamicViscosity)>, of: &Inputs<'_>) -> f64 {
    let (at, most) = limit.expect("a winter grade");
    assert!((at.celsius() - of.temperature("temp").celsius()).abs() < 1e-9, "the limit is for another temperature");
    most.mpa_s()
}

#[test]
fn oils_agree_with_their_sources() {
    let rows = super::rows("oil-properties.csv");
    assert_eq!(rows.len(), 80, "the table has lost rows");
    let (elsewhere, here): (Vec<_>, Vec<_>) = rows.iter().partition(|row| ELSEWHERE.contains(&row.quantity.as_str()));
    assert_eq!((here.len(), elsewhere.len()), (75, 5));
    here.into_iter().for_each(check);
}
