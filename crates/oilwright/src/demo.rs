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
use store::{Settings, Store};
use tribology::quantity::{Temperature, Time, Units};

use crate::failure::Failure;

/// The machines of the shop: id and chart.
const CHARTS: [(&str, &str); 6] = [
    ("crank-shaper", include_str!("../../../demo/crank-shaper.toml")),
    ("knee-mill", include_str!("../../../demo/knee-mill.toml")),
    ("pillar-drill", include_str!("../../../demo/pillar-drill.toml")),
    ("planer", include_str!("../../../demo/planer.toml")),
    ("small-lathe", include_str!("../../../demo/small-lathe.toml")),
    ("surface-grinder", include_str!("../../../demo/surface-grinder.toml")),
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
    let set_up = on(2026, 8, 17, 10, 0);
    let store = Store::create(file, &settings(), set_up).await?;
    let shelf = Shelf::read(SHELF).value.expect("the demo's shelf is checked by a test");
    store.add_shelf(&shelf, set_up, KEEPER).await?;
    let mut machines = Vec::new();
    for (id, text) in CHARTS {
        let id = Id::new(id).expect("the demo's ids are ids");
        store.add_chart(&id, text, set_up, KEEPER).await?;
        machines.push(id);
    }
    let snapshot = store.snapshot(set_up).await?;
    let entries = diary::entries(snapshot, start());
    store.record(&entries).await?;
    Ok(store)
}

fn on(year: i16, month: i8, day: i8, hour: i8, minute: i8) -> Timestamp {
    let clock = date(year, month, day).at(hour, minute, 0, 0);
    clock.to_zoned_datetime(TimeZone::UTC).expect("the demo's dates exist").timestamp()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_file_of_the_demo_is_read_without_a_remark() {
        for (id, text) in CHARTS {
            let read = shop::chart::Chart::read(text);
            let told: Vec<String> = read.faults.iter().map(|fault| fault.shown(id, text)).collect();
            assert!(told.is_empty(), "{}", told.join("\n"));
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
        assert!(seen[0].1.len() > 500, "three months of six machines");
        assert_eq!(seen[0], seen[1]);
    }
}
