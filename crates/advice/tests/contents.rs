//! What is in a reservoir and what to do about it. What is expected is trade practice: section 3 of its rules (R1, R2, R4, R9, R11, R13, R24),
//! and what every handbook says of a loaded bronze worm, a close spindle and a box of steel gears.

use advice::contents::{Act, Fit, Holds, before_topping_up, in_greased_point, in_reservoir};
use advice::words;
use jiff::Timestamp;
use shop::chart::Chart;
use shop::contents::{Contents, Fill};
use shop::shelf::Shelf;

use crate::bench::id;

/// A worm box of bronze, a box of steel gears, a cup that uses its oil, a grease cup; and a box that no point fills.
const CHART: &str = r#"chart = 1
[machine]
name = "drill"
[[pair]]
id = "worm"
kind = "worm"
torque = "30 N m"
surfaces = ["steel", "bronze"]
irreplaceable = true
[[pair]]
id = "gears"
kind = "gear mesh"
diameter = "100 mm"
speeds = ["600 rpm"]
surfaces = ["steel", "steel"]
[[pair]]
id = "spindle"
kind = "journal"
diameter = "50 mm"
clearance = "0.03 mm"
speeds = ["2800 rpm"]
surfaces = ["steel", "bronze"]
irreplaceable = true
[[pair]]
id = "shaft"
kind = "journal"
diameter = "40 mm"
speeds = ["200 rpm"]
surfaces = ["steel", "cast iron"]
[[pair]]
id = "clutch"
kind = "friction clutch"
surfaces = ["steel", "bronze"]
note = "Runs wet."
[[reservoir]]
id = "worm-box"
kind = "box"
capacity = "0.2 L"
behaviour = "holds"
[[reservoir]]
id = "gear-box"
kind = "box"
capacity = "2 L"
behaviour = "holds"
[[reservoir]]
id = "spindle-sump"
kind = "sump"
behaviour = "holds"
[[reservoir]]
id = "cup"
kind = "cup"
capacity = "30 mL"
behaviour = "uses"
[[reservoir]]
id = "unfilled"
kind = "box"
feeds = ["worm"]
[[reservoir]]
id = "clutch-box"
kind = "box"
strainer = "gauze"
[[point]]
id = "1"
name = "Worm box"
method = "bath"
reservoir = "worm-box"
feeds = ["worm"]
[[point]]
id = "2"
name = "Gear box"
method = "splash"
reservoir = "gear-box"
feeds = ["gears"]
[[point]]
id = "3"
name = "Glass of the gear box"
method = "splash"
reservoir = "gear-box"
setup = ["running"]
sign = "oil moves"
feeds = ["shaft"]
[[point]]
id = "4"
name = "Spindle"
method = "bath"
reservoir = "spindle-sump"
feeds = ["spindle"]
[[point]]
id = "5"
name = "Cup"
method = "cup"
reservoir = "cup"
feeds = ["shaft"]
[[point]]
id = "6"
name = "Grease cup"
method = "grease cup"
feeds = ["shaft"]
[[point]]
id = "7"
name = "Clutch box"
method = "splash"
reservoir = "clutch-box"
feeds = ["clutch"]
"#;

const SHELF: &str = r#"shelf = 1
[[oil]]
id = "drum-46"
name = "Drum"
family = "circulating"
symbol = "ISO-L-CKB"
v40 = "46 mm2/s"
detergent = "no"
tackifier = "no"
friction_modifier = "no"
[[oil]]
id = "drum-68"
name = "Other drum"
family = "circulating"
symbol = "ISO-L-CKB"
v40 = "68 mm2/s"
detergent = "no"
tackifier = "no"
friction_modifier = "no"
[[oil]]
id = "worm-460"
name = "Worm oil"
family = "compounded"
symbol = "AGMA 7 Comp"
v40 = "460 mm2/s"
[[oil]]
id = "axle"
name = "Axle oil"
family = "gear"
symbol = "API GL-5"
v40 = "140 mm2/s"
[[oil]]
id = "engine"
name = "Engine oil"
family = "engine"
symbol = "API SF"
v40 = "100 mm2/s"
[[oil]]
id = "fluid"
name = "Transmission fluid"
family = "transmission"
v40 = "35 mm2/s"
friction_modifier = "yes"
detergent = "yes"
[[oil]]
id = "spindle-15"
name = "Spindle oil"
family = "spindle"
symbol = "ISO-L-FC"
v40 = "15 mm2/s"
[[oil]]
id = "lithium"
name = "Lithium grease"
family = "grease"
thickener = "lithium"
nlgi = "2"
[[oil]]
id = "soda"
name = "Soda grease"
family = "grease"
thickener = "sodium"
nlgi = "2"
[[oil]]
id = "lime"
name = "Lime grease"
family = "grease"
thickener = "calcium"
nlgi = "2"
[[can]]
id = "can"
oil = "drum-68"
stroke = "1 mL"
"#;

struct Bench {
    chart: Chart,
    shelf: Shelf,
}

fn bench() -> Bench {
    let (chart, shelf) = (Chart::read(CHART), Shelf::read(SHELF));
    assert!(chart.faults.is_empty() && shelf.faults.is_empty(), "{:?} {:?}", chart.faults, shelf.faults);
    Bench { chart: chart.value.expect("no faults"), shelf: shelf.value.expect("no faults") }
}

fn day(day: i64) -> Timestamp {
    Timestamp::from_second(day * 86_400).expect("an instant")
}

/// Filled on these days with these oils, so much each time; drained on the first day where one is said.
fn contents(drained: Option<i64>, fills: &[(&str, &str, i64, usize)]) -> Contents {
    let fill = |(oil, amount, at, times): &(&str, &str, i64, usize)| Fill {
        oil: (!oil.is_empty()).then(|| id(oil)),
        amount: (!amount.is_empty()).then(|| (*amount).to_owned()),
        can: Some(id("can")),
        times: *times,
        first: day(*at),
        last: day(*at + *times as i64 - 1),
    };
    Contents { drained: drained.map(day), fills: fills.iter().map(fill).collect() }
}

impl Bench {
    fn inside(&self, reservoir: &str, contents: &Contents) -> advice::contents::Inside {
        let reservoir = self.chart.reservoir(&id(reservoir)).expect("the chart has it");
        in_reservoir(&self.chart, reservoir, contents, &self.shelf)
    }

    #[track_caller]
    fn check(&self, reservoir: &str, oil: &str, act: Act, fit: Fit) {
        let found = self.inside(reservoir, &contents(Some(1), &[(oil, "1 L", 1, 1)]));
        assert_eq!((found.act, found.fit()), (act, fit), "{oil} in {reservoir}: {:?}", found.harms);
        assert_eq!((found.only(), found.since), (Some(&id(oil)), Some(day(1))));
    }
}

#[test]
fn one_oil_that_is_known_is_judged_by_all_that_it_feeds() {
    let bench = bench();
    // A loaded bronze worm wants compounded oil; GL-5 without a copper strip is never put there (R1, R2).
    bench.check("worm-box", "worm-460", Act::Leave, Fit::Right);
    bench.check("worm-box", "axle", Act::DoNotRun, Fit::Wrong);
    // The same where no point fills the box and only the box says what it feeds.
    bench.check("unfilled", "axle", Act::DoNotRun, Fit::Wrong);
    // Closed steel gears and a slow shaft: circulating oil of 46 to 68 is what they get everywhere.
    bench.check("gear-box", "drum-68", Act::Leave, Fit::Right);
    // Engine oil in an unfiltered box of steel gears is a stopgap (R4) that nothing there suffers from: to the next change.
    bench.check("gear-box", "engine", Act::NextChange, Fit::Wrong);
    // A friction modifier where a clutch must grip goes on slipping it for as long as it is in (R9).
    bench.check("clutch-box", "fluid", Act::Drain, Fit::Wrong);
    // Too thick for a close, fast spindle that cannot be bought again: a stopgap, and out with it.
    bench.check("spindle-sump", "spindle-15", Act::Drain, Fit::Wrong);
    // Grease where oil belongs plugs the passage (R11, the strongest rule of all).
    bench.check("cup", "lithium", Act::DoNotRun, Fit::Wrong);
}

#[test]
fn what_nobody_knows_is_sampled_and_no_alarm() {
    let bench = bench();
    let never = bench.inside("worm-box", &Contents::default());
    assert_eq!((never.holds.clone(), never.act, never.fit()), (Holds::NeverEntered, Act::Sample, Fit::Unknown));
    assert!(words::contents_act(&never).contains("no alarm"), "{}", words::contents_act(&never));
    // A right top-up on unknown contents is still unknown.
    let topped = bench.inside("worm-box", &contents(None, &[("worm-460", "20 mL", 5, 1)]));
    assert_eq!(
        (topped.holds.clone(), topped.act, topped.fit()),
        (Holds::Partly(vec![id("worm-460")]), Act::Sample, Fit::Unknown)
    );
    assert_eq!(topped.since, None);
    // A wrong one on unknown contents is wrong, whatever the rest is.
    let wrong = bench.inside("worm-box", &contents(None, &[("axle", "20 mL", 5, 1)]));
    assert_eq!((wrong.act, wrong.fit()), (Act::DoNotRun, Fit::Wrong));
    // Somebody filled it and did not say with what; or with what is no longer on the shelf.
    for unsaid in ["", "gone-220"] {
        let found = bench.inside("worm-box", &contents(Some(1), &[(unsaid, "0.2 L", 1, 1)]));
        assert_eq!((found.act, found.fit()), (Act::Sample, Fit::Unknown), "{unsaid}");
    }
    let empty = bench.inside("worm-box", &contents(Some(3), &[]));
    assert_eq!((empty.act, empty.fit(), empty.since), (Act::Fill, Fit::Empty, Some(day(3))));
}

#[test]
fn a_mixture_is_as_good_as_the_worst_in_it_and_unlike_oils_are_changed() {
    let bench = bench();
    let alike = bench.inside("gear-box", &contents(Some(1), &[("drum-46", "1 L", 1, 1), ("drum-68", "1 L", 9, 1)]));
    // Two grades of one make: nothing is said of their meeting, but 46 is a grade thin for the slow shaft (R23: serves).
    assert_eq!((alike.act, alike.fit(), alike.since), (Act::NextChange, Fit::Serves, Some(day(9))));
    assert!(
        alike.harms.iter().all(|harm| harm.oils == [id("drum-46")] && harm.reason.rule == "R23"),
        "{:?}",
        alike.harms
    );
    // R24: unlike additives, a stopgap and then a change.
    let unlike =
        bench.inside("worm-box", &contents(Some(1), &[("worm-460", "0.2 L", 1, 1), ("drum-68", "10 mL", 9, 1)]));
    assert!(unlike.harms.iter().any(|harm| harm.reason.rule == "R24" && harm.oils.len() == 2), "{:?}", unlike.harms);
    assert_eq!((unlike.act, unlike.fit()), (Act::Drain, Fit::Wrong));
    // A spoonful of GL-5 in the bronze worm's box is in it all the same.
    let spoiled = bench.inside("worm-box", &contents(Some(1), &[("worm-460", "0.2 L", 1, 1), ("axle", "20 mL", 9, 1)]));
    assert_eq!(spoiled.act, Act::DoNotRun);
    assert_eq!((spoiled.harms[0].oils.clone(), spoiled.harms[0].pair.clone()), (vec![id("axle")], Some(id("worm"))));
}

/// A vessel of 30 mL that uses its oil: three times that through it leave at most five parts in a hundred of what was in before.
#[test]
fn what_a_cup_uses_up_is_gone_after_three_times_what_it_holds() {
    let bench = bench();
    let cup = |amount: &str, times| bench.inside("cup", &contents(None, &[("drum-68", amount, 5, times)]));
    assert_eq!(cup("10 mL", 8).fit(), Fit::Unknown, "80 mL");
    assert_eq!((cup("10 mL", 9).fit(), cup("10 mL", 9).since), (Fit::Right, Some(day(5))), "90 mL");
    assert_eq!(cup("10 strokes", 9).fit(), Fit::Right, "strokes of the measured can");
    assert_eq!((cup("", 29).fit(), cup("", 30).fit()), (Fit::Unknown, Fit::Right), "unmeasured, a tenth each");
    assert!(words::contents_replaced(&cup("10 mL", 9)).is_some_and(|says| says.contains("3 times")));
    // What came before the change of oil is gone too, but a box that holds its oil keeps it for ever.
    let fills = [("lithium", "5 mL", 1, 1), ("drum-68", "10 mL", 5, 9)];
    assert_eq!(bench.inside("cup", &contents(None, &fills)).fit(), Fit::Right);
    assert_eq!(bench.inside("gear-box", &contents(None, &[("drum-68", "2 L", 5, 9)])).fit(), Fit::Unknown);
}

#[test]
fn greases_of_unlike_soap_in_one_cup_are_told_by_the_printed_table() {
    let bench = bench();
    let point = bench.chart.point(&id("6")).expect("the chart has it");
    let cup = |fills: &[(&str, &str, i64, usize)]| {
        in_greased_point(&bench.chart, point, &contents(Some(0), fills), &bench.shelf)
    };
    assert_eq!(cup(&[("lithium", "1/2 turn", 1, 2)]).fit(), Fit::Right);
    let soda = cup(&[("soda", "1/2 turn", 1, 2), ("lithium", "1/2 turn", 5, 2)]);
    assert_eq!((soda.act, soda.harms[0].reason.rule), (Act::Drain, "R13"));
    let lime = cup(&[("lime", "1/2 turn", 1, 2), ("lithium", "1/2 turn", 5, 2)]);
    assert_eq!((lime.act, lime.harms[0].reason.rule), (Act::NextChange, "R13"));
}

#[test]
fn what_to_be_wary_of_is_said_before_topping_up() {
    let bench = bench();
    let rules = |contents: &Contents, fresh: &str| -> Vec<&str> {
        let inside = bench.inside("gear-box", contents);
        let fresh = bench.shelf.oil(&id(fresh)).expect("it is on the shelf");
        before_topping_up(&inside, contents, fresh, &bench.shelf).iter().map(|reason| reason.rule).collect()
    };
    let unseen = Contents::default();
    let changed = contents(Some(1), &[("drum-68", "2 L", 1, 1)]);
    assert_eq!(rules(&unseen, "engine"), ["R5"]);
    assert_eq!(rules(&changed, "engine"), ["R24"]);
    assert_eq!(rules(&changed, "drum-46"), [""; 0]);
    assert_eq!(rules(&unseen, "drum-46"), [""; 0]);
}
