//! How much surface gives off the heat of a bearing that nobody has measured. A guess to begin with.

use crate::contact::line::{line, measured, number};
use crate::quantity::{Area, Length};
use crate::{Answer, Error, Standing};

/// Surface over diameter times length: 15 to 20 is the guide value inside the frame of a machine; a small bearing in a heavy casting has
/// more of it to itself, up to three times as much, and what is taken lies between.
///
/// Source: `iso-7902`, from memory, for the least; the others are our own guess.
const RULES: [f64; 3] = [15.0, 30.0, 60.0];

/// The surface that gives off the heat of a bearing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Housing {
    /// The least.
    pub low: Area,
    /// What is taken.
    pub usual: Area,
    /// The most.
    pub high: Area,
}

/// The surface that gives off the heat of a bearing, where nobody has measured it.
///
/// `A = 15 … 30 … 60 d l`
///
/// - `diameter`, `length`: of the bearing.
/// - returns: the least, the usual and the most.
///
/// # Range
/// Bearings in the frame of a machine; one in a bracket of its own is better measured.
///
/// # Errors
/// [`Error::OutOfRange`] when diameter or length is not above zero.
///
/// # Source
/// `iso-7902`, from memory, for the least; the others are our own guess.
///
/// # Example
/// ```
/// use tribology::contact::journal::housing;
/// use tribology::quantity::Length;
/// let found = housing(Length::from_mm(50.0), Length::from_mm(50.0)).map(|answer| answer.value);
/// assert!(found.is_ok_and(|found| found.low.cm2() > 374.0 && found.usual.cm2() < 800.0 && found.high.cm2() > 1000.0));
/// ```
pub fn housing(diameter: Length, length: Length) -> Result<Answer<Housing>, Error> {
    Error::quantity_positive("diameter", diameter)?;
    Error::quantity_positive("length", length)?;
    let [low, usual, high] = RULES.map(|rule| diameter * length * rule);
    let inputs = vec![
        measured("d", diameter),
        measured("l", length),
        number("times", RULES[1]),
        measured("least", low),
        measured("most", high),
    ];
    let formula = "A = 30 d l; 15 d l to 20 d l are guide values, to 60 d l is our own guess";
    let step =
        line("Surface that gives off heat", formula, inputs, measured("A", usual), "iso-7902", Standing::FromMemory);
    Ok(Answer::of(Housing { low, usual, high }, step))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn surfaces_stand_in_order_and_nothing_has_none() {
        let mm = Length::from_mm;
        let found = housing(mm(40.0), mm(60.0)).expect("a bearing").value;
        assert!(found.low < found.usual && found.usual < found.high);
        assert!(housing(mm(0.0), mm(60.0)).is_err() && housing(mm(40.0), mm(-1.0)).is_err());
    }
}
