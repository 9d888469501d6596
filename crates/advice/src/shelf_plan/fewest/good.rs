//! A good choice quickly: the oil that helps most, again and again, then one chosen oil exchanged for another as long as that helps.

use super::model::Model;

/// What a choice is worth; the less, the better.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Value {
    /// How many wishes that must be met are not.
    pub(super) missed: usize,
    /// The harm.
    pub(super) harm: u64,
    /// How unwelcome the chosen are.
    pub(super) reluctance: u64,
    /// How far back in the list they stand.
    pub(super) places: usize,
}

/// Chosen oils, with how many of them meet each wish.
#[derive(Clone)]
pub(super) struct Cover<'m> {
    model: &'m Model,
    pub(super) chosen: Vec<usize>,
    met: Vec<u32>,
    pub(super) value: Value,
}

impl<'m> Cover<'m> {
    fn empty(model: &'m Model) -> Self {
        let missed = model.wishes.iter().filter(|wish| wish.price.is_none()).count();
        let harm = model.base + model.wishes.iter().filter_map(|wish| wish.price).sum::<u64>();
        let value = Value { missed, harm, reluctance: 0, places: 0 };
        Self { model, chosen: Vec::new(), met: vec![0; model.wishes.len()], value }
    }

    pub(super) fn of(model: &'m Model, oils: &[usize]) -> Self {
        let mut cover = Self::empty(model);
        oils.iter().for_each(|oil| cover.add(*oil));
        cover
    }

    /// How many of the chosen meet a wish.
    pub(super) fn met(&self, wish: usize) -> u32 {
        self.met[wish]
    }

    pub(super) fn add(&mut self, oil: usize) {
        self.value = self.with(oil);
        self.chosen.push(oil);
        self.model.meets[oil].iter().for_each(|wish| self.met[*wish] += 1);
    }

    pub(super) fn remove(&mut self, oil: usize) {
        self.chosen.retain(|chosen| *chosen != oil);
        for wish in &self.model.meets[oil] {
            self.met[*wish] -= 1;
            if self.met[*wish] == 0 {
                match self.model.wishes[*wish].price {
                    Some(price) => self.value.harm += price,
                    None => self.value.missed += 1,
                }
            }
        }
        self.value.harm -= self.model.prices[oil];
        self.value.reluctance -= self.model.reluctance[oil];
        self.value.places -= oil;
    }

    /// What the choice would be worth with one more.
    pub(super) fn with(&self, oil: usize) -> Value {
        let mut value = self.value;
        value.harm += self.model.prices[oil];
        for wish in self.model.meets[oil].iter().filter(|wish| self.met[**wish] == 0) {
            match self.model.wishes[*wish].price {
                Some(price) => value.harm -= price,
                None => value.missed -= 1,
            }
        }
        value.reluctance += self.model.reluctance[oil];
        value.places += oil;
        value
    }

    /// The oil that helps most, with what the choice would then be worth.
    fn best(&self) -> Option<(Value, usize)> {
        let free = (0..self.model.oils.len()).filter(|oil| !self.chosen.contains(oil));
        free.map(|oil| (self.with(oil), oil)).min()
    }

    fn fill(&mut self, k: usize) {
        let helps = |now: &Value, then: &Value| (then.missed, then.harm) < (now.missed, now.harm);
        while self.chosen.len() < k
            && let Some((_, oil)) = self.best().filter(|(then, _)| helps(&self.value, then))
        {
            self.add(oil);
        }
    }

    /// The same without oils that nothing hangs on.
    pub(super) fn without_idle(mut self) -> Self {
        for oil in self.chosen.clone() {
            let mut fewer = self.clone();
            fewer.remove(oil);
            if fewer.value <= self.value {
                self = fewer;
            }
        }
        self
    }
}

/// A good choice of at most so many, begun anew and from a choice for a smaller number.
pub(super) fn good<'m>(model: &'m Model, k: usize, start: &[usize]) -> Cover<'m> {
    let from = |oils: &[usize]| {
        let mut cover = Cover::of(model, oils);
        cover.fill(k);
        bettered(cover)
    };
    let (anew, on) = (from(&[]), from(start));
    if on.value < anew.value { on } else { anew }
}

/// The choice with oils exchanged one for one as long as that makes it better.
pub(super) fn bettered(mut cover: Cover<'_>) -> Cover<'_> {
    loop {
        let mut best: Option<(Value, usize, usize)> = None;
        for out in cover.chosen.clone() {
            let mut fewer = cover.clone();
            fewer.remove(out);
            if let Some((value, oil)) = fewer.best()
                && best.is_none_or(|(known, ..)| value < known)
            {
                best = Some((value, out, oil));
            }
        }
        match best {
            Some((value, out, oil)) if value < cover.value => {
                cover.remove(out);
                cover.add(oil);
            }
            _ => return cover,
        }
    }
}
