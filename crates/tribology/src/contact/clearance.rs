//! How loose a plain bush usually runs on its shaft. A starting guess and never the maker's figure.

use super::line::{line, measured};
use crate::quantity::Length;
use crate::{Answer, Error, Standing};

/// Clearance on the diameter over the diameter: the tightest, the usual and the loosest of the rules in use.
///
/// Source: `common-practice`.
const RULES: [f64; 3] = [0.000_75, 0.001, 0.0015];

/// A running clearance on the diameter.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Clearance {
    /// The tightest that is usual.
    pub low: Length,
    /// A thousandth of the diameter.
    pub usual: Length,
    /// The loosest that is usual.
    pub high: Length,
}

/// The usual running clearance of a bronze or white-metal bush, on the diameter.
///
/// `c = 0.00075 … 0.001 … 0.0015 d`
///
/// - `shaft`: diameter of the shaft, `d`.
/// - returns: the tightest, the usual and the loosest clearance.
///
/// # Range
/// Shafts of ordinary machines; precision spindles run tighter, and worn ones looser. A measured clearance beats this in every case.
///
/// # Errors
/// [`Error::OutOfRange`] when the diameter is not above zero.
///
/// # Source
/// `common-practice`
///
/// # Example
/// ```
/// use tribology::{contact::usual_clearance, quantity::Length};
/// let found = usual_clearance(Length::from_inches(1.5)).map(|answer| answer.value.usual);
/// assert!(found.is_ok_and(|found| (found.inches() - 0.0015).abs() < 1e-9));
/// ```
pub fn usual_clearance(shaft: Length) -> Result<Answer<Clearance>, Error> {
    Error::quantity_positive("diameter of the shaft", shaft)?;
    let [low, usual, high] = RULES.map(|rule| shaft * rule);
    let inputs = vec![measured("d", shaft), measured("tightest", low), measured("loosest", high)];
    let formula = "c = 0.001 d on the diameter; 0.00075 d to 0.0015 d are met";
    let result = measured("c", usual);
    let step = line("Usual running clearance", formula, inputs, result, "common-practice", Standing::CommonPractice);
    Ok(Answer::of(Clearance { low, usual, high }, step))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_clearance_stands_in_order_and_grows_with_the_shaft() {
        let of = |mm| usual_clearance(Length::from_mm(mm)).expect("a shaft").value;
        for mm in [6.0, 25.0, 100.0, 400.0] {
            let found = of(mm);
            assert!(found.low < found.usual && found.usual < found.high && found.high < of(2.5 * mm).high);
        }
        assert!(usual_clearance(Length::from_mm(0.0)).is_err() && usual_clearance(Length::from_mm(-3.0)).is_err());
    }
}
