//! Numbers as people type them: decimals with point or comma, fractions, mixed numbers, exponents.
//!
//! Start at [`number_and_unit`]. What the rest of the text means is for the caller: a unit here, a word of its own elsewhere.

use super::TypedFault;

/// A number at the beginning of a text.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Number<'a> {
    pub(super) value: f64,
    /// Half a unit of the last typed digit; zero for a fraction, which is exact.
    pub(super) half_step: f64,
    /// The number as typed.
    pub(super) text: &'a str,
    /// What follows, trimmed.
    pub(super) rest: &'a str,
}

/// The number at the beginning of a text, and what follows it.
///
/// Takes `12`, `-0.5`, `.5`, `1e-3`, `0,09`, `3/8`, `1 3/8`, `1-3/8`, `1½`, and U+2212 for the minus sign. A comma is a decimal
/// comma when it cannot part thousands; `1,000` is refused. One number only: `5-10 mm` and `1 000` are refused.
///
/// - `text`: a number with or without something behind it; space around either is ignored.
/// - returns: the number, dimensionless, always finite; and the rest, trimmed, which may be empty.
///
/// # Errors
/// [`TypedFault::Empty`], [`TypedFault::NotANumber`] or [`TypedFault::UnclearComma`].
///
/// # Example
/// ```
/// use tribology::quantity::number_and_unit;
/// assert_eq!(number_and_unit("1 3/8 strokes"), Ok((1.375, "strokes")));
/// assert_eq!(number_and_unit("10/min"), Ok((10.0, "/min")));
/// ```
pub fn number_and_unit(text: &str) -> Result<(f64, &str), TypedFault> {
    number(text).map(|number| (number.value, number.rest))
}

/// As [`number_and_unit`], with what the typed digits say of their own fineness.
pub(super) fn number(text: &str) -> Result<Number<'_>, TypedFault> {
    let trimmed = text.trim();
    if trimmed.is_empty() {
        return Err(TypedFault::Empty);
    }
    let not_a_number = || TypedFault::NotANumber { text: trimmed.to_owned() };
    let (sign, unsigned) = signed(trimmed);
    let (size, half_step, rest) = match fraction(unsigned) {
        Some((size, rest)) => (size, 0.0, rest),
        None => decimal(unsigned, trimmed)?,
    };
    let typed = trimmed[..trimmed.len() - rest.len()].trim_end();
    let rest = rest.trim_start();
    if !size.is_finite() || another_number(rest) {
        return Err(not_a_number());
    }
    Ok(Number { value: sign * size, half_step, text: typed, rest })
}

fn signed(text: &str) -> (f64, &str) {
    for (mark, sign) in [('-', -1.0), ('\u{2212}', -1.0), ('+', 1.0)] {
        if let Some(rest) = text.strip_prefix(mark) {
            return (sign, rest.trim_start());
        }
    }
    (1.0, text)
}

/// The leading ASCII digits of a text, and the rest.
fn digits(text: &str) -> (&str, &str) {
    let end = text.find(|sign: char| !sign.is_ascii_digit()).unwrap_or(text.len());
    text.split_at(end)
}

/// `3/8`, `½`, `1 3/8`, `1-3/8`, `1½`.
fn fraction(text: &str) -> Option<(f64, &str)> {
    if let Some(found) = part_of_one(text) {
        return Some(found);
    }
    let (whole, rest) = digits(text);
    let whole: f64 = whole.parse().ok()?;
    let spaced = rest.trim_start();
    let rest = spaced.strip_prefix('-').unwrap_or(spaced);
    // "13/8" was taken above, so the part of one stands apart from the whole or is a single sign.
    part_of_one(rest).map(|(part, rest)| (whole + part, rest))
}

fn part_of_one(text: &str) -> Option<(f64, &str)> {
    const SIGNS: [(char, f64); 9] = [
        ('½', 0.5),
        ('¼', 0.25),
        ('¾', 0.75),
        ('⅛', 0.125),
        ('⅜', 0.375),
        ('⅝', 0.625),
        ('⅞', 0.875),
        ('⅓', 1.0 / 3.0),
        ('⅔', 2.0 / 3.0),
    ];
    for (sign, part) in SIGNS {
        if let Some(rest) = text.strip_prefix(sign) {
            return Some((part, rest));
        }
    }
    let (above, rest) = digits(text);
    let rest = rest.strip_prefix(['/', '\u{2044}'])?;
    let (below, rest) = digits(rest);
    let above: f64 = above.parse().ok()?;
    let below: f64 = below.parse().ok()?;
    Some((above / below, rest))
}

/// Digits with at most one point or comma, then perhaps an exponent: size, half step, rest.
fn decimal<'a>(text: &'a str, all: &str) -> Result<(f64, f64, &'a str), TypedFault> {
    let (whole, after_whole) = digits(text);
    let (decimals, mut rest) = match after_whole.strip_prefix(['.', ',']).map(digits) {
        Some((decimals, rest)) if !decimals.is_empty() => (decimals, rest),
        _ => ("", after_whole),
    };
    let comma = after_whole.starts_with(',') && !decimals.is_empty();
    let may_part_thousands = decimals.len() == 3 && (1..=3).contains(&whole.len()) && !whole.starts_with('0');
    let goes_on = rest.starts_with([',', '.']) && rest[1..].starts_with(|c: char| c.is_ascii_digit());
    let has_comma = comma || rest.starts_with(',');
    if (comma && may_part_thousands) || (goes_on && has_comma) {
        return Err(TypedFault::UnclearComma { text: all.to_owned() });
    }
    let mut exponent = 0_i32;
    if let Some((typed, after)) = exponent_of(rest) {
        // An exponent too long for an i32 is no number that anybody means; infinity is refused by the caller.
        exponent = typed.parse().unwrap_or(i32::MAX);
        rest = after;
    }
    let plain = format!("{whole}.{decimals}e{exponent}");
    let size = plain.parse().map_err(|_| TypedFault::NotANumber { text: all.to_owned() })?;
    let last_digit = i64::from(exponent) - decimals.len() as i64;
    let half_step = format!("0.5e{last_digit}").parse().unwrap_or(0.0);
    Ok((size, half_step, rest))
}

/// `e-3` or `E3` at the beginning of a text: the exponent and the rest.
fn exponent_of(text: &str) -> Option<(&str, &str)> {
    let after = text.strip_prefix(['e', 'E'])?;
    let unsigned = after.strip_prefix(['-', '+']).unwrap_or(after);
    let (found, rest) = digits(unsigned);
    (!found.is_empty()).then(|| (&after[..after.len() - rest.len()], rest))
}

/// Whether what follows a number is a further number and not a unit such as "1/min".
fn another_number(rest: &str) -> bool {
    let begins = |text: &str| text.starts_with(|sign: char| sign.is_ascii_digit());
    let reciprocal = rest.strip_prefix("1/").is_some_and(|unit| !begins(unit));
    let marks = ['-', '\u{2212}', '–', '.', ',', '/', '\u{2044}', '+'];
    !reciprocal && begins(rest.trim_start_matches(marks).trim_start())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(text: &str, value: f64, rest: &str) {
        assert_eq!(number_and_unit(text), Ok((value, rest)), "{text:?}");
    }

    #[track_caller]
    fn refuse(text: &str) {
        let text = text.to_owned();
        assert_eq!(number_and_unit(&text), Err(TypedFault::NotANumber { text: text.clone() }));
    }

    #[test]
    fn decimals() {
        check("12mm", 12.0, "mm");
        check(" .5 in ", 0.5, "in");
        check("5. mm", 5.0, ". mm");
        check("-0.5", -0.5, "");
        check("\u{2212} 3 C", -3.0, "C");
        check("1e-3 m", 0.001, "m");
        check("1E3", 1000.0, "");
        check("3 em", 3.0, "em");
    }

    #[test]
    fn a_comma_is_decimal_when_it_cannot_part_thousands() {
        check("0,09 mm", 0.09, "mm");
        check("0,125 mm", 0.125, "mm");
        check("1,5", 1.5, "");
        check("12,3456", 12.3456, "");
        check("1234,567", 1234.567, "");
        for text in ["1,000", "12,000 mm", "123,456", "1,234.5", "1.234,5", "1,000,000"] {
            assert_eq!(number_and_unit(text), Err(TypedFault::UnclearComma { text: text.to_owned() }));
        }
    }

    #[test]
    fn fractions_and_mixed_numbers() {
        check("3/8 in", 0.375, "in");
        check("1 3/8", 1.375, "");
        check("1-3/8\"", 1.375, "\"");
        check("-1 1/2", -1.5, "");
        check("½", 0.5, "");
        check("2¼ turns", 2.25, "turns");
        check("1 ⅝ in", 1.625, "in");
        check("3\u{2044}8", 0.375, "");
        refuse("3/0 in");
        refuse("1/4.5");
    }

    #[test]
    fn a_solidus_may_belong_to_the_unit() {
        check("20/GPa", 20.0, "/GPa");
        check("1/min", 1.0, "/min");
        check("20 1/GPa", 20.0, "1/GPa");
    }

    #[test]
    fn one_finite_number_only() {
        assert_eq!(number_and_unit("  "), Err(TypedFault::Empty));
        for text in ["mm", "NaN", "inf", "-", ".", "1e999", "5-10 mm", "5–10 mm", "1 000 mm", "1.2.3", "--5", "+ -5"]
        {
            refuse(text);
        }
    }

    #[test]
    fn the_last_digit_tells_how_fine_a_number_is() {
        let half_step = |text| number(text).map(|number| number.half_step);
        assert_eq!(half_step("138"), Ok(0.5));
        assert_eq!(half_step("0.050"), Ok(0.0005));
        assert_eq!(half_step("1.5e3"), Ok(50.0));
        assert_eq!(half_step("3/8"), Ok(0.0));
    }
}
