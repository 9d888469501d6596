//! What a class on a label implies of what is in an oil: a label that says only `ISO-L-CKB 68` has said that there is no active sulphur
//! in it. Start at [`stated`]. What the sheet says itself goes before what its class implies.

mod class;

pub use class::{CLASSES, Class};

use shop::shelf::{Oil, Stated};
use tribology::Standing;

/// Something that may be in an oil.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Property {
    /// Active sulphur for extreme pressure.
    EpSulphur,
    /// Detergent.
    Detergent,
    /// Tackifier.
    Tackifier,
    /// Friction modifier.
    FrictionModifier,
    /// Fatty oil.
    Fatty,
    /// Graphite or other powders.
    Solids,
}

impl Property {
    /// All of them, in the order of the shelf file.
    pub const ALL: [Self; 6] =
        [Self::EpSulphur, Self::Detergent, Self::Tackifier, Self::FrictionModifier, Self::Fatty, Self::Solids];

    /// What the sheet or the label says of it in so many words.
    #[must_use]
    pub fn on_sheet(self, oil: &Oil) -> Stated {
        match self {
            Self::EpSulphur => oil.ep_sulphur,
            Self::Detergent => oil.detergent,
            Self::Tackifier => oil.tackifier,
            Self::FrictionModifier => oil.friction_modifier,
            Self::Fatty => oil.fatty,
            Self::Solids => oil.solids,
        }
    }
}

/// What is known of a property, and how.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Known {
    /// Whether it is in.
    pub stated: Stated,
    /// The class that implies it; nothing where the sheet says it itself, or nobody does.
    pub by: Option<&'static Class>,
}

impl Known {
    /// How far what a class implies is to be trusted; nothing where no class is behind it.
    #[must_use]
    pub fn standing(&self) -> Option<Standing> {
        self.by.map(|class| class.standing)
    }
}

/// What is known of a property of an oil: what its sheet says, else what a class on its label implies. Where two classes on one label
/// contradict each other, it is not stated.
#[must_use]
pub fn stated(oil: &Oil, property: Property) -> Known {
    let on_sheet = property.on_sheet(oil);
    if on_sheet != Stated::NotStated {
        return Known { stated: on_sheet, by: None };
    }
    let classes = oil.symbol.as_deref().map(classes).unwrap_or_default();
    let implied: Vec<(Stated, &'static Class)> = classes
        .into_iter()
        .filter_map(|class| Some((class.implies.iter().find(|(of, _)| *of == property)?.1, class)))
        .collect();
    match implied.as_slice() {
        [(first, by), rest @ ..] if rest.iter().all(|(stated, _)| stated == first) => {
            Known { stated: *first, by: Some(by) }
        }
        _ => Known { stated: Stated::NotStated, by: None },
    }
}

/// Whether label or name say that it is a polyglycol, which no mineral oil mixes with.
#[must_use]
pub fn is_polyglycol(oil: &Oil) -> bool {
    names(oil, &["PG", "PAG", "POLYGLYCOL", "HEPG"])
}

/// Whether label or name say that it is a synthetic hydrocarbon or an ester.
#[must_use]
pub fn is_synthetic(oil: &Oil) -> bool {
    names(oil, &["PAO", "ESTER", "SYNTHETIC", "HEES", "HEPR"])
}

/// Whether one of these words, in capitals, stands on label or can.
fn names(oil: &Oil, wanted: &[&str]) -> bool {
    let text = format!("{} {}", oil.symbol.as_deref().unwrap_or(""), oil.name).to_uppercase();
    text.split(|letter: char| !letter.is_alphanumeric()).any(|word| wanted.contains(&word))
}

/// The classes that a label names, in the order of the table.
///
/// - `symbol`: as written, such as `ISO-L-CKB 68`, `API GL-5` or `CLP 220`.
#[must_use]
pub fn classes(symbol: &str) -> Vec<&'static Class> {
    let upper = symbol.to_uppercase();
    let words: Vec<&str> = upper.split(|letter: char| letter.is_whitespace() || ",;/()".contains(letter)).collect();
    let words: Vec<&str> = words.into_iter().filter(|word| !word.is_empty()).collect();
    let says = |class: &Class| {
        class.words.iter().any(|wanted| {
            let wanted: Vec<&str> = wanted.split(' ').collect();
            words.windows(wanted.len()).any(|here| {
                here.iter().zip(&wanted).all(|(word, wanted)| word.strip_prefix("ISO-L-").unwrap_or(word) == *wanted)
            })
        })
    };
    CLASSES.iter().filter(|class| says(class)).collect()
}

#[cfg(test)]
mod tests {
    use shop::shelf::Shelf;

    use super::*;

    fn oil(stated: &str) -> Oil {
        let text = format!("shelf = 1\n[[oil]]\nid = \"o\"\nname = \"O\"\nfamily = \"gear\"\n{stated}");
        Shelf::read(&text).value.expect("a shelf without faults").oils.remove(0)
    }

    /// ISO 6743-6 defines CKB without and CKC with extreme-pressure agents (from memory).
    #[test]
    fn a_class_supplies_what_it_implies_and_says_so() {
        let known = stated(&oil("symbol = \"ISO-L-CKB 68\""), Property::EpSulphur);
        assert_eq!((known.stated, known.by.map(|class| class.words[0])), (Stated::No, Some("CKB")));
        assert!(known.standing().is_some());
        assert_eq!(stated(&oil("symbol = \"ISO-L-CKC 220\""), Property::EpSulphur).stated, Stated::Yes);
        assert_eq!(stated(&oil("symbol = \"API GL-5\""), Property::EpSulphur).stated, Stated::Yes);
        assert_eq!(stated(&oil("symbol = \"AGMA 7 Comp\""), Property::Fatty).stated, Stated::Yes);
        assert_eq!(stated(&oil("symbol = \"HLPD 46\""), Property::Detergent).stated, Stated::Yes);
    }

    #[test]
    fn the_sheet_goes_before_its_class_and_silence_stays_silence() {
        let sheet = oil("symbol = \"ISO-L-CKC 220\"\nep_sulphur = \"no\"");
        assert_eq!(stated(&sheet, Property::EpSulphur), Known { stated: Stated::No, by: None });
        for silent in ["", "symbol = \"best quality\"", "symbol = \"ISO-L-XYZ\""] {
            assert_eq!(stated(&oil(silent), Property::EpSulphur).stated, Stated::NotStated, "{silent}");
        }
        // Two classes that contradict each other say nothing.
        assert_eq!(stated(&oil("symbol = \"ISO-L-CKB, CKC 68\""), Property::EpSulphur).stated, Stated::NotStated);
    }

    #[test]
    fn no_class_says_a_thing_twice_and_every_class_says_one() {
        for class in &CLASSES {
            let said: std::collections::BTreeSet<_> = class.implies.iter().map(|(of, _)| of).collect();
            assert!(!said.is_empty() && said.len() == class.implies.len(), "{:?}", class.words);
        }
    }
}
