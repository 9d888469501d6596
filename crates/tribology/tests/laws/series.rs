//! Laws of counts and charts that need no table: limits bracket and cover, runs fall with the shift, two sides make one.

use proptest::prelude::*;
use tribology::math::{exp, ln, ln_gamma};
use tribology::quantity::Time;
use tribology::series::{
    Count, Prior, Sense, cusum_run_length, cusum_run_length_two_sided, event_rate, event_rate_with_prior,
    poisson_reference, poisson_run_length, two_rates,
};
use tribology::{Answer, Error};

fn value<T>(answer: Result<Answer<T>, Error>) -> T {
    answer.expect("the law asks what can be answered").value
}

fn hours(number: f64) -> Time {
    Time::from_hours(number)
}

/// The chance of a count where `mean` are expected.
fn chance(count: u32, mean: f64) -> f64 {
    exp(f64::from(count) * ln(mean) - mean - ln_gamma(f64::from(count) + 1.0))
}

/// For every true mean the limits of all counts, weighted by their chances, hold it at least as often as they claim.
#[test]
fn limits_cover_the_true_rate_as_often_as_they_say() {
    for confidence in [0.5, 0.8, 0.95, 0.999] {
        let limits: Vec<_> = (0..120).map(|count| value(event_rate(count, hours(1.0), confidence))).collect();
        for step in 1..200 {
            let mean = 0.17 * f64::from(step);
            let covers = |count: &u32| {
                let limit = &limits[*count as usize];
                limit.low_events <= mean && mean <= limit.high_events
            };
            let covered: f64 = (0..120).filter(covers).map(|count| chance(count, mean)).sum();
            assert!(covered >= confidence - 1e-9, "{confidence} {mean}: {covered}");
        }
    }
}

/// The limits are where the count is just as unlikely as the rest of the confidence: the definition of Garwood's limits.
#[test]
fn limits_leave_half_of_the_rest_on_either_side() {
    for count in [0_u32, 1, 2, 5, 17, 60] {
        for confidence in [0.8, 0.95, 0.99] {
            let out = (1.0 - confidence) / 2.0;
            let found = value(event_rate(count, hours(1.0), confidence));
            let at_most: f64 = (0..=count).map(|count| chance(count, found.high_events)).sum();
            assert!((at_most / out - 1.0).abs() < 1e-10, "{count} {confidence}: {at_most}");
            if count > 0 {
                let below: f64 = (0..count).map(|count| chance(count, found.low_events)).sum();
                assert!(((1.0 - below) / out - 1.0).abs() < 1e-9, "{count} {confidence}: {below}");
            }
        }
    }
}

proptest! {
    #[test]
    fn limits_bracket_the_rate_and_widen_with_confidence(count in 0..5000u32, time in 0.1..1e5f64, confidence in 0.05..0.99f64) {
        let narrow = value(event_rate(count, hours(time), confidence));
        let wide = value(event_rate(count, hours(time), confidence + 0.009));
        prop_assert!(narrow.low <= narrow.rate && narrow.rate < narrow.high);
        prop_assert!(wide.low <= narrow.low && narrow.high < wide.high);
        prop_assert!((narrow.high.per_hour() * time / narrow.high_events - 1.0).abs() < 1e-12);
    }

    #[test]
    fn twice_the_time_is_half_the_rate(count in 0..500u32, time in 0.1..1e4f64) {
        let (once, twice) = (value(event_rate(count, hours(time), 0.9)), value(event_rate(count, hours(2.0 * time), 0.9)));
        prop_assert!((2.0 * twice.high.per_hour() / once.high.per_hour() - 1.0).abs() < 1e-12);
        prop_assert_eq!(once.high_events, twice.high_events);
    }

    /// Belief taken in two bites is the same as in one.
    #[test]
    fn belief_adds_up(first in 0..60u32, second in 0..60u32, shape in 0.1..50.0f64, before in 1.0..500.0f64) {
        let prior = Prior { shape, exposure: hours(before) };
        let between = Prior { shape: shape + f64::from(first), exposure: hours(before + 30.0) };
        let once = value(event_rate_with_prior(first + second, hours(100.0), prior, 0.9));
        let twice = value(event_rate_with_prior(second, hours(70.0), between, 0.9));
        prop_assert!((once.rate.per_hour() / twice.rate.per_hour() - 1.0).abs() < 1e-12);
        prop_assert!((once.high.per_hour() / twice.high.per_hour() - 1.0).abs() < 1e-9);
        prop_assert!(once.low < once.rate && once.rate < once.high);
    }

    /// A count is at least and at most itself: the two chances overlap by the chance of just this count.
    #[test]
    fn the_two_senses_share_one_count(n1 in 0..80u32, n2 in 0..80u32, t1 in 1.0..200.0f64, t2 in 1.0..200.0f64) {
        let (before, after) = (Count { events: n1, exposure: hours(t1) }, Count { events: n2, exposure: hours(t2) });
        let (up, down) = (value(two_rates(before, after, Sense::Up)), value(two_rates(before, after, Sense::Down)));
        let n = f64::from(n1 + n2);
        let factorial = |count: u32| ln_gamma(f64::from(count) + 1.0);
        let ways = ln_gamma(n + 1.0) - factorial(n1) - factorial(n2);
        let just = exp(ways + f64::from(n1) * ln(t1 / (t1 + t2)) + f64::from(n2) * ln(t2 / (t1 + t2)));
        prop_assert!((up.p_value + down.p_value - 1.0 - just).abs() < 1e-11, "{up:?} {down:?} {just}");
        prop_assert_eq!(up.log_glr, down.log_glr);
    }

    /// What comes after, seen backward in time, is what came before.
    #[test]
    fn a_rise_is_a_fall_backward(n1 in 0..80u32, n2 in 0..80u32, t1 in 1.0..200.0f64, t2 in 1.0..200.0f64) {
        let (before, after) = (Count { events: n1, exposure: hours(t1) }, Count { events: n2, exposure: hours(t2) });
        let (up, down) = (value(two_rates(before, after, Sense::Up)), value(two_rates(after, before, Sense::Down)));
        prop_assert!((up.p_value - down.p_value).abs() <= 1e-12 + 1e-11 * up.p_value);
        prop_assert!((up.log_glr - down.log_glr).abs() <= 1e-11 * (1.0 + up.log_glr));
    }

    /// The ratio is the difference of large terms in the book's form and is never below zero.
    #[test]
    fn the_ratio_is_that_of_the_book(n1 in 1..80u32, n2 in 1..80u32, t1 in 1.0..200.0f64, t2 in 1.0..200.0f64) {
        let (before, after) = (Count { events: n1, exposure: hours(t1) }, Count { events: n2, exposure: hours(t2) });
        let found = value(two_rates(before, after, Sense::Up)).log_glr;
        let (n1, n2) = (f64::from(n1), f64::from(n2));
        let book = n1 * ln(n1 / t1) + n2 * ln(n2 / t2) - (n1 + n2) * ln((n1 + n2) / (t1 + t2));
        prop_assert!(found >= 0.0 && (found - book).abs() < 1e-10, "{found} {book}");
    }

    #[test]
    fn a_chart_of_counts_is_the_sooner_the_worse(halves in 1..16u32, h in 1.0..12.0f64, rate in 0.2..8.0f64) {
        let k = f64::from(halves) / 2.0;
        let up = |h: f64, rate: f64| poisson_run_length(k, h, rate, Sense::Up).map(|run| run.value);
        let down = |h: f64, rate: f64| poisson_run_length(k, h, rate, Sense::Down).map(|run| run.value);
        if let (Ok(run), Ok(worse), Ok(longer)) = (up(h, rate), up(h, rate + 0.1), up(h + 1.0, rate)) {
            prop_assert!(worse < run && longer > run, "up {run} {worse} {longer}");
        }
        if let (Ok(run), Ok(worse), Ok(longer)) = (down(h, rate), down(h, rate - 0.1), down(h + 1.0, rate)) {
            prop_assert!(worse < run && longer > run, "down {run} {worse} {longer}");
        }
    }

    /// A whole-numbered limit and one a hair below it are the same chart: reaching the limit is enough.
    #[test]
    fn reaching_the_limit_is_enough(k in 1..6u32, h in 2..12u32, rate in 0.5..6.0f64) {
        let run = |h: f64| value(poisson_run_length(f64::from(k), h, rate, Sense::Up));
        prop_assert_eq!(run(f64::from(h)), run(f64::from(h) - 0.4));
        prop_assert!(run(f64::from(h) + 0.4) > run(f64::from(h)));
    }

    #[test]
    fn the_reference_value_lies_between_the_rates(usual in 0.01..50.0f64, feared in 0.01..50.0f64) {
        prop_assume!((usual - feared).abs() > 1e-6);
        let k = value(poisson_reference(usual, feared));
        prop_assert!(k > usual.min(feared) && k < usual.max(feared));
        prop_assert!((k / value(poisson_reference(feared, usual)) - 1.0).abs() < 1e-9);
    }
}

/// Many rare counts scatter normally: in units of their scatter the chart of counts nears the chart of readings.
#[test]
fn large_counts_near_the_normal_chart() {
    // A mean of 900 scatters by 30; k half a scatter above the mean, h four scatters.
    let counts = value(poisson_run_length(915.0, 120.0, 900.0, Sense::Up));
    let normal = value(cusum_run_length(0.5, 4.0, 0.0, 0.0));
    assert!((counts / normal - 1.0).abs() < 0.1, "{counts} {normal}");
}

proptest! {
    // Integral equations take their time.
    #![proptest_config(ProptestConfig { cases: 48, ..ProptestConfig::default() })]

    #[test]
    fn a_run_falls_with_the_shift_and_grows_with_the_limit(k in 0.1..1.5f64, h in 0.5..8.0f64, shift in -1.0..2.0f64) {
        let run = |h: f64, shift: f64| value(cusum_run_length(k, h, shift, 0.0));
        prop_assert!(run(h, shift + 0.1) < run(h, shift));
        prop_assert!(run(h + 0.1, shift) > run(h, shift));
        prop_assert!(value(cusum_run_length(k, h, shift, h / 2.0)) < run(h, shift));
    }

    #[test]
    fn two_sides_signal_as_often_as_both(k in 0.1..1.5f64, h in 0.5..6.0f64, shift in -2.0..2.0f64) {
        let one = |shift: f64| value(cusum_run_length(k, h, shift, 0.0));
        let both = value(cusum_run_length_two_sided(k, h, shift));
        prop_assert!((both * (1.0 / one(shift) + 1.0 / one(-shift)) - 1.0).abs() < 1e-12);
        // The other side may be so slow that it no longer shows.
        prop_assert!(both <= one(shift).min(one(-shift)) * (1.0 + 1e-12));
        prop_assert_eq!(both, value(cusum_run_length_two_sided(k, h, -shift)));
    }
}
