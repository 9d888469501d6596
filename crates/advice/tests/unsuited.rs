//! The round names the cans that do not do: rules R1, R2 and R11 of trade practice, at points whose chart asks for the wrong thing.

use advice::round::{Caution, Plan, cans, round};
use advice::verdict::Verdict;
use shop::shelf::Shelf;
use tribology::quantity::Time;

use crate::bench::{Bench, at};

const SHELF: &str = r#"shelf = 1
[[oil]]
id = "axle"
name = "Axle oil"
family = "gear"
symbol = "API GL-5"
v40 = "68 mm2/s"
ep_sulphur = "yes"
[[oil]]
id = "round"
name = "Circulating 68"
family = "circulating"
v40 = "68 mm2/s"
ep_sulphur = "no"
tackifier = "no"
[[oil]]
id = "grease"
name = "Grease"
family = "grease"
nlgi = "2"
[[can]]
id = "red-can"
oil = "axle"
[[can]]
id = "gun"
oil = "grease"
[[can]]
id = "spout"
oil = "round"
"#;

const CHART: &str = r#"
[[pair]]
id = "bush"
kind = "journal"
diameter = "30 mm"
speeds = ["100 rpm"]
surfaces = ["steel", "bronze"]
[[pair]]
id = "ball"
kind = "rolling bearing"
[[point]]
id = "1"
name = "Bush"
method = "oil hole"
feeds = ["bush"]
oil = "gear 68"
every = ["1 use"]
[[point]]
id = "2"
name = "Ball bearing"
method = "grease cup"
feeds = ["ball"]
oil = "grease 2"
every = ["1 use"]
[[point]]
id = "3"
name = "Other bush"
method = "oil hole"
feeds = ["bush"]
oil = "circulating 68"
every = ["1 use"]
"#;

fn plan() -> Plan {
    Plan { job: None, hours: Time::from_hours(3.0) }
}

#[test]
fn what_the_chart_asks_for_and_does_harm_is_named_with_what_to_take() {
    let mut bench = Bench::new(CHART);
    bench.shelf = Shelf::read(SHELF).value.expect("the shelf is right");
    let mut round = round(&bench.machine, &bench.shelf, &at("2026-11-25T09:00"), &plan()).answer.value;
    let found = cans(&bench.machine, &bench.shelf, &mut round);
    let [bush] = found.unsuited.as_slice() else { panic!("{:?}", found.unsuited) };
    assert_eq!(bush.id.as_str(), "1");
    assert_eq!(bush.oil.as_ref().map(|(oil, verdict)| (oil.id.as_str(), *verdict)), Some(("axle", Verdict::Never)));
    assert_eq!(bush.rather.as_ref().map(|(oil, verdict)| (oil.id.as_str(), *verdict)), Some(("round", Verdict::Suits)));
    let harmful = |point: &&advice::round::RoundPoint| point.cautions.contains(&Caution::HarmfulOil);
    let harmful: Vec<&str> =
        round.stands.iter().flat_map(|at| &at.points).filter(harmful).map(|point| point.id.as_str()).collect();
    assert_eq!(harmful, ["1"]);
}

#[test]
fn cans_are_kept_from_the_points_that_they_harm() {
    let mut bench = Bench::new(CHART);
    bench.shelf = Shelf::read(SHELF).value.expect("the shelf is right");
    let mut round = round(&bench.machine, &bench.shelf, &at("2026-11-25T09:00"), &plan()).answer.value;
    let kept = cans(&bench.machine, &bench.shelf, &mut round).keep_apart;
    let kept: Vec<(&str, Vec<&str>)> =
        kept.iter().map(|kept| (kept.can.id.as_str(), kept.from.iter().map(|id| id.as_str()).collect())).collect();
    // GL-5 at bronze (R2), grease in oil holes (R11); the clean oil harms nothing.
    assert!(kept.contains(&("red-can", vec!["1", "3"])) && kept.contains(&("gun", vec!["1", "3"])), "{kept:?}");
    assert!(kept.iter().all(|(can, _)| *can != "spout"));
}
