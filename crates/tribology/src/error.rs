//! Why there is no answer, as data: the offending name, value and limits.
//!
//! Leaving a correlation's stated range is not an error but a warning; see [`crate::Warning`].

use crate::quantity::Quantity;

/// Why a function of this crate has no answer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Error {
    /// An input that cannot be true, or for which the formula has no meaning.
    OutOfRange {
        /// The input.
        name: &'static str,
        /// What was given, in `unit`.
        value: f64,
        /// The lowest that has a meaning.
        low: f64,
        /// The highest that has a meaning.
        high: f64,
        /// The base SI unit of the three; empty when dimensionless.
        unit: &'static str,
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
    /// The number, if it lies within limits, both included.
    ///
    /// - `name`: the input, as the error will name it.
    /// - `value`, `low`, `high`: dimensionless; see [`quantity_within`](Self::quantity_within) for others.
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
        if (low..=high).contains(&value) {
            Ok(value)
        } else {
            Err(Error::OutOfRange { name, value, low, high, unit: "" })
        }
    }

    /// The number, if it is finite and above zero.
    ///
    /// - `name`: the input, as the error will name it.
    /// - `value`: dimensionless; see [`quantity_positive`](Self::quantity_positive) for others.
    /// - returns: `value`.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when `value` is zero, below it, infinite or not a number.
    ///
    /// # Example
    /// ```
    /// use tribology::Error;
    /// assert_eq!(Error::unless_positive("slope", 0.05), Ok(0.05));
    /// assert!(Error::unless_positive("slope", 0.0).is_err());
    /// ```
    pub fn unless_positive(name: &'static str, value: f64) -> Result<f64, Error> {
        Error::unless_within(name, value, f64::MIN_POSITIVE, f64::MAX)
    }

    /// The quantity, if it lies within limits, both included.
    ///
    /// - `name`: the input, as the error will name it.
    /// - `value`, `low`, `high`: quantities of one kind.
    /// - returns: `value`.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when `value` is outside the limits or not a number.
    ///
    /// # Example
    /// ```
    /// use tribology::{Error, quantity::Temperature};
    /// let (cold, hot) = (Temperature::from_celsius(-40.0), Temperature::from_celsius(200.0));
    /// assert!(Error::quantity_within("temperature", Temperature::from_celsius(250.0), cold, hot).is_err());
    /// ```
    pub fn quantity_within<Q: Quantity>(name: &'static str, value: Q, low: Q, high: Q) -> Result<Q, Error> {
        let (value, low, high) = (value.si(), low.si(), high.si());
        if (low..=high).contains(&value) {
            Ok(Q::from_si(value))
        } else {
            Err(Error::OutOfRange { name, value, low, high, unit: Q::KIND.si_symbol() })
        }
    }

    /// The quantity, if it is finite and above zero in base SI units.
    ///
    /// - `name`: the input, as the error will name it.
    /// - `value`: a quantity.
    /// - returns: `value`.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when `value` is zero, below it, infinite or not a number.
    ///
    /// # Example
    /// ```
    /// use tribology::{Error, quantity::Length};
    /// assert!(Error::quantity_positive("diameter", Length::from_mm(0.0)).is_err());
    /// ```
    pub fn quantity_positive<Q: Quantity>(name: &'static str, value: Q) -> Result<Q, Error> {
        Error::quantity_within(name, value, Q::from_si(f64::MIN_POSITIVE), Q::from_si(f64::MAX))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn limits_are_included_and_what_is_no_number_is_outside() {
        assert_eq!(Error::unless_within("x", 1.0, 0.0, 1.0), Ok(1.0));
        let fault = Error::OutOfRange { name: "x", value: 1.5, low: 0.0, high: 1.0, unit: "" };
        assert_eq!(Error::unless_within("x", 1.5, 0.0, 1.0), Err(fault));
        for value in [0.0, -1.0, f64::INFINITY, f64::NAN] {
            assert!(Error::unless_positive("x", value).is_err(), "{value}");
        }
    }
}
