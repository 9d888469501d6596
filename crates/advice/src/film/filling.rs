//! The oil that is in a bearing, as far as its film asks: its line and its density. From the shelf, or from the words of the chart where the
//! shelf has nothing of the kind.

use shop::chart::{Chart, Point};
use shop::shelf::{Asked, Family, Oil, Shelf};
use tribology::Standing;
use tribology::contact::journal;
use tribology::oil::{USUAL_DENSITY_KG_M3, USUAL_INDEX, ViscosityLine};
use tribology::quantity::{Density, KinematicViscosity};

use super::assumed::{Assumed, End, Span, What};
use crate::judge::Judged;
use crate::oil_line::{Slope, oil_line};
use crate::round::serving;
use crate::verdict::Verdict;

/// An oil in a bearing.
#[derive(Clone, Debug, PartialEq)]
pub struct Filling {
    /// What stands on its can, or what the chart asks for.
    pub name: String,
    /// Its line and density.
    pub oil: journal::Oil,
    /// At 40 °C, where nobody states how fast it thins.
    index_of: Option<KinematicViscosity>,
}

/// Viscosity indices of oils of which nobody states one: an old plain oil, the usual one, a multigrade (common practice).
const INDICES: [f64; 3] = [50.0, USUAL_INDEX, 150.0];

impl Filling {
    /// An oil of the shelf; nothing for a grease and where its body is unknown.
    #[must_use]
    pub fn of(oil: &Oil) -> Option<Self> {
        if oil.family == Family::Grease {
            return None;
        }
        let found = oil_line(oil)?;
        let density = oil.density.as_ref().map_or(Density::from_kg_m3(USUAL_DENSITY_KG_M3), |typed| typed.value);
        let index_of = oil.v40.as_ref().filter(|_| found.slope == Slope::UsualIndex).map(|typed| typed.value);
        Some(Self { name: oil.name.clone(), oil: journal::Oil { line: found.line, density }, index_of })
    }

    /// The oil on hand that does best at a point; where none does and none is known, what the chart asks for.
    #[must_use]
    pub fn best(chart: &Chart, point: &Point, shelf: &Shelf, judged: &[Judged]) -> Option<Self> {
        let does = judged.iter().filter(|one| one.verdict > Verdict::Never);
        does.filter_map(|one| shelf.oil(&one.oil)).find_map(Self::of).or_else(|| Self::charted(chart, point, shelf))
    }

    /// The oil that serves a point by its chart; where the shelf has none of the kind, what the chart asks for by its grade.
    #[must_use]
    pub fn charted(chart: &Chart, point: &Point, shelf: &Shelf) -> Option<Self> {
        let serving = serving(chart, point, shelf);
        let served = serving.oil.and_then(|chosen| Self::of(shelf.oil(&chosen.id)?));
        served.or_else(|| Self::asked(&serving.asked?))
    }

    /// What these words of a chart ask for: `circulating 68`.
    fn asked(words: &str) -> Option<Self> {
        let asked = Asked::read(words).filter(|asked| asked.family != Family::Grease)?;
        let v40 = KinematicViscosity::from_mm2_s(asked.grade?);
        let line = ViscosityLine::with_index(v40, USUAL_INDEX).ok()?.value;
        let oil = journal::Oil { line, density: Density::from_kg_m3(USUAL_DENSITY_KG_M3) };
        Some(Self { name: words.to_owned(), oil, index_of: Some(v40) })
    }

    /// What nobody has said of it.
    pub(super) fn assumed(&self) -> Option<Assumed> {
        let index = What::Index(Span::of(INDICES, |index| index));
        self.index_of.map(|_| Assumed::new(index, Standing::CommonPractice))
    }

    /// The same oil with another end of what nobody has said; nothing where it is something else that varies.
    pub(super) fn varied(&self, what: &What, end: End) -> Option<Self> {
        let (What::Index(span), Some(v40)) = (what, self.index_of) else { return None };
        let line = ViscosityLine::with_index(v40, span.at(end)).ok()?.value;
        Some(Self { oil: journal::Oil { line, ..self.oil }, ..self.clone() })
    }
}
