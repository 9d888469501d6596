//! A closed list of words that a file may use, each standing for a variant. Made by [`choice!`](crate::choice!), so that reader,
//! schema and screens take the words from one table.

/// A value that is written as one of a few words.
pub trait Choice: Sized + Copy + PartialEq + 'static {
    /// Each word with what it stands for; the first word of a variant is the one that is written.
    const WORDS: &'static [(&'static str, Self)];

    /// What a word stands for.
    fn from_word(word: &str) -> Option<Self> {
        Self::WORDS.iter().find(|(w, _)| *w == word).map(|(_, v)| *v)
    }

    /// The word that is written for this value.
    fn word(self) -> &'static str {
        Self::WORDS
            .iter()
            .find(|(_, v)| *v == self)
            .map(|(w, _)| *w)
            .expect("every variant has a word: the macro makes both")
    }

    /// All words, in the table's order.
    fn words() -> Vec<&'static str> {
        Self::WORDS.iter().map(|(w, _)| *w).collect()
    }
}

/// Declares an enum and the words for its variants.
#[macro_export]
macro_rules! choice {
    ($(#[$doc:meta])* $name:ident { $($(#[$vdoc:meta])* $variant:ident = $word:literal $(| $also:literal)*),+ $(,)? }) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum $name { $($(#[$vdoc])* $variant),+ }

        impl $crate::choice::Choice for $name {
            const WORDS: &'static [(&'static str, Self)] = &[
                $(($word, Self::$variant), $(($also, Self::$variant),)*)+
            ];
        }

        impl std::fmt::Display for $name {
            fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                f.write_str($crate::choice::Choice::word(*self))
            }
        }
    };
}
