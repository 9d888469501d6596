//! How hard the faces of a slideway may press on one another, on the mean. Texts differ by a factor of ten and more.

use crate::Answer;
use crate::contact::line::{line, measured, number};
use crate::quantity::Pressure;
use crate::working::{Standing, Step, Symbol};

/// Pascals in a kgf/cm², exact.
///
/// Source: `nist-sp-811`.
const KGF_CM2: f64 = 98_066.5;
/// How much more steel on cast iron bears, from and to.
///
/// Source: `machine-tool-text`.
pub const MORE_FOR_STEEL: [f64; 2] = [1.2, 1.3];
/// What constantly heavy cutting leaves of the pressure.
///
/// Source: `machine-tool-text`.
const HEAVY_CUTTING: f64 = 0.75;
const SOURCE: &str = "machine-tool-text";

/// A slideway of cast iron on cast iron, by machine and speed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Way {
    /// A small or medium lathe or mill, moving at feed speed.
    SmallAtFeed,
    /// A small or medium machine whose way moves at cutting speed: planer, shaper.
    SmallAtCutting,
    /// A large machine, moving slowly.
    LargeSlow,
    /// A large machine, moving fast.
    LargeFast,
}

/// How hard a slideway may press.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AllowablePressure {
    /// The lower figure.
    pub low: Pressure,
    /// The higher; the same where the text has only one.
    pub high: Pressure,
}

impl Way {
    /// Every way, in the order of the table.
    pub const ALL: [Way; 4] = [Way::SmallAtFeed, Way::SmallAtCutting, Way::LargeSlow, Way::LargeFast];
}

impl AllowablePressure {
    /// The same where the cutting is constantly heavy: three quarters.
    ///
    /// # Source
    /// `machine-tool-text`
    #[must_use]
    pub fn under_heavy_cutting(self) -> Answer<Self> {
        let found = Self { low: self.low * HEAVY_CUTTING, high: self.high * HEAVY_CUTTING };
        let inputs = vec![measured("p low", self.low), measured("p high", self.high)];
        Answer::of(found, step("Allowable pressure under heavy cutting", "0.75 p", inputs, found))
    }

    /// The same with one face of steel: 1.2 to 1.3 times as much.
    ///
    /// # Source
    /// `machine-tool-text`
    #[must_use]
    pub fn with_steel(self) -> Answer<Self> {
        let found = Self { low: self.low * MORE_FOR_STEEL[0], high: self.high * MORE_FOR_STEEL[1] };
        let inputs = vec![measured("p low", self.low), measured("p high", self.high)];
        Answer::of(found, step("Allowable pressure, steel on cast iron", "1.2 p to 1.3 p", inputs, found))
    }
}

/// How hard the faces of a slideway of cast iron on cast iron may press, on the mean.
///
/// - `way`: machine and speed.
/// - returns: from and to.
///
/// # Range
/// Design figures of one text; others allow as little as a tenth, see [`pressure_of_other_texts`]. A range and no limit.
///
/// # Source
/// `machine-tool-text`
///
/// # Example
/// ```
/// use tribology::contact::slideway::{Way, allowable_pressure};
/// let found = allowable_pressure(Way::SmallAtFeed).value;
/// assert!((found.low.mpa() - 2.45).abs() < 0.01 && (found.high.mpa() - 2.94).abs() < 0.01);
/// ```
#[must_use]
pub fn allowable_pressure(way: Way) -> Answer<AllowablePressure> {
    let (low, high) = match way {
        Way::SmallAtFeed => (25.0, 30.0),
        Way::SmallAtCutting => (8.0, 8.0),
        Way::LargeSlow => (10.0, 10.0),
        Way::LargeFast => (4.0, 4.0),
    };
    let found = AllowablePressure { low: kgf_cm2(low), high: kgf_cm2(high) };
    let inputs = vec![number("low in kgf/cm²", low), number("high in kgf/cm²", high)];
    Answer::of(found, step("Allowable mean pressure", "table of cast iron on cast iron", inputs, found))
}

/// The span of what other texts allow on slideways, whatever the machine: from precise moving ways up to an overall figure.
///
/// 0.3 kgf/cm² where they move with precision, 1 as normal, 3.5 where well oiled, 4 to 6 overall.
///
/// - returns: the least and the most that they allow.
///
/// # Source
/// `slideway-pressure-texts`
#[must_use]
pub fn pressure_of_other_texts() -> Answer<AllowablePressure> {
    let found = AllowablePressure { low: kgf_cm2(0.3), high: kgf_cm2(6.0) };
    let formula = "0.3 precise, 1 normal, 3.5 well oiled, 4 to 6 overall, in kgf/cm²";
    let (result, source) = (measured("p high", found.high), "slideway-pressure-texts");
    let inputs = vec![measured("p low", found.low)];
    Answer::of(found, line("Mean pressure in other texts", formula, inputs, result, source, Standing::Handbook))
}

/// A line of working that gives an allowable pressure.
fn step(name: &'static str, formula: &'static str, mut inputs: Vec<Symbol>, found: AllowablePressure) -> Step {
    inputs.push(measured("p from", found.low));
    line(name, formula, inputs, measured("p to", found.high), SOURCE, Standing::Handbook)
}

fn kgf_cm2(number: f64) -> Pressure {
    Pressure::from_pa(number * KGF_CM2)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn faster_ways_bear_less() {
        let of = |way| allowable_pressure(way).value;
        assert!(of(Way::SmallAtCutting).high < of(Way::SmallAtFeed).low);
        assert!(of(Way::LargeFast).high < of(Way::LargeSlow).low);
        for way in Way::ALL {
            assert!(of(way).low <= of(way).high && of(way).high > pressure_of_other_texts().value.low, "{way:?}");
        }
    }

    /// By hand: three quarters of 8, and 1.2 and 1.3 times 8, in kgf/cm².
    #[test]
    fn heavy_cutting_takes_a_quarter_and_steel_gives_a_fifth() {
        let planer = allowable_pressure(Way::SmallAtCutting).value;
        let near = |found: Pressure, wanted: f64| (found.pa() / KGF_CM2 - wanted).abs() < 1e-9;
        let (heavy, steel) = (planer.under_heavy_cutting().value, planer.with_steel().value);
        assert!(near(heavy.low, 6.0) && near(heavy.high, 6.0));
        assert!(near(steel.low, 9.6) && near(steel.high, 10.4));
    }
}
