//! How long a chain of chance runs before it stops. The elimination of Grassmann, Taksar and Heyman: it only adds, multiplies and divides
//! numbers above zero, so that even a run of a million million steps keeps its figures.

/// A chain by its chances: from each state to each other, and to the stop. Chances to stay are what is left of one and are not asked for.
pub(super) struct Chain {
    size: usize,
    to: Vec<f64>,
    stop: Vec<f64>,
}

impl Chain {
    pub(super) fn new(size: usize) -> Self {
        Self { size, to: vec![0.0; size * size], stop: vec![0.0; size] }
    }

    /// Adds to the chance of going from one state to another.
    pub(super) fn go(&mut self, from: usize, to: usize, chance: f64) {
        self.to[from * self.size + to] += chance;
    }

    /// Adds to the chance of stopping.
    pub(super) fn stop(&mut self, from: usize, chance: f64) {
        self.stop[from] += chance;
    }

    /// The mean number of steps from each state to the stop, the last step included; not finite where the chain never stops.
    ///
    /// Accuracy: a few last digits for each state. Cost: a third of the cube of the number of states, less where chances are zero.
    ///
    /// Source: `grassmann-taksar-heyman-1985`.
    pub(super) fn steps(mut self) -> Vec<f64> {
        let size = self.size;
        let mut steps = vec![1.0; size];
        let mut leave = vec![0.0; size];
        // Without the last state: whoever would go there goes where it leads, and spends the time that it takes.
        for last in (0..size).rev() {
            let (above, row) = self.to.split_at_mut(last * size);
            let row = &row[..last];
            leave[last] = self.stop[last] + row.iter().sum::<f64>();
            let first = row.iter().position(|chance| *chance > 0.0).unwrap_or(last);
            for state in 0..last {
                let goes = above[state * size + last] / leave[last];
                if goes > 0.0 {
                    let others = &mut above[state * size..state * size + last];
                    others[first..].iter_mut().zip(&row[first..]).for_each(|(to, chance)| *to += goes * chance);
                    self.stop[state] += goes * self.stop[last];
                    steps[state] += goes * steps[last];
                }
            }
        }
        for state in 0..size {
            let row = &self.to[state * size..state * size + state];
            let onward: f64 = row.iter().zip(&steps).map(|(chance, steps)| chance * steps).sum();
            steps[state] = (steps[state] + onward) / leave[state];
        }
        steps
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A walk of fair steps on a line of n states, reflected at the first and stopped past the last, takes (n − i)(n + i + 1) steps:
    /// the difference equation solved by hand.
    #[test]
    fn a_fair_walk_takes_the_square_of_its_way() {
        let size = 40;
        let mut chain = Chain::new(size);
        for state in 0..size {
            chain.go(state, state.saturating_sub(1), 0.5);
            if state + 1 < size { chain.go(state, state + 1, 0.5) } else { chain.stop(state, 0.5) }
        }
        for (state, steps) in chain.steps().into_iter().enumerate() {
            let by_hand = ((size - state) * (size + state + 1)) as f64;
            assert!((steps / by_hand - 1.0).abs() < 1e-13, "{state}: {steps}, not {by_hand}");
        }
    }

    /// One state that stops with chance p takes 1/p steps, however small p is.
    #[test]
    fn a_rare_stop_keeps_its_figures() {
        let mut chain = Chain::new(2);
        chain.go(0, 1, 0.5);
        chain.go(1, 0, 1.0);
        chain.stop(0, 1e-200);
        // From 0: s = (1 + 0.5) / 1e-200, by hand.
        let steps = chain.steps();
        assert!((steps[0] / 1.5e200 - 1.0).abs() < 1e-14, "{steps:?}");
    }
}
