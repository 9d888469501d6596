//! Sentences that people read.

use advice::words;
use tribology::quantity::Units;

use crate::bench::Bench;

#[test]
fn the_summary_counts_what_is_left() {
    let chart: String = (1..=3)
        .map(|n| format!("[[point]]\nid = \"{n}\"\nname = \"n\"\nmethod = \"cup\"\noil = \"way 68\"\nevery = \"1 use\"\nstand = \"left\"\n"))
        .collect();
    let mut bench = Bench::new(&chart);
    let said = words::summary(bench.round("2026-11-25T09:00", 1.0, None).value());
    // Three points of 20 s and one stand of 15 s: two minutes when rounded up.
    assert_eq!(said, "3 points at 1 place, about 2 minutes. One can: short can.");
    for point in ["1", "2", "3"] {
        bench.dosed(point, "2026-11-25T08:00");
    }
    let said = words::summary(bench.round("2026-11-25T09:00", 1.0, None).value());
    assert_eq!(said, "Nothing is left to oil before this job.");
}

#[test]
fn why_a_point_is_due_is_said_with_its_figures() {
    let mut bench =
        Bench::new("[[point]]\nid = \"1\"\nname = \"n\"\nmethod = \"cup\"\nevery = [\"4 h\", \"1 week\"]\n");
    bench.dosed("1", "2026-11-10T08:00").ran("2026-11-10T12:00", 2.5, None);
    let round = bench.round("2026-11-25T09:00", 3.0, None);
    let said: Vec<String> = crate::bench::points(round.value()).flat_map(|p| &p.due).map(words::due).collect();
    assert_eq!(said, ["every 4 h: 2.5 h since the last oil, 3 h planned", "every 1 week: last on 10 November 2026"]);
    let working: Vec<String> = round.steps().iter().map(|step| words::step(step, Units::Metric)).collect();
    assert!(working[0].contains("since = 2.5 h, planned = 3 h, every = 4 h; since + planned = 5.5 h"), "{working:?}");
}

#[test]
fn the_sums_are_said_in_the_units_of_the_reader() {
    let bench = Bench::new(
        "[[point]]\nid = \"1\"\nname = \"n\"\nmethod = \"cup\"\ndose = \"1 US fl oz\"\noil = \"way 68\"\nevery = \"1 use\"\n",
    );
    let round = bench.round("2026-11-25T09:00", 3.0, None);
    let said = |units| round.steps().iter().map(|step| words::step(step, units)).collect::<Vec<_>>().join("\n");
    assert!(said(Units::Metric).contains("volume = 29.574 mL, stroke = 0.8 mL"), "{}", said(Units::Metric));
    // A US fluid ounce is 29.5735 mL (NIST Handbook 44, appendix C).
    assert!(said(Units::Us).contains("volume = 1 US fl oz"), "{}", said(Units::Us));
}
