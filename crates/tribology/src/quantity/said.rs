//! A quantity as a person reads it: a few digits and a unit.
//!
//! Start at [`said`]; which unit suits is answered next door by `usual_unit`.

use super::{Quantity, Unit};

/// A quantity in words and digits: `said(Length::from_mm(12.34), mm, 3)` is "12.3 mm".
///
/// - `value`: the quantity.
/// - `unit`: the unit to say it in; its kind is that of `value`.
/// - `digits`: significant digits, at least one; zeros behind the decimal point are left off.
/// - returns: number, space, symbol; no space before `°` alone or a solidus.
///
/// # Range
/// Plain digits from a millionth up to a thousand million millions, an exponent beyond; the text parses back.
///
/// # Example
/// ```
/// use tribology::quantity::{Kind, Length, Unit, said};
/// let mm = Unit::find(Kind::Length, "mm").expect("mm stands in the table");
/// assert_eq!(said(Length::from_m(0.000_050_8), mm, 2), "0.051 mm");
/// ```
pub fn said<Q: Quantity>(value: Q, unit: &Unit, digits: usize) -> String {
    said_si(value.si(), unit, digits)
}

/// As [`said`], for a number in the base SI unit of the kind that the unit measures.
///
/// - `si`: the number.
/// - `unit`, `digits`: as there.
/// - returns: as there.
///
/// # Range
/// As [`said`].
pub fn said_si(si: f64, unit: &Unit, digits: usize) -> String {
    let number = digits_of(unit.from_si(si), digits);
    let close = unit.symbol.starts_with('/') || unit.symbol == "°";
    format!("{number}{}{}", if close { "" } else { " " }, unit.symbol)
}

/// A number rounded to so many significant digits, without zeros that say nothing.
///
/// - `number`: dimensionless.
/// - `digits`: significant digits, at least one.
/// - returns: as the number part of [`said`].
pub fn digits_of(number: f64, digits: usize) -> String {
    let decimals = digits.saturating_sub(1);
    let scientific = format!("{number:.decimals$e}");
    let Some((mantissa, exponent)) = scientific.split_once('e') else {
        return scientific;
    };
    let exponent: i32 = exponent.parse().unwrap_or(0);
    if mantissa.bytes().all(|sign| !sign.is_ascii_digit() || sign == b'0') {
        return "0".to_owned();
    }
    if !(-6..15).contains(&exponent) {
        return format!("{}e{exponent}", without_idle_zeros(mantissa));
    }
    // The rounded number, not the number itself: 1234.5 at three digits is 1230 and not 1234.
    let rounded: f64 = scientific.parse().unwrap_or(number);
    let places = usize::try_from(decimals as i32 - exponent).unwrap_or(0);
    without_idle_zeros(&format!("{rounded:.places$}")).to_owned()
}

fn without_idle_zeros(number: &str) -> &str {
    if number.contains('.') { number.trim_end_matches('0').trim_end_matches('.') } else { number }
}

#[cfg(test)]
mod tests {
    use super::super::{Angle, Length, PressureViscosity, Temperature};
    use super::*;

    #[track_caller]
    fn check<Q: Quantity>(value: Q, unit: &str, digits: usize, wanted: &str) {
        let unit = Unit::find(Q::KIND, unit).expect("the unit stands in the table");
        assert_eq!(said(value, unit, digits), wanted);
    }

    #[test]
    fn digits_are_significant_and_zeros_behind_the_point_left_off() {
        check(Length::from_mm(12.345), "mm", 3, "12.3 mm");
        check(Length::from_mm(12.0), "mm", 3, "12 mm");
        check(Length::from_mm(1234.5), "mm", 3, "1230 mm");
        check(Length::from_mm(999.6), "mm", 3, "1000 mm");
        check(Length::from_mm(0.0996), "mm", 2, "0.1 mm");
        check(Length::from_mm(-0.5), "mm", 1, "-0.5 mm");
        check(Length::from_mm(12.3), "mm", 0, "10 mm");
    }

    #[test]
    fn nothing_is_said_as_nothing() {
        check(Length::from_mm(0.0), "mm", 3, "0 mm");
        check(Length::from_mm(-0.0), "mm", 3, "0 mm");
        check(Length::from_mm(f64::NAN), "mm", 3, "NaN mm");
        check(Length::from_mm(f64::INFINITY), "mm", 3, "inf mm");
    }

    #[test]
    fn far_sizes_get_an_exponent() {
        check(Length::from_m(1.5e-9), "m", 3, "1.5e-9 m");
        check(Length::from_m(2e20), "m", 3, "2e20 m");
    }

    #[test]
    fn the_space_is_left_out_where_nobody_writes_it() {
        check(PressureViscosity::from_per_gpa(20.0), "/GPa", 3, "20/GPa");
        check(Angle::from_degrees(120.0), "deg", 3, "120°");
        check(Temperature::from_celsius(40.0), "C", 3, "40 °C");
    }
}
