//! How much better any choice could be. Each wish is given a price that it may charge the oils which meet it, never more than it is worth;
//! whatever these prices are, the sum of them less what the dearest oils charge is no more than any choice costs (Lagrange's bound, whose
//! best is that of the linear program). The prices are moved step by step to where that bound is high (subgradients, by Polyak's step). The
//! steps are counted, not timed, so that the bound is the same on every computer.

use super::good::{Cover, bettered};
use super::model::Model;
use super::{cost, scale, total};

/// So many steps at the most.
const STEPS: usize = 4_000;
/// After so many steps without a better bound they are made half as long.
const PATIENCE: usize = 100;
/// The bounds are sums of some ten thousand roundings; whole numbers leave room for this much.
const ROUNDING: f64 = 1e-3;

/// A bound on the total of every choice of at most so many oils.
pub(super) struct Bound<'m> {
    model: &'m Model,
    k: usize,
    scale: u64,
    /// The bound, without the harm that even all oils do.
    value: f64,
    /// What each wish charges where the bound is that.
    prices: Vec<f64>,
    /// What was proven besides by going through the rest.
    searched: u64,
}

/// What may still be chosen, by the bound: an oil that would lift it past the best known choice is out, one without which it would be is in.
pub(super) struct Open {
    pub(super) fixed: Vec<usize>,
    pub(super) free: Vec<usize>,
}

impl<'m> Bound<'m> {
    pub(super) fn new(model: &'m Model, k: usize) -> Self {
        let prices = vec![0.0; model.wishes.len()];
        Self { model, k, scale: scale(model, k), value: 0.0, prices, searched: 0 }
    }

    /// Raises the bound as far as the steps go, or to the best choice; a better choice that turns up on the way is taken.
    pub(super) fn tighten(&mut self, best: &mut Cover<'m>) {
        let mut prices: Vec<f64> = (0..self.prices.len()).map(|wish| self.first_price(wish, best.met(wish))).collect();
        let (mut length, mut idle) = (1.0, 0);
        for _ in 0..STEPS {
            let (value, chosen) = self.at(&prices);
            idle += 1;
            if value > self.value {
                if value > self.value + 1e-3 * self.value.abs() {
                    idle = 0;
                }
                self.value = value;
                self.prices.clone_from(&prices);
            }
            let cover = Cover::of(self.model, &chosen);
            if cover.value < best.value {
                *best = bettered(cover.clone());
            }
            if self.meets(best) {
                return;
            }
            if idle >= PATIENCE {
                (length, idle) = (length / 2.0, 0);
                prices.clone_from(&self.prices);
                if length < 1e-3 {
                    return;
                }
                continue;
            }
            let lacks: Vec<f64> = (0..prices.len()).map(|wish| 1.0 - f64::from(cover.met(wish))).collect();
            let square: f64 = lacks.iter().map(|lack| lack * lack).sum();
            if square == 0.0 {
                return;
            }
            let step = length * (self.target(best) - value).max(1.0) / square;
            for (wish, price) in prices.iter_mut().enumerate() {
                *price = (*price + step * lacks[wish]).clamp(0.0, self.worth(wish));
            }
        }
    }

    /// Whether no choice is better than this one; where it leaves a place without oil, whether every choice does.
    pub(super) fn meets(&self, best: &Cover<'_>) -> bool {
        self.whole() >= self.limit(best)
    }

    /// What was proven by going through all choices.
    pub(super) fn raise(&mut self, total: u64) {
        self.searched = self.searched.max(total);
    }

    /// No choice does less harm.
    pub(super) fn harm(&self) -> u64 {
        self.whole() / self.scale
    }

    /// What may still be chosen to better a choice.
    pub(super) fn open(&self, best: &Cover<'_>) -> Open {
        let charges = self.charges(&self.prices);
        let mut order: Vec<usize> = (0..charges.len()).collect();
        order.sort_by(|a, b| charges[*b].total_cmp(&charges[*a]).then(a.cmp(b)));
        let at = |place: usize| order.get(place).map_or(0.0, |oil| charges[*oil].max(0.0));
        let (last_in, first_out) = (at(self.k - 1), at(self.k));
        let limit = self.target(best) - 1.0 + ROUNDING;
        let mut open = Open { fixed: Vec::new(), free: Vec::new() };
        for (place, oil) in order.into_iter().enumerate() {
            let charge = charges[oil];
            if place < self.k && charge > 0.0 {
                if self.value + charge - first_out > limit { &mut open.fixed } else { &mut open.free }.push(oil);
            } else if self.value + last_in - charge <= limit {
                open.free.push(oil);
            }
        }
        open.free.sort_unstable();
        open
    }

    /// The bound at these prices, and the oils that charge most.
    fn at(&self, prices: &[f64]) -> (f64, Vec<usize>) {
        let charges = self.charges(prices);
        let mut order: Vec<usize> = (0..charges.len()).filter(|oil| charges[*oil] > 0.0).collect();
        order.sort_by(|a, b| charges[*b].total_cmp(&charges[*a]).then(a.cmp(b)));
        order.truncate(self.k);
        let charged: f64 = order.iter().map(|oil| charges[*oil]).sum();
        (prices.iter().sum::<f64>() - charged, order)
    }

    fn charges(&self, prices: &[f64]) -> Vec<f64> {
        let charge = |(oil, meets): (usize, &Vec<usize>)| {
            meets.iter().map(|wish| prices[*wish]).sum::<f64>() - cost(self.model, self.k, oil) as f64
        };
        self.model.meets.iter().enumerate().map(charge).collect()
    }

    /// Where to begin: a wish that nobody meets charges all, one that one oil meets half, one that several do nothing.
    fn first_price(&self, wish: usize, met: u32) -> f64 {
        let worth = self.worth(wish);
        match met {
            _ if worth.is_infinite() => 0.0,
            0 => worth,
            1 => worth / 2.0,
            _ => 0.0,
        }
    }

    /// What a wish is worth at the most.
    fn worth(&self, wish: usize) -> f64 {
        self.model.wishes[wish].price.map_or(f64::INFINITY, |price| (self.scale * price) as f64)
    }

    /// The total that the bound is to reach, without the harm that even all oils do.
    fn target(&self, best: &Cover<'_>) -> f64 {
        (self.limit(best) - self.scale * self.model.base) as f64
    }

    /// The total of the best known choice; where that leaves a place without oil, more than any that does not can come to.
    fn limit(&self, best: &Cover<'_>) -> u64 {
        if best.value.missed == 0 {
            return total(self.model, self.k, &best.value);
        }
        let dearest = self.model.base
            + self.model.wishes.iter().filter_map(|wish| wish.price).sum::<u64>()
            + self.model.prices.iter().sum::<u64>();
        // Reluctance adds less than one step of the scale.
        self.scale * (dearest + 1)
    }

    /// The bound as the next whole number.
    fn whole(&self) -> u64 {
        let above = (self.value - ROUNDING).ceil().max(0.0) as u64;
        (self.scale * self.model.base + above).max(self.searched)
    }
}
