//! How a shot of oil is shared between meter units: each size up passes twice as much as the one below it.
//!
//! Start at [`shot_shares`]. Only for pulsed systems whose units are all open: one that is blocked leaves its part to the others, and
//! one dry way is the only sign.

use super::{plain, sized, step};
use crate::quantity::Volume;
use crate::working::Symbol;
use crate::{Answer, Error, Standing, math};

/// Sizes further apart than this are in no list.
const SIZES: i32 = 16;

/// The part of a shot that each meter unit passes.
///
/// `share = 2^size / Σ 2^size`
///
/// - `sizes`: of the units, counted in steps of their maker's list from any one of them.
/// - returns: the parts in the same order; they sum to one.
///
/// # Range
/// Units of one list, all open, with lines that take little against the units themselves.
///
/// # Errors
/// [`Error::OutOfRange`] when there is no unit, or a size is more than 16 steps from the first.
///
/// # Source
/// `meter-note`
///
/// # Example
/// ```
/// use tribology::feed::shot_shares;
/// let found = shot_shares(&[0, 1, 2]).expect("three units");
/// assert!((found.value[1] - 2.0 / 7.0).abs() < 1e-12);
/// ```
pub fn shot_shares(sizes: &[i32]) -> Result<Answer<Vec<f64>>, Error> {
    let count = sizes.len() as f64;
    Error::unless_within("count of meter units", count, 1.0, f64::MAX)?;
    let first = sizes[0];
    let mut weights = Vec::with_capacity(sizes.len());
    for size in sizes {
        let steps = f64::from(*size) - f64::from(first);
        Error::unless_within("size of a meter unit", steps, -f64::from(SIZES), f64::from(SIZES))?;
        weights.push(math::pow(2.0, steps));
    }
    let whole: f64 = weights.iter().sum();
    let shares: Vec<f64> = weights.iter().map(|weight| weight / whole).collect();
    let sizes = sizes.iter().map(|size| plain("size", f64::from(*size)));
    let result = Symbol { symbol: "largest share", si: shares.iter().copied().fold(0.0, f64::max), unit: "" };
    let (name, formula) = ("Shares of a shot", "share = 2^size / Σ 2^size");
    let found = step(name, formula, sizes.collect(), result, "meter-note", Standing::CommonPractice);
    Ok(Answer::of(shares, found))
}

/// What each meter unit passes of a shot.
///
/// `part = share V`
///
/// - `shot`: volume of a pull, `V`.
/// - `sizes`: of the units, as in [`shot_shares`].
/// - returns: the volumes in the same order; they sum to the shot.
///
/// # Range
/// As [`shot_shares`].
///
/// # Errors
/// [`Error::OutOfRange`] when the shot is not above zero, and as [`shot_shares`].
///
/// # Source
/// `meter-note`
///
/// # Example
/// ```
/// use tribology::feed::shot_parts;
/// use tribology::quantity::Volume;
/// let found = shot_parts(Volume::from_ml(4.0), &[2, 2, 3]).expect("three units");
/// assert!((found.value[2].ml() - 2.0).abs() < 1e-12);
/// ```
pub fn shot_parts(shot: Volume, sizes: &[i32]) -> Result<Answer<Vec<Volume>>, Error> {
    let v = Error::quantity_positive("shot", shot)?;
    let shares = shot_shares(sizes)?;
    let parts: Vec<Volume> = shares.value.iter().map(|share| v * *share).collect();
    let most = parts.iter().map(|part| part.m3()).fold(0.0, f64::max);
    let inputs = vec![sized("V", v), plain("largest share", shares.value.iter().copied().fold(0.0, f64::max))];
    let result = sized("largest part", Volume::from_m3(most));
    let found = step("Parts of a shot", "part = share V", inputs, result, "meter-note", Standing::CommonPractice);
    Ok(Answer::of(parts, found).after(shares))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_unit_and_a_size_of_no_list_are_named() {
        assert!(matches!(shot_shares(&[]), Err(Error::OutOfRange { name: "count of meter units", .. })));
        let refused = shot_shares(&[i32::MIN, i32::MAX]);
        assert!(matches!(refused, Err(Error::OutOfRange { name: "size of a meter unit", .. })), "{refused:?}");
        assert!(matches!(shot_parts(Volume::from_ml(0.0), &[0]), Err(Error::OutOfRange { name: "shot", .. })));
    }
}
