//! Films over speed and temperature: laws that hold for any bearing, changes of the film held against a plain search, the balance of heat held
//! against Petroff's law and Reynolds' equation, and the one warning. The machines are invented.

use std::path::Path;

use advice::film::{
    Contact, Day, Filling, Film, Kind, Reached, State, TooTight, What, film, rooms, too_tight, warnings,
};
use advice::judge::judge;
use advice::need::{Place, need};
use advice::words;
use shop::chart::{Chart, Method};
use shop::shelf::Shelf;
use shop::snapshot::Conditions;
use tribology::contact::Regime;
use tribology::contact::journal::{Arc, Bearing, Method as By, housing, petroff};
use tribology::oil::dynamic_viscosity;
use tribology::quantity::{Force, Length, Rotation, Temperature, Units};

#[track_caller]
fn chart(pair: &str, method: &str) -> Chart {
    let text = format!(
        "chart = 1\n[machine]\nname = \"M\"\n[[pair]]\nid = \"p\"\n{pair}\n[[point]]\nid = \"1\"\nname = \"P\"\nfeeds = [\"p\"]\nmethod = \
         \"{method}\"\n"
    );
    let read = Chart::read(&text);
    read.value.unwrap_or_else(|| panic!("{:?}\n{text}", read.faults))
}

#[track_caller]
fn shelf(v40: f64, v100: f64) -> Shelf {
    let text = format!(
        "shelf = 1\n[[oil]]\nid = \"o\"\nname = \"The oil\"\nfamily = \"circulating\"\nv40 = \"{v40} mm2/s\"\nv100 = \"{v100} mm2/s\"\n"
    );
    Shelf::read(&text).value.expect("a shelf without faults")
}

/// Oils of every day by their viscosities at 40 and 100 °C.
const OILS: [(f64, f64); 4] = [(10.0, 2.6), (32.0, 5.4), (68.0, 8.6), (220.0, 18.9)];

fn filling(oil: (f64, f64)) -> Filling {
    Filling::of(&shelf(oil.0, oil.1).oils[0]).expect("an oil of known body")
}

fn conditions() -> Conditions {
    let at = |celsius| Some(Temperature::from_celsius(celsius));
    Conditions { cold: at(4.0), usual: at(18.0), warm: at(30.0) }
}

const SPEEDS: &str = "speeds = [\"600 rpm\", \"12 rpm\", \"60 rpm\", \"1500 rpm\"]";

/// Plain and rolling bearings, known well and hardly.
fn pairs() -> Vec<String> {
    let plain = format!("kind = \"journal\"\ndiameter = \"50 mm\"\n{SPEEDS}");
    let rolling = format!("kind = \"rolling bearing\"\nbore = \"35 mm\"\n{SPEEDS}");
    vec![
        plain.clone(),
        format!("{plain}\nload = \"10 kN\""),
        format!("{plain}\nclearance = \"0.03 mm\"\nlength = \"80 mm\"\nload = \"300 N\"\nroughness = \"0.2 um\""),
        format!("kind = \"journal\"\ndiameter = \"12 mm\"\n{SPEEDS}"),
        rolling.clone(),
        format!("{rolling}\ntype = \"taper roller\"\noutside = \"80 mm\"\nwidth = \"23 mm\""),
    ]
}

/// Every film of the pairs above with every oil, fed by a pump.
fn films() -> Vec<(String, Film)> {
    let mut films = Vec::new();
    for pair in pairs() {
        let chart = chart(&pair, "circulating pump");
        let place = Place::all(&chart, &chart.points[0]).remove(0);
        for oil in OILS {
            let found = film(&place, &filling(oil), &rooms(&conditions())).expect("a bearing of known size and speed");
            assert!(!found.steps.is_empty(), "its working goes with it");
            films.push((format!("{pair} {oil:?}"), found.value));
        }
    }
    assert_eq!(films.len(), 24);
    films
}

fn states(film: &Film, room: usize) -> Vec<State> {
    film.rooms[room].at.iter().map(|(_, state)| state.expect("these come to a balance")).collect()
}

#[test]
fn it_is_warmer_for_speed_and_for_a_warmer_room_and_the_film_never_better_for_warmth() {
    for (name, film) in films() {
        for room in 0..3 {
            let states = states(&film, room);
            assert_eq!(states.len(), 4, "{name}");
            assert!(states.is_sorted_by(|a, b| a.temperature < b.temperature), "{name}: {states:?}");
            let air = film.rooms[room].room.air;
            assert!(states.iter().all(|state| state.temperature > air), "{name}");
        }
        for (colder, warmer) in [(0, 1), (1, 2)] {
            for (cold, warm) in states(&film, colder).iter().zip(states(&film, warmer)) {
                assert!(cold.temperature < warm.temperature, "{name}");
                assert!(warm.film_ratio < cold.film_ratio && warm.regime <= cold.regime, "{name}");
            }
        }
    }
}

#[test]
fn what_is_varied_moves_the_answer_about_what_is_told() {
    for (name, film) in films() {
        let usual = film.rooms.iter().find(|one| one.room.day == Day::Usual).expect("a usual day");
        let top = usual.at.last().and_then(|(_, state)| *state).expect("a top speed").temperature;
        assert_eq!(film.swing.len(), film.assumed.len(), "{name}");
        assert!(film.swing.is_sorted_by(|a, b| a.much >= b.much), "{name}");
        for swing in &film.swing {
            let [coolest, warmest] = swing.top.map(|top| top.expect("these come to a balance"));
            assert!(coolest <= top && top <= warmest, "{name}: {swing:?}");
            if !matches!(swing.assumed.what, What::Roughness(_)) {
                assert!(coolest < warmest, "{name}: {swing:?}");
            }
            let said = words::film_swing(swing, film.kind, Units::Metric);
            assert!(said.contains("moves"), "{said}");
        }
        let wanted = film.kind.wanted();
        let first = usual.at.iter().find(|(_, state)| state.is_some_and(|state| state.regime >= wanted));
        for swing in &film.swing {
            let rpm = |reached| match reached {
                Reached::Always => 0.0,
                Reached::From(speed) => Rotation::rpm(speed),
                Reached::Never => f64::INFINITY,
            };
            let [earliest, latest] = swing.reached.map(rpm);
            assert!(earliest <= latest, "{name}");
            // What is taken itself lies between the ends: good at no charted speed before the earliest, and at all from the latest on.
            match first {
                Some((speed, _)) => assert!(earliest <= speed.rpm(), "{name}: {swing:?}"),
                None => assert!(latest.is_infinite(), "{name}: {swing:?}"),
            }
        }
    }
}

#[test]
fn what_is_charted_is_not_assumed() {
    let all = format!(
        "kind = \"journal\"\ndiameter = \"50 mm\"\n{SPEEDS}\nlength = \"60 mm\"\nclearance = \"0.05 mm\"\nload = \"1 kN\"\nroughness = [\"0.8 um\", \
         \"0.4 um\"]"
    );
    let whats = |pair: &str, method: &str, filling: &Filling| {
        let chart = chart(pair, method);
        let place = Place::all(&chart, &chart.points[0]).remove(0);
        film(&place, filling, &rooms(&conditions())).map(|found| found.value.assumed.len())
    };
    let stated = filling(OILS[2]);
    let bare = format!("kind = \"journal\"\ndiameter = \"50 mm\"\n{SPEEDS}");
    assert_eq!(whats(&all, "bath", &stated), Some(2), "how heat is given off nobody measures");
    assert_eq!(whats(&all, "circulating pump", &stated), Some(3), "and what the oil takes along");
    assert_eq!(whats(&bare, "bath", &stated), Some(6));
    let unsaid =
        Shelf::read("shelf = 1\n[[oil]]\nid = \"o\"\nname = \"O\"\nfamily = \"way\"\nv40 = \"68 mm2/s\"\n").value;
    let unsaid = Filling::of(&unsaid.expect("a shelf").oils[0]).expect("an oil of known body");
    assert_eq!(whats(&bare, "bath", &unsaid), Some(7), "how fast the oil thins");
    for nothing in
        ["kind = \"journal\"\ndiameter = \"50 mm\"", "kind = \"journal\"\nspeeds = [\"60 rpm\"]", "kind = \"cam\""]
    {
        assert_eq!(whats(nothing, "bath", &stated), None, "{nothing}");
    }
    assert_eq!(whats(&bare, "grease cup", &stated), None);
}

/// The speed at which a film becomes full or mixed, against a search in steps of a twentieth of a per cent.
#[test]
fn a_change_of_the_film_is_where_a_plain_search_finds_it() {
    let mut found = 0;
    for pair in pairs() {
        let chart = chart(&pair, "bath");
        let place = Place::all(&chart, &chart.points[0]).remove(0);
        let contact = Contact::of(&place).expect("a bearing");
        for oil in OILS {
            let filling = filling(oil);
            let [_, usual, _] = rooms(&conditions());
            let over = contact.over(&filling, usual);
            let regime = |rpm: f64| {
                let state = contact.at(&filling, Rotation::from_rpm(rpm), usual.air).expect("an answer");
                state.expect("a balance").regime
            };
            let (mut rpm, mut last): (f64, Regime) = (12.0, regime(12.0));
            let mut changes = Vec::new();
            while rpm < 1500.0 {
                rpm *= 1.0005;
                let here = regime(rpm.min(1500.0));
                if here != last {
                    changes.push((rpm, here));
                    last = here;
                }
            }
            assert_eq!(over.changes.len(), changes.len(), "{pair} {oil:?}: {:?} and {changes:?}", over.changes);
            for (change, (rpm, regime)) in over.changes.iter().zip(changes) {
                assert_eq!(change.to, regime, "{pair} {oil:?}");
                assert!((change.from.rpm() / rpm - 1.0).abs() < 1e-3, "{pair} {oil:?}: {} {rpm}", change.from.rpm());
                found += 1;
            }
        }
    }
    assert!(found > 10, "{found} changes are enough to tell");
}

/// What friction makes at the temperature found, by Reynolds' equation solved anew, is what the housing gives off.
#[test]
fn heat_made_is_heat_given_off() {
    let (d, l, clearance, load) = (50.0, 60.0, 0.05, 1.0);
    let pair = format!(
        "kind = \"journal\"\ndiameter = \"{d} mm\"\n{SPEEDS}\nlength = \"{l} mm\"\nclearance = \"{clearance} mm\"\nload = \"{load} kN\""
    );
    let chart = chart(&pair, "bath");
    let place = Place::all(&chart, &chart.points[0]).remove(0);
    let contact = Contact::of(&place).expect("a bearing");
    let surface = housing(Length::from_mm(d), Length::from_mm(l)).expect("a bearing").value.usual;
    for oil in OILS {
        let filling = filling(oil);
        for rpm in [60.0, 600.0, 1500.0] {
            let speed = Rotation::from_rpm(rpm);
            let state = contact.at(&filling, speed, Temperature::from_celsius(18.0)).ok().flatten().expect("a balance");
            let viscosity = dynamic_viscosity(filling.oil.line.at(state.temperature), filling.oil.density);
            let bearing = Bearing {
                diameter: Length::from_mm(d),
                length: Length::from_mm(l),
                clearance: Length::from_mm(clearance),
                load: Force::from_kn(load),
                speed,
            };
            let running = bearing.running(viscosity.expect("an oil").value, By::Reynolds(Arc::Whole)).expect("a film");
            let made = running.value.power_loss.w();
            let given = 17.5 * surface.m2() * (state.temperature.celsius() - 18.0);
            assert!((made / given - 1.0).abs() < 0.005, "{oil:?} {rpm}: {made} W made, {given} W given off");
        }
    }
}

/// A spindle of 60 mm with two hundredths of play at 3000 rpm.
const TIGHT: &str = "kind = \"journal\"\nname = \"Wheel spindle\"\ndiameter = \"60 mm\"\nlength = \"60 mm\"\nload = \"400 N\"\nspeeds = [\"1000 \
                     rpm\", \"3000 rpm\"]\nsurfaces = [\"steel\", \"bronze\"]";
const CLEARANCE: &str = "clearance = \"0.02 mm\"";

fn flagged(pair: &str, method: &str, oil: (f64, f64)) -> Option<TooTight> {
    let chart = chart(pair, method);
    let place = Place::all(&chart, &chart.points[0]).remove(0);
    let [_, usual, _] = rooms(&conditions());
    too_tight(&place, &filling(oil), usual)
}

/// Petroff's law says less than the film does. If even that is more at 70 °C than the most that the housing gives off, 60 times diameter times
/// length at 20 W/(m² K), the spindle is too tight whatever was assumed.
#[test]
fn a_spindle_that_is_truly_too_tight_is_flagged() {
    let oil = filling((68.0, 8.6));
    let seventy = Temperature::from_celsius(70.0);
    let viscosity = dynamic_viscosity(oil.oil.line.at(seventy), oil.oil.density).expect("an oil").value;
    let (mm, rpm) = (Length::from_mm(60.0), Rotation::from_rpm(3000.0));
    let drag = petroff(mm, mm, Length::from_mm(0.02), rpm, viscosity).expect("a bearing").value;
    let made = drag.torque.n_m() * std::f64::consts::TAU * rpm.per_second();
    let given = 20.0 * 60.0 * mm.m() * mm.m() * (70.0 - 18.0);
    assert!(made > 3.0 * given, "{made} W made, {given} W given off");
    let pair = format!("{TIGHT}\n{CLEARANCE}");
    for method in ["bath", "ring", "circulating pump", "total-loss pump", "bottle"] {
        let found = flagged(&pair, method, (68.0, 8.6)).unwrap_or_else(|| panic!("{method}"));
        assert!(found.at_least.is_none_or(|at_least| at_least > seventy), "{found:?}");
        let said = words::too_tight(&found, Units::Metric);
        for part in ["Wheel spindle is too tight for The oil at 3000 rpm", "0.02 mm of clearance", "70 °C"] {
            assert!(said.contains(part), "{said}");
        }
    }
    for part in ["thinner oil", "check the clearance", "slower", "maker"] {
        assert!(words::too_tight_remedy().contains(part), "{part}");
    }
}

#[test]
fn nothing_is_flagged_that_may_be_well() {
    let tight = format!("{TIGHT}\n{CLEARANCE}");
    let guessed = |how: &str, of: &str| format!("{tight}\n[[pair.evidence]]\nof = [{of}]\nhow = \"{how}\"");
    let slow = tight.replace("\"1000 rpm\", \"3000 rpm\"", "\"60 rpm\", \"150 rpm\"");
    assert_ne!(slow, tight);
    for (why, pair, method, oil) in [
        ("nobody measured the clearance", TIGHT.to_owned(), "bath", (68.0, 8.6)),
        ("the clearance is a guess", guessed("guess", "\"clearance\""), "bath", (68.0, 8.6)),
        ("all of it is a guess", guessed("guess", ""), "bath", (68.0, 8.6)),
        ("the oil is thin", tight.clone(), "bath", (2.2, 0.95)),
        ("it turns slowly", slow, "bath", (68.0, 8.6)),
        ("it has play", format!("{TIGHT}\nclearance = \"0.3 mm\""), "bath", (10.0, 2.6)),
    ] {
        assert_eq!(flagged(&pair, method, oil), None, "{why}");
    }
    assert!(flagged(&guessed("traced", "\"clearance\""), "bath", (68.0, 8.6)).is_some(), "measured");
    for method in [
        "oil hole",
        "ball oiler",
        "cup",
        "nipple",
        "drip",
        "wick",
        "felt",
        "brush",
        "one-shot with meter units",
        "splash",
        "tray",
    ] {
        assert_eq!(flagged(&tight, method, (68.0, 8.6)), None, "{method}");
    }
}

#[test]
fn a_bronze_bearing_oiled_by_hand_is_never_condemned() {
    for method in ["oil hole", "ball oiler", "cup", "drip", "wick", "felt"] {
        for rpm in [10, 100, 1000, 5000] {
            for mm in [8, 25, 60, 150] {
                let pair = format!(
                    "kind = \"journal\"\ndiameter = \"{mm} mm\"\nspeeds = [\"{rpm} rpm\"]\nsurfaces = [\"steel\", \"bronze\"]"
                );
                let chart = chart(&pair, method);
                let point = &chart.points[0];
                for oil in OILS {
                    let shelf = shelf(oil.0, oil.1);
                    let judged = judge(&chart, point, &shelf);
                    let need = need(&chart, point);
                    let [_, _, warm] = rooms(&conditions());
                    assert_eq!(warnings(&chart, point, &need, &shelf, &judged, warm), [], "{method} {rpm} {mm}");
                }
            }
        }
    }
}

/// The charts of the demo are of machines that run well, but for a grinder whose shelf has no oil as thin as its plate asks for.
#[test]
fn of_the_demo_no_hand_oiled_bearing_is_flagged() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../demo");
    let read = |name: &str| std::fs::read_to_string(root.join(name)).expect("a file of the demo");
    let shelf = Shelf::read(&read("shelf.toml")).value.expect("the demo's shelf is right");
    let [_, _, warm] = rooms(&conditions());
    let (mut films, mut flagged) = (0, Vec::new());
    for machine in ["crank-shaper", "knee-mill", "pillar-drill", "planer", "small-lathe", "surface-grinder"] {
        let chart = Chart::read(&read(&format!("{machine}.toml"))).value.expect("the demo's charts are right");
        for point in chart.points_here() {
            let judged = judge(&chart, point, &shelf);
            let need = need(&chart, point);
            let found = warnings(&chart, point, &need, &shelf, &judged, warm);
            let filling = Filling::best(&chart, point, &shelf, &judged);
            films += need
                .pairs
                .iter()
                .filter_map(|(place, _)| film(place, filling.as_ref()?, &rooms(&conditions())))
                .count();
            let is_kept_full = matches!(
                point.method,
                Method::Bath | Method::Ring | Method::CirculatingPump | Method::TotalLossPump | Method::Bottle
            );
            assert!(found.is_empty() || is_kept_full, "{machine} {}: {found:?}", point.id);
            flagged.extend(found.into_iter().map(|one| format!("{machine} {} {}", point.id, one.pair)));
        }
    }
    assert!(films > 50, "{films} bearings have a film");
    println!("{films} films; flagged: {flagged:?}");
}

#[test]
fn the_film_is_told_in_words_and_ranges() {
    let speeds = "speeds = [\"12 rpm\", \"60 rpm\", \"600 rpm\"]";
    let chart = chart(&format!("kind = \"journal\"\ndiameter = \"50 mm\"\n{speeds}\nload = \"20 kN\""), "oil hole");
    let place = Place::all(&chart, &chart.points[0]).remove(0);
    let found = film(&place, &filling((68.0, 8.6)), &rooms(&conditions())).expect("a bearing").value;
    let usual = &found.rooms[1];
    let said = words::regimes(usual, Kind::Plain);
    let (Some((_, first)), [mixed, full]) = (usual.at.first(), usual.changes.as_slice()) else { panic!("{usual:?}") };
    assert_eq!(first.map(|state| state.regime), Some(Regime::Boundary));
    assert_eq!((mixed.to, full.to), (Regime::Mixed, Regime::Full));
    let about = |speed: Rotation| tribology::quantity::digits_of(speed.rpm(), 2);
    let wanted = format!("mixed from about {} rpm, full film from about {} rpm", about(mixed.from), about(full.from));
    assert!(said.starts_with("boundary ") && said.ends_with(&wanted), "{said}");
    assert!(!said.contains("µm"), "{said}");
    let swing = words::film_swing(&found.swing[0], found.kind, Units::Metric);
    assert!(swing.contains("it moves ") && swing.contains(" to "), "{swing}");
    let warmth = words::warmth(usual, Units::Metric);
    assert!(warmth.starts_with("about 18 to ") && warmth.ends_with(" °C"), "{warmth}");
}
