//! The key that makes a form count once.
//!
//! Every form carries a fresh one, so that a double tap, a reload or a lost answer cannot write the same entry twice:
//! the logbook keeps the key with the entry and takes each key only once.

use std::fmt::Write as _;

use maud::{Markup, Render, html};
use serde::Deserialize;

/// 128 random bits in 32 hex figures, rendered as the hidden field `key`.
#[derive(Clone, Debug, PartialEq, Eq, Deserialize)]
#[serde(try_from = "String")]
pub struct FormKey(String);

impl FormKey {
    /// The name of the form's field.
    pub const FIELD: &'static str = "key";

    /// A key that was never used before.
    ///
    /// # Errors
    /// When the computer has no source of random numbers.
    pub fn fresh() -> Result<Self, getrandom::Error> {
        let mut bits = [0; 16];
        getrandom::fill(&mut bits)?;
        Ok(Self(bits.iter().fold(String::new(), |mut hex, byte| {
            write!(hex, "{byte:02x}").expect("writing to a String cannot fail");
            hex
        })))
    }

    /// The key as it is stored.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

/// What was sent as a key is not one of ours.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NotAKey;

impl std::fmt::Display for NotAKey {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("The form's key is not 32 hex figures, as in 00ff followed by 28 more.")
    }
}

impl std::error::Error for NotAKey {}

impl TryFrom<String> for FormKey {
    type Error = NotAKey;

    fn try_from(sent: String) -> Result<Self, NotAKey> {
        let is_hex = |byte: u8| matches!(byte, b'0'..=b'9' | b'a'..=b'f');
        if sent.len() == 32 && sent.bytes().all(is_hex) { Ok(Self(sent)) } else { Err(NotAKey) }
    }
}

impl Render for FormKey {
    fn render(&self) -> Markup {
        html! { input type="hidden" name=(Self::FIELD) value=(self.0); }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_fresh_key_is_taken_back_and_no_two_are_alike() {
        let first = FormKey::fresh().expect("random numbers");
        let second = FormKey::fresh().expect("random numbers");
        assert_ne!(first, second);
        assert_eq!(FormKey::try_from(first.as_str().to_owned()), Ok(first));
    }

    #[test]
    fn anything_else_is_not_a_key() {
        let long = "0".repeat(33);
        let capital = "A".repeat(32);
        for sent in ["", "0", "'; --", &long, &capital] {
            assert_eq!(FormKey::try_from(sent.to_owned()), Err(NotAKey), "{sent}");
        }
    }
}
