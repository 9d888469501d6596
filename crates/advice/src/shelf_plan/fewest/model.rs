//! The sum as it is solved. A place whose best oils harm it least, and whose next best harm it more by so much, is so many *wishes*: a set
//! of oils of which at least one should be chosen, and the price if none is; the widest has no price and must be met. Harm is then the
//! price of the wishes that no chosen oil meets. Wishes with equal sets are one, and an oil that meets no wish that another, as welcome one
//! does not meet too is dropped: neither changes what is the least harm, nor which reluctance is the least with it.

use std::collections::{BTreeMap, BTreeSet};

use super::Matrix;
use super::set::Set;

/// The wishes of all places.
pub(super) struct Model {
    /// Which oil of the matrix each is.
    pub(super) oils: Vec<usize>,
    /// The harm that counts with each wherever it is given.
    pub(super) prices: Vec<u64>,
    /// How unwelcome each is.
    pub(super) reluctance: Vec<u64>,
    /// The wishes.
    pub(super) wishes: Vec<Wish>,
    /// For each oil the wishes that it meets.
    pub(super) meets: Vec<Vec<usize>>,
    /// The harm that even all oils do.
    pub(super) base: u64,
}

/// Oils of which at least one should be chosen.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Wish {
    /// Which.
    pub(super) oils: Vec<usize>,
    /// What it costs if none is; nothing where one must be.
    pub(super) price: Option<u64>,
}

impl Model {
    /// The wishes of a matrix, and the places that no oil may be given to.
    pub(super) fn of(matrix: &Matrix) -> (Self, Vec<usize>) {
        let mut hopeless = Vec::new();
        let mut gathered = Gathered::default();
        for (number, row) in matrix.rows.iter().enumerate() {
            let mut levels: Vec<u32> = row.iter().flatten().copied().collect();
            levels.sort_unstable();
            levels.dedup();
            let Some(least) = levels.first() else {
                hopeless.push(number);
                continue;
            };
            gathered.base += u64::from(*least);
            let up_to =
                |level: u32| row.iter().enumerate().filter(move |(_, harm)| harm.is_some_and(|harm| harm <= level));
            let set = |level| Set::of(row.len(), up_to(level).map(|(oil, _)| oil));
            for step in levels.windows(2) {
                *gathered.priced.entry(set(step[0])).or_default() += u64::from(step[1] - step[0]);
            }
            gathered.musts.insert(set(*levels.last().expect("it has a first")));
        }
        let mut oils: Vec<usize> = (0..matrix.reluctance.len()).collect();
        loop {
            gathered.drop_implied();
            let kept = gathered.undominated(&oils, matrix);
            if kept.len() == oils.len() {
                break;
            }
            gathered.keep(&kept, matrix.reluctance.len());
            oils = kept;
        }
        (Self::renumbered(gathered, oils, matrix), hopeless)
    }

    fn renumbered(gathered: Gathered, oils: Vec<usize>, matrix: &Matrix) -> Self {
        let limit = matrix.reluctance.len();
        let mut place = vec![usize::MAX; limit];
        for (at, oil) in oils.iter().enumerate() {
            place[*oil] = at;
        }
        let wish =
            |(set, price): (Set, Option<u64>)| Wish { oils: set.numbers().map(|oil| place[oil]).collect(), price };
        let musts = gathered.musts.into_iter().map(|set| (set, None));
        let priced = gathered.priced.into_iter().map(|(set, price)| (set, Some(price)));
        let wishes: Vec<Wish> = musts.chain(priced).map(wish).collect();
        let mut meets = vec![Vec::new(); oils.len()];
        for (number, wish) in wishes.iter().enumerate() {
            for oil in &wish.oils {
                meets[*oil].push(number);
            }
        }
        let of = |numbers: &[u32]| oils.iter().map(|oil| u64::from(numbers[*oil])).collect();
        let (prices, reluctance) = (of(&matrix.prices), of(&matrix.reluctance));
        Self { oils, prices, reluctance, wishes, meets, base: gathered.base }
    }
}

/// Wishes while they are being merged.
#[derive(Default)]
struct Gathered {
    musts: BTreeSet<Set>,
    priced: BTreeMap<Set, u64>,
    base: u64,
}

impl Gathered {
    /// A wish that is met whenever one that must be met is met goes.
    fn drop_implied(&mut self) {
        let musts: Vec<Set> = self.musts.iter().cloned().collect();
        let is_implied = |set: &Set| musts.iter().any(|must| must != set && must.is_within(set));
        self.musts.retain(|set| !is_implied(set));
        let musts = &self.musts;
        self.priced.retain(|set, _| !musts.iter().any(|must| must.is_within(set)));
    }

    /// The oils that no other makes needless.
    fn undominated(&self, oils: &[usize], matrix: &Matrix) -> Vec<usize> {
        let wishes: Vec<&Set> = self.musts.iter().chain(self.priced.keys()).collect();
        let meets = |oil: &usize| Set::of(wishes.len(), (0..wishes.len()).filter(|wish| wishes[*wish].contains(*oil)));
        let met: Vec<Set> = oils.iter().map(meets).collect();
        let cost = |oil: usize| (matrix.prices[oil], matrix.reluctance[oil]);
        let is_needless = |a: usize| {
            met[a].is_empty()
                || (0..oils.len()).any(|b| {
                    let (of_a, of_b) = (cost(oils[a]), cost(oils[b]));
                    // Of two that do the same the more welcome stays, and of two as welcome the first.
                    a != b && of_b <= of_a && met[a].is_within(&met[b]) && (met[a] != met[b] || of_b < of_a || b < a)
                })
        };
        (0..oils.len()).filter(|oil| !is_needless(*oil)).map(|oil| oils[oil]).collect()
    }

    /// Only these oils are left.
    fn keep(&mut self, oils: &[usize], limit: usize) {
        let kept = Set::of(limit, oils.iter().copied());
        let narrowed = |set: &Set| Set::of(limit, set.numbers().filter(|oil| kept.contains(*oil)));
        self.musts = self.musts.iter().map(narrowed).collect();
        let mut priced: BTreeMap<Set, u64> = BTreeMap::new();
        for (set, price) in &self.priced {
            *priced.entry(narrowed(set)).or_default() += price;
        }
        self.priced = priced;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn matrix(rows: &[&[i64]], reluctance: &[u32]) -> Matrix {
        let harm = |harm: &i64| u32::try_from(*harm).ok();
        Matrix {
            rows: rows.iter().map(|row| row.iter().map(harm).collect()).collect(),
            prices: vec![0; reluctance.len()],
            reluctance: reluctance.to_vec(),
        }
    }

    #[test]
    fn equal_places_are_one_and_an_oil_that_is_never_better_goes() {
        // -1: never. The third oil does what the second does and worse; the last place has none at all.
        let (model, hopeless) = Model::of(&matrix(&[&[0, 3, 3], &[0, 3, 3], &[4, 1, 2], &[-1, -1, -1]], &[0, 0, 0]));
        assert_eq!((model.oils.as_slice(), hopeless.as_slice(), model.base), ([0, 1].as_slice(), [3].as_slice(), 1));
        let wish = |oils: &[usize], price| Wish { oils: oils.to_vec(), price };
        assert_eq!(model.wishes, [wish(&[0, 1], None), wish(&[0], Some(6)), wish(&[1], Some(3))]);
    }

    #[test]
    fn of_two_that_do_the_same_the_more_welcome_stays() {
        let (model, _) = Model::of(&matrix(&[&[0, 0]], &[2, 1]));
        assert_eq!(model.oils, [1]);
        let (model, _) = Model::of(&matrix(&[&[0, 0]], &[1, 1]));
        assert_eq!(model.oils, [0]);
        // The better is the less welcome: both may be wanted.
        let (model, _) = Model::of(&matrix(&[&[0, 1], &[0, 0]], &[1, 0]));
        assert_eq!(model.oils, [0, 1]);
    }
}
