//! The list for the evening, by the ways of oiling and the pairs of the chart.

use advice::round::{AfterKind, after_use};
use advice::words;

use crate::bench::Bench;

const CHART: &str = r#"
[[pair]]
id   = "bed-ways"
kind = "slideway"

[[pair]]
id   = "block"
kind = "slideway"

[[pair]]
id   = "lead-screw"
kind = "screw and nut"

[[reservoir]]
id        = "wick-cup"
kind      = "cup"
behaviour = "uses"

[[point]]
id     = "1"
name   = "Bed"
method = "oil hole"
feeds  = ["bed-ways"]

[[point]]
id        = "2"
name      = "Shaft"
method    = "wick"
reservoir = "wick-cup"
note      = "Lift the wick when the day is over."

[[point]]
id     = "3"
name   = "Spindle"
method = "drip"

[[point]]
id     = "4"
name   = "Block"
method = "oil hole"
feeds  = ["block"]
setup  = ["rear cover off"]

[[point]]
id     = "5"
name   = "Screw"
method = "brush"
feeds  = ["lead-screw"]
"#;

#[test]
fn chips_off_film_on_drips_shut_wicks_lifted_covers_on_hours_noted() {
    let acts = after_use(&Bench::new(CHART).machine);
    let kinds: Vec<AfterKind> = acts.iter().map(|act| act.kind).collect();
    use AfterKind::{Brush, Covers, Film, LiftWick, NoteHours, ReadLevel, ShutDrip};
    assert_eq!(kinds, [Brush, Film, ShutDrip, LiftWick, ReadLevel, Covers, NoteHours]);
    let to = |kind: AfterKind| -> Vec<String> {
        let act = acts.iter().find(|act| act.kind == kind).expect("it is in the list");
        act.to.iter().map(|at| words::after_at(act, at)).collect()
    };
    assert_eq!(to(Brush), ["bed ways", "lead screw"], "the block lies behind its cover");
    assert_eq!(to(Film), ["bed ways"]);
    assert_eq!(to(LiftWick), ["2 Shaft: Lift the wick when the day is over."], "the chart's own words");
    assert_eq!(to(ShutDrip), ["3 Spindle"]);
    assert_eq!(to(Covers), ["rear cover"]);
}

#[test]
fn a_machine_without_all_that_has_only_its_hours_to_note() {
    let bench = Bench::new("[[point]]\nid = \"1\"\nname = \"n\"\nmethod = \"nipple\"\n");
    assert_eq!(after_use(&bench.machine).iter().map(|act| act.kind).collect::<Vec<_>>(), [AfterKind::NoteHours]);
}
