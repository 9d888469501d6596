//! A plot that goes with an answer: what is across, what is up, and the curves. Pages draw it; a program has the numbers of the answer.

/// The plot.
#[derive(Clone, Debug, PartialEq)]
pub struct Sketch {
    /// What it shows.
    pub title: String,
    /// What can be seen in it, a sentence.
    pub says: &'static str,
    /// What is across, with its unit, and its ends.
    pub across: (&'static str, [f64; 2]),
    /// What is up, with its unit, and its ends.
    pub up: (&'static str, [f64; 2]),
    /// The curves by their names.
    pub curves: Vec<(&'static str, Vec<(f64, f64)>)>,
}

impl Sketch {
    /// A plot of one curve, its upward axis from nothing to a round number above the highest point. Nothing where there are no two points.
    pub(super) fn of(
        title: String,
        says: &'static str,
        across: &'static str,
        up: &'static str,
        curve: (&'static str, Vec<(f64, f64)>),
    ) -> Option<Self> {
        let [(first, _), .., (last, _)] = curve.1.as_slice() else { return None };
        let ends = [*first, *last];
        let highest = curve.1.iter().map(|(_, y)| *y).fold(0.0, f64::max);
        Some(Self { title, says, across: (across, ends), up: (up, [0.0, round_above(highest)]), curves: vec![curve] })
    }
}

/// The least of 1, 2 and 5 times a power of ten that is not below a number above nothing.
fn round_above(number: f64) -> f64 {
    if !(number > 0.0 && number.is_finite()) {
        return 1.0;
    }
    let power = tribology::math::exp10(tribology::math::log10(number).floor());
    [1.0, 2.0, 5.0, 10.0].into_iter().map(|times| times * power).find(|round| *round >= number).unwrap_or(10.0 * power)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_axis_ends_at_a_round_number_above_the_curve() {
        for (number, round) in
            [(0.3, 0.5), (1.0, 1.0), (1.01, 2.0), (47.0, 50.0), (51.0, 100.0), (0.0, 1.0), (f64::NAN, 1.0)]
        {
            assert!((round_above(number) - round).abs() < 1e-9 * round, "{number}");
        }
        let curve = |points: &[(f64, f64)]| Sketch::of("t".into(), "s", "x", "y", ("c", points.to_vec()));
        assert_eq!(curve(&[(1.0, 2.0)]), None);
        assert_eq!(
            curve(&[(1.0, 2.0), (3.0, 4.0)]).map(|sketch| (sketch.across.1, sketch.up.1)),
            Some(([1.0, 3.0], [0.0, 5.0]))
        );
    }
}
