//! Why a drawing is not taken: what is in it that is no plain line.

/// How much of a strange word is repeated to whoever sent it, in characters.
const LONGEST: usize = 40;

/// Why a drawing is not taken.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum Unplain {
    /// It holds something that can do more than draw.
    #[error("has {0} in it; only plain lines and words are taken, so save it as a plain drawing without that")]
    Holds(String),
    /// A value of it says nothing that can be drawn.
    #[error(
        "says {name}=\"{value}\", which cannot be read as a plain drawing; write numbers without units and plain colours"
    )]
    Value {
        /// The attribute.
        name: String,
        /// What stands there.
        value: String,
    },
    /// It does not say how large it is.
    #[error("does not say how large it is; write its viewBox, such as \"0 0 1200 800\"")]
    NoSize,
    /// It has too much of everything.
    #[error("is larger than a line drawing needs (1 MB, 20 000 lines, 32 groups in each other); make it simpler")]
    Large,
    /// It is no drawing at all, or not whole.
    #[error("is no whole SVG drawing; save it again from the program that drew it")]
    Broken,
}

impl Unplain {
    pub(super) fn holds(what: &str) -> Self {
        Self::Holds(short(what))
    }

    pub(super) fn value(name: &str, value: &str) -> Self {
        Self::Value { name: short(name), value: short(value) }
    }
}

/// The text as far as it fits into a sentence.
fn short(text: &str) -> String {
    let mut letters = text.chars().map(|letter| if letter.is_control() { ' ' } else { letter });
    let head: String = letters.by_ref().take(LONGEST).collect();
    if letters.next().is_some() { format!("{head}…") } else { head }
}
