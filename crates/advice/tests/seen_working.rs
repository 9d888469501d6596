//! An oil-can bearing is starved by design and lives: what practice has seen working, the reasoning must not condemn. Held against every
//! hand-oiled pair of the demo whose point or whose own statements are marked "seen working".

use advice::judge::judge;
use advice::need::{need, regimes};
use advice::verdict::Verdict;
use advice::words;
use shop::chart::{Chart, How, PairKind};
use shop::shelf::Shelf;
use tribology::quantity::Temperature;

const MACHINES: [&str; 6] = ["crank-shaper", "knee-mill", "pillar-drill", "planer", "small-lathe", "surface-grinder"];

fn file(name: &str) -> String {
    let path = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../../demo").join(name);
    std::fs::read_to_string(&path).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

#[test]
fn what_was_seen_working_by_hand_has_an_oil_and_a_film_by_name() {
    let shelf = Shelf::read(&file("shelf.toml")).value.expect("the demo's shelf is right");
    let (mut points, mut films) = (0, 0);
    for machine in MACHINES {
        let chart = Chart::read(&file(&format!("{machine}.toml"))).value.expect("the demo's charts are right");
        for point in chart.points_here() {
            let need = need(&chart, point);
            let is_by_hand = need.pairs.iter().any(|(place, _)| place.is_starved_by_design());
            let pairs = need.pairs.iter().filter_map(|(place, _)| place.pair);
            let evidence = pairs.flat_map(|pair| &pair.evidence).chain(&point.evidence);
            if !is_by_hand || !evidence.into_iter().any(|one| one.how == How::SeenWorking) {
                continue;
            }
            points += 1;
            let judged = judge(&chart, point, &shelf);
            let best = judged.first().expect("the shelf has oils");
            assert!(best.verdict >= Verdict::Stopgap, "{machine} {}: {}", point.id, best.verdict);
            let oil = shelf.oil(&best.oil).expect("it is on the shelf");
            for (place, _) in &need.pairs {
                let Some(pair) = place.pair.filter(|pair| {
                    pair.kind == PairKind::Journal && pair.diameter.is_some() && !pair.speeds.is_empty()
                }) else {
                    continue;
                };
                let found = regimes(pair, oil, Temperature::from_celsius(33.0)).expect("a size and a speed are a film");
                let says = words::regimes(&found);
                assert!(["boundary", "mixed", "full film"].iter().any(|word| says.contains(word)), "{says}");
                films += 1;
            }
        }
    }
    println!("{points} points seen working by hand, {films} films named");
    assert!(points >= 5 && films >= 3, "{points} points, {films} films");
}
