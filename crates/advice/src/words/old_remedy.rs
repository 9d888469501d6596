//! The caution for a remedy of old books, in a sentence.

use crate::old_name::Caution;

/// What is wrong with a remedy and what is done instead, with the usual deference to those who decide.
#[must_use]
pub fn old_remedy(caution: &Caution) -> String {
    format!(
        "Do not follow the old words on {}: {}. Local rules and the data sheet come first.",
        caution.of, caution.instead
    )
}
