//! Why there is no answer, as data: the offending name, value and limits.
//!
//! Leaving a correlation's stated range is not an error but a warning; see [`crate::Warning`].

/// Why a function of this crate has no answer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Error {
    /// An input that cannot be true, or for which the formula has no meaning.
    OutOfRange {
        /// The input.
        name: &'static str,
        /// What was given, in base SI units.
        value: f64,
        /// The lowest that has a meaning.
        low: f64,
        /// The highest that has a meaning.
        high: f64,
    },
    /// The two ends between which a solution was sought do not enclose one.
    NotBracketed {
        /// What was sought.
        name: &'static str,
        /// The lower end.
        low: f64,
        /// The upper end.
        high: f64,
    },
    /// The solution was approached but not reached.
    NotConverged {
        /// What was sought.
        name: &'static str,
        /// The last point.
        last: f64,
        /// What remained there.
        residual: f64,
        /// Steps taken.
        iterations: u32,
    },
}

impl Error {
    /// The value, if it lies within limits, both included.
    ///
    /// - `name`: the input, as the error will name it.
    /// - `value`, `low`, `high`: in one unit, base SI unless dimensionless.
    /// - returns: `value`.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when `value` is outside the limits or not a number.
    ///
    /// # Example
    /// ```
    /// use tribology::Error;
    /// assert_eq!(Error::unless_within("eccentricity", 0.6, 0.0, 1.0), Ok(0.6));
    /// assert!(Error::unless_within("eccentricity", f64::NAN, 0.0, 1.0).is_err());
    /// ```
    pub fn unless_within(name: &'static str, value: f64, low: f64, high: f64) -> Result<f64, Error> {
        if (low..=high).contains(&value) { Ok(value) } else { Err(Error::OutOfRange { name, value, low, high }) }
    }

    /// The value, if it is finite and above zero.
    ///
    /// - `name`: the input, as the error will name it.
    /// - `value`: in base SI units unless dimensionless.
    /// - returns: `value`.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when `value` is zero, below it, infinite or not a number.
    ///
    /// # Example
    /// ```
    /// use tribology::Error;
    /// assert_eq!(Error::unless_positive("diameter", 0.05), Ok(0.05));
    /// assert!(Error::unless_positive("diameter", 0.0).is_err());
    /// ```
    pub fn unless_positive(name: &'static str, value: f64) -> Result<f64, Error> {
        Error::unless_within(name, value, f64::MIN_POSITIVE, f64::MAX)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn limits_are_included_and_what_is_no_number_is_outside() {
        assert_eq!(Error::unless_within("x", 1.0, 0.0, 1.0), Ok(1.0));
        let fault = Error::OutOfRange { name: "x", value: 1.5, low: 0.0, high: 1.0 };
        assert_eq!(Error::unless_within("x", 1.5, 0.0, 1.0), Err(fault));
        for value in [0.0, -1.0, f64::INFINITY, f64::NAN] {
            assert!(Error::unless_positive("x", value).is_err(), "{value}");
        }
    }
}
