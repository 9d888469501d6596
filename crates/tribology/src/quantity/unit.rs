//! One unit of measure, and how its spellings are recognised.
//!
//! Start at [`Unit::find`]. The units themselves stand in the table next door.

use super::{Kind, UNITS};

/// A unit in which a quantity may be typed or said.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Unit {
    /// What it measures.
    pub kind: Kind,
    /// The spelling that we print.
    pub symbol: &'static str,
    /// Other spellings that people type; case, spaces, dots and raised digits need no spelling of their own.
    pub also: &'static [&'static str],
    pub(super) scale: Scale,
}

/// How the numbers of a unit lie on the scale of the base SI unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Scale {
    /// Base SI units in one; one when `divide` says it exactly.
    multiply: f64,
    /// Ones in a base SI unit; one when `multiply` says it exactly.
    divide: f64,
    /// How far the zero of the unit lies above that of the base SI unit, in this unit.
    offset: f64,
}

/// The scale of a unit that is so many base SI units.
pub(super) const fn times(multiply: f64) -> Scale {
    Scale { multiply, divide: 1.0, offset: 0.0 }
}

/// The scale of a unit of which so many are one base SI unit; dividing by 1000 is exact where timing by 0.001 is not.
pub(super) const fn over(divide: f64) -> Scale {
    Scale { multiply: 1.0, divide, offset: 0.0 }
}

impl Scale {
    /// The same scale with its zero moved up, in units of its own.
    pub(super) const fn above(self, offset: f64) -> Scale {
        Scale { offset, ..self }
    }

    pub(super) const fn apply(self, number: f64) -> f64 {
        (number + self.offset) * self.multiply / self.divide
    }

    pub(super) const fn undo(self, si: f64) -> f64 {
        si * self.divide / self.multiply - self.offset
    }
}

impl Unit {
    /// The unit of `kind` that `text` spells.
    ///
    /// Spaces, dots, `·`, `*`, `^`, hyphens and brackets are ignored, `²` is `2`, and both signs for micro are `u`.
    /// Case is ignored too, with one exception: `m` and `M` before `L`, `Pa` or `N` are milli and mega and never
    /// stand for each other, so `ML` and `mpa` find nothing.
    ///
    /// - `kind`: what is to be measured.
    /// - `text`: the unit as typed, without its number.
    /// - returns: the unit, or nothing when no unit of this kind is spelled so.
    ///
    /// # Example
    /// ```
    /// use tribology::quantity::{Kind, Unit};
    /// let unit = Unit::find(Kind::KinematicViscosity, "mm^2 / s").map(|unit| unit.symbol);
    /// assert_eq!(unit, Some("mm²/s"));
    /// ```
    pub fn find(kind: Kind, text: &str) -> Option<&'static Unit> {
        let key = key(text);
        Unit::of(kind).find(|unit| unit.spellings().any(|spelling| self::key(spelling) == key))
    }

    /// All units of one kind, in the order of the table.
    ///
    /// - `kind`: what is to be measured.
    /// - returns: its units; the first is the base SI unit.
    pub fn of(kind: Kind) -> impl Iterator<Item = &'static Unit> {
        UNITS.iter().filter(move |unit| unit.kind == kind)
    }

    /// The printed symbol and every other spelling.
    ///
    /// - returns: the symbol first, then the others in the order of the table.
    pub fn spellings(&self) -> impl Iterator<Item = &'static str> {
        std::iter::once(self.symbol).chain(self.also.iter().copied())
    }

    /// A number of this unit in base SI units.
    ///
    /// `si = (number + offset) factor`
    ///
    /// - `number`: how many of this unit.
    /// - returns: the same in the base SI unit of the kind.
    ///
    /// # Source
    /// `nist-sp-811`
    #[must_use]
    pub fn to_si(&self, number: f64) -> f64 {
        self.scale.apply(number)
    }

    /// A size in base SI units as a number of this unit.
    ///
    /// `number = si / factor - offset`
    ///
    /// - `si`: the size in the base SI unit of the kind.
    /// - returns: how many of this unit.
    ///
    /// # Source
    /// `nist-sp-811`
    #[must_use]
    pub fn from_si(&self, si: f64) -> f64 {
        self.scale.undo(si)
    }

    /// The size of one of this unit, as a difference: base SI units in one.
    ///
    /// - returns: base SI units; for a temperature scale, kelvins in a degree.
    #[must_use]
    pub fn factor(&self) -> f64 {
        self.scale.multiply / self.scale.divide
    }

    /// What is added to a number of this unit before [`Unit::factor`] applies.
    ///
    /// - returns: in this unit; zero but for temperatures.
    #[must_use]
    pub fn offset(&self) -> f64 {
        self.scale.offset
    }
}

/// The form of a spelling that is compared: what does not tell units apart is dropped.
pub(super) fn key(text: &str) -> String {
    let mut plain = String::with_capacity(text.len());
    let mut signs = text.chars().filter(|sign| !sign.is_whitespace()).peekable();
    while let Some(sign) = signs.next() {
        match sign {
            // The hyphen of "lbf-ft" says nothing; the minus of "s^-1" does.
            '-' if !signs.peek().is_some_and(char::is_ascii_digit) => {}
            '\u{2212}' => plain.push('-'),
            '.' | '·' | '⋅' | '*' | '×' | '^' | '(' | ')' => {}
            '⁻' => plain.push('-'),
            '¹' => plain.push('1'),
            '²' => plain.push('2'),
            '³' => plain.push('3'),
            'µ' | 'μ' => plain.push('u'),
            'º' => plain.push('°'),
            '℃' => plain.push_str("°C"),
            '℉' => plain.push_str("°F"),
            '″' | '”' => plain.push('"'),
            '′' | '’' => plain.push('\''),
            _ => plain.push(sign),
        }
    }
    fold_case(&plain)
}

/// Lower case throughout, but for an `M` that is mega where `m` would be milli.
fn fold_case(plain: &str) -> String {
    let lower = plain.to_lowercase();
    let mut folded = String::with_capacity(lower.len());
    let mut starts_a_word = true;
    for (at, sign) in plain.char_indices() {
        let prefixes = |rest: &str| ["l", "pa", "n"].iter().any(|base| rest.starts_with(base));
        // Lower-casing keeps byte positions for every sign that a unit holds; elsewhere the slice is simply absent.
        let mega = sign == 'M' && starts_a_word && lower.get(at + 1..).is_some_and(prefixes);
        if mega {
            folded.push('M');
        } else {
            folded.extend(sign.to_lowercase());
        }
        starts_a_word = sign == '/';
    }
    folded
}
