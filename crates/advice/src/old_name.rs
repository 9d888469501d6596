//! What an old plate or book asked for, as a band of oils sold today. Start at [`meaning`]: it reads the words, works out every
//! possibility that they leave open, and says what would settle it. A plate is translated and not obeyed: a remedy that would hurt
//! somebody is answered with what is done today.

mod caution;
mod fit;
mod name;
mod navy;
mod possible;
mod sae;
mod spec;
mod token;
mod written;

pub use caution::Caution;
pub use fit::{Fit, fits};
pub use name::{Family, Name};
pub use possible::{Ask, Possibility};
pub use spec::{Heat, Letter, Use, Wanted, Winter};
pub use written::Written;

use tribology::quantity::KinematicViscosity;
use tribology::{Standing, Step};

/// What is known besides the words.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Known {
    /// The year of the plate or the book.
    pub year: Option<i32>,
    /// Where it was written.
    pub country: Option<Country>,
    /// The viscosity index to be taken.
    pub index: Option<f64>,
}

shop::choice! {
    /// Where a plate was written, as far as it matters to how viscosity was stated.
    Country {
        /// The United States: Saybolt seconds.
        Us = "us",
        /// Britain and what was then its empire: Redwood seconds.
        Uk = "uk",
        /// Germany and its neighbours: Engler degrees.
        Germany = "de",
        /// The Soviet Union and what came of it: mm²/s at 50 °C.
        Russia = "ru",
        /// China: numbers at 50 °C on older plates.
        China = "cn",
    }
}

/// What an old wording means today.
#[derive(Clone, Debug, PartialEq)]
pub struct Meaning {
    /// The words as they were given.
    pub words: String,
    /// Every way in which they may be meant, likeliest first.
    pub possible: Vec<Possibility>,
    /// The band at 40 °C over all of them; none for a grease or words that say no viscosity.
    pub band: Option<(KinematicViscosity, KinematicViscosity)>,
    /// The grades inside the band and beside it, best first.
    pub grades: Vec<Fit>,
    /// What would make the band narrower.
    pub asks: Vec<Ask>,
    /// The sort of oil or grease, with words for a label of today.
    pub name: Option<&'static Name>,
    /// What must not be done as the old words say.
    pub cautions: Vec<Caution>,
    /// How firmly the weakest step stands.
    pub standing: Standing,
    /// How the band came about.
    pub steps: Vec<Step>,
}

/// What these words mean.
///
/// - `words`: as they stand on the plate or in the book.
/// - `known`: what is known besides.
/// - returns: the meaning; nothing when no viscosity, number, name or remedy that is known here is in the words.
#[must_use]
pub fn meaning(words: &str, known: &Known) -> Option<Meaning> {
    let written = Written::read(words, known);
    let cautions = caution::cautions(words);
    if written.wanted.is_none() && written.name.is_none() && cautions.is_empty() {
        return None;
    }
    let worked_out = possible::worked_out(&written, known);
    let band = worked_out
        .possible
        .iter()
        .map(|one| (one.low, one.high))
        .reduce(|(low, high), (l, h)| (if l < low { l } else { low }, if h > high { h } else { high }));
    let standing = worked_out.steps.iter().map(|step| step.standing).max().unwrap_or(Standing::FromMemory);
    Some(Meaning {
        words: words.to_owned(),
        grades: band.map_or(Vec::new(), |band| fits(band, worked_out.usual)),
        possible: worked_out.possible,
        band,
        asks: worked_out.asks,
        name: written.name,
        cautions,
        standing,
        steps: worked_out.steps,
    })
}
