//! A pack in which an oil is bought: how much is in it, and what it costs.

use std::fmt;

use tribology::quantity::{Mass, Volume, typed};

/// How much of a lubricant: oils by volume, greases mostly by weight.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Amount {
    /// By volume.
    Volume(Volume),
    /// By weight.
    Mass(Mass),
}

impl Amount {
    /// The amount that this text spells, such as `20 L` or `400 g`.
    ///
    /// # Errors
    /// One sentence: what is wrong and what a right one looks like.
    pub fn read(text: &str) -> Result<Self, String> {
        let amount = match (typed::<Volume>(text), typed::<Mass>(text)) {
            (Ok(volume), _) => Self::Volume(volume.value),
            (_, Ok(mass)) => Self::Mass(mass.value),
            _ => return Err(format!("\"{text}\" is no amount; write it like 20 L or 400 g")),
        };
        if amount.si() > 0.0 {
            Ok(amount)
        } else {
            Err(format!("\"{text}\" is not above nothing; write it like 20 L or 400 g"))
        }
    }

    /// In cubic metres or kilograms.
    #[must_use]
    pub fn si(self) -> f64 {
        match self {
            Self::Volume(volume) => volume.m3(),
            Self::Mass(mass) => mass.kg(),
        }
    }
}

/// A pack as it is written: `20 L`, or `20 L at 85 EUR`.
#[derive(Clone, Debug, PartialEq)]
pub struct Pack {
    /// The text as it was written.
    pub text: String,
    /// How much is in it; nothing where an older program kept words that say no amount.
    pub holds: Option<Amount>,
    /// What it costs.
    pub price: Option<Price>,
}

/// A price.
#[derive(Clone, Debug, PartialEq)]
pub struct Price {
    /// The number.
    pub number: f64,
    /// The currency by its three letters (ISO 4217).
    pub currency: String,
}

impl Pack {
    /// The pack that this text spells.
    ///
    /// # Errors
    /// One sentence: what is wrong and what a right one looks like.
    pub fn read(text: &str) -> Result<Self, String> {
        let (holds, price) = match text.split_once(" at ") {
            Some((holds, price)) => (holds, Some(Price::read(price)?)),
            None => (text, None),
        };
        Ok(Self { text: text.trim().to_owned(), holds: Some(Amount::read(holds.trim())?), price })
    }

    /// A pack that was kept, whatever its words are.
    #[must_use]
    pub fn kept(text: &str) -> Self {
        Self::read(text).unwrap_or_else(|_| Self { text: text.to_owned(), holds: None, price: None })
    }
}

impl Price {
    /// The price that this text spells: a number and the three letters of a currency.
    ///
    /// # Errors
    /// One sentence: what is wrong and what a right one looks like.
    pub fn read(text: &str) -> Result<Self, String> {
        let wrong = || {
            format!(
                "\"{}\" is no price; write a number and the three letters of the currency, like 85.50 EUR",
                text.trim()
            )
        };
        let (number, currency) = text.trim().split_once(' ').ok_or_else(wrong)?;
        let number: f64 = number.parse().map_err(|_| wrong())?;
        let currency = currency.trim();
        let is_code = currency.len() == 3 && currency.bytes().all(|letter| letter.is_ascii_uppercase());
        if !is_code || !number.is_finite() || number < 0.0 {
            return Err(wrong());
        }
        Ok(Self { number, currency: currency.to_owned() })
    }
}

impl fmt::Display for Price {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:.2} {}", self.number, self.currency)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn packs_are_read_with_and_without_a_price() {
        let pack = Pack::read("20 L at 85 EUR").expect("a pack");
        assert!(matches!(pack.holds, Some(Amount::Volume(volume)) if (volume.litres() - 20.0).abs() < 1e-12));
        assert_eq!(pack.price.map(|price| price.to_string()), Some("85.00 EUR".to_owned()));
        assert!(
            matches!(Pack::read("400 g"), Ok(Pack { holds: Some(Amount::Mass(mass)), price: None, .. }) if (mass.kg() - 0.4).abs() < 1e-12)
        );
        assert!(Pack::read("1 US gal at 31.50 USD").is_ok());
    }

    #[test]
    fn what_is_none_is_said_with_a_right_one() {
        for (text, says) in [
            ("a drum", "20 L or 400 g"),
            ("20", "20 L or 400 g"),
            ("0 L", "not above nothing"),
            ("20 L at 85", "85.50 EUR"),
            ("20 L at 85 euro", "85.50 EUR"),
            ("20 L at -3 EUR", "85.50 EUR"),
            ("20 L at NaN EUR", "85.50 EUR"),
        ] {
            let fault = Pack::read(text).expect_err(text);
            assert!(fault.contains(says), "{text}: {fault}");
        }
    }
}
