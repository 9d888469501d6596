//! The possibilities that the words leave open, each worked out as a band at 40 °C, and what would settle which it is.

use tribology::math;
use tribology::oil::{IsoGrade, SAYBOLT_NUMBERS, Scale, ViscosityLine};
use tribology::quantity::{KinematicViscosity, Temperature};
use tribology::{Answer, Standing, Step, Symbol};

use super::sae::{self, Era, Limit};
use super::spec::{Heat, Wanted};
use super::{Known, Written};

/// One way in which the words may be meant.
#[derive(Clone, Debug, PartialEq)]
pub struct Possibility {
    /// What is taken for so, without a full stop.
    pub says: String,
    /// The lowest viscosity at 40 °C.
    pub low: KinematicViscosity,
    /// The highest.
    pub high: KinematicViscosity,
}

/// Something that would narrow the band.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ask {
    /// At which temperature the reading was taken.
    Temperature,
    /// On which scale it was read.
    Scale,
    /// The year of the plate.
    Year,
    /// How good the oil was: its viscosity index.
    Index,
    /// A statement with a number in it.
    Number,
}

impl Ask {
    /// The question, as a sentence.
    #[must_use]
    pub fn question(self) -> &'static str {
        match self {
            Self::Temperature => {
                "At which temperature was it read? Write it behind the reading, such as 300 SUS at 100 F."
            }
            Self::Scale => {
                "Which seconds are these? Saybolt in America, Redwood in Britain: write the word, or say the country."
            }
            Self::Year => "Of which year is the plate or the book? The same number meant other oils at other times.",
            Self::Index => {
                "How good was the oil? Old ones had a viscosity index of 0 to 95; at high temperatures that matters."
            }
            Self::Number => "Is there a number, a viscosity or an SAE number near the name? A name alone says little.",
        }
    }
}

/// All that was worked out.
#[derive(Default)]
pub(super) struct WorkedOut {
    pub(super) possible: Vec<Possibility>,
    pub(super) asks: Vec<Ask>,
    pub(super) steps: Vec<Step>,
    /// The grade that practice usually takes.
    pub(super) usual: Option<IsoGrade>,
}

/// SAE numbers with the grade that practice usually takes (common practice, from memory).
const USUAL_SAE: [(u32, u32); 8] =
    [(10, 32), (20, 68), (30, 100), (40, 150), (50, 220), (60, 320), (90, 220), (140, 460)];

/// Viscosity indices of oils before 1950, and since.
const INDEX_BEFORE_1950: [f64; 2] = [0.0, 95.0];
const INDEX_SINCE_1950: [f64; 2] = [80.0, 105.0];
/// A machine oil lies between these, in mm²/s at 40 °C; what lies beyond is left out when the words may mean something else.
const SENSIBLE: [f64; 2] = [1.9, 1700.0];
/// A band wider than this because of the index alone is worth a question.
const WIDE: f64 = 1.3;

/// Works out what was written.
pub(super) fn worked_out(written: &Written, known: &Known) -> WorkedOut {
    let mut out = WorkedOut::default();
    let index = known.index.map_or_else(
        || if known.year.is_some_and(|year| year >= 1950) { INDEX_SINCE_1950 } else { INDEX_BEFORE_1950 },
        |index| [index, index],
    );
    match &written.wanted {
        None => {}
        Some(Wanted::Reading { scale, low, high, at }) => readings(&mut out, *scale, (*low, *high), *at, index),
        Some(Wanted::Sae { number, winter, used }) => {
            let eras: Vec<Era> = known.year.map_or(Era::ALL.to_vec(), |year| vec![Era::of(year)]);
            for era in eras {
                let Some(limits) = sae::limits(*number, *winter, *used, era, known.year) else { continue };
                // Later oils are better whatever the plate was made for.
                let index = if era == Era::Modern && known.index.is_none() { INDEX_SINCE_1950 } else { index };
                let standing = if era == Era::Modern { Standing::Standard } else { Standing::FromMemory };
                out.steps.push(table_step("SAE number", f64::from(*number), limits.0, "sae-numbers", standing));
                let says = format!("SAE {number} {}", era.says());
                limited(&mut out, says, limits, index);
                if era == Era::Saybolt && known.year.is_some() && *number <= 50 {
                    out.usual = labelled(10.0 * f64::from(*number));
                }
            }
            if out.usual.is_none() {
                out.usual = USUAL_SAE.iter().find(|(sae, _)| sae == number).and_then(|(_, vg)| IsoGrade::of(*vg));
            }
            if known.year.is_none() && out.possible.len() > 1 {
                out.asks.push(Ask::Year);
            }
        }
        Some(Wanted::Iso(grade) | Wanted::Agma(grade)) => {
            let result = Symbol { symbol: "VG", si: f64::from(grade.number()), unit: "" };
            out.steps.push(Step {
                name: "Grade",
                formula: "limits of the grade, 0.9 and 1.1 times its midpoint",
                symbols: vec![],
                result,
                source: "iso-3448",
                standing: Standing::Standard,
            });
            let says = format!("ISO VG {}", grade.number());
            out.possible.push(Possibility { says, low: grade.low(), high: grade.high() });
        }
        Some(Wanted::At50(number)) => {
            let heat = Temperature::from_celsius(50.0);
            out.steps.push(table_step(
                "Number of a national series",
                *number,
                Limit::At100(KinematicViscosity::from_mm2_s(*number)),
                "national-50c",
                Standing::FromMemory,
            ));
            let says = format!("the number is mm²/s at 50 °C, {number} give or take a tenth");
            reading(&mut out, says, Scale::Kinematic, (0.9 * number, 1.1 * number), heat, index);
        }
        Some(Wanted::Navy { low, high, fahrenheit }) => {
            let heat = Temperature::from_fahrenheit(*fahrenheit);
            let says = format!("US Navy, {low:.0} to {high:.0} Saybolt seconds at {fahrenheit:.0} °F");
            let limit = Limit::Seconds(*low, *fahrenheit);
            out.steps.push(table_step("US Navy name or symbol", *low, limit, "us-navy-1920", Standing::Handbook));
            reading(&mut out, says, Scale::SayboltUniversal, (*low, *high), heat, index);
        }
        Some(Wanted::Named(low, high)) => {
            let name = written.name.map_or("the name", |name| name.says);
            let [low, high] = [*low, *high].map(KinematicViscosity::from_mm2_s);
            out.steps.push(table_step("Name", low.mm2_s(), Limit::At100(low), "old-names", Standing::FromMemory));
            out.possible.push(Possibility { says: name.to_owned(), low, high });
            out.asks.push(Ask::Number);
        }
    }
    out
}

fn readings(out: &mut WorkedOut, scale: Option<Scale>, range: (f64, f64), at: Option<Heat>, index: [f64; 2]) {
    let scales = scale.map_or(vec![Scale::SayboltUniversal, Scale::Redwood1], |scale| vec![scale]);
    if scale.is_none() {
        out.asks.push(Ask::Scale);
    }
    if at.is_none() {
        out.asks.push(Ask::Temperature);
    }
    let mut all = WorkedOut::default();
    for scale in scales {
        let heats = at.map_or_else(|| usual_heats(scale), |heat| vec![heat.on(scale)]);
        for heat in heats {
            let says = said(scale, range, heat, at);
            reading(&mut all, says, scale, range, heat, index);
            if scale == Scale::SayboltUniversal && (heat.fahrenheit() - 100.0).abs() < 0.5 && at.is_some() {
                out.usual = labelled(math::sqrt(range.0 * range.1));
            }
        }
    }
    let sensible = |one: &Possibility| {
        let centre = math::sqrt(one.low.mm2_s() * one.high.mm2_s());
        (SENSIBLE[0]..=SENSIBLE[1]).contains(&centre)
    };
    if all.possible.iter().any(sensible) {
        all.possible.retain(sensible);
    }
    let wide = all.possible.iter().any(|one| one.high.mm2_s() / one.low.mm2_s() > WIDE * range.1 / range.0);
    if wide && index[0] < index[1] {
        out.asks.push(Ask::Index);
    }
    out.possible.append(&mut all.possible);
    out.steps.append(&mut all.steps);
}

/// The grade whose Saybolt number is nearest by ratio to so many seconds at 100 °F: these numbers are labels of the same grades.
fn labelled(seconds: f64) -> Option<IsoGrade> {
    let apart = |number: u32| math::ln(f64::from(number) / seconds).abs();
    let nearest = SAYBOLT_NUMBERS.into_iter().min_by(|a, b| apart(a.0).total_cmp(&apart(b.0)))?;
    IsoGrade::of(nearest.1)
}

/// The temperatures at which a scale was usually read.
fn usual_heats(scale: Scale) -> Vec<Temperature> {
    let fahrenheit = |degrees: &[f64]| degrees.iter().map(|one| Temperature::from_fahrenheit(*one)).collect();
    let celsius = |degrees: &[f64]| degrees.iter().map(|one| Temperature::from_celsius(*one)).collect();
    match scale {
        Scale::SayboltUniversal => fahrenheit(&[100.0, 130.0, 210.0]),
        Scale::SayboltFurol => fahrenheit(&[122.0]),
        Scale::Redwood1 | Scale::Redwood2 => fahrenheit(&[70.0, 140.0, 200.0]),
        Scale::Engler => celsius(&[20.0, 50.0, 100.0]),
        Scale::Kinematic => celsius(&[40.0, 50.0, 100.0]),
    }
}

fn said(scale: Scale, (low, high): (f64, f64), heat: Temperature, at: Option<Heat>) -> String {
    let range = if low < high { format!("{low} to {high}") } else { low.to_string() };
    let degrees = match scale {
        Scale::Engler | Scale::Kinematic => format!("{:.0} °C", heat.celsius()),
        _ => format!("{:.0} °F", heat.fahrenheit()),
    };
    let guessed = match at {
        None => ", if it was read there",
        Some(Heat { letter: None, .. }) => ", the letter of the degrees being taken",
        Some(_) => "",
    };
    let sort = match scale {
        Scale::Kinematic => "mm²/s",
        Scale::SayboltUniversal => "Saybolt seconds",
        Scale::SayboltFurol => "Saybolt Furol seconds",
        Scale::Redwood1 => "Redwood seconds",
        Scale::Redwood2 => "Redwood No. 2 seconds",
        Scale::Engler => "Engler degrees",
    };
    format!("{range} {sort} at {degrees}{guessed}")
}

/// A range on a scale at a temperature.
fn reading(out: &mut WorkedOut, says: String, scale: Scale, range: (f64, f64), heat: Temperature, index: [f64; 2]) {
    let spread = scale.spread();
    let ends = [(range.0, 1.0 - spread), (range.1, 1.0 + spread)].map(|(reading, factor)| {
        let at_heat = scale.viscosity(reading, heat).ok()?;
        let widened = KinematicViscosity::from_mm2_s(at_heat.value.mm2_s() * factor);
        Some((widened, heat, at_heat))
    });
    if let [Some(low), Some(high)] = ends {
        between(out, says, (low, high), index);
    }
}

/// Limits of a table.
fn limited(out: &mut WorkedOut, says: String, limits: (Limit, Limit), index: [f64; 2]) {
    let end = |limit: Limit| match limit {
        Limit::Seconds(seconds, fahrenheit) => {
            let heat = Temperature::from_fahrenheit(fahrenheit);
            let found = Scale::SayboltUniversal.viscosity(seconds, heat).ok()?;
            Some((found.value, heat, found))
        }
        Limit::At100(viscosity) => {
            let nothing = Answer { value: viscosity, warnings: vec![], steps: vec![] };
            Some((viscosity, Temperature::from_celsius(100.0), nothing))
        }
    };
    if let (Some(low), Some(high)) = (end(limits.0), end(limits.1)) {
        between(out, says, (low, high), index);
    }
}

type End = (KinematicViscosity, Temperature, Answer<KinematicViscosity>);

/// The band between two ends, over the indices that the oil may have had.
fn between(out: &mut WorkedOut, says: String, (low, high): (End, End), index: [f64; 2]) {
    let forty = Temperature::from_celsius(40.0);
    let mut band: Option<(f64, f64)> = None;
    let mut steps = Vec::new();
    for (viscosity, heat, found) in [low, high] {
        steps.extend(found.steps);
        for index in index {
            // A thin oil may have no viscosity index as low as that; the other end of the range then stands alone.
            let Ok(line) = ViscosityLine::through_with_index((heat, viscosity), index) else { continue };
            let v40 = line.value.at(forty).mm2_s();
            steps.extend(line.steps.into_iter().take(1));
            band = Some(band.map_or((v40, v40), |(low, high)| (low.min(v40), high.max(v40))));
        }
    }
    if let Some((low, high)) = band {
        steps.dedup();
        out.steps.append(&mut steps);
        let [low, high] = [low, high].map(KinematicViscosity::from_mm2_s);
        out.possible.push(Possibility { says, low, high });
    }
}

fn table_step(name: &'static str, number: f64, limit: Limit, source: &'static str, standing: Standing) -> Step {
    let result = match limit {
        Limit::Seconds(seconds, _) => Symbol { symbol: "lowest, Saybolt seconds", si: seconds, unit: "" },
        Limit::At100(viscosity) => Symbol { symbol: "lowest", si: viscosity.m2_s(), unit: "m²/s" },
    };
    let symbols = vec![Symbol { symbol: "number", si: number, unit: "" }];
    Step { name, formula: "read in the table of its time", symbols, result, source, standing }
}
