//! The viscosities of a data sheet, in whatever units and at whatever temperatures it gives them, as the shelf keeps them: at 40 °C and
//! at 100 °C or with an index. Start at [`DataSheet::stated`].

use tribology::Warning;
use tribology::oil::{Scale, USUAL_INDEX, ViscosityLine};
use tribology::quantity::{KinematicViscosity, Temperature, digits_of, number_and_unit};

use crate::topic::{Refused, number, read, reading};

/// What a sheet says of how thick the oil is.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct DataSheet {
    /// Temperatures and the viscosities there, as typed: `40 C` and `68 mm2/s`, or `100 F` and `315 SUS`.
    pub readings: Vec<(String, String)>,
    /// The viscosity index, as typed.
    pub index: Option<String>,
}

/// The same as the shelf keeps it.
#[derive(Clone, Debug, PartialEq)]
pub struct Stated {
    /// The line through it.
    pub line: ViscosityLine,
    /// At 40 °C.
    pub v40: String,
    /// At 100 °C, where the sheet says two viscosities.
    pub v100: Option<String>,
    /// The index, where it says one and an index.
    pub index: Option<f64>,
    /// What the sheet said, where that is not what the shelf keeps.
    pub note: Option<String>,
    /// What lies outside a method's range.
    pub warnings: Vec<Warning>,
}

impl DataSheet {
    /// What the shelf keeps of it: nothing where the sheet says nothing.
    ///
    /// # Errors
    /// [`Refused`] with one sentence when a reading cannot be understood, or when what is said cannot be together.
    pub fn stated(&self) -> Result<Option<Stated>, Refused> {
        let mut warnings = Vec::new();
        let mut known = Vec::new();
        let index = self.index.as_deref().map(|text| number("the viscosity index", text)).transpose()?;
        for (at, typed) in &self.readings {
            if at.trim().is_empty() {
                return Err(Refused::new(format!(
                    "the viscosity \"{typed}\" stands without its temperature; write it too, such as 40 C"
                )));
            }
            let at: Temperature = read("the temperature of a viscosity", at, None)?;
            let (scale, number) = reading("the viscosity", typed)?;
            let viscosity = scale.viscosity(number, at)?;
            warnings.extend(viscosity.warnings);
            known.push((at, viscosity.value));
        }
        let (line, index) = match (known.as_slice(), index) {
            ([], None) => return Ok(None),
            ([], Some(_)) => {
                return Err(Refused::new(
                    "an index alone says nothing of how thick the oil is; add a viscosity such as 68 mm2/s at 40 C",
                ));
            }
            ([first, second], None) => (ViscosityLine::through(*first, *second)?, None),
            ([one], Some(index)) => (ViscosityLine::through_with_index(*one, index)?, Some(index)),
            ([one], None) => (ViscosityLine::through_with_index(*one, USUAL_INDEX)?, None),
            _ => {
                return Err(Refused::new("too much is known: give two viscosities, or one and the index"));
            }
        };
        warnings.extend(line.warnings);
        let line = line.value;
        let two = known.len() == 2;
        let v40 = self.kept(&known, line, 40.0);
        let v100 = two.then(|| self.kept(&known, line, 100.0));
        let is_as_typed = |kept: &String| self.readings.iter().any(|(_, reading)| reading.trim() == kept);
        let note = (!is_as_typed(&v40) || v100.as_ref().is_some_and(|v100| !is_as_typed(v100))).then(|| {
            let said: Vec<String> =
                self.readings.iter().map(|(at, reading)| format!("{} at {}", reading.trim(), at.trim())).collect();
            let usual =
                if two || index.is_some() { String::new() } else { format!(", with the usual index of {USUAL_INDEX}") };
            format!("The sheet says {}{usual}.", said.join(" and "))
        });
        Ok(Some(Stated { line, v40, v100, index, note, warnings }))
    }

    /// The viscosity at a temperature in °C: as it was typed where the sheet says it there in mm²/s, else from the line, to the four digits
    /// that a sheet has.
    fn kept(&self, known: &[(Temperature, KinematicViscosity)], line: ViscosityLine, celsius: f64) -> String {
        let typed = known.iter().zip(&self.readings).find_map(|((at, _), (_, reading))| {
            let is_kinematic =
                number_and_unit(reading).is_ok_and(|(_, unit)| matches!(unit.trim(), "mm2/s" | "mm²/s" | "cSt"));
            ((at.celsius() - celsius).abs() < 0.01 && is_kinematic).then(|| reading.trim().to_owned())
        });
        let from_line = || {
            format!("{} {}", digits_of(line.at(Temperature::from_celsius(celsius)).mm2_s(), 4), Scale::Kinematic.sign())
        };
        typed.unwrap_or_else(from_line)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn sheet(readings: &[(&str, &str)], index: Option<f64>) -> Result<Option<Stated>, Refused> {
        let readings = readings.iter().map(|(at, reading)| ((*at).to_owned(), (*reading).to_owned())).collect();
        DataSheet { readings, index: index.map(|index| index.to_string()) }.stated()
    }

    fn stated(readings: &[(&str, &str)], index: Option<f64>) -> Stated {
        sheet(readings, index).expect("right readings").expect("something is said")
    }

    #[test]
    fn what_a_sheet_says_in_the_shelfs_own_terms_stays_as_typed() {
        let kept = stated(&[("40 C", "68 mm2/s"), ("100 C", "8.6 cSt")], None);
        assert_eq!((kept.v40.as_str(), kept.v100.as_deref(), kept.note), ("68 mm2/s", Some("8.6 cSt"), None));
        let kept = stated(&[("40 C", "68 mm2/s")], Some(95.0));
        assert_eq!((kept.v100, kept.index, kept.note), (None, Some(95.0), None));
    }

    /// ASTM D2161: above 75 mm²/s a Saybolt second at 100 °F is 1/4.632 mm²/s, and hardly less at 68.
    #[test]
    fn old_units_become_the_shelfs_and_the_sheet_is_quoted() {
        let kept = stated(&[("100 F", "315 SUS"), ("210 F", "53.7 SUS")], None);
        let at_100_f = kept.line.at(Temperature::from_celsius(100.0 / 1.8 - 32.0 / 1.8)).mm2_s();
        assert!((at_100_f / (315.0 / 4.632) - 1.0).abs() < 0.003, "{at_100_f}");
        let v40: f64 = kept.v40.trim_end_matches(" mm2/s").parse().expect("a number");
        assert!((v40 / kept.line.at(Temperature::from_celsius(40.0)).mm2_s() - 1.0).abs() < 1e-3, "{v40}");
        assert_eq!(kept.note.as_deref(), Some("The sheet says 315 SUS at 100 F and 53.7 SUS at 210 F."));
        let kept = stated(&[("100 F", "315 SUS")], None);
        assert!(kept.v100.is_none() && kept.note.is_some_and(|note| note.contains("usual index")));
    }

    #[test]
    fn what_cannot_be_is_one_sentence() {
        for (readings, index, says) in [
            (&[("40 C", "300")][..], None, "without a unit"),
            (&[("40 C", "68 mm2/s"), ("100 C", "80 mm2/s")][..], None, ""),
            (&[("warm", "68 mm2/s")][..], None, "temperature"),
            (&[][..], Some(95.0), "an index alone"),
            (&[("40 C", "68 mm2/s"), ("100 C", "8.6 mm2/s")][..], Some(95.0), "too much is known"),
            (&[("40 C", "68 mm2/s")][..], Some(-400.0), ""),
        ] {
            let refused = sheet(readings, index).expect_err("it cannot be");
            assert!(refused.to_string().contains(says), "{refused}");
        }
        assert_eq!(sheet(&[], None), Ok(None));
    }
}
