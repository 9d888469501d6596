//! What must hold for every machine: more hours planned never take a point out of the round, and a dosing leaves nothing due
//! that it can satisfy.

use proptest::prelude::*;

use crate::bench::{Bench, points};

const EVERY: [&str; 7] = ["1 use", "2 uses", "4 h", "8 h", "1 day", "1 week", "1 month"];
const NOW: &str = "2026-11-25T09:00";

fn machine(every: &[(usize, usize)]) -> Bench {
    let chart: String = every
        .iter()
        .enumerate()
        .map(|(number, (a, b))| {
            format!(
                "[[point]]\nid = \"{number}\"\nname = \"n\"\nmethod = \"cup\"\ndose = \"2 drops\"\nevery = [\"{}\", \"{}\"]\n",
                EVERY[*a], EVERY[*b]
            )
        })
        .collect();
    Bench::new(&chart)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn more_hours_never_shorten_the_round(
        every in prop::collection::vec((0..EVERY.len(), 0..EVERY.len()), 1..12),
        ago in prop::collection::vec(0_u32..20, 12),
        hours in 0.5_f64..8.0,
        more in 0.0_f64..8.0,
    ) {
        let mut bench = machine(&every);
        for (number, days) in (0..every.len()).zip(&ago) {
            bench.dosed(&number.to_string(), &format!("2026-11-{:02}T08:00", 25 - days));
        }
        bench.ran("2026-11-20T12:00", 2.5, None).ran("2026-11-24T12:00", 1.5, None);
        let fewer = bench.left(NOW, hours, None);
        let longer = bench.left(NOW, hours + more, None);
        prop_assert!(fewer.iter().all(|id| longer.contains(id)), "{fewer:?} within {longer:?}");
    }

    #[test]
    fn a_point_oiled_now_is_due_again_only_when_the_plan_outruns_its_hours(
        every in prop::collection::vec((0..EVERY.len(), 0..EVERY.len()), 1..12),
        hours in 0.5_f64..4.0,
    ) {
        let mut bench = machine(&every);
        for number in 0..every.len() {
            bench.dosed(&number.to_string(), NOW);
        }
        // Four hours is the shortest interval of the list, so that nothing can be due within it.
        let round = bench.round(NOW, hours, None);
        prop_assert!(points(round.value()).all(|point| point.due.is_empty()));
        prop_assert_eq!(round.value().minutes, 0);
    }
}
