//! Every choice gone through, where there are few enough of them.

use super::good::{Cover, Value};
use super::model::Model;

/// About how many sums it takes to go through every choice of `free` besides `fixed`, of `k` together.
pub(super) fn sums(model: &Model, fixed: &[usize], free: &[usize], k: usize) -> u64 {
    let places = k.saturating_sub(fixed.len());
    // So many choices of one less; the last oil of each is tried without being chosen.
    let choices =
        (0..places).fold(1_u64, |all, at| all.saturating_mul((free.len().saturating_sub(at)) as u64) / (at as u64 + 1));
    let meets = free.iter().map(|oil| model.meets[*oil].len() as u64).max().unwrap_or(0);
    choices.saturating_mul(meets.max(1))
}

/// The best of every choice of `free` besides `fixed`, of at most `k` together.
pub(super) fn best<'m>(model: &'m Model, fixed: &[usize], free: &[usize], k: usize) -> Cover<'m> {
    let begin = Cover::of(model, fixed);
    let mut found = Search { best: begin.value, oils: fixed.to_vec() };
    found.go(&mut begin.clone(), free, k);
    Cover::of(model, &found.oils)
}

struct Search {
    best: Value,
    oils: Vec<usize>,
}

impl Search {
    fn go(&mut self, cover: &mut Cover<'_>, free: &[usize], k: usize) {
        if cover.chosen.len() >= k {
            return;
        }
        for (at, oil) in free.iter().enumerate() {
            let value = cover.with(*oil);
            if value < self.best {
                self.best = value;
                self.oils = cover.chosen.iter().copied().chain([*oil]).collect();
            }
            if cover.chosen.len() + 1 < k {
                cover.add(*oil);
                self.go(cover, &free[at + 1..], k);
                cover.remove(*oil);
            }
        }
    }
}
