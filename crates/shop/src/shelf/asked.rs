//! The oil that a chart asks for, in open-standard words: a family and its ISO viscosity grade, such as `way 68`.

use crate::choice::Choice as _;

use super::oil::{Family, Oil};

/// A family and a body.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Asked {
    /// What sort of lubricant.
    pub family: Family,
    /// The ISO viscosity grade; for a grease the NLGI number.
    pub grade: Option<f64>,
}

impl Asked {
    /// What these words ask for: a family, then a number. Nothing when the first word is no family.
    #[must_use]
    pub fn read(text: &str) -> Option<Self> {
        let mut words = text.split_whitespace();
        let family = Family::from_word(&words.next()?.to_lowercase())?;
        let grade = words.find_map(|word| word.parse::<f64>().ok()).filter(|grade| grade.is_finite() && *grade >= 0.0);
        Some(Self { family, grade })
    }

    /// How far an oil's body is from what is asked, in factors for oils and NLGI numbers for greases; an oil of unknown body
    /// is farther than any.
    pub(super) fn steps_from(&self, oil: &Oil) -> f64 {
        let Some(grade) = self.grade else { return 0.0 };
        let distance = if self.family == Family::Grease {
            oil.grease.nlgi.as_deref().and_then(|nlgi| nlgi.parse::<f64>().ok()).map(|nlgi| (nlgi - grade).abs())
        } else {
            oil.v40.as_ref().map(|v40| {
                let ratio = v40.value.mm2_s() / grade.max(f64::MIN_POSITIVE);
                if ratio < 1.0 { 1.0 / ratio } else { ratio }
            })
        };
        distance.unwrap_or(f64::INFINITY)
    }
}
