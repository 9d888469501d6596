//! Greases of unlike soap in one bearing (rule R13): thickener against thickener, as the printed table has it. Such tables disagree with
//! each other; base oil and additives matter too.

use tribology::Standing;

use crate::verdict::{Reason, Verdict};

/// What makes a grease stiff.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Thickener {
    /// Sodium soap, fibrous.
    Sodium,
    /// Aluminium complex soap.
    AluminiumComplex,
    /// Barium soap.
    Barium,
    /// Calcium (lime) soap.
    Calcium,
    /// Calcium complex soap.
    CalciumComplex,
    /// Clay.
    Clay,
    /// Lithium soap.
    Lithium,
    /// Lithium complex soap.
    LithiumComplex,
    /// Polyurea.
    Polyurea,
}

/// How two thickeners bear each other.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Mix {
    /// They do not.
    Incompatible,
    /// Sometimes.
    Borderline,
    /// They do.
    Compatible,
}

use Mix::{Borderline as B, Compatible as C, Incompatible as I};

/// The table of FIST 2-4 (1990), in the order of [`Thickener`]; clay is borderline even with itself.
const TABLE: [[Mix; 9]; 9] = [
    [C, I, I, I, I, I, I, I, I],
    [I, C, I, I, I, I, B, C, I],
    [I, I, C, I, I, I, I, I, I],
    [I, I, I, C, I, I, B, C, I],
    [I, I, I, I, C, I, I, I, I],
    [I, I, I, I, I, B, I, I, I],
    [I, B, I, B, I, I, C, C, I],
    [I, C, I, C, I, I, C, C, I],
    [I, I, I, I, I, I, I, I, C],
];

impl Thickener {
    /// All of them, in the order of the table.
    pub const ALL: [Self; 9] = [
        Self::Sodium,
        Self::AluminiumComplex,
        Self::Barium,
        Self::Calcium,
        Self::CalciumComplex,
        Self::Clay,
        Self::Lithium,
        Self::LithiumComplex,
        Self::Polyurea,
    ];

    /// The thickener that a data sheet's words name; nothing for one that the table does not hold, such as calcium sulphonate.
    #[must_use]
    pub fn read(words: &str) -> Option<Self> {
        let words = words.to_lowercase();
        let has = |any: &[&str]| any.iter().any(|part| words.contains(part));
        let is_complex = has(&["complex"]);
        if has(&["sulphonate", "sulfonate"]) {
            return None;
        }
        Some(match () {
            () if has(&["polyurea"]) => Self::Polyurea,
            () if has(&["sodium", "soda"]) => Self::Sodium,
            () if has(&["barium"]) => Self::Barium,
            () if has(&["clay", "bentonite", "bentone"]) => Self::Clay,
            () if has(&["aluminium", "aluminum"]) && is_complex => Self::AluminiumComplex,
            () if has(&["lithium"]) && is_complex => Self::LithiumComplex,
            () if has(&["lithium"]) => Self::Lithium,
            () if has(&["calcium", "lime"]) && is_complex => Self::CalciumComplex,
            () if has(&["calcium", "lime"]) => Self::Calcium,
            () => return None,
        })
    }

    /// How it bears another.
    #[must_use]
    pub fn with(self, other: Self) -> Mix {
        TABLE[self as usize][other as usize]
    }
}

/// What rule R13 says of two greases, each by its thickener as its sheet has it; nothing where they bear each other.
#[must_use]
pub fn unlike(one: Option<&str>, other: Option<&str>) -> Option<Reason> {
    let read = |words: Option<&str>| words.and_then(Thickener::read);
    let named = |words: Option<&str>| words.unwrap_or("a soap that nobody has written down").to_lowercase();
    let (a, b) = (named(one), named(other));
    let (cap, says) = match read(one).zip(read(other)).map(|(one, other)| one.with(other)) {
        Some(Mix::Compatible) => return None,
        Some(Mix::Borderline) => (
            Verdict::Serves,
            format!("greases of {a} and {b} do not always bear each other: purge, and shorten the next interval"),
        ),
        Some(Mix::Incompatible) => (
            Verdict::Stopgap,
            format!(
                "greases of {a} and {b} do not bear each other, and a mixture may run out or harden: clean out the old one"
            ),
        ),
        None => (
            Verdict::Serves,
            format!(
                "whether greases of {a} and {b} bear each other is not known: clean out, or purge and shorten the next interval"
            ),
        ),
    };
    Some(Reason {
        rule: "R13",
        cap,
        says,
        standing: Standing::Handbook,
        source: "FIST 2-4 (1990), table of thickeners; such tables disagree",
        seen: Vec::new(),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Section 3.1 of the trade-practice file, source FIST 2-4 (1990): the rows as they are printed, by letter.
    const PRINTED: &str = "\
        Sodium            C I I I I I I I I\n\
        Aluminium complex I C I I I I B C I\n\
        Barium            I I C I I I I I I\n\
        Calcium           I I I C I I B C I\n\
        Calcium complex   I I I I C I I I I\n\
        Clay              I I I I I B I I I\n\
        Lithium           I B I B I I C C I\n\
        Lithium complex   I C I C I I C C I\n\
        Polyurea          I I I I I I I I C";

    #[test]
    fn the_table_is_the_printed_one_and_the_same_both_ways() {
        for (line, one) in PRINTED.lines().zip(Thickener::ALL) {
            let (name, letters) = line.split_at(18);
            assert_eq!(Thickener::read(name), Some(one), "{name}");
            for (letter, other) in letters.split_whitespace().zip(Thickener::ALL) {
                let printed = match letter {
                    "C" => Mix::Compatible,
                    "B" => Mix::Borderline,
                    _ => Mix::Incompatible,
                };
                assert_eq!(one.with(other), printed, "{one:?} with {other:?}");
                assert_eq!(one.with(other), other.with(one), "{one:?} with {other:?}");
            }
        }
        assert_eq!(PRINTED.lines().count(), 9);
    }

    #[test]
    fn what_is_not_in_the_table_is_not_guessed() {
        for words in ["calcium sulfonate complex", "soap", "", "aluminium"] {
            assert_eq!(Thickener::read(words), None, "{words}");
        }
        assert!(unlike(Some("lithium"), Some("Lithium complex")).is_none());
        let cap = |one, other| unlike(one, other).map(|reason| reason.cap);
        assert_eq!(cap(Some("calcium"), Some("lithium")), Some(Verdict::Serves));
        assert_eq!(cap(Some("sodium"), Some("lithium")), Some(Verdict::Stopgap));
        assert_eq!(cap(None, Some("lithium")), Some(Verdict::Serves));
    }
}
