//! Grades and numbers by which oils and greases are sold: what a viscosity is called, and what a name stands for.

use tribology::oil::{
    AgmaBand, AgmaNumber, EngineEdition, EngineGrade, GearEdition, GearGrade, IsoGrade, NlgiNumber, agma_band,
    classified, engine_limits, gear_limits, penetration, saybolt_number_grade,
};
use tribology::quantity::KinematicViscosity;

use super::given::{Given, Refused, read};
use super::{Calculated, Item, Topic, Value};

pub(super) const TOPIC: Topic = Topic {
    name: "grade",
    title: "Grades and numbers",
    about: "The ISO grade of a viscosity at 40 °C; or what a name stands for: VG 46, SAE 40, SAE 110 gear, SAE 20W, AGMA 4, Saybolt \
            465, NLGI 0.",
    words: Some(Topic::once("name", "a viscosity at 40 °C or a name", "VG 46")),
    options: &[Topic::once("year", "year of the label, for SAE numbers", "1965")],
    examples: &[
        "grade 57.9",
        "grade VG 46",
        "grade SAE 40",
        "grade SAE 20 --year 1965",
        "grade SAE 110 gear",
        "grade SAE 20W",
        "grade AGMA 4",
        "grade Saybolt 465",
        "grade NLGI 0",
    ],
    answer,
};

const NAMES: &str = "57.9, VG 46, SAE 40, SAE 110 gear, SAE 20W, AGMA 4, Saybolt 465 or NLGI 0";

fn answer(given: &Given<'_>) -> Result<Calculated, Refused> {
    let text = given.words()?;
    let lower = text.to_lowercase();
    let words: Vec<&str> = lower.split_whitespace().filter(|word| *word != "iso").collect();
    let unknown = || Refused::new(format!("\"{text}\" is no grade that is known here; write it like {NAMES}"));
    let found = match words.as_slice() {
        ["vg", number] => iso(number),
        ["sae", number] | ["sae", number, "gear" | "engine"] => sae(number, year(given)?),
        ["agma", number, ..] => agma(number),
        ["saybolt", number] => saybolt(number),
        ["nlgi", number] => nlgi(number),
        [first, ..] if first.starts_with(|sign: char| sign.is_ascii_digit() || ".,-".contains(sign)) => {
            return of_viscosity(&text);
        }
        _ => None,
    };
    found.ok_or_else(unknown)
}

fn year(given: &Given<'_>) -> Result<Option<i32>, Refused> {
    let Some(year) = given.number("year")? else { return Ok(None) };
    if year.fract() == 0.0 && (1900.0..2100.0).contains(&year) {
        Ok(Some(year as i32))
    } else {
        Err(Refused::new(format!("--year is \"{year}\", which is no year of an oil; write it like 1965")))
    }
}

fn of_viscosity(text: &str) -> Result<Calculated, Refused> {
    let mut found = Calculated::default();
    let v40: KinematicViscosity = read("the viscosity at 40 °C", text, Some("mm2/s"))?;
    let place = found.take(classified(v40)?);
    let number = |grade: IsoGrade| Value::Whole(i64::from(grade.number()));
    found.push(Item::new("iso_vg", "ISO VG", place.grade.map_or(Value::Nothing, number)));
    found.push(Item::new("nearest", "nearest ISO VG", number(place.nearest)));
    if place.grade.is_none() {
        for (key, label, neighbour) in
            [("below", "next thinner ISO VG", place.below), ("above", "next thicker ISO VG", place.above)]
        {
            found.push(Item::new(key, label, neighbour.map_or(Value::Nothing, number)));
        }
    }
    Ok(found)
}

fn iso(number: &str) -> Option<Calculated> {
    let grade = IsoGrade::of(number.parse().ok()?)?;
    let mut found = Calculated::default();
    // The working of the grade's own midpoint shows its limits.
    found.take(classified(grade.middle()).ok()?);
    found.push(Item::quantity("min_mm2_s", "lowest at 40 °C", grade.low(), "mm2/s"));
    found.push(Item::quantity("mid_mm2_s", "middle at 40 °C", grade.middle(), "mm2/s"));
    found.push(Item::quantity("max_mm2_s", "highest at 40 °C", grade.high(), "mm2/s"));
    Some(found)
}

/// The engine and the gear table share no number, so that the number alone tells which it is.
fn sae(number: &str, year: Option<i32>) -> Option<Calculated> {
    let number = number.to_uppercase();
    let mut found = Calculated::default();
    if let Some((grade, _)) = EngineGrade::ALL.into_iter().find(|(_, spelled)| *spelled == number) {
        let edition = year.map_or(EngineEdition::Since2013, EngineEdition::in_year);
        let limits = engine_limits(grade, edition)?;
        found.push(Item::quantity("min_mm2_s", "lowest at 100 °C", limits.low, "mm2/s"));
        match (limits.cranking, limits.pumping) {
            (Some(cranking), Some(pumping)) => {
                found.push(Item::quantity("cranking_c", "cranking at", cranking.0, "C"));
                found.push(Item::quantity("cranking_max_mpa_s", "cranking, at most", cranking.1, "mPa.s"));
                found.push(Item::quantity("pumping_c", "pumping at", pumping.0, "C"));
                found.push(Item::quantity("pumping_max_mpa_s", "pumping, at most", pumping.1, "mPa.s"));
            }
            _ => found.push(Item::maybe("max_mm2_s", "below, at 100 °C", limits.below, "mm2/s")),
        }
        found.assume(match edition {
            EngineEdition::Before1980 => "SAE J300 before 1980, limits in Saybolt seconds at 210 °F, from memory",
            EngineEdition::Before2013 => "SAE J300 before April 2013",
            EngineEdition::Since2013 => "SAE J300 since April 2013; for an old plate give --year",
        });
        return Some(found);
    }
    let (grade, _) = GearGrade::ALL.into_iter().find(|(_, spelled)| *spelled == number)?;
    let edition = year.map_or(GearEdition::From2019, GearEdition::in_year);
    let limits = gear_limits(grade, edition)?;
    found.push(Item::quantity("min_mm2_s", "lowest at 100 °C", limits.low, "mm2/s"));
    found.push(Item::maybe("max_mm2_s", "below, at 100 °C", limits.below, "mm2/s"));
    if let Some(thick_at) = limits.thick_at {
        found.push(Item::quantity("thick_c", "150 000 mPa·s not above", thick_at, "C"));
    }
    found.assume(match edition {
        GearEdition::Before2005 => "SAE J306 before 2005",
        GearEdition::From2005 => "SAE J306 of 2005",
        GearEdition::From2019 => "SAE J306 of 2019; for an old plate give --year",
    });
    Some(found)
}

fn agma(number: &str) -> Option<Calculated> {
    let bare = number.to_uppercase().replace("EP", "");
    let (number, _) = AgmaNumber::ALL.into_iter().find(|(_, spelled)| *spelled == bare)?;
    let mut found = Calculated::default();
    match found.take(agma_band(number)) {
        AgmaBand::Grade(grade) => {
            found.push(Item::new("iso_vg", "ISO VG", Value::Whole(i64::from(grade.number()))));
        }
        AgmaBand::At40(low, high) => {
            found.push(Item::new("iso_vg", "ISO VG", Value::Nothing));
            found.push(Item::quantity("min_mm2_s", "lowest at 40 °C", low, "mm2/s"));
            found.push(Item::quantity("max_mm2_s", "highest at 40 °C", high, "mm2/s"));
        }
        AgmaBand::At100(low, high) => {
            found.push(Item::new("iso_vg", "ISO VG", Value::Nothing));
            found.push(Item::quantity("min_100c_mm2_s", "lowest at 100 °C", low, "mm2/s"));
            found.push(Item::quantity("max_100c_mm2_s", "highest at 100 °C", high, "mm2/s"));
        }
    }
    found.assume("the edition of 1994; later ones name ISO grades");
    Some(found)
}

fn saybolt(number: &str) -> Option<Calculated> {
    let grade = saybolt_number_grade(number.parse().ok()?)?;
    let mut found = Calculated::default();
    found.push(Item::new("iso_vg", "ISO VG", Value::Whole(i64::from(grade.number()))));
    found.assume(
        "a label after ASTM D2422 and no conversion: so many seconds at 100 °F are a little thinner than this grade",
    );
    Some(found)
}

fn nlgi(number: &str) -> Option<Calculated> {
    let (number, _) = NlgiNumber::ALL.into_iter().find(|(_, spelled)| *spelled == number)?;
    let (low, high) = penetration(number);
    let mut found = Calculated::default();
    found.push(Item::new("penetration_min", "worked penetration from, 0.1 mm", Value::Whole(i64::from(low))));
    found.push(Item::new("penetration_max", "to, 0.1 mm", Value::Whole(i64::from(high))));
    found.assume("a cone sinking in at 25 °C after working, ASTM D217");
    Some(found)
}
