//! What follows from a plan of the shelf: what a year takes, counted by hand here; what becomes of each can; and what is easily mixed up.

use advice::shelf_plan::fewest::Effort;
use advice::shelf_plan::{Alike, Asked, Buying, Choice, Fate, ShelfPlan, Year, fates, mix_ups, shelf_plan, shopping};
use shop::chart::Chart;
use shop::id::Id;
use shop::shelf::{Amount, Shelf};
use shop::snapshot::MachineSnapshot;

use crate::bench::id;

const CHART: &str = r#"chart = 1
[machine]
name = "grinder"
[[pair]]
id = "spindle"
kind = "journal"
diameter = "40 mm"
clearance = "0.02 mm"
speeds = ["3000 rpm"]
[[pair]]
id = "slow"
kind = "journal"
diameter = "30 mm"
speeds = ["60 rpm"]
[[pair]]
id = "way"
kind = "slideway"
[[reservoir]]
id = "bath"
kind = "sump"
capacity = "3.5 L"
behaviour = "holds"
feeds = ["slow"]
[[reservoir]]
id = "tank"
kind = "tank"
capacity = "500 mL"
behaviour = "uses"
[[circuit]]
id = "lines"
name = "Way lines"
from = "tank"
[[circuit.node]]
id = "pump"
kind = "pump"
[[circuit.node]]
id = "out"
kind = "outlet"
feeds = ["way"]
[[point]]
id = "1"
name = "Spindle"
method = "oil hole"
feeds = ["spindle"]
dose = "3 drops"
every = ["4 h"]
oil = "spindle 10"
[[point]]
id = "2"
name = "Bath"
method = "bath"
reservoir = "bath"
every = ["1 week"]
oil = "circulating 68"
[[point]]
id = "3"
name = "Slow journal"
method = "oil hole"
feeds = ["slow"]
dose = "2 strokes"
every = ["1 use"]
oil = "spindle 68"
[[point]]
id = "4"
name = "Tank"
method = "one-shot"
reservoir = "tank"
oil = "way 68"
[[point]]
id = "5"
name = "Knob"
method = "one-shot"
circuit = "lines"
dose = "4 mL"
every = ["2 h"]
"#;

const SHELF: &str = r#"shelf = 1
[[oil]]
id = "spindle-10"
name = "The thin one"
family = "spindle"
symbol = "ISO-L-FC"
v40 = "10 mm2/s"
index = 95
packs = ["1 L at 14 EUR"]
[[oil]]
id = "spindle-68"
name = "The thick one"
family = "spindle"
symbol = "ISO-L-FC"
v40 = "68 mm2/s"
index = 95
stock = "1 L"
[[oil]]
id = "drum"
name = "Drum 68"
family = "circulating"
symbol = "ISO-L-CKB"
v40 = "68 mm2/s"
index = 95
stock = "1 L"
packs = ["1 L at 6 EUR", "5 L at 24 EUR"]
[[oil]]
id = "way-68"
name = "Way 68"
family = "way"
symbol = "ISO-L-G"
v40 = "68 mm2/s"
index = 95
tackifier = "yes"
friction_modifier = "yes"
stock = "5 L"
[[can]]
id = "can"
oil = "drum"
stroke = "0.8 mL"
"#;

struct Bench {
    machines: Vec<MachineSnapshot>,
    shelf: Shelf,
}

impl Bench {
    fn new() -> Self {
        let read = Chart::read(CHART);
        let chart = read.value.unwrap_or_else(|| panic!("{:?}", read.faults));
        let machine = MachineSnapshot {
            id: id("grinder"),
            revision: 1,
            chart,
            points: Default::default(),
            contents: Default::default(),
            runs: Vec::new(),
        };
        Self { machines: vec![machine], shelf: Shelf::read(SHELF).value.expect("the shelf is right") }
    }

    fn asked(&self) -> Asked<'_> {
        let (machines, shelf) = (&self.machines, &self.shelf);
        Asked { machines, shelf, movements: &[], buying: Buying::ShelfOnly, most: None, effort: Effort::USUAL }
    }

    fn plan(&self) -> ShelfPlan {
        shelf_plan(&self.asked()).answer.value
    }
}

/// The choice that keeps the thin oil, the drum and the way oil.
fn three(plan: &ShelfPlan) -> &Choice {
    let choice = plan.oils.of(3).expect("there is a plan");
    assert_eq!(choice.oils, [id("drum"), id("spindle-10"), id("way-68")], "{choice:?}");
    choice
}

#[test]
fn a_year_takes_what_baths_doses_and_intervals_come_to() {
    let bench = Bench::new();
    let plan = bench.plan();
    let bought = shopping(&bench.asked(), &plan, &[three(&plan)], &Year::USUAL).answer.value;
    let of = |oil: &str| bought.iter().find(|one| one.oil == id(oil)).expect("it is bought");
    let litres = |amount: Option<Amount>| match amount {
        Some(Amount::Volume(volume)) => volume.litres(),
        other => panic!("{other:?}"),
    };
    // A hundred days of three hours. The bath once; the journal a hundred times two strokes of 0.8 mL; nothing for the weekly look.
    let drum = of("drum");
    assert!((drum.needed.baths.litres() - 3.5).abs() < 1e-9 && (drum.needed.hand.ml() - 160.0).abs() < 1e-6);
    // 3.66 L less the litre that is there: one of 5 L is dearer than three of 1 L.
    assert!((litres(drum.lacks) - 2.66).abs() < 1e-9);
    let packs = drum.packs.as_ref().expect("packs are known");
    assert_eq!((packs.count, packs.pack.text.as_str()), (3, "1 L at 6 EUR"));
    assert_eq!(packs.price.as_ref().map(ToString::to_string), Some("18.00 EUR".to_owned()));
    // 300 h at 4 h: 75 times three drops of 1/30 mL.
    assert!((of("spindle-10").needed.hand.ml() - 7.5).abs() < 1e-6);
    // What the knob draws is counted, 150 times 4 mL, and the tank that it draws from is not counted again.
    let way = of("way-68");
    assert!((way.needed.hand.ml() - 600.0).abs() < 1e-6 && way.needed.baths.ml() == 0.0);
    assert_eq!((way.lacks, way.packs.as_ref()), (None, None), "5 L are there");
    assert!(bought.iter().all(|one| one.needed.uncounted.is_empty()));
}

#[test]
fn each_can_has_its_fate() {
    let bench = Bench::new();
    let plan = bench.plan();
    let fates = fates(&bench.asked(), &plan, &[three(&plan)]);
    let of = |oil: &str| fates.iter().find(|(one, _)| *one == id(oil)).map(|(_, fate)| fate.clone());
    assert_eq!(of("drum"), Some(Fate::Kept { points: 2 }));
    // The round gives it to the slow journal today; the drum takes over.
    assert_eq!(of("spindle-68"), Some(Fate::TakenOver { by: vec![(id("drum"), 1)] }));
}

#[test]
fn two_cans_of_one_sort_of_which_one_seizes_the_spindle_are_told() {
    let bench = Bench::new();
    let plan = bench.plan();
    let told = mix_ups(&bench.asked(), &plan, three(&plan));
    let pairs: Vec<(&Id, &Id)> = told.iter().map(|one| (&one.right, &one.wrong)).collect();
    assert_eq!(
        pairs,
        [(&id("spindle-10"), &id("spindle-68"))],
        "the drum is thick too, but neither of that sort nor near it"
    );
    assert_eq!(told[0].alike, [Alike::Sort]);
    assert_eq!(told[0].harmed.iter().map(|at| at.point.as_str()).collect::<Vec<_>>(), ["1"]);
}
