//! The fewest oils: the bare sum against going through every choice of small shops drawn at random, its laws, and the plan of the demo shop
//! against the shelves that practitioners settle on (trade practice, common practice, no source).

use std::collections::BTreeSet;
use std::path::Path;

use advice::shelf_plan::fewest::{Effort, Frontier, Matrix, fewest};
use advice::shelf_plan::{Asked, Buying, ShelfPlan, harm, shelf_plan};
use advice::verdict::Verdict;
use shop::chart::Chart;
use shop::id::Id;
use shop::shelf::{Family, Shelf};
use shop::snapshot::MachineSnapshot;

use crate::bench::id;

/// Small numbers by chance, the same for the same seed.
struct Chance(u64);

impl Chance {
    fn below(&mut self, limit: u64) -> u64 {
        // The multiplier and the step of Knuth's MMIX; the low bits are the poor ones.
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) % limit
    }
}

/// A shop of up to twelve points and up to eight oils: weights, verdicts and how welcome the oils are, all by chance.
fn small_shop(seed: u64) -> Matrix {
    let mut chance = Chance(seed);
    chance.below(2);
    let (points, oils) = (1 + chance.below(12), 1 + chance.below(8));
    let never = 1 + chance.below(3);
    let harm_of = |chance: &mut Chance, weight: u32| {
        let verdict = match chance.below(3 + never) {
            0 => Verdict::Suits,
            1 => Verdict::Serves,
            2 => Verdict::Stopgap,
            _ => Verdict::Never,
        };
        harm::harm(verdict).map(|harm| weight * harm)
    };
    let rows = (0..points).map(|_| {
        let weight = 1 + u32::try_from(chance.below(5)).expect("a small number");
        (0..oils).map(|_| harm_of(&mut chance, weight)).collect()
    });
    let rows = rows.collect();
    let mut few = |limit| (0..oils).map(|_| u32::try_from(chance.below(limit)).expect("a small number")).collect();
    let reluctance = few(4);
    // In every other shop a can counts by itself.
    let prices = few(if seed.is_multiple_of(2) { 1 } else { 6 });
    Matrix { rows, prices, reluctance }
}

/// The least harm of at most `k` oils and the least reluctance with it, by going through every choice.
fn by_going_through_all(matrix: &Matrix, k: usize) -> Option<(u64, u64)> {
    let oils = matrix.reluctance.len();
    let of = |choice: u32| {
        let chosen = || (0..oils).filter(|oil| choice >> oil & 1 == 1);
        let served = matrix.rows.iter().filter(|row| row.iter().any(Option::is_some));
        let harms = served.map(|row| chosen().filter_map(|oil| row[oil]).min().map(u64::from));
        let harm: u64 = harms.sum::<Option<u64>>()?;
        let prices: u64 = chosen().map(|oil| u64::from(matrix.prices[oil])).sum();
        Some((harm + prices, chosen().map(|oil| u64::from(matrix.reluctance[oil])).sum()))
    };
    (0..1_u32 << oils).filter(|choice| choice.count_ones() as usize <= k).filter_map(of).min()
}

fn with_all(matrix: &Matrix) -> Frontier {
    fewest(matrix, usize::MAX, Effort::USUAL)
}

/// The harm of the best choice of at most `k` oils.
fn harm_with(frontier: &Frontier, k: usize) -> Option<u64> {
    frontier.choices.iter().rev().find(|choice| choice.oils.len() <= k).map(|choice| choice.harm)
}

#[test]
fn for_every_number_of_oils_the_plan_is_that_of_going_through_all_choices() {
    let (mut proven, mut without) = (0, 0);
    for seed in 0..300 {
        let matrix = small_shop(seed);
        let frontier = with_all(&matrix);
        if frontier.hopeless.len() == matrix.rows.len() {
            assert!(frontier.choices.is_empty(), "seed {seed}");
            continue;
        }
        for k in 1..=matrix.reluctance.len() {
            let best = by_going_through_all(&matrix, k);
            assert_eq!(harm_with(&frontier, k), best.map(|(harm, _)| harm), "seed {seed}, {k} oils: {matrix:?}");
            if best.is_none() {
                let told = frontier.too_few.iter().find(|few| few.k == k);
                assert!(told.is_some_and(|few| few.is_proven), "seed {seed}, {k} oils");
                without += 1;
            }
            if let Some(choice) = frontier.choices.iter().find(|choice| choice.oils.len() == k) {
                let reluctance = choice.oils.iter().map(|oil| u64::from(matrix.reluctance[*oil])).sum();
                assert_eq!(best, Some((choice.harm, reluctance)), "seed {seed}, {k} oils: the most welcome of equals");
                assert!(choice.is_proven(), "seed {seed}, {k} oils");
                proven += 1;
            }
        }
    }
    // Both kinds of answer must have been tried.
    assert!(proven > 300 && without > 100, "{proven}, {without}");
}

#[test]
fn a_choice_harms_as_much_as_it_says_and_its_bound_holds_without_a_search() {
    for seed in 300..600 {
        let matrix = small_shop(seed);
        for effort in [Effort::NONE, Effort::USUAL] {
            for choice in &fewest(&matrix, usize::MAX, effort).choices {
                let served = matrix.rows.iter().filter(|row| row.iter().any(Option::is_some));
                let least = served.map(|row| choice.oils.iter().filter_map(|oil| row[*oil]).min().map(u64::from));
                let prices: u64 = choice.oils.iter().map(|oil| u64::from(matrix.prices[*oil])).sum();
                let harm = least.sum::<Option<u64>>().map(|harm| harm + prices);
                assert_eq!(harm, Some(choice.harm), "seed {seed}: never a never");
                let (best, _) = by_going_through_all(&matrix, choice.oils.len()).expect("there is one");
                assert!(choice.bound <= best && best <= choice.harm, "seed {seed}: {choice:?}, {best}");
            }
        }
    }
}

#[test]
fn more_oils_do_less_harm_and_another_oil_to_choose_from_never_does_more() {
    for seed in 0..300 {
        let matrix = small_shop(seed);
        let frontier = with_all(&matrix);
        assert!(frontier.choices.windows(2).all(|two| two[1].harm < two[0].harm), "seed {seed}");
        let mut wider = matrix.clone();
        let mut chance = Chance(seed + 10_000);
        wider.reluctance.push(0);
        wider.prices.push(0);
        for row in wider.rows.iter_mut().filter(|row| row.iter().any(Option::is_some)) {
            row.push(u32::try_from(chance.below(12)).ok().filter(|harm| *harm < 9));
        }
        // A place that had none before stays without, so that both are about the same places.
        for row in wider.rows.iter_mut().filter(|row| row.iter().all(Option::is_none)) {
            row.resize(matrix.reluctance.len() + 1, None);
        }
        let wider = with_all(&wider);
        for k in 1..=matrix.reluctance.len() {
            let (before, after) = (harm_with(&frontier, k), harm_with(&wider, k));
            assert!(before.is_none_or(|before| after.is_some_and(|after| after <= before)), "seed {seed}, {k} oils");
        }
    }
}

fn file(name: &str) -> String {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../demo").join(name);
    std::fs::read_to_string(&path).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

fn demo_shelf() -> Shelf {
    Shelf::read(&file("shelf.toml")).value.expect("the demo's shelf is right")
}

fn demo_machines() -> Vec<MachineSnapshot> {
    let names = ["crank-shaper", "knee-mill", "pillar-drill", "planer", "small-lathe", "surface-grinder"];
    let machine = |name: &str| {
        let chart = Chart::read(&file(&format!("{name}.toml"))).value.expect("the demo's charts are right");
        MachineSnapshot {
            id: id(name),
            revision: 1,
            chart,
            points: Default::default(),
            contents: Default::default(),
            runs: Vec::new(),
        }
    };
    names.into_iter().map(machine).collect()
}

fn planned(machines: &[MachineSnapshot], shelf: &Shelf, buying: Buying) -> ShelfPlan {
    let asked = Asked { machines, shelf, movements: &[], buying, most: None, effort: Effort::USUAL };
    shelf_plan(&asked).answer.value
}

#[test]
fn no_point_of_the_demo_gets_what_would_harm_it_and_none_is_forgotten() {
    let (machines, shelf) = (demo_machines(), demo_shelf());
    let plan = planned(&machines, &shelf, Buying::ShelfOnly);
    let all: usize = machines.iter().map(|machine| machine.chart.points_here().count()).sum();
    assert_eq!(plan.oils.points + plan.greases.points + plan.without_candidate.len() + plan.looked_at, all);
    for choice in plan.oils.choices.iter().chain(&plan.greases.choices) {
        let used: BTreeSet<&Id> = choice.given.iter().map(|given| &given.oil).collect();
        assert_eq!(used, choice.oils.iter().collect(), "every oil of a choice is wanted somewhere");
        let harm: u64 = choice.given.iter().map(|given| u64::from(given.harm())).sum();
        assert_eq!(harm + choice.for_cans, choice.harm);
        for given in &choice.given {
            assert_ne!(given.verdict, Verdict::Never, "{given:?}");
            let machine = machines.iter().find(|machine| machine.id == given.at.machine).expect("a machine");
            let point = machine.chart.point(&given.at.point).expect("a point");
            let judged = advice::judge::judge(&machine.chart, point, &shelf);
            let own = judged.iter().find(|judged| judged.oil == given.oil).expect("an oil of the shelf");
            assert_eq!(own.verdict, given.verdict, "{given:?}");
        }
    }
}

#[test]
fn points_of_one_reservoir_get_one_oil() {
    let chart = "chart = 1\n[machine]\nname = \"mill\"\n[[pair]]\nid = \"journal\"\nkind = \"journal\"\n[[pair]]\nid = \"way\"\n\
                 kind = \"slideway\"\n[[reservoir]]\nid = \"tank\"\nkind = \"tank\"\n[[circuit]]\nid = \"line\"\nname = \"Line\"\nfrom = \"tank\"\n\
                 [[circuit.node]]\nid = \"pump\"\nkind = \"pump\"\n[[circuit.node]]\nid = \"out\"\nkind = \"outlet\"\nfeeds = [\"way\"]\n\
                 [[point]]\nid = \"1\"\nname = \"Tank\"\nmethod = \"one-shot\"\nreservoir = \"tank\"\n\
                 [[point]]\nid = \"2\"\nname = \"Knob\"\nmethod = \"one-shot\"\ncircuit = \"line\"\ndose = \"3 mL\"\n\
                 [[point]]\nid = \"3\"\nname = \"Journal\"\nmethod = \"oil hole\"\nfeeds = [\"journal\"]\n";
    let read = Chart::read(chart);
    let chart = read.value.unwrap_or_else(|| panic!("{:?}", read.faults));
    let machine = MachineSnapshot {
        id: id("mill"),
        revision: 1,
        chart,
        points: Default::default(),
        contents: Default::default(),
        runs: Vec::new(),
    };
    let plan = planned(&[machine], &demo_shelf(), Buying::Catalogue);
    for choice in &plan.oils.choices {
        let of = |point: &str| &choice.given.iter().find(|given| given.at.point == id(point)).expect("a point").oil;
        assert_eq!(of("1"), of("2"), "{choice:?}");
    }
}

#[test]
fn what_grease_is_for_is_planned_apart_and_an_empty_shelf_has_no_plan() {
    let machines = demo_machines();
    let plan = planned(&machines, &demo_shelf(), Buying::Catalogue);
    let family = |oil: &Id| plan.candidate(oil).expect("a candidate").oil.family;
    assert!(plan.greases.points > 0);
    assert!(plan.oils.choices.iter().flat_map(|choice| &choice.oils).all(|oil| family(oil) != Family::Grease));
    assert!(plan.greases.choices.iter().flat_map(|choice| &choice.oils).all(|oil| family(oil) == Family::Grease));
    let none = planned(&machines, &Shelf::default(), Buying::ShelfOnly);
    assert!(!none.is_there() && none.oils.choices.is_empty() && !none.without_candidate.is_empty());
}

/// Of practitioners nearly every shop up to the 1960s settles on three oils and a grease: a circulating or hydraulic one, way 68, a 460 without
/// sulphur, and NLGI 2 with lithium; a close grinder spindle wants its own beside them (trade practice 3.2). Where they take grade 32, the slow
/// machines of the demo come out with 68, which practitioners also keep "everywhere in the slow belt-driven shop".
#[test]
fn the_shelf_of_the_demo_is_like_that_of_a_practitioner() {
    let machines = demo_machines();
    let plan = planned(&machines, &demo_shelf(), Buying::ShelfOnly);
    let sorts = |plan: &ShelfPlan| {
        let advised = plan.oils.advice().expect("a plan").oils.iter();
        let oils = advised.map(|id| &plan.candidate(id).expect("a candidate").oil);
        let mut sorts: Vec<(Family, u32)> =
            oils.map(|oil| (oil.family, oil.v40.as_ref().map_or(0, |v40| v40.value.mm2_s().round() as u32))).collect();
        sorts.sort_by_key(|(_, v40)| *v40);
        sorts
    };
    // The drum holds 67 and the compounded oil 455 mm²/s.
    assert_eq!(sorts(&plan), [(Family::Circulating, 67), (Family::Way, 68), (Family::Compounded, 455)]);
    let grease = &plan.greases.advice().expect("a plan").oils;
    assert_eq!(grease.iter().map(Id::as_str).collect::<Vec<_>>(), ["tub-grease-2"]);
    let without: Vec<&str> = plan.without_candidate.iter().map(|at| at.machine.as_str()).collect();
    assert_eq!(without, ["surface-grinder"], "only its close spindle finds nothing on the shelf");

    let bought = planned(&machines, &demo_shelf(), Buying::Catalogue);
    assert_eq!(bought.without_candidate, []);
    let spindle: Vec<(Family, u32)> =
        sorts(&bought).into_iter().filter(|(family, _)| *family == Family::Spindle).collect();
    assert!(matches!(spindle[..], [(Family::Spindle, 2..=10)]), "{spindle:?}");
    assert_eq!(sorts(&bought).len(), 4, "the three of before and the grinder's own");
}

#[test]
fn a_can_must_save_as_much_as_a_stopgap_to_be_advised() {
    let plan = planned(&demo_machines(), &demo_shelf(), Buying::Catalogue);
    let worth = |choice: &advice::shelf_plan::Choice| choice.harm + 10 * choice.oils.len() as u64;
    let advised = plan.oils.advice().expect("a plan");
    assert!(plan.oils.choices.iter().all(|choice| worth(choice) >= worth(advised)));
    assert_eq!(plan.oils.of(advised.oils.len()), Some(advised));
}
