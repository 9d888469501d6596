//! Turns of phrase that several pages need.

use shop::id::Id;

/// The text with a capital letter at its beginning.
pub(crate) fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

/// The text with a small letter at its beginning, for the middle of a sentence.
pub(crate) fn small(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_lowercase().chain(letters).collect())
}

/// What a thing is called: by its name, or by its id read as words.
pub(crate) fn called(name: Option<&String>, id: &Id) -> String {
    name.cloned().unwrap_or_else(|| capital(&id.as_str().replace(['-', '_'], " ")))
}
