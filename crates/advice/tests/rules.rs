//! The rules by which oils are judged, one by one: a place where each holds, and the same place with the one thing changed that lifts it.
//! Each rule's own record names its source; the machines are invented.

use advice::judge::judge;
use advice::label::Property;
use advice::need::{need, unwanted};
use advice::rules::RULES;
use advice::verdict::Verdict;
use advice::words;
use shop::chart::Chart;
use shop::shelf::Shelf;
use tribology::quantity::Units;

/// A machine with one point: what is said of the pair, of the point, and more elements.
fn chart(pair: &str, point: &str, more: &str) -> Chart {
    let text = format!(
        "chart = 1\n[machine]\nname = \"M\"\n[[pair]]\nid = \"p\"\n{pair}\n{more}\n[[point]]\nid = \"1\"\nname = \"P\"\nfeeds = [\"p\"]\n{point}\n"
    );
    let read = Chart::read(&text);
    read.value.unwrap_or_else(|| {
        panic!("{}\n{text}", read.faults.iter().map(|fault| fault.says.clone()).collect::<Vec<_>>().join("\n"))
    })
}

fn shelf(oil: &str) -> Shelf {
    let name = if oil.contains("name =") { "" } else { "name = \"O\"\n" };
    let text = format!("shelf = 1\n[[oil]]\nid = \"o\"\n{name}{oil}\n");
    let read = Shelf::read(&text);
    read.value.unwrap_or_else(|| {
        panic!("{}\n{text}", read.faults.iter().map(|fault| fault.says.clone()).collect::<Vec<_>>().join("\n"))
    })
}

/// The verdict, and the ids of the rules that capped it.
fn judged(chart: &Chart, oil: &str) -> (Verdict, Vec<&'static str>) {
    let one = judge(chart, &chart.points[0], &shelf(oil)).remove(0);
    (one.verdict, one.reasons.iter().map(|reason| reason.rule).collect())
}

const BUSH: &str =
    "kind = \"journal\"\ndiameter = \"40 mm\"\nspeeds = [\"200 rpm\"]\nsurfaces = [\"steel\", \"bronze\"]";
const IRON: &str =
    "kind = \"journal\"\ndiameter = \"40 mm\"\nspeeds = [\"200 rpm\"]\nsurfaces = [\"steel\", \"cast iron\"]";
const WAY: &str = "kind = \"slideway\"\nspeeds = [\"0.1 m/s\"]\nsurfaces = [\"cast iron\", \"cast iron\"]";
const CLOSE: &str = "kind = \"journal\"\ndiameter = \"45 mm\"\nclearance = \"0.025 mm\"\nspeeds = [\"2800 rpm\"]\nsurfaces = [\"steel\", \"white metal\"]";
const HOLE: &str = "method = \"oil hole\"";
const BATH: &str = "method = \"bath\"";

/// Rule, pair, point, more of the chart, the oil for which it holds with the worst that it lets through, and the oil for which it does not.
type Row = (&'static str, &'static str, &'static str, &'static str, &'static str, Verdict, &'static str);

const CLEAN: &str = "family = \"circulating\"\nv40 = \"68 mm2/s\"\nindex = 95\nsymbol = \"ISO-L-CKB\"\ndetergent = \"no\"\nfriction_modifier = \"no\"";

const ROWS: [Row; 21] = [
    ("R1", BUSH, HOLE, "", "family = \"gear\"\nv40 = \"68 mm2/s\"\nep_sulphur = \"yes\"", Verdict::Stopgap, CLEAN),
    (
        "R2",
        BUSH,
        HOLE,
        "",
        "family = \"gear\"\nv40 = \"68 mm2/s\"\nsymbol = \"API GL-5\"",
        Verdict::Never,
        "family = \"gear\"\nv40 = \"68 mm2/s\"\nsymbol = \"API GL-5\"\ncopper_strip = \"1b\"",
    ),
    ("R4", IRON, BATH, "", "family = \"engine\"\nv40 = \"68 mm2/s\"\ndetergent = \"yes\"", Verdict::Stopgap, CLEAN),
    ("R6", IRON, HOLE, "", "family = \"engine\"\nv40 = \"68 mm2/s\"", Verdict::Stopgap, CLEAN),
    (
        "R7",
        IRON,
        "method = \"wick\"",
        "",
        "family = \"way\"\nv40 = \"68 mm2/s\"\ntackifier = \"yes\"",
        Verdict::Stopgap,
        CLEAN,
    ),
    (
        "R8",
        WAY,
        HOLE,
        "",
        CLEAN_AND_PLAIN,
        Verdict::Stopgap,
        "family = \"way\"\nv40 = \"68 mm2/s\"\nsymbol = \"ISO-L-G\"",
    ),
    (
        "R9",
        IRON,
        "method = \"splash\"\nreservoir = \"box\"",
        CLUTCH,
        "family = \"transmission\"\nv40 = \"68 mm2/s\"\nfriction_modifier = \"yes\"",
        Verdict::Stopgap,
        CLEAN,
    ),
    ("R10", DRY_CLUTCH, HOLE, "", CLEAN, Verdict::Never, ""),
    ("R11", IRON, HOLE, "", "family = \"grease\"\nnlgi = \"2\"", Verdict::Never, CLEAN),
    (
        "R12",
        "kind = \"rolling bearing\"",
        "method = \"nipple\"\noil = \"grease 2\"",
        "",
        CLEAN,
        Verdict::Stopgap,
        "family = \"grease\"\nnlgi = \"2\"",
    ),
    ("R14", IRON, HOLE, "", "family = \"gear\"\nv40 = \"68 mm2/s\"\nsymbol = \"CLP PG 68\"", Verdict::Never, CLEAN),
    ("R15", IRON, HOLE, "", "name = \"Silicone spray\"\nfamily = \"other\"", Verdict::Never, CLEAN),
    (
        "R18",
        WAY,
        HOLE,
        "",
        "name = \"Chain-saw oil\"\nfamily = \"way\"\nv40 = \"68 mm2/s\"",
        Verdict::Stopgap,
        "name = \"Oil for roller chains\"\nfamily = \"way\"\nv40 = \"68 mm2/s\"",
    ),
    (
        "R20",
        IRON,
        HOLE,
        "",
        "name = \"Penetrating spray\"\nfamily = \"other\"",
        Verdict::Never,
        "name = \"Diesel engine oil 30\"\nfamily = \"engine\"\nv40 = \"100 mm2/s\"",
    ),
    (
        "R22",
        IRON,
        HOLE,
        "",
        "name = \"Used oil, strained\"\nfamily = \"engine\"\nv40 = \"100 mm2/s\"",
        Verdict::Never,
        CLEAN,
    ),
    (
        "R16",
        IRON,
        "method = \"wick\"",
        "",
        "family = \"circulating\"\nv40 = \"68 mm2/s\"\nsolids = \"yes\"",
        Verdict::Never,
        CLEAN,
    ),
    ("R21", IRON, HOLE, "", "family = \"other\"\nv40 = \"68 mm2/s\"", Verdict::Stopgap, CLEAN),
    ("R23", IRON, HOLE, "", "family = \"circulating\"\nv40 = \"15 mm2/s\"\nindex = 95", Verdict::Stopgap, CLEAN),
    ("W1", IRON, HOLE, "", "family = \"compounded\"\nv40 = \"68 mm2/s\"\nfatty = \"yes\"", Verdict::Serves, CLEAN),
    (
        "G1",
        "kind = \"rolling bearing\"\nspeeds = [\"1440 rpm\"]",
        "method = \"nipple\"\noil = \"grease 2\"",
        "",
        "family = \"grease\"\nnlgi = \"2\"\nthickener = \"calcium\"",
        Verdict::Stopgap,
        "family = \"grease\"\nnlgi = \"2\"\nthickener = \"lithium\"",
    ),
    (
        "S1",
        CLOSE,
        BATH,
        "",
        "family = \"spindle\"\nv40 = \"22 mm2/s\"\nindex = 95",
        Verdict::Never,
        "family = \"spindle\"\nv40 = \"10 mm2/s\"\nindex = 95",
    ),
];

const CLEAN_AND_PLAIN: &str = "family = \"straight\"\nv40 = \"68 mm2/s\"\nsymbol = \"ISO-L-AN\"";
const DRY_CLUTCH: &str = "kind = \"friction clutch\"\nsurfaces = [\"cast iron\", \"leather\"]";
const CLUTCH: &str = "[[pair]]\nid = \"c\"\nkind = \"friction clutch\"\nsurfaces = [\"steel\", \"steel\"]\n[[reservoir]]\nid = \"box\"\nkind = \"box\"\nstrainer = \"gauze\"\nfeeds = [\"c\"]\n";

#[test]
fn each_rule_holds_where_it_should_and_nowhere_else() {
    for (rule, pair, point, more, holds, worst, lifts) in ROWS {
        let chart = chart(pair, point, more);
        let (verdict, rules) = judged(&chart, holds);
        assert!(rules.contains(&rule) && verdict <= worst, "{rule}: {verdict} by {rules:?}");
        if !lifts.is_empty() {
            let (_, rules) = judged(&chart, lifts);
            assert!(!rules.contains(&rule), "{rule} still holds for {lifts}: {rules:?}");
        }
    }
    let tried: std::collections::BTreeSet<&str> = ROWS.iter().map(|row| row.0).collect();
    let all: std::collections::BTreeSet<&str> = RULES.iter().map(|rule| rule.id).collect();
    assert_eq!(tried, all, "every rule is tried");
}

/// Common practice, no source: what a founder of the trade would say at once.
#[test]
fn what_practice_says_at_once() {
    let vg_46 = "family = \"hydraulic\"\nv40 = \"46 mm2/s\"\nindex = 95\nsymbol = \"ISO-L-HM\"\nfriction_modifier = \"no\"\ndetergent = \"no\"";
    let headstock = "kind = \"gear mesh\"\nspeeds = [\"2 m/s\"]\nsurfaces = [\"steel\", \"steel\"]";
    for bearing in [
        "kind = \"rolling bearing\"\ntype = \"taper roller\"\nbore = \"60 mm\"\nspeeds = [\"40 rpm\", \"1200 rpm\"]",
        "kind = \"journal\"\ndiameter = \"60 mm\"\nspeeds = [\"600 rpm\"]\nsurfaces = [\"steel\", \"bronze\"]",
    ] {
        let more =
            format!("[[pair]]\nid = \"b\"\n{bearing}\n[[reservoir]]\nid = \"box\"\nkind = \"sump\"\nfeeds = [\"b\"]\n");
        let chart = chart(headstock, "method = \"splash\"\nreservoir = \"box\"", &more);
        let (verdict, rules) = judged(&chart, vg_46);
        assert!(verdict >= Verdict::Serves, "{bearing}: {verdict} by {rules:?}");
    }
    // A box that pumps its oil once over the ways.
    let pumped = chart(WAY, "method = \"total-loss pump\"", "");
    assert_eq!(judged(&pumped, vg_46).0, Verdict::Stopgap);
    assert_eq!(judged(&pumped, "family = \"way\"\nv40 = \"68 mm2/s\"\nsymbol = \"ISO-L-G\"").0, Verdict::Suits);
    // A hot worm of bronze that cannot be bought again: what nobody states of sulphur is a stopgap, and a class says it.
    let worm = "kind = \"worm\"\nsurfaces = [\"steel\", \"bronze\"]\ntemperature = \"75 C\"\nirreplaceable = true";
    let worm = chart(worm, BATH, "");
    let unsaid = "family = \"compounded\"\nv40 = \"460 mm2/s\"\nindex = 95\ndetergent = \"no\"";
    let (verdict, rules) = judged(&worm, unsaid);
    assert!(verdict == Verdict::Stopgap && rules.contains(&"R1"), "{verdict} by {rules:?}");
    let ckb = chart(BUSH, HOLE, "");
    assert!(!judged(&ckb, "family = \"circulating\"\nv40 = \"68 mm2/s\"\nsymbol = \"ISO-L-CKB 68\"").1.contains(&"R1"));
    // A hand-oiled bronze bearing of unknown clearance is never condemned by any clean oil.
    let unknown = chart("kind = \"journal\"\nsurfaces = [\"steel\", \"bronze\"]", HOLE, "");
    for v40 in [10, 32, 68, 150, 460] {
        let oil = format!("family = \"circulating\"\nv40 = \"{v40} mm2/s\"\nindex = 95\nsymbol = \"ISO-L-CKB\"");
        assert!(judged(&unknown, &oil).0 > Verdict::Never, "{v40}");
    }
}

/// What nobody says of the place is told as that, and not as a gap in the oil's label.
#[test]
fn a_gap_in_the_chart_is_no_gap_in_the_label() {
    let unsaid = chart("kind = \"journal\"\ndiameter = \"40 mm\"\nspeeds = [\"200 rpm\"]", HOLE, "");
    let gear = "family = \"gear\"\nv40 = \"68 mm2/s\"\nep_sulphur = \"yes\"";
    let one = judge(&unsaid, &unsaid.points[0], &shelf(gear)).remove(0);
    let reason = one.reasons.iter().find(|reason| reason.rule == "R1").expect("R1 asks of the metal");
    assert!(reason.cap == Verdict::Serves && reason.says.contains("nobody says whether there is bronze"), "{reason:?}");
}

/// Where nobody knows what a point feeds, there may be bronze behind it, and the chart's own word goes first.
#[test]
fn an_unknown_passage_gets_no_strong_medicine() {
    let text = "chart = 1\n[machine]\nname = \"M\"\n[[point]]\nid = \"1\"\nname = \"P\"\nmethod = \"oil hole\"\noil = \"way 68\"\n";
    let chart = Chart::read(text).value.expect("a chart without faults");
    let oil = |id: &str, more: &str| format!("[[oil]]\nid = \"{id}\"\nname = \"{id}\"\n{more}\n");
    let shelf = [
        "shelf = 1\n".to_owned(),
        oil("axle", "family = \"gear\"\nv40 = \"140 mm2/s\"\nsymbol = \"API GL-5\""),
        oil("drum", CLEAN),
        oil("way", "family = \"way\"\nv40 = \"68 mm2/s\""),
    ];
    let shelf = Shelf::read(&shelf.concat()).value.expect("a shelf without faults");
    let judged = judge(&chart, &chart.points[0], &shelf);
    let order: Vec<(&str, Verdict)> = judged.iter().map(|one| (one.oil.as_str(), one.verdict)).collect();
    assert_eq!(order, [("way", Verdict::Serves), ("drum", Verdict::Serves), ("axle", Verdict::Stopgap)]);
}

/// A close spindle shares its sump with a collar that would like a thicker oil: the spindle decides, for thicker oil can seize it.
#[test]
fn a_close_spindle_is_never_a_compromise() {
    let collar = "[[pair]]\nid = \"c\"\nkind = \"sliding collar\"\n[[reservoir]]\nid = \"sump\"\nkind = \"sump\"\nfeeds = [\"c\"]\n";
    let chart = chart(CLOSE, "method = \"bath\"\nreservoir = \"sump\"", collar);
    let oil = |v40: f64| {
        format!("family = \"spindle\"\nv40 = \"{v40} mm2/s\"\nindex = 95\nsymbol = \"ISO-L-FC\"\ndetergent = \"no\"")
    };
    assert_eq!(judged(&chart, &oil(10.0)).0, Verdict::Suits);
    assert_eq!(judged(&chart, &oil(22.0)).0, Verdict::Never);
}

/// A close, fast spindle wants its plate's oil "exactly as given" (trade practice, section 2, from memory): 60 Saybolt seconds at 100 °F are
/// grade 10 (ASTM D2422).
#[test]
fn a_close_spindle_wants_what_its_plate_says() {
    let plate = "method = \"bath\"\nplate = \"SPINDLE OIL 60 SEC. AT 100 F\"";
    let spindle = chart(CLOSE, plate, "");
    let label = words::to_buy(&need(&spindle, &spindle.points[0])).expect("a label");
    assert!(label.ends_with("ISO VG 10"), "{label}");
    // Another bearing keeps its band, and the plate is shown beside it.
    let bush = chart(BUSH, plate, "");
    let found = need(&bush, &bush.points[0]);
    assert_eq!(found.band, need(&chart(BUSH, BATH, ""), &chart(BUSH, BATH, "").points[0]).band);
    let read = advice::need::plate(&bush, &bush.points[0]).expect("a plate");
    assert!(words::plate(&read, found.band.as_ref()).contains("thinner than that"));
}

/// An oil too thin for a line by its index (ASTM D2270 begins at 2 mm²/s at 100 °C) has a body at 40 °C all the same.
#[test]
fn a_very_thin_oil_is_judged_by_its_body() {
    let (verdict, rules) = judged(&chart(BUSH, HOLE, ""), "family = \"spindle\"\nv40 = \"2.2 mm2/s\"\nindex = 95");
    assert!(verdict == Verdict::Stopgap && rules.contains(&"R23"), "{verdict} by {rules:?}");
}

/// A thicker or thinner oil is never better for lying farther outside.
#[test]
fn farther_outside_is_never_better() {
    for (pair, point) in [(BUSH, HOLE), (WAY, HOLE), (CLOSE, BATH), (IRON, "method = \"wick\"")] {
        let chart = chart(pair, point, "");
        let of = |v40: f64| judged(&chart, &format!("family = \"spindle\"\nv40 = \"{v40} mm2/s\"\nindex = 95")).0;
        let all: Vec<Verdict> = (0..40).map(|step| of(2.0 * 1.15_f64.powi(step))).collect();
        let best = all.iter().copied().max().expect("there are some");
        let first = all.iter().position(|verdict| *verdict == best).expect("it is among them");
        let last = all.iter().rposition(|verdict| *verdict == best).expect("it is among them");
        assert!(all[..first].is_sorted(), "{pair}: {all:?}");
        assert!(all[last..].iter().rev().is_sorted(), "{pair}: {all:?}");
    }
}

/// Each reason says what it saw, and what was seen is what the chart and the label say.
#[test]
fn each_rule_says_what_it_saw() {
    for (rule, pair, point, more, holds, ..) in ROWS {
        let chart = chart(pair, point, more);
        let one = judge(&chart, &chart.points[0], &shelf(holds)).remove(0);
        let reason = one.reasons.iter().find(|reason| reason.rule == rule).expect("the rule holds");
        let record = RULES.iter().find(|record| record.id == rule).expect("it is in the table");
        assert!(!record.looks.is_empty() && reason.seen.len() == record.looks.len(), "{rule}");
    }
    let bush = chart(BUSH, HOLE, "");
    let gear = "family = \"gear\"\nv40 = \"68 mm2/s\"\nep_sulphur = \"yes\"\ncopper_strip = \"2b\"";
    let one = judge(&bush, &bush.points[0], &shelf(gear)).remove(0);
    let reason = one.reasons.iter().find(|reason| reason.rule == "R1").expect("R1 holds");
    let seen: Vec<String> = reason.seen.iter().map(|seen| words::seen(seen, Units::Metric)).collect();
    assert_eq!(
        seen,
        [
            "active sulphur (extreme pressure): yes",
            "copper strip: 2b",
            "surfaces: steel on bronze",
            "how warm it runs: nobody says",
            "cannot be bought again: no"
        ]
    );
    let (pair, step) = one.steps.first().expect("its body was held against the bush");
    let step = words::step(step, Units::Metric);
    assert!(pair.as_str() == "p" && step.contains("68 mm²/s") && step.contains("grades outside = 0"), "{step}");
}

/// What must not be in it is what the verdicts say: bronze wants no active sulphur, a wick no tackifier, a friction clutch no friction modifier.
#[test]
fn what_must_not_be_in_it_follows_from_the_rules() {
    let of = |pair: &str, point: &str, more: &str| {
        let chart = chart(pair, point, more);
        let found = unwanted(&need(&chart, &chart.points[0]));
        found.into_iter().map(|one| (one.property, one.reason.rule)).collect::<Vec<_>>()
    };
    assert!(of(BUSH, HOLE, "").contains(&(Property::EpSulphur, "R1")));
    assert!(!of(IRON, HOLE, "").iter().any(|(property, _)| *property == Property::EpSulphur));
    assert!(of(IRON, "method = \"wick\"", "").contains(&(Property::Tackifier, "R7")));
    assert!(of(IRON, "method = \"wick\"", "").contains(&(Property::Solids, "R16")));
    assert!(of(IRON, BATH, "").contains(&(Property::Detergent, "R4")));
    let box_with_clutch = of(IRON, "method = \"splash\"\nreservoir = \"box\"", CLUTCH);
    assert!(box_with_clutch.contains(&(Property::FrictionModifier, "R9")), "{box_with_clutch:?}");
}

/// Thresholds from memory are ranges: a little more speed or clearance never makes an oil two words worse.
#[test]
fn no_verdict_falls_off_a_cliff() {
    let oils = [22.0, 32.0, 46.0, 68.0, 100.0].map(|v40| {
        format!("family = \"circulating\"\nv40 = \"{v40} mm2/s\"\nindex = 95\nsymbol = \"ISO-L-CKB\"\ntackifier = \"no\"\nfriction_modifier = \"no\"")
    });
    let steps = |from: f64, to: f64, number: u32| {
        (0..=number).map(move |step| from * (to / from).powf(f64::from(step) / f64::from(number)))
    };
    let ladder = |oil: &str, pair: &dyn Fn(f64) -> String, point: &str, from: f64, to: f64| {
        let all: Vec<Verdict> =
            steps(from, to, 120).map(|value| judged(&chart(&pair(value), point, ""), oil).0).collect();
        for two in all.windows(2) {
            assert!((two[0] as i32 - two[1] as i32).abs() <= 1, "{oil}: {all:?}");
        }
    };
    for oil in &oils {
        ladder(oil, &|speed| format!("kind = \"slideway\"\nspeeds = [\"{speed} m/s\"]"), HOLE, 0.05, 3.0);
        ladder(oil, &|speed| format!("kind = \"gear mesh\"\nspeeds = [\"{speed} m/s\"]"), BATH, 0.1, 20.0);
        let spindle = |speed: f64| {
            format!("kind = \"journal\"\ndiameter = \"40 mm\"\nclearance = \"0.025 mm\"\nspeeds = [\"{speed} rpm\"]")
        };
        ladder(oil, &spindle, BATH, 100.0, 6000.0);
        let clearance = |clearance: f64| {
            format!("kind = \"journal\"\ndiameter = \"40 mm\"\nclearance = \"{clearance} mm\"\nspeeds = [\"3000 rpm\"]")
        };
        ladder(oil, &clearance, BATH, 0.02, 0.06);
    }
}
