//! NLGI numbers: how stiff a grease is, by how deep a cone sinks into it after working.

/// An NLGI number.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[expect(missing_docs, reason = "each is the number that its name spells")]
pub enum NlgiNumber {
    N000,
    N00,
    N0,
    N1,
    N2,
    N3,
    N4,
    N5,
    N6,
}

impl NlgiNumber {
    /// Every number with its spelling, softest first.
    pub const ALL: [(NlgiNumber, &'static str); 9] = [
        (NlgiNumber::N000, "000"),
        (NlgiNumber::N00, "00"),
        (NlgiNumber::N0, "0"),
        (NlgiNumber::N1, "1"),
        (NlgiNumber::N2, "2"),
        (NlgiNumber::N3, "3"),
        (NlgiNumber::N4, "4"),
        (NlgiNumber::N5, "5"),
        (NlgiNumber::N6, "6"),
    ];
}

/// The depth to which the cone sinks into a grease of this number.
///
/// Worked penetration at 25 °C in tenths of a millimetre; between the numbers lie gaps of fifteen that belong to none.
///
/// - `number`: the number.
/// - returns: the lowest and the highest penetration.
///
/// # Range
/// 000 to 6.
///
/// # Source
/// `astm-d217`
///
/// # Example
/// ```
/// use tribology::oil::{NlgiNumber, penetration};
/// assert_eq!(penetration(NlgiNumber::N2), (265, 295));
/// ```
#[must_use]
pub fn penetration(number: NlgiNumber) -> (u32, u32) {
    match number {
        NlgiNumber::N000 => (445, 475),
        NlgiNumber::N00 => (400, 430),
        NlgiNumber::N0 => (355, 385),
        NlgiNumber::N1 => (310, 340),
        NlgiNumber::N2 => (265, 295),
        NlgiNumber::N3 => (220, 250),
        NlgiNumber::N4 => (175, 205),
        NlgiNumber::N5 => (130, 160),
        NlgiNumber::N6 => (85, 115),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_thirty_wide_and_fifteen_apart() {
        for pair in NlgiNumber::ALL.windows(2) {
            let (softer, stiffer) = (penetration(pair[0].0), penetration(pair[1].0));
            assert_eq!((softer.1 - softer.0, softer.0 - stiffer.1), (30, 15), "{pair:?}");
        }
    }
}
