//! A set of small numbers as bits.

/// A set of numbers below a limit that its maker knows.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub(super) struct Set(Vec<u64>);

impl Set {
    /// The set of these numbers, with room for numbers below `limit`.
    pub(super) fn of(limit: usize, numbers: impl IntoIterator<Item = usize>) -> Self {
        let mut set = Self(vec![0; limit.div_ceil(64)]);
        for number in numbers {
            set.0[number / 64] |= 1 << (number % 64);
        }
        set
    }

    pub(super) fn contains(&self, number: usize) -> bool {
        self.0[number / 64] >> (number % 64) & 1 == 1
    }

    pub(super) fn is_empty(&self) -> bool {
        self.0.iter().all(|word| *word == 0)
    }

    /// Whether all of these are in the other too.
    pub(super) fn is_within(&self, other: &Self) -> bool {
        self.0.iter().zip(&other.0).all(|(own, other)| own & !other == 0)
    }

    pub(super) fn numbers(&self) -> impl Iterator<Item = usize> {
        let bits = |(at, word): (usize, &u64)| {
            let word = *word;
            (0..64).filter(move |bit| word >> bit & 1 == 1).map(move |bit| 64 * at + bit)
        };
        self.0.iter().enumerate().flat_map(bits)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_put_in_is_in_it_and_nothing_else() {
        let set = Set::of(130, [0, 63, 64, 129]);
        assert_eq!(set.numbers().collect::<Vec<_>>(), [0, 63, 64, 129]);
        assert!(set.contains(129) && !set.contains(128));
        assert!(Set::of(130, [64]).is_within(&set) && !set.is_within(&Set::of(130, [64])));
        assert!(Set::of(130, []).is_empty() && !set.is_empty());
    }
}
