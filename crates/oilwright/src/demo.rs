//! The invented shop: charts and shelf from the files of `demo/`, and a logbook made by [`diary`] from a fixed seed, so that two
//! builds hold the same bytes.

mod diary;

use std::path::Path;

use jiff::Timestamp;
use jiff::civil::date;
use jiff::tz::TimeZone;
use shop::id::Id;
use shop::shelf::Shelf;
use shop::snapshot::Conditions;
use store::{NewPicture, Settings, Store};
use tribology::quantity::{Temperature, Time, Units};

use crate::failure::Failure;

/// A machine of the shop.
struct Machine {
    id: &'static str,
    /// The text of its chart.
    chart: &'static str,
    /// The drawings of its sides: file and bytes.
    drawings: &'static [(&'static str, &'static [u8])],
}

/// A machine from its files: `ID.toml`, and `ID-SIDE.svg` for each side.
macro_rules! machine {
    ($id:literal, $($side:literal),+) => {
        Machine {
            id: $id,
            chart: include_str!(concat!("../../../demo/", $id, ".toml")),
            drawings: &[$((
                concat!($id, "-", $side, ".svg"),
                include_bytes!(concat!("../../../demo/", $id, "-", $side, ".svg")),
            )),+],
        }
    };
}

/// The machines of the shop.
const MACHINES: [Machine; 6] = [
    machine!("crank-shaper", "left", "rear", "right", "front"),
    machine!("knee-mill", "front", "left", "rear", "right"),
    machine!("pillar-drill", "front", "right", "rear"),
    machine!("planer", "operator", "bed-end", "rail-side", "drive-side"),
    machine!("small-lathe", "head-end", "front", "tail-end", "behind"),
    machine!("surface-grinder", "front", "left", "rear"),
];

/// The shelf of the shop.
const SHELF: &str = include_str!("../../../demo/shelf.toml");

/// The keeper who set the shop up.
const KEEPER: &str = "the keeper";

/// The shop's settings.
pub(crate) fn settings() -> Settings {
    Settings {
        name: "Mill museum repair shop (invented)".to_owned(),
        zone: TimeZone::get("Etc/UTC").unwrap_or(TimeZone::UTC),
        units: Units::Metric,
        hours: Time::from_hours(3.0),
        conditions: Conditions {
            cold: Some(Temperature::from_celsius(8.0)),
            usual: Some(Temperature::from_celsius(17.0)),
            warm: Some(Temperature::from_celsius(26.0)),
        },
    }
}

/// The moment at which a visitor comes in.
pub(crate) fn start() -> Timestamp {
    on(2026, 11, 25, 9, 0)
}

/// Builds the shop in a new file.
pub(crate) async fn build(file: &Path) -> Result<Store, Failure> {
    // The shop was set up a week before its logbook begins.
    let set_up = on(2025, 9, 15, 10, 0);
    let store = Store::create(file, &settings(), set_up).await?;
    let shelf = Shelf::read(SHELF).value.expect("the demo's shelf is checked by a test");
    store.add_shelf(&shelf, set_up, KEEPER).await?;
    let mut machines = Vec::new();
    for Machine { id, chart, drawings } in MACHINES {
        let id = Id::new(id).expect("the demo's ids are ids");
        let picture = |(name, bytes): &(&str, &[u8])| NewPicture {
            machine: id.clone(),
            name: (*name).to_owned(),
            taken: None,
            bytes: bytes.to_vec(),
        };
        store.add_chart_with(&id, chart, drawings.iter().map(picture).collect(), set_up, KEEPER).await?;
        machines.push(id);
    }
    let snapshot = store.snapshot(set_up).await?;
    let before = store.entries(&store::Wanted { most: 1000, ..store::Wanted::default() }).await?.len();
    let entries = diary::entries(snapshot, before, start());
    // An entry can only supersede one that is kept already.
    for part in entries.chunk_by(|_, next| next.supersedes.is_none()) {
        store.record(part).await?;
    }
    Ok(store)
}

fn on(year: i16, month: i8, day: i8, hour: i8, minute: i8) -> Timestamp {
    let clock = date(year, month, day).at(hour, minute, 0, 0);
    clock.to_zoned_datetime(TimeZone::UTC).expect("the demo's dates exist").timestamp()
}

#[cfg(test)]
mod tests {
    use advice::contents::{Act, Holds, in_reservoir};
    use shop::logbook::{Body, Subject};

    use super::*;

    #[test]
    fn every_file_of_the_demo_is_read_without_a_remark() {
        for Machine { id, chart, drawings } in MACHINES {
            let read = shop::chart::Chart::read(chart);
            let told: Vec<String> = read.faults.iter().map(|fault| fault.shown(id, chart)).collect();
            assert!(told.is_empty(), "{}", told.join("\n"));
            let read = read.value.expect("a chart without faults is read");
            let points = &read.points;
            assert!(
                points.iter().all(|point| point.picture.is_some() && point.at.is_some()),
                "{id}: a point without its place"
            );
            let files: Vec<&str> = read.pictures.iter().map(|picture| picture.file.as_str()).collect();
            let drawn: Vec<&str> = drawings.iter().map(|(name, _)| *name).collect();
            assert_eq!(files, drawn, "{id}");
        }
        let read = Shelf::read(SHELF);
        let told: Vec<String> = read.faults.iter().map(|fault| fault.shown("shelf", SHELF)).collect();
        assert!(told.is_empty(), "{}", told.join("\n"));
    }

    #[tokio::test]
    async fn two_builds_say_the_same() {
        let folder = tempfile::tempdir().expect("a folder");
        let mut seen = Vec::new();
        for name in ["one.shop", "two.shop"] {
            let store = build(&folder.path().join(name)).await.expect("the demo builds");
            let all = store::Wanted { most: 100_000, ..store::Wanted::default() };
            seen.push((
                store.snapshot(start()).await.expect("a snapshot"),
                store.entries(&all).await.expect("entries"),
            ));
        }
        assert!(seen[0].1.len() > 4000, "fourteen months of six machines");
        assert_eq!(seen[0], seen[1]);
    }

    /// Every story of `demo/truth.toml` can be seen in the logbook by a plain count.
    #[tokio::test]
    async fn the_planted_stories_are_in_the_logbook() {
        const TRUTH: &str = include_str!("../../../demo/truth.toml");
        assert_eq!(TRUTH.matches("[[story]]").count(), 5);
        let folder = tempfile::tempdir().expect("a folder");
        let store = build(&folder.path().join("s.shop")).await.expect("the demo builds");
        let all = store::Wanted { most: 100_000, ..store::Wanted::default() };
        let entries = store.entries(&all).await.expect("entries");
        let (may, july, august) = (on(2026, 5, 18, 0, 0), on(2026, 7, 6, 0, 0), on(2026, 8, 3, 0, 0));
        let of = |subject: String| entries.iter().filter(move |entry| entry.said.subject.to_string() == subject);
        let subject = |parts: [&str; 2], make: fn(Id, Id) -> Subject| {
            make(Id::new(parts[0]).expect("an id"), Id::new(parts[1]).expect("an id")).to_string()
        };
        // A slow leak: more goes in each week than went in a month.
        let filled = |from: Timestamp, to: Timestamp| -> f64 {
            let box_of = subject(["pillar-drill", "worm-box"], Subject::Reservoir);
            let within = of(box_of).filter(|entry| (from..to).contains(&entry.said.happened));
            within
                .filter_map(|entry| match &entry.said.body {
                    Body::Filled { amount: Some(amount), .. } => amount.trim_end_matches(" mL").parse::<f64>().ok(),
                    _ => None,
                })
                .sum()
        };
        let day = jiff::SignedDuration::from_hours(24);
        assert!(filled(july, july + day * 120) > 5.0 * filled(july - day * 120, july), "the leak");
        // A blocked outlet: the sign was never missing before, and is missing in many looks after.
        let looks = |missing: bool, late: bool| {
            let cap = subject(["planer", "22"], Subject::Point);
            of(cap)
                .filter(|entry| (entry.said.happened >= may) == late)
                .filter(|entry| matches!(entry.said.body, Body::SignMissing { .. }) == missing)
                .filter(|entry| matches!(entry.said.body, Body::SignMissing { .. } | Body::SignSeen { .. }))
                .count()
        };
        assert_eq!(looks(true, false), 0);
        assert!(looks(false, false) >= 3 && looks(true, true) >= 3, "{} {}", looks(false, false), looks(true, true));
        // Coolant in the sump: it rises, and nobody filled anything.
        let sump = subject(["surface-grinder", "spindle-sump"], Subject::Reservoir);
        let height = |late: bool| -> Vec<f64> {
            let levels = of(sump.clone()).filter(|entry| (entry.said.happened >= august) == late);
            levels
                .filter_map(|entry| match &entry.said.body {
                    Body::Level { reading } => reading.split(' ').next().and_then(|number| number.parse().ok()),
                    _ => None,
                })
                .collect()
        };
        let mean = |all: &[f64]| all.iter().sum::<f64>() / all.len() as f64;
        assert!(height(false).len() > 40 && mean(&height(true)) > mean(&height(false)) + 3.0);
        assert!(of(sump).all(|entry| !matches!(entry.said.body, Body::Filled { .. })));
        // The wrong can: the bronze worm's box holds compounded oil and axle oil, and the mill is not run; a week before all was well.
        let worm_box = Id::new("trip-worm-bath").expect("an id");
        let mut acts = Vec::new();
        for at in [on(2026, 10, 12, 9, 0), start()] {
            let snapshot = store.snapshot(at).await.expect("a snapshot");
            let mill = snapshot.machine(&Id::new("knee-mill").expect("an id")).expect("the mill");
            let reservoir = mill.chart.reservoir(&worm_box).expect("the box");
            let inside = in_reservoir(&mill.chart, reservoir, &mill.contents(&worm_box), &snapshot.shelf);
            acts.push((inside.act, inside.holds));
        }
        let id = |text| Id::new(text).expect("an id");
        assert_eq!(acts[0].1, Holds::Known(vec![id("worm-460")]));
        assert_eq!(acts[1], (Act::DoNotRun, Holds::Known(vec![id("worm-460"), id("axle-90")])));
        // The helper who skips: he runs the planer and never oils it; the others do.
        let planer = |hand: &str, oiled: bool| {
            let on_planer =
                entries.iter().filter(|entry| entry.said.subject.machine().is_some_and(|id| id.as_str() == "planer"));
            on_planer
                .filter(|entry| entry.said.by == hand)
                .filter(|entry| {
                    if oiled {
                        matches!(entry.said.body, Body::Dosed { .. })
                    } else {
                        matches!(entry.said.body, Body::Ran { .. })
                    }
                })
                .count()
        };
        assert!(planer("the Saturday helper", false) >= 10 && planer("the Saturday helper", true) == 0);
        assert!(planer("the keeper", true) > 50);
    }
}
