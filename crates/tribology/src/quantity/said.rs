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
    let number = digits_of(unit.from_si(value.si()), digits);
    let close = unit.symbol.starts_with('/') || unit.symbol == "°";
    format!("{number}{}{}", if close { "" } else { " " }, unit.symbol)
}

/// A number rounded to so many significant digits, without zeros that say nothing.
fn digits_of(number: f64, digits: usize) -> String {
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
    // Going through the rounded number keeps "999.6" at three digits from becoming "1000.0".
    let rounded: f64 = scientific.parse().unwrap_or(number);
    let places = usize::try_from(decimals as i32 - exponent).unwrap_or(0);
    without_idle_zeros(&format!("{rounded:.places$}")).to_owned()
}

fn without_idle_zeros(number: &str) -> &str {
    if number.contains('.') { number.trim_end_matches('0').trim_end_matches('.') } else { number }
}
