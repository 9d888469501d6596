//! How much oil one act gives: by volume, by the can's strokes, by drops, or by turns of a grease cup.

use tribology::quantity::{TypedFault, Volume, number_and_unit, typed};

/// A dose as it was typed.
#[derive(Clone, Debug, PartialEq)]
pub struct Dose {
    /// How much.
    pub amount: DoseAmount,
    /// The text as it was typed.
    pub typed: String,
}

/// How much one act gives.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum DoseAmount {
    /// A volume.
    Volume(Volume),
    /// Strokes of a can or gun, whichever is used.
    Strokes(f64),
    /// Drops from a can's spout, in air.
    Drops(f64),
    /// Turns of a screw-down grease cup.
    Turns(f64),
}

/// The volume of one drop of machine oil falling in air: thirty to the millilitre (common practice, no source).
pub const DROP: Volume = Volume::from_ml(1.0 / 30.0);

impl Dose {
    /// The dose that this text spells: `2 strokes`, `4 drops`, `1/2 turn`, `1.5 mL`.
    ///
    /// # Errors
    /// The fault of the text, as for any quantity.
    pub fn read(text: &str) -> Result<Self, TypedFault> {
        let (number, unit) = number_and_unit(text)?;
        // "3 drops each" is how people write it; the word changes nothing for one hole.
        let unit = unit.trim().trim_end_matches("each").trim();
        let amount = match unit {
            "stroke" | "strokes" => DoseAmount::Strokes(number),
            "drop" | "drops" => DoseAmount::Drops(number),
            "turn" | "turns" => DoseAmount::Turns(number),
            _ => DoseAmount::Volume(typed::<Volume>(text)?.value),
        };
        Ok(Self { amount, typed: text.trim().to_owned() })
    }

    /// Whether any oil is given at all.
    #[must_use]
    pub fn is_positive(&self) -> bool {
        match self.amount {
            DoseAmount::Volume(volume) => volume.ml() > 0.0,
            DoseAmount::Strokes(n) | DoseAmount::Drops(n) | DoseAmount::Turns(n) => n > 0.0,
        }
    }
}
