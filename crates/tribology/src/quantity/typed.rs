//! What a person typed, read as a quantity and kept word for word.
//!
//! Start at [`typed`]. Faults are data; see [`TypedFault`].

use super::number::{Number, number};
use super::unit::key;
use super::{Kind, Quantity, TypedFault, Unit};

/// A quantity together with the very text it was typed as.
#[derive(Clone, Debug, PartialEq)]
pub struct Typed<Q> {
    /// The quantity; of a pair, the first half.
    pub value: Q,
    /// The text as typed, untouched.
    pub text: String,
    /// The unit that was typed; of a pair, that of the first half.
    pub unit: &'static Unit,
}

/// The quantity that a text spells: a number and a unit, or a pair of both that agree, as in "138 °C (280 °F)".
///
/// - `text`: as typed; with or without a space before the unit.
/// - returns: the quantity with its text and unit.
///
/// # Range
/// Any finite number; whether it can be true is for the caller to judge.
///
/// # Errors
/// Any [`TypedFault`]. The halves of a pair may differ by half a unit of the last typed digit on each side.
///
/// # Example
/// ```
/// use tribology::quantity::{Length, typed};
/// let clearance = typed::<Length>("0.002in").map(|typed| typed.value.um());
/// assert!(clearance.is_ok_and(|um| (um - 50.8).abs() < 1e-9));
/// ```
pub fn typed<Q: Quantity>(text: &str) -> Result<Typed<Q>, TypedFault> {
    read(text, None)
}

/// As [`typed`], where the unit may be left out because the place says which it is.
///
/// - `text`: as typed.
/// - `default`: the unit of a bare number.
/// - returns: the quantity with its text and the typed or default unit.
///
/// # Errors
/// As [`typed`], never [`TypedFault::NoUnit`]; [`TypedFault::WrongKind`] also when `default` does not measure a `Q`.
///
/// # Example
/// ```
/// use tribology::quantity::{Kind, Time, Unit, typed_in};
/// let hours = Unit::find(Kind::Time, "h").expect("hours stand in the table");
/// assert_eq!(typed_in::<Time>("4", hours).map(|typed| typed.value.minutes()), Ok(240.0));
/// ```
pub fn typed_in<Q: Quantity>(text: &str, default: &'static Unit) -> Result<Typed<Q>, TypedFault> {
    if default.kind != Q::KIND {
        let unit = default.symbol.to_owned();
        return Err(TypedFault::WrongKind { unit, is: default.kind, wanted: Q::KIND });
    }
    read(text, Some(default))
}

fn read<Q: Quantity>(text: &str, default: Option<&'static Unit>) -> Result<Typed<Q>, TypedFault> {
    let (si, unit) = si_and_unit(Q::KIND, text, default)?;
    Ok(Typed { value: Q::from_si(si), text: text.to_owned(), unit })
}

fn si_and_unit(kind: Kind, text: &str, default: Option<&'static Unit>) -> Result<(f64, &'static Unit), TypedFault> {
    let Some((first, second)) = pair(text) else {
        let (number, unit) = half(kind, text, default)?;
        return Ok((unit.to_si(number.value), unit));
    };
    let (number, unit) = half(kind, first, default)?;
    let (other, other_unit) = half(kind, second, None)?;
    let second_in_first_unit = unit.from_si(other_unit.to_si(other.value));
    let other_half_step = other.half_step * other_unit.factor() / unit.factor();
    // A part in a thousand million covers the rounding of the conversion itself.
    let allowed = number.half_step + other_half_step + 1e-9 * number.value.abs();
    if (second_in_first_unit - number.value).abs() > allowed {
        return Err(TypedFault::PairDisagrees {
            first: first.to_owned(),
            second: second.to_owned(),
            second_in_first_unit,
            unit,
        });
    }
    Ok((unit.to_si(number.value), unit))
}

/// The halves of "138 °C (170 °F)"; brackets that hold no number belong to the unit, as in "1 pint (US)".
fn pair(text: &str) -> Option<(&str, &str)> {
    let (first, second) = text.trim().strip_suffix(')')?.rsplit_once('(')?;
    let second = second.trim();
    number(second).is_ok().then_some((first.trim(), second))
}

fn half<'a>(
    kind: Kind,
    text: &'a str,
    default: Option<&'static Unit>,
) -> Result<(Number<'a>, &'static Unit), TypedFault> {
    let number = number(text)?;
    let unit = match (number.rest, default) {
        ("", Some(unit)) => unit,
        ("", None) => {
            return Err(TypedFault::NoUnit { number: number.text.to_owned(), kind });
        }
        (unit, _) => unit_of(kind, unit)?,
    };
    Ok((number, unit))
}

fn unit_of(kind: Kind, text: &str) -> Result<&'static Unit, TypedFault> {
    if let Some(unit) = Unit::find(kind, text) {
        return Ok(unit);
    }
    let unit = text.to_owned();
    if let Some(choices) = choices(kind, text) {
        return Err(TypedFault::Unclear { unit, choices: choices.to_vec() });
    }
    if let Some(&is) = Kind::ALL.iter().find(|&&other| Unit::find(other, text).is_some()) {
        return Err(TypedFault::WrongKind { unit, is, wanted: kind });
    }
    Err(TypedFault::UnknownUnit { unit, kind, nearest: nearest(kind, text) })
}

/// Words that name more than one unit: measures of one size in the United States and of another in the United
/// Kingdom, and degrees without their scale.
fn choices(kind: Kind, text: &str) -> Option<&'static [&'static str]> {
    const DEGREES: &[&str] = &["°", "deg", "degree", "degrees"];
    const WORDS: &[(Kind, &[&str], &[&str])] = &[
        (Kind::Volume, &["fl oz", "fluid ounce", "fluid ounces", "oz", "ounce", "ounces"], &["US fl oz", "UK fl oz"]),
        (Kind::Volume, &["pint", "pints", "pt", "pts"], &["US pint", "UK pint"]),
        (Kind::Volume, &["quart", "quarts", "qt", "qts"], &["US quart", "UK quart"]),
        (Kind::Volume, &["gallon", "gallons", "gal", "gals"], &["US gallon", "UK gallon"]),
        (Kind::Temperature, DEGREES, &["°C", "°F"]),
        (Kind::TemperatureDifference, DEGREES, &["°C", "°F"]),
        (Kind::VolumeFlow, &["gpm", "gal/min"], &["US gal/min", "UK gal/min"]),
    ];
    let typed = key(text);
    let found = WORDS.iter().find(|(of, words, _)| *of == kind && words.iter().any(|word| key(word) == typed));
    found.map(|(_, _, choices)| *choices)
}

/// The unit of a kind whose spelling is nearest, if at most two signs and half of what was typed are off.
fn nearest(kind: Kind, text: &str) -> Option<&'static str> {
    let typed = key(text).to_lowercase();
    let most = (typed.chars().count() / 2).min(2);
    let distances = Unit::of(kind)
        .flat_map(|unit| unit.spellings().map(|spelling| (edits(&typed, &key(spelling).to_lowercase()), unit.symbol)));
    distances.filter(|(edits, _)| *edits <= most).min_by_key(|(edits, _)| *edits).map(|(_, symbol)| symbol)
}

/// How many signs must be put in, taken out or changed to turn one text into the other.
fn edits(from: &str, to: &str) -> usize {
    let to: Vec<char> = to.chars().collect();
    let mut row: Vec<usize> = (0..=to.len()).collect();
    for (i, sign) in from.chars().enumerate() {
        let mut diagonal = row[0];
        row[0] = i + 1;
        for (j, other) in to.iter().enumerate() {
            let changed = diagonal + usize::from(sign != *other);
            diagonal = row[j + 1];
            row[j + 1] = changed.min(row[j] + 1).min(diagonal + 1);
        }
    }
    row[to.len()]
}

#[cfg(test)]
mod tests {
    use super::super::{KinematicViscosity, Length, Pressure, Rotation, Temperature, Volume};
    use super::*;

    #[track_caller]
    fn check_fault<Q: Quantity>(text: &str, wanted: TypedFault) {
        assert_eq!(typed::<Q>(text).map(|typed| typed.value), Err(wanted));
    }

    #[test]
    fn the_text_is_kept_word_for_word() {
        let read = typed::<Length>("  1-3/8\" ").expect("it is a length");
        assert_eq!((read.text.as_str(), read.unit.symbol, read.value.inches()), ("  1-3/8\" ", "in", 1.375));
    }

    #[test]
    fn a_number_alone_wants_a_unit_unless_the_place_says_it() {
        let number = "12".to_owned();
        check_fault::<Length>("12 ", TypedFault::NoUnit { number, kind: Kind::Length });
        let rpm = Unit::find(Kind::Rotation, "rpm").expect("rpm stands in the table");
        assert_eq!(typed_in::<Rotation>("1800", rpm).map(|read| read.value.per_second()), Ok(30.0));
        assert_eq!(typed_in::<Rotation>("30/s", rpm).map(|read| read.value.rpm()), Ok(1800.0));
        let unit = "rpm".to_owned();
        let fault = TypedFault::WrongKind { unit, is: Kind::Rotation, wanted: Kind::Length };
        assert_eq!(typed_in::<Length>("5", rpm), Err(fault));
    }

    #[test]
    fn a_unit_of_another_kind_is_named() {
        let unit = "mm".to_owned();
        check_fault::<Volume>("3 mm", TypedFault::WrongKind { unit, is: Kind::Length, wanted: Kind::Volume });
    }

    #[test]
    fn the_nearest_spelling_is_offered() {
        let unknown = |unit: &str, kind, nearest| TypedFault::UnknownUnit { unit: unit.to_owned(), kind, nearest };
        check_fault::<Volume>("3 ML", unknown("ML", Kind::Volume, Some("mL")));
        check_fault::<Pressure>("3 mpa", unknown("mpa", Kind::Pressure, Some("MPa")));
        check_fault::<Length>("3 milimetres", unknown("milimetres", Kind::Length, Some("mm")));
        check_fault::<KinematicViscosity>("300 SUS", unknown("SUS", Kind::KinematicViscosity, None));
        check_fault::<Length>("3 q", unknown("q", Kind::Length, None));
    }

    #[test]
    fn a_word_of_two_sizes_is_unclear() {
        let unclear = |unit: &str, choices: &[&'static str]| {
            let unit = unit.to_owned();
            TypedFault::Unclear { unit, choices: choices.to_vec() }
        };
        check_fault::<Volume>("1 pint", unclear("pint", &["US pint", "UK pint"]));
        check_fault::<Volume>("2 Fl. Oz.", unclear("Fl. Oz.", &["US fl oz", "UK fl oz"]));
        check_fault::<Temperature>("100°", unclear("°", &["°C", "°F"]));
        let said = typed::<Volume>("1 pint (US)").map(|read| read.unit.symbol);
        assert_eq!((said, typed::<Volume>("1 Imp. pint").map(|read| read.unit.symbol)), (Ok("US pint"), Ok("UK pint")));
    }

    #[test]
    fn a_pair_must_agree() {
        let second = typed::<Temperature>("138 °C (170 °F)");
        let Err(TypedFault::PairDisagrees { first, second, second_in_first_unit, unit }) = second else {
            panic!("170 °F is 77 °C, not 138");
        };
        assert_eq!((first.as_str(), second.as_str(), unit.symbol), ("138 °C", "170 °F", "°C"));
        // (170 - 32) / 1.8
        assert!((second_in_first_unit - 76.666_666_7).abs() < 1e-6);
        let agreed = typed::<Temperature>("138 °C (280 °F)").map(|read| read.value.celsius());
        assert!(agreed.is_ok_and(|celsius| (celsius - 138.0).abs() < 1e-9));
    }

    /// An inch is 25.4 mm: 0.002 in is 0.0508 mm, and its last digit stands for half a thou, 0.0127 mm.
    #[test]
    fn a_pair_may_differ_by_what_its_digits_leave_open() {
        assert!(typed::<Length>("0.002 in (0.05 mm)").is_ok());
        assert!(typed::<Length>("0.0020 in (0.05 mm)").is_ok());
        assert!(typed::<Length>("0.0020 in (0.053 mm)").is_err());
        assert!(typed::<Length>("3/8 in (9.5 mm)").is_ok());
        assert!(typed::<Length>("3/8 in (9.4 mm)").is_err());
    }

    #[test]
    fn the_second_half_of_a_pair_is_read_as_strictly() {
        check_fault::<Volume>("1 L (2)", TypedFault::NoUnit { number: "2".to_owned(), kind: Kind::Volume });
        assert!(matches!(typed::<Volume>("1 L (2 pint)"), Err(TypedFault::Unclear { .. })));
        assert!(typed::<Volume>("2 pint (US) (0.95 L)").is_ok());
    }
}
