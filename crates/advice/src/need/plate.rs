//! What the plate of a point or of its reservoir asked for, as a band of today, held against what its pairs want. A plate is read and not
//! obeyed: it may have been written for another option, and both are shown.

use shop::chart::{Chart, Point};
use tribology::quantity::KinematicViscosity;
use tribology::{Standing, Step};

use super::Band;
use crate::old_name::{Known, meaning};

/// What a plate asks for.
#[derive(Clone, Debug, PartialEq)]
pub struct Plate {
    /// Its words, kept as they are.
    pub words: String,
    /// The thinnest and the thickest that it may mean, at 40 °C.
    pub band: (KinematicViscosity, KinematicViscosity),
    /// How that came about.
    pub steps: Vec<Step>,
}

/// How a plate and what the pairs want lie to each other.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Against {
    /// They have grades in common.
    Agrees,
    /// The plate asks for thicker oil.
    Thicker,
    /// The plate asks for thinner oil.
    Thinner,
}

/// What the plate of a point asks for, or that of the reservoir that is filled there; nothing where neither says a viscosity.
#[must_use]
pub fn plate(chart: &Chart, point: &Point) -> Option<Plate> {
    let reservoir = point.reservoir.as_ref().and_then(|id| chart.reservoir(id));
    let of_reservoir = reservoir.and_then(|reservoir| reservoir.plate.as_deref());
    let known = Known { year: chart.machine.built.as_deref().and_then(year), ..Known::default() };
    [point.plate.as_deref(), of_reservoir].into_iter().flatten().find_map(|words| {
        let meaning = meaning(words, &known)?;
        Some(Plate { words: words.to_owned(), band: meaning.band?, steps: meaning.steps })
    })
}

impl Plate {
    /// The plate as a band.
    #[must_use]
    pub fn as_band(&self) -> Band {
        let (low, high) = (self.band.0.mm2_s(), self.band.1.mm2_s());
        let standing = self.steps.iter().map(|step| step.standing).max().unwrap_or(Standing::FromMemory);
        Band { low, high, standing, source: "what the plate asks for" }
    }

    /// How the plate lies to a band, with the tenth on either side that a grade has.
    #[must_use]
    pub fn against(&self, band: &Band) -> Against {
        let (low, high) = (self.band.0.mm2_s(), self.band.1.mm2_s());
        if low > band.high * 1.1 {
            Against::Thicker
        } else if high < band.low * 0.9 {
            Against::Thinner
        } else {
            Against::Agrees
        }
    }
}

/// The first year in what is said of when a machine was built: `about 1940`.
fn year(built: &str) -> Option<i32> {
    let numbers = built.split(|letter: char| !letter.is_ascii_digit());
    numbers.filter(|digits| digits.len() == 4).find_map(|digits| digits.parse().ok())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_year_is_read_out_of_what_is_said() {
        assert_eq!([year("about 1940"), year("1928-1931"), year("before the war")], [Some(1940), Some(1928), None]);
    }
}
