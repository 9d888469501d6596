//! The name of an element inside a file, and of a machine inside a shop: short, stable, fit for a tag and for a URL.

use std::fmt;

/// The longest id, in characters: longer ones no longer fit on a tag.
pub const LONGEST: usize = 48;

/// A short stable name: letters, digits, hyphens, dots and underscores.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Id(String);

/// Why a text cannot be an id.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum IdFault {
    /// It is empty.
    Empty,
    /// It is longer than [`LONGEST`] characters.
    TooLong,
    /// It holds this character.
    Character(char),
}

impl Id {
    /// The id that this text spells.
    ///
    /// # Errors
    /// [`IdFault`] when it is empty, too long, or holds a character that a tag or a URL would mangle.
    pub fn new(text: &str) -> Result<Self, IdFault> {
        if text.is_empty() {
            return Err(IdFault::Empty);
        }
        if text.chars().count() > LONGEST {
            return Err(IdFault::TooLong);
        }
        match text.chars().find(|c| !(c.is_alphanumeric() || matches!(c, '-' | '.' | '_'))) {
            Some(other) => Err(IdFault::Character(other)),
            None => Ok(Self(text.to_owned())),
        }
    }

    /// The nearest id that a free text, such as a file name or a machine's name, can give.
    #[must_use]
    pub fn from_name(name: &str) -> Option<Self> {
        let mut made = String::new();
        for c in name.chars().flat_map(char::to_lowercase) {
            if c.is_alphanumeric() {
                made.push(c);
            } else if !made.ends_with('-') && !made.is_empty() {
                made.push('-');
            }
        }
        let made: String = made.trim_end_matches('-').chars().take(LONGEST).collect();
        Self::new(made.trim_end_matches('-')).ok()
    }

    /// The id as text.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl fmt::Display for Id {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl fmt::Display for IdFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Empty => f.write_str("an id cannot be empty; write a short name such as \"9\" or \"gear-case\""),
            Self::TooLong => {
                write!(f, "an id has at most {LONGEST} characters; write a shorter one such as \"gear-case\"")
            }
            Self::Character(c) => write!(
                f,
                "an id has only letters, digits, hyphens, dots and underscores, not {c:?}; write it like \"gear-case\""
            ),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_becomes_an_id_and_odd_characters_are_refused() {
        assert_eq!(Id::from_name("20-inch crank shaper").map(|i| i.to_string()), Some("20-inch-crank-shaper".into()));
        assert_eq!(Id::from_name("  –  "), None);
        assert_eq!(Id::new("a b"), Err(IdFault::Character(' ')));
        assert_eq!(Id::new(""), Err(IdFault::Empty));
        assert_eq!(Id::new(&"x".repeat(LONGEST + 1)), Err(IdFault::TooLong));
    }
}
