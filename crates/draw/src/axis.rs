//! An axis: where a value lies between its ends, and which values are named along it.

use tribology::math;

/// An axis of a plot.
#[derive(Clone, Debug)]
pub struct Axis {
    label: String,
    ends: [f64; 2],
    named: Vec<(f64, String)>,
    fine: Vec<f64>,
    place: fn(f64) -> f64,
}

impl Axis {
    /// An axis on which values lie by a rule that rises with them.
    ///
    /// - `label`: what it shows, with its unit.
    /// - `ends`: the lowest and the highest value.
    /// - `named`: values with what is written at them.
    /// - `place`: the rule; only differences between its results count.
    #[must_use]
    pub fn by(label: &str, ends: [f64; 2], named: Vec<(f64, String)>, place: fn(f64) -> f64) -> Self {
        Self { label: label.to_owned(), ends, named, fine: Vec::new(), place }
    }

    /// An even axis with about so many round values named.
    #[must_use]
    pub fn even(label: &str, ends: [f64; 2], about: usize) -> Self {
        let step = round_step((ends[1] - ends[0]) / about.max(1) as f64);
        let first = (ends[0] / step - 1e-9).ceil() as i64;
        let last = (ends[1] / step + 1e-9).floor() as i64;
        let decimals = usize::try_from(-(math::log10(step) + 1e-9).floor() as i64).unwrap_or(0);
        let named = (first..=last).map(|count| {
            let value = count as f64 * step;
            (value, format!("{value:.decimals$}").replace('-', "−"))
        });
        Self::by(label, ends, named.collect(), |value| value)
    }

    /// An axis of powers of ten, each named; two to nine are drawn finely.
    #[must_use]
    pub fn logarithmic(label: &str, ends: [f64; 2]) -> Self {
        let decades = math::log10(ends[0]).floor() as i32..=math::log10(ends[1]).ceil() as i32;
        let inside = |value: &f64| (ends[0] * (1.0 - 1e-9)..=ends[1] * (1.0 + 1e-9)).contains(value);
        let powers: Vec<f64> = decades.map(|power| math::exp10(f64::from(power))).collect();
        let named = powers.iter().copied().filter(inside).map(|value| (value, plain(value))).collect();
        let fine = powers.iter().flat_map(|power| (2..10).map(move |times| f64::from(times) * power)).filter(inside);
        Self { fine: fine.collect(), ..Self::by(label, ends, named, math::log10) }
    }

    /// The same axis with more values drawn finely and without a name.
    #[must_use]
    pub fn with_fine(mut self, fine: Vec<f64>) -> Self {
        self.fine = fine;
        self
    }

    pub(crate) fn label(&self) -> &str {
        &self.label
    }

    pub(crate) fn named(&self) -> &[(f64, String)] {
        &self.named
    }

    pub(crate) fn fine(&self) -> &[f64] {
        &self.fine
    }

    /// The lowest and the highest value.
    pub(crate) fn ends(&self) -> [f64; 2] {
        self.ends
    }

    /// Where a value lies: nought at the low end, one at the high end; nothing when it has no place.
    pub(crate) fn part(&self, value: f64) -> Option<f64> {
        let [low, high] = self.ends.map(self.place);
        let part = ((self.place)(value) - low) / (high - low);
        part.is_finite().then_some(part)
    }
}

/// 1, 2 or 5 times a power of ten, not below a number.
fn round_step(least: f64) -> f64 {
    let power = math::exp10(math::log10(least).floor());
    [1.0, 2.0, 5.0]
        .into_iter()
        .map(|times| times * power)
        .find(|step| *step >= least * (1.0 - 1e-9))
        .unwrap_or(10.0 * power)
}

/// A power of ten as people write it.
fn plain(value: f64) -> String {
    if value >= 10_000.0 {
        let digits = format!("{value:.0}");
        let (thousands, rest) = digits.split_at(digits.len() - 3);
        return format!("{thousands} {rest}");
    }
    if value >= 1.0 { format!("{value:.0}") } else { value.to_string() }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn even_axes_name_round_values() {
        let names =
            |ends, about| Axis::even("x", ends, about).named.iter().map(|(_, name)| name.clone()).collect::<Vec<_>>();
        assert_eq!(names([0.0, 100.0], 5), ["0", "20", "40", "60", "80", "100"]);
        assert_eq!(names([-0.2, 0.5], 7), ["−0.2", "−0.1", "0.0", "0.1", "0.2", "0.3", "0.4", "0.5"]);
    }

    #[test]
    fn values_lie_where_the_rule_puts_them() {
        let axis = Axis::logarithmic("x", [1.0, 100.0]);
        assert!(axis.part(10.0).is_some_and(|part| (part - 0.5).abs() < 1e-12));
        assert_eq!((axis.part(0.0), axis.part(-1.0)), (None, None));
        assert_eq!(axis.named.len(), 3);
        assert_eq!(plain(10_000.0), "10 000");
    }
}
